import type { Fault, KeyChange, Swathe } from 'swathe';

/** A text with changes made one after the other, a value "" takes a key out; or what is wrong with the
 * first that cannot be made. */
export async function changed(core: Swathe, text: string, changes: readonly KeyChange[], file: string):
  Promise<string | readonly Fault[]> {
  let next = text;
  for (const { key, value } of changes) {
    const outcome = await (value === '' ? core.remove(next, key, { file }) : core.set(next, key, value, { file }));
    if (!outcome.ok) return outcome.faults;
    next = outcome.value.text;
  }
  return next;
}
