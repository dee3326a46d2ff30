// A field that is to be shown, wherever it is hidden: its key.
import { signal } from '@preact/signals';

export const openField = signal<string | null>(null);
