// The job on the bench is kept: a moment after each edit, and before it goes off the bench.
import type { ReadonlySignal } from '@preact/signals';
import type { JobFiles } from './job_files';
import type { KeptJob, KeptJobs } from './kept';
import type { WorkBench } from './make_bench';
import { newId } from './new_id';

/** How long after an edit it is kept, in milliseconds. */
const kPause = 400;

export class Keeper {
  private timer: ReturnType<typeof setTimeout> | undefined;
  private held: string | null = null; // what was kept last
  private known = ''; // the job's text as it was kept, by this tab or when it was opened

  /** `id`: of the job on the bench. `elsewhere`: another tab keeps it. */
  constructor(
    private readonly bench: WorkBench,
    private readonly kept: KeptJobs,
    private readonly files: JobFiles,
    private readonly id: ReadonlySignal<string | null>,
    private readonly elsewhere: ReadonlySignal<boolean>,
  ) {}

  soon(): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.keep(), kPause);
  }
  notAnyMore(): void {
    clearTimeout(this.timer);
  }

  /** A job comes to the bench, as it was kept or is to be. */
  begin(text: string): void {
    clearTimeout(this.timer);
    this.held = null;
    this.known = text;
  }
  /** Another tab keeps it from now on. */
  lose(): void {
    this.held = null;
  }
  /** This tab does, as it was kept; null: it was forgotten, and stays so until it is edited. */
  take(id: string, text: string | null, isEdited: boolean): void {
    if (text !== null) this.known = text;
    else if (!isEdited) this.held = this.now(id);
  }

  /** Whether its text is one that no tab kept. */
  isEdited(): boolean {
    return this.bench.text.peek() !== this.known;
  }

  /** What was edited here of a job that another tab keeps is kept beside that one. */
  keepAside(): void {
    if (this.elsewhere.peek() && this.isEdited()) this.keepAs(newId());
  }

  keep(): void {
    clearTimeout(this.timer);
    const id = this.id.peek();
    if (id === null || this.elsewhere.peek() || !this.bench.begun.peek()) return;
    const text = this.bench.text.peek(), now = this.now(id);
    if (now !== this.held) this.held = this.keepAs(id) ? now : null;
    if (this.held) this.known = text;
    const isMine = () => id !== this.id.peek() || !this.elsewhere.peek();
    if (this.held) this.files.keep(id, text, !this.bench.stale.peek(), isMine);
  }

  /** What another tab kept stays beside what is kept here from now on; not where it is as it was. */
  keepCopy(id: string, text: string): void {
    if (text === this.known) return;
    const copy = newId();
    this.kept.copy(id, copy);
    this.files.copy(id, copy);
  }

  /** What there is to keep of the job on the bench. */
  private now(id: string): string {
    const job = this.bench.opened.peek()?.job;
    return [id, this.bench.file.peek(), job?.title, job?.number, this.bench.text.peek()].join('\n');
  }

  /** The job on the bench; whether it could be kept. What is not worked out yet is listed as it was. */
  private keepAs(id: string): boolean {
    const listed = this.kept.jobs.peek().find((one) => one.id === this.id.peek());
    const known = this.bench.opened.peek()?.job ?? listed;
    const { title = '', number = '' } = known ?? {};
    const text = this.bench.text.peek();
    const job = { id, file: this.bench.file.peek(), title, number, saved: new Date().toISOString() };
    const isKept = this.kept.keep(job, text, this.bench.fields.peek());
    if (!known) void this.keepTitle(job, text);
    return isKept;
  }

  /** The title of a job that goes off the bench before it is worked out. */
  private async keepTitle(job: KeptJob, text: string): Promise<void> {
    const read = await this.bench.core.fields(text, { file: job.file }).catch(() => null);
    if (!read?.ok || this.kept.text(job.id) !== text) return;
    const given = (key: string) => read.value.find((one) => one.key === key && one.given)?.shown ?? '';
    this.kept.keep({ ...job, title: given('job.title'), number: given('job.number') }, text, read.value);
  }
}
