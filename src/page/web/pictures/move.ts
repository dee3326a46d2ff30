// Something taken hold of and moved along its side, by pointer or by key. The job follows by one
// request at a time; until it has, the figure and the handle go ahead of it.
import { effect, signal } from '@preact/signals';
import type { Bench } from '../state/bench';
import type { Handle } from './adopt';
import { snapped, within, type Units } from './lengths';

interface Step {
  mm: number;
  snap: boolean;
  stage: 'drag' | 'drop';
}

/** Of each bench the moves still under way: one ends before the next one's requests. */
const underWay = new WeakMap<Bench, Promise<void>>();

export class Move {
  readonly handle: Handle;
  /** Where it is now, from its corner. */
  readonly mm;
  #bench: Bench;
  #units: Units;
  #settled: () => Promise<void>;
  #next: Step | null = null;
  #running: Promise<void> | null = null;
  #last: Step | null = null;
  #good: number | null = null; // the last place where the job could be made

  /** `settled` resolves when the picture shows what the job says. */
  constructor(bench: Bench, handle: Handle, units: Units, settled: () => Promise<void>) {
    this.handle = handle;
    this.mm = signal(handle.mm);
    this.#bench = bench;
    this.#units = units;
    this.#settled = settled;
  }

  /** Millimeters from its corner. */
  to(mm: number, snap: boolean): void {
    const { least, most } = this.handle;
    const there = snap ? snapped(mm, this.#units, least, most) : within(mm, least, most);
    if (this.#last?.mm === there && this.#last.snap === snap) return;
    if (!this.#last && there === this.handle.mm) return;
    this.mm.value = there;
    this.#want({ mm: there, snap, stage: 'drag' });
  }

  /** Leaves it where it is, or, where it cannot be there, at the last place where it could. */
  async drop(): Promise<void> {
    if (!this.#last) return;
    await this.#running;
    if (this.#bench.faults.peek().length > 0) {
      if (this.#good === null) return this.takeBack();
      this.mm.value = this.#good;
    }
    this.#want({ ...this.#last, mm: this.mm.peek(), stage: 'drop' });
    await this.#running;
  }

  async takeBack(): Promise<void> {
    if (!this.#last) return;
    this.#next = null;
    await this.#running;
    await workedOut(this.#bench, async () => this.#bench.takeBack());
  }

  #want(step: Step): void {
    this.#last = step;
    this.#next = step;
    if (this.#running) return;
    const before = underWay.get(this.#bench) ?? Promise.resolve();
    this.#running = before.then(() => this.#run());
    underWay.set(this.#bench, this.#running);
  }

  async #run(): Promise<void> {
    while (this.#next) {
      const { mm, stage, snap } = this.#next;
      this.#next = null;
      await workedOut(this.#bench, () => this.#bench.drag(this.handle.subject, mm, stage, snap));
      if (this.#bench.faults.peek().length === 0) this.#good = mm;
      await this.#settled();
    }
    this.#running = null;
  }
}

/** Waits until a change of the job's text has been worked out, or was found at fault. */
async function workedOut(bench: Bench, change: () => Promise<void>): Promise<void> {
  const kLongest = 400; // ms: the pointer goes on
  const text = bench.text.peek();
  const opened = bench.opened.peek();
  const faults = bench.faults.peek();
  await change();
  if (bench.text.peek() === text) return;
  await new Promise<void>((done) => {
    let end = () => {};
    const late = setTimeout(() => end(), kLongest);
    const stop = effect(() => {
      if (bench.opened.value !== opened || bench.faults.value !== faults) queueMicrotask(() => end());
    });
    end = () => {
      clearTimeout(late);
      stop();
      done();
    };
  });
}
