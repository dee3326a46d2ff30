// Something taken hold of and moved along its side, by pointer or by key. The job follows by one
// request at a time; until it has, the figure and the handle go ahead of it.
import { effect, signal } from '@preact/signals';
import type { Bench } from '../state/bench';
import type { Handle } from './adopt';
import { snapped, within, type Units } from './lengths';

/** Of each bench what is under way: a move begins when the one before it has ended. */
const underWay = new WeakMap<Bench, Promise<void>>();

interface Step {
  mm: number;
  snap: boolean;
}

export class Move {
  readonly handle: Handle;
  /** Where it is now, from its corner. */
  readonly mm;
  #bench: Bench;
  #units: Units;
  #settled: () => Promise<void>;
  #next: Step | null = null; // the newest that is not sent yet
  #last: Step | null = null; // the newest of all
  #good: number | null = null; // the last place where the job could be made
  #running = false;

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
    this.#last = this.#next = { mm: there, snap };
    if (this.#running) return;
    this.#running = true;
    void this.#inTurn(() => this.#run());
  }

  /** Leaves it where it is, or, where it cannot be there, at the last place where it could. */
  drop(): Promise<void> {
    return this.#inTurn(async () => {
      if (!this.#last) return;
      if (this.#hasFaults && this.#good === null) return this.#undo();
      if (this.#hasFaults && this.#good !== null) this.mm.value = this.#good;
      await this.#send({ ...this.#last, mm: this.mm.peek() }, 'drop');
    });
  }

  takeBack(): Promise<void> {
    this.#next = null;
    this.mm.value = this.handle.mm;
    return this.#inTurn(async () => {
      if (this.#last) await this.#undo();
    });
  }

  #inTurn(work: () => Promise<void>): Promise<void> {
    const done = (underWay.get(this.#bench) ?? Promise.resolve()).then(work);
    underWay.set(this.#bench, done);
    return done;
  }

  async #run(): Promise<void> {
    while (this.#next) {
      const step = this.#next;
      this.#next = null;
      await this.#send(step, 'drag');
    }
    this.#running = false;
  }

  async #send({ mm, snap }: Step, stage: 'drag' | 'drop'): Promise<void> {
    const { subject } = this.handle;
    // What is wrong stands at the job's faults.
    await workedOut(this.#bench, () => this.#bench.drag(subject, mm, stage, snap).catch(() => {}));
    if (!this.#hasFaults) this.#good = mm;
    await this.#settled();
  }

  async #undo(): Promise<void> {
    this.mm.value = this.handle.mm;
    await workedOut(this.#bench, async () => this.#bench.takeBack());
  }

  get #hasFaults(): boolean {
    return this.#bench.faults.peek().length > 0;
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
