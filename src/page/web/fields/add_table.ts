// One more of a table, where the job is as good with it as before: a core of its own tries them.
import type { Fault, KeyChange, Swathe } from 'swathe';
import { say } from '../words/en';
import { inLabels } from '../words/labels';
import type { Addition, Report } from './addition';
import type { FieldsGiven } from './context';
import { additions } from './new_table';

const kMostTries = 48;

interface Tried {
  text: string;
  faults: readonly Fault[];
  /** Rules that are not met. */
  broken: number;
  report: Report | null;
}

async function tried(core: Swathe, text: string, file: string): Promise<Tried> {
  const outcome = await core.open(text, { file, advice: false });
  if (!outcome.ok) return { text, faults: outcome.faults, broken: 0, report: null };
  const { findings } = await core.findings();
  const report = JSON.parse(new TextDecoder().decode(await core.report())) as Report;
  return { text, faults: [], broken: findings.filter((one) => one.verdict === 'fail').length, report };
}

async function withChanges(core: Swathe, text: string, changes: readonly KeyChange[], file: string):
  Promise<string | readonly Fault[]> {
  let next = text;
  for (const { key, value } of changes) {
    const outcome = await (value === '' ? core.remove(next, key, { file }) : core.set(next, key, value, { file }));
    if (!outcome.ok) return outcome.faults;
    next = outcome.value.text;
  }
  return next;
}

/** The first with which no more is wrong and no more rules are broken, else the first with which no
 * more is wrong; else what is wrong with the one with which the least is. */
async function best(core: Swathe, text: string, file: string, candidates: (report: Report | null) => Addition[]):
  Promise<Addition | readonly Fault[]> {
  const before = await tried(core, text, file);
  let second: Addition | null = null;
  let wrong: readonly Fault[] = [];
  for (const one of candidates(before.report).slice(0, kMostTries)) {
    const next = await withChanges(core, text, one.changes, file);
    const after = typeof next === 'string' ? await tried(core, next, file) : null;
    const faults = after?.faults ?? (next as readonly Fault[]);
    if (!after || faults.length > before.faults.length) {
      if (wrong.length === 0 || faults.length < wrong.length) wrong = faults;
      continue;
    }
    if (after.report && one.fits && !one.fits(after.report)) continue;
    if (after.broken <= before.broken) return one;
    second ??= one;
  }
  return second ?? wrong;
}

/** Adds one in one step; the number of it, or why there can be none. */
export async function addTable(path: string, { bench, words, apart }: FieldsGiven):
  Promise<{ number: number } | { why: string }> {
  const job = bench.jobs, fields = bench.fields.peek();
  const said = (faults: readonly Fault[]) =>
    faults.slice(0, 1).map((fault) => inLabels(fault.sentence, words, fault.key)).join(' ');
  try {
    const found = await bench.during(apart((core) =>
      best(core, bench.text.peek(), bench.file.peek(), (report) => additions(path, fields, report))));
    if (!('changes' in found)) return { why: say.job.noRoom(say.one[path] ?? path, said(found)) };
    if (job !== bench.jobs) return { why: '' };
    const faults = await bench.set(found.changes);
    return faults.length > 0 ? { why: said(faults) } : { number: found.number };
  } catch {
    return { why: say.job.notAdded };
  }
}
