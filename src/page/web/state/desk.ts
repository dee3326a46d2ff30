// Which job is on the bench, and where it is kept.
import { effect, signal } from '@preact/signals';
import type { Signal } from '@preact/signals';
import type { Field } from 'swathe';
import { KeptJobs } from './kept';
import type { WorkBench } from './make_bench';
import { newId } from './new_id';
import { Tabs } from './tabs';

/** How long after an edit it is kept, in milliseconds. */
const kPause = 400;

export class Desk {
  readonly kept = new KeptJobs();
  /** The kept job that is on the bench; null: none is. */
  readonly id: Signal<string | null> = signal(null);
  /** Another tab keeps this job: what is changed here is not kept. */
  readonly elsewhere = signal(false);
  /** The beginnings are shown. */
  readonly starting = signal(true);

  private readonly tabs = new Tabs(() => {
    this.elsewhere.value = true;
  });
  private timer: ReturnType<typeof setTimeout> | undefined;
  private held: string | null = null; // what was kept last
  private opening = 0; // counts up: of two that are opened the later comes to the bench

  constructor(readonly bench: WorkBench) {
    effect(() => {
      bench.text.value;
      bench.opened.value; // its title
      bench.file.value;
      if (!bench.begun.value || this.id.value === null || this.elsewhere.value) return;
      clearTimeout(this.timer);
      this.timer = setTimeout(() => this.keepNow(), kPause);
    });
    window.addEventListener('pagehide', () => this.keepNow());
    window.addEventListener('storage', () => this.kept.look());
  }

  /** A job from outside: it never takes the place of one that is kept. */
  openText(text: string, file: string): void {
    this.keepNow();
    const same = this.kept.jobs.peek().find((job) =>
      job.file === file && this.kept.text(job.id) === text);
    if (same) {
      void this.openKept(same.id);
      return;
    }
    this.put(newId(), text, file);
  }

  async openKept(id: string): Promise<void> {
    const mine = ++this.opening;
    const elsewhere = await this.tabs.elsewhere(id);
    if (mine !== this.opening) return;
    this.keepNow();
    const job = this.kept.jobs.peek().find((one) => one.id === id);
    const text = this.kept.text(id);
    if (!job || text === null) return;
    if (elsewhere) this.tabs.leave();
    this.put(id, text, job.file, this.kept.fields(id), elsewhere);
  }

  /** This tab keeps the job that another one has open; as that one kept it, unless it was edited. */
  takeOver(): void {
    const id = this.id.peek();
    if (id === null) return;
    const text = this.kept.text(id);
    this.elsewhere.value = false;
    this.tabs.take(id);
    if (text !== null && !this.bench.canUndo.peek() && text !== this.bench.text.peek())
      this.bench.begin(text, this.bench.file.peek());
  }

  /** Takes the job off the bench and out of what is kept. */
  forget(): void {
    const id = this.id.peek();
    if (id === null) return;
    this.keepNow();
    clearTimeout(this.timer);
    this.kept.forget(id);
    this.id.value = null;
    this.tabs.leave();
    this.starting.value = true;
  }

  /** Takes one of those that are listed out of what is kept. */
  forgetKept(id: string): void {
    if (id === this.id.peek()) this.forget();
    else {
      this.kept.forget(id);
      this.keepNow(); // there may be room for it now
    }
  }

  /** Shows the beginnings; the job stays kept. */
  start(): void {
    this.keepNow();
    this.starting.value = true;
  }

  private put(id: string, text: string, file: string, fields: readonly Field[] = [], elsewhere = false): void {
    ++this.opening;
    clearTimeout(this.timer);
    this.held = null;
    this.elsewhere.value = elsewhere;
    this.id.value = id;
    if (!elsewhere) this.tabs.take(id);
    this.bench.begin(text, file, fields);
    this.starting.value = false;
  }

  private keepNow(): void {
    clearTimeout(this.timer);
    const id = this.id.peek();
    if (id === null || this.elsewhere.peek() || !this.bench.begun.peek()) return;
    const text = this.bench.text.peek(), file = this.bench.file.peek();
    const job = this.bench.opened.peek()?.job;
    const now = [id, file, job?.title, job?.number, text].join('\n');
    if (now === this.held) return;
    const isKept = this.kept.keep(
      { id, file, title: job?.title ?? '', number: job?.number ?? '', saved: new Date().toISOString() },
      text, this.bench.fields.peek());
    this.held = isKept ? now : null;
  }
}
