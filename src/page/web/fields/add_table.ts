// One more of a table, where the job is as good with it as before: a core of its own tries them.
import type { Fault } from 'swathe';
import { say } from '../words/en';
import { inLabels } from '../words/labels';
import type { FieldsGiven } from './context';
import { additions } from './new_table';
import { best } from './trial';
import { inTurn } from './turns';

type Added = { number: number } | { why: string };

async function add(path: string, { bench, words, apart }: FieldsGiven): Promise<Added> {
  const job = bench.jobs, text = bench.text.peek(), file = bench.file.peek();
  const said = (faults: readonly Fault[]) =>
    faults.slice(0, 1).map((fault) => inLabels(fault.sentence, words, fault.key)).join(' ');
  const tried = await apart(async (core) => {
    // What is shown may be of the text before.
    const read = await core.fields(text, { file });
    const fields = read.ok ? read.value : bench.fields.peek();
    return best(core, text, file, (report) => additions(path, fields, report));
  });
  if (!('found' in tried)) return { why: say.job.noRoom(say.one[path] ?? path, said(tried)) };
  if (job !== bench.jobs) return { why: '' };
  const faults = await bench.set(tried.found.changes);
  return faults.length > 0 ? { why: said(faults) } : { number: tried.found.number };
}

/** Adds one in one step, after those that were asked for before; the number of it, or why there can be
 * none. */
export async function addTable(path: string, given: FieldsGiven): Promise<Added> {
  const { bench } = given;
  const job = bench.jobs;
  const added = inTurn(async () => (job === bench.jobs ? add(path, given) : { why: '' }));
  return bench.during(added).catch(() => ({ why: say.job.notAdded }));
}
