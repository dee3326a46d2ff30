// What stands half typed in fields, and what is wrong with it.
import { batch, signal } from '@preact/signals';
import type { ReadonlySignal, Signal } from '@preact/signals';
import type { Fault } from 'swathe';

export class HalfTyped {
  /** What is wrong with it, by the key of its field. */
  readonly faults: Signal<ReadonlyMap<string, readonly Fault[]>> = signal(new Map());
  readonly #ended = signal<(key: string) => boolean>(() => false);

  /** Whose fields were last told to show the job's own values again. */
  get ended(): ReadonlySignal<(key: string) => boolean> {
    return this.#ended;
  }

  has(key: string): boolean {
    return this.faults.peek().has(key);
  }
  /** What is wrong with what stands in this key's field; none: it is in the job. */
  say(key: string, faults: readonly Fault[]): void {
    if (faults.length === 0 && !this.has(key)) return;
    const next = new Map(this.faults.peek());
    if (faults.length > 0) next.set(key, faults);
    else next.delete(key);
    this.faults.value = next;
  }
  /** What stands in the fields of these keys counts no more, of all where none is named. */
  end(keys?: readonly string[]): void {
    const ends = (key: string) => !keys || keys.some((one) => one === key || one.startsWith(`${key}.`));
    batch(() => {
      this.#ended.value = ends;
      const left = [...this.faults.peek()].filter(([key]) => !ends(key));
      if (left.length < this.faults.peek().size) this.faults.value = new Map(left);
    });
  }
}
