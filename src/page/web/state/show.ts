// What one part of the page wants another to show.
import { signal } from '@preact/signals';

/** A place in the text. */
export const goTo = signal<{ line: number; column: number } | null>(null);

/** A field, wherever it is hidden: its key. */
export const openField = signal<string | null>(null);
