// Takes one of many out of the job, in one step. Bumpers that ended at an opening end on its side then.
import type { FieldsGiven } from './context';
import { endsBack } from './opening_ends';
import { withoutTable } from './remove_table';
import { best } from './trial';
import { inTurn } from './turns';

async function withoutOpening(number: number, { bench, apart }: FieldsGiven): Promise<string | null> {
  const text = bench.text.peek();
  const without = withoutTable(text, 'opening', number);
  const back = endsBack(number, bench.fields.peek());
  if (without === null || back.length === 0) return without;
  const tried = await apart((core) =>
    best(core, text, bench.file.peek(), () => back.map((changes) => ({ changes })),
      (changed) => withoutTable(changed, 'opening', number) ?? changed)).catch(() => []);
  return 'found' in tried ? tried.text : without;
}

/** Whether it could be: not where it does not stand in the text as a block. */
export async function removeOne(path: string, number: number, given: FieldsGiven): Promise<boolean> {
  const { bench } = given;
  const job = bench.jobs;
  for (;;) {
    const text = bench.text.peek();
    const next = path === 'opening'
      ? await bench.during(inTurn(() => withoutOpening(number, given))) : withoutTable(text, path, number);
    if (job !== bench.jobs) return true;
    if (next === null) return false;
    if (bench.text.peek() !== text) continue; // it was edited meanwhile
    bench.selected.value = [];
    bench.edit(next, 'remove');
    return true;
  }
}
