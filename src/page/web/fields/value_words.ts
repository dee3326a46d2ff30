// Words of a value that a job has in its own way: "unstated" is "not said".
import type { KeyForm } from 'swathe';
import { say } from '../words/en';

/** As it is shown. */
export function shownAs(value: string, { words }: KeyForm): string {
  return (words.includes(value) ? say.values[value] : undefined) ?? value;
}

/** Kinds in which many write a comma for the point: "27,5 in". After three digits it may be one of
 * thousands, and is not taken. */
const kPoint: ReadonlySet<string> = new Set(['length', 'number', 'angle']);

/** As the job has it. */
export function typedAs(typed: string, form: KeyForm): string {
  const same = (one: string) => shownAs(one, form).toLowerCase() === typed.trim().toLowerCase();
  const word = form.words.find(same);
  return word ?? (kPoint.has(form.kind) ? typed.replace(/^(\s*\d+),(\d{1,2})(?!\d)/, '$1.$2') : typed);
}
