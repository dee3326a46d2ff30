// What one part of the page wants another to show.
import { signal } from '@preact/signals';

/** A place in the text. */
export const goTo = signal<{ line: number; column: number } | null>(null);

/** A field, wherever it is hidden: its key. */
export const openField = signal<string | null>(null);

let ledTo: string | null = null;

/** Leads to a field. What is selected stays so when it has the keyboard. */
export function leadTo(key: string): void {
  ledTo = key;
  openField.value = key;
}

/** Whether whoever comes to this field was led there; asked each time that one comes to a field. */
export function wasLedTo(key: string): boolean {
  const was = ledTo === key;
  ledTo = null;
  return was;
}
