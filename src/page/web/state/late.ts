import { effect, signal } from '@preact/signals';
import type { ReadonlySignal } from '@preact/signals';

/** What lasts no longer is not worth showing, in milliseconds. */
const kLate = 300;

export interface Late extends ReadonlySignal<boolean> {
  stop(): void;
}

/** Whether something holds, and has held for a while. */
export function late(holds: () => boolean, after = kLate): Late {
  const told = signal(false);
  const stop = effect(() => {
    if (!holds()) {
      told.value = false;
      return;
    }
    const timer = setTimeout(() => (told.value = true), after);
    return () => clearTimeout(timer);
  });
  return Object.assign(told, { stop });
}
