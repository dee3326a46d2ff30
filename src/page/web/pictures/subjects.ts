// Parts of the model by their names, as marks, findings and fields carry them, and which of them
// are lit or at fault.
import type { Finding } from 'swathe';
import type { Marks } from './adopt';

/** What stands for all parts of a kind, and how the names of these go. */
const kAll: Record<string, RegExp> = {
  bumpers: /^bumper\.[^.]+$/,
  boards: /^bumper\.[^.]+\.board\./,
  padding: /^bumper\.[^.]+\.padding\./,
  numerals: /^numeral\./,
};

/** Whether what is said of one part is said of another: of all of a bumper, or of all boards. */
function covers(whole: string, part: string): boolean {
  return whole === part || part.startsWith(`${whole}.`) || (kAll[whole]?.test(part) ?? false);
}

/** A cut-through shows what is alike in all: its boards are each single one. */
function stands(lit: string, shown: string): boolean {
  return covers(lit, shown) || (kAll[shown]?.test(lit) ?? false);
}

/** What of a mark's elements is lit: none, all, or, of a cover as a whole, its cloth alone. */
export type Light = '' | 'all' | 'cloth';

export function lightOf(marks: Marks, lit: readonly string[], kind: string): Light {
  if (kind === 'cut-through') return any(marks, lit, stands) ? 'all' : '';
  if (kind !== 'cover') return any(marks, lit, covers) ? 'all' : '';
  const isWhole = (one: string) => one === 'bumpers' || (kAll.bumpers?.test(one) ?? false);
  if (any(marks, lit.filter((one) => !isWhole(one)), covers)) return 'all';
  const isShown = (one: string, shown: string) => one === shown || (kAll[one]?.test(shown) ?? false);
  return any(marks, lit.filter(isWhole), isShown) ? 'cloth' : '';
}

function any(marks: Marks, lit: readonly string[], light: typeof covers): boolean {
  return marks.subjects.some((shown) => lit.some((one) => light(one, shown)));
}

/** Parts of which a rule is not met, each with what the rule asks. */
export function faultsOf(findings: readonly Finding[]): Map<string, string> {
  const faults = new Map<string, string>();
  for (const finding of findings)
    if (finding.verdict === 'fail')
      for (const subject of finding.subjects)
        if (!faults.has(subject))
          faults.set(subject, `${finding.subject}: ${finding.required}, ${finding.measured}`);
  return faults;
}

/** The names in a subject: "A" and "left" of "bumper.A.board.left". */
export function namesIn(subject: string): string[] {
  return subject.split('.').map((name) => decodeName(name));
}

function decodeName(name: string): string {
  try {
    return decodeURIComponent(name);
  } catch {
    return name;
  }
}
