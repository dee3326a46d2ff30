// Parts of the model by their names, as marks, findings and fields carry them, and which marks light
// up with which part.
import type { Marks } from './adopt';

/** What stands for all parts of a kind, and how the names of these go. */
const kAll: Record<string, RegExp> = {
  bumpers: /^bumper\.[^.]+$/,
  boards: /^bumper\.[^.]+\.board\./,
  padding: /^bumper\.[^.]+\.padding\./,
  numerals: /^numeral\./,
  cloth: /^cloth\./,
};

function isOne(kind: string, part: string): boolean {
  return kAll[kind]?.test(part) ?? false;
}

/** Whether what is said of one part is said of another: of all of a bumper, or of all boards. No
 * mark shows a digit or a corner of the frame alone: the numerals do, and bumpers at that corner. */
export function covers(whole: string, part: string): boolean {
  if (whole === part || part.startsWith(`${whole}.`) || isOne(whole, part)) return true;
  if (whole.startsWith('digit.')) return isOne('numerals', part);
  return whole.startsWith('corner.') && part.startsWith('bumper.') && part.endsWith(`.${whole}`);
}

/** A cut-through shows what is alike in all: its boards are each single one. */
function stands(lit: string, shown: string): boolean {
  return covers(lit, shown) || isOne(shown, lit);
}

/** What all of a cover's cloth shows. */
function isCloth(one: string): boolean {
  return one === 'cloth' || isOne('cloth', one);
}
function isWholeCover(one: string): boolean {
  return one === 'bumpers' || isOne('bumpers', one) || isCloth(one);
}
/** Of what is said of whole covers: whether it is said of the bumper that is shown. */
function clothes(one: string, shown: string): boolean {
  return one === shown || (!isOne('bumpers', one) && isOne('bumpers', shown));
}
/** A bumper that is seen from afar shows its cloth. */
function isSeen(lit: string, shown: string): boolean {
  return covers(lit, shown) || (isCloth(lit) && isOne('bumpers', shown));
}

/** What of a mark's elements is lit: none, all, or, of a cover as a whole, its cloth alone. */
export type Light = '' | 'all' | 'cloth';

export function lightOf(marks: Marks, lit: readonly string[], kind: string): Light {
  const any = (parts: readonly string[], light: typeof covers) =>
    marks.subjects.some((shown) => parts.some((one) => light(one, shown)));
  if (kind === 'cut-through') return any(lit, stands) ? 'all' : '';
  if (kind === 'view') return any(lit, isSeen) ? 'all' : '';
  if (kind !== 'cover') return any(lit, covers) ? 'all' : '';
  if (any(lit.filter((one) => !isWholeCover(one)), covers)) return 'all';
  return any(lit.filter(isWholeCover), clothes) ? 'cloth' : '';
}

/** Which of a mark's elements that are. */
export function litOf({ elements }: Marks, light: Light): SVGElement[] {
  if (light === '') return [];
  return light === 'all' ? elements : elements.filter((one) => one.closest('.cloth') !== null);
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
