// Changes of a job tried in a core of their own, before one of them is made.
import type { Fault, KeyChange, Swathe } from 'swathe';
import { changed } from '../state/changed';

const kMostTries = 48;

/** What is used of the core's report. */
export interface Report {
  bumpers: {
    name: string;
    sides: string[];
    length_mm: number;
    brackets: { side: string; s_mm: number; width_mm: number; subject: string }[];
    numerals: { text: string; side: string; subject: string; from: number; whole: boolean }[];
  }[];
}

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

export interface Found<Kind> {
  found: Kind;
  /** The job with it. */
  text: string;
}

/** The first with which no more is wrong and no more rules are broken, else the first with which no
 * more is wrong; else what is wrong with the one with which the least is. `finish`: what else is done to
 * the text after its changes. */
export async function best<Kind extends Candidate>(core: Swathe, text: string, file: string,
  candidates: (report: Report | null) => Kind[], finish = (next: string) => next):
  Promise<Found<Kind> | readonly Fault[]> {
  const before = await tried(core, text, file);
  let second: Found<Kind> | null = null;
  let wrong: readonly Fault[] = [];
  for (const one of candidates(before.report).slice(0, kMostTries)) {
    const next = await changed(core, text, one.changes, file);
    const made = typeof next === 'string' ? { found: one, text: finish(next) } : null;
    const after = made ? await tried(core, made.text, file) : null;
    const faults = after?.faults ?? (next as readonly Fault[]);
    if (!made || !after || faults.length > before.faults.length) {
      if (wrong.length === 0 || faults.length < wrong.length) wrong = faults;
      continue;
    }
    if (after.report && one.fits && !one.fits(after.report)) continue;
    if (one.despiteRules || after.broken <= before.broken) return made;
    second ??= made;
  }
  return second ?? wrong;
}
