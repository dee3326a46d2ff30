// Changes of a job tried in a core of their own, before one of them is made.
import type { Fault, KeyChange, Swathe } from 'swathe';
import type { Report } from './addition';

const kMostTries = 48;

export interface Candidate {
  changes: KeyChange[];
  /** Whether it is clear of others, which the core does not ask. */
  fits?: (report: Report) => boolean;
  /** It is taken wherever it can be made, even where a rule is broken by it. */
  despiteRules?: boolean;
}

interface Tried {
  faults: readonly Fault[];
  /** Rules that are not met. */
  broken: number;
  report: Report | null;
}

async function tried(core: Swathe, text: string, file: string): Promise<Tried> {
  const outcome = await core.open(text, { file, advice: false });
  if (!outcome.ok) return { faults: outcome.faults, broken: 0, report: null };
  const { findings } = await core.findings();
  const report = JSON.parse(new TextDecoder().decode(await core.report())) as Report;
  return { faults: [], broken: findings.filter((one) => one.verdict === 'fail').length, report };
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

export interface Found<Kind> {
  found: Kind;
  /** The job with it. */
  text: string;
}

/** The first with which no more is wrong and no more rules are broken, else the first with which no
 * more is wrong; else what is wrong with the one with which the least is. `finish`: what else is done to
 * the text after its changes. */
export async function best<Kind extends Candidate>(core: Swathe, text: string, file: string,
  candidates: (report: Report | null) => Kind[], finish = (changed: string) => changed):
  Promise<Found<Kind> | readonly Fault[]> {
  const before = await tried(core, text, file);
  let second: Found<Kind> | null = null;
  let wrong: readonly Fault[] = [];
  for (const one of candidates(before.report).slice(0, kMostTries)) {
    const next = await withChanges(core, text, one.changes, file);
    const changed = typeof next === 'string' ? { found: one, text: finish(next) } : null;
    const after = changed ? await tried(core, changed.text, file) : null;
    const faults = after?.faults ?? (next as readonly Fault[]);
    if (!changed || !after || faults.length > before.faults.length) {
      if (wrong.length === 0 || faults.length < wrong.length) wrong = faults;
      continue;
    }
    if (after.report && one.fits && !one.fits(after.report)) continue;
    if (one.despiteRules || after.broken <= before.broken) return changed;
    second ??= changed;
  }
  return second ?? wrong;
}
