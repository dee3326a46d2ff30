// Words of a value that a job has in its own way: "unstated" is "not said".
import type { KeyForm } from 'swathe';
import { say } from '../words/en';

/** As it is shown. */
export function shownAs(value: string, { words }: KeyForm): string {
  return (words.includes(value) ? say.values[value] : undefined) ?? value;
}

/** As the job has it. */
export function typedAs(typed: string, form: KeyForm): string {
  const same = (one: string) => shownAs(one, form).toLowerCase() === typed.trim().toLowerCase();
  return form.words.find(same) ?? typed;
}
