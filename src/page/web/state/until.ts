import { effect } from '@preact/signals';

/** Resolves when something holds that signals tell; whether it did before so many milliseconds. */
export function until(holds: () => boolean, most: number): Promise<boolean> {
  return new Promise((resolve) => {
    let done = false;
    const end = (held: boolean) => {
      if (done) return;
      done = true;
      clearTimeout(late);
      queueMicrotask(() => stop()); // not within itself
      resolve(held);
    };
    const late = setTimeout(() => end(false), most);
    const stop = effect(() => {
      if (holds()) end(true);
    });
  });
}
