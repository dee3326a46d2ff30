// While somebody types, what stands there is half a value most of the time, and they know: what is
// wrong with it is said when they pause, and what is right at once.
import { effect, signal } from '@preact/signals';
import type { ReadonlySignal } from '@preact/signals';

/** Who has typed nothing for so long has paused, in milliseconds. */
const kPause = 500;

export class Pause {
  readonly #typing = signal(false);
  #timer: ReturnType<typeof setTimeout> | undefined;
  readonly #waiting: (() => void)[] = [];

  /** Something was typed. */
  typed(): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.over(), kPause);
    this.#typing.value = true;
  }
  /** Who typed is done with it. */
  over(): void {
    clearTimeout(this.#timer);
    this.#typing.value = false;
    for (const step of this.#waiting.splice(0)) step();
  }

  /** At once where nobody types. */
  whenOver(step: () => void): void {
    if (this.#typing.peek()) this.#waiting.push(step);
    else step();
  }

  /** What is wrong, as it is told; `count` of 0: nothing is. `isBehind`: it is of something older than
   * what stands there. */
  told<Wrong>(wrong: ReadonlySignal<Wrong>, count: (wrong: Wrong) => number, isBehind = () => false): ReadonlySignal<Wrong> {
    const told = signal(wrong.peek());
    effect(() => {
      const now = wrong.value;
      const waits = isBehind() || this.#typing.value;
      if (!waits || count(now) === 0) told.value = now;
    });
    return told;
  }
}
