// Which job is on the bench, and where it is kept.
import { batch, effect, signal } from '@preact/signals';
import type { Signal } from '@preact/signals';
import type { Field } from 'swathe';
import type { GivenFiles } from './files';
import { JobFiles } from './job_files';
import { Keeper } from './keeper';
import { KeptJobs } from './kept';
import type { Files } from './kept_files';
import type { WorkBench } from './make_bench';
import { newId } from './new_id';
import { Tabs } from './tabs';

export class Desk {
  readonly kept = new KeptJobs();
  readonly files: JobFiles;
  /** The kept job that is on the bench; null: none is. */
  readonly id: Signal<string | null> = signal(null);
  /** Another tab keeps this job: what is changed here is not kept. */
  readonly elsewhere = signal(false);
  /** The beginnings are shown. */
  readonly starting = signal(true);

  private readonly tabs = new Tabs(() => this.lose(), () => void this.keepHere(true));
  private readonly keeper: Keeper;
  private opening = 0; // counts up: of two that are opened the later comes to the bench

  constructor(readonly bench: WorkBench, private readonly given: GivenFiles) {
    this.files = new JobFiles(bench.core, given, (id) => this.kept.has(id));
    this.keeper = new Keeper(bench, this.kept, this.files, this.id, this.elsewhere);
    if (this.kept.state.peek() !== 'refused') this.files.sweep();
    effect(() => {
      given.version.value;
      bench.text.value;
      bench.opened.value; // its title
      bench.file.value;
      if (!bench.begun.value || this.id.value === null || this.elsewhere.value) return;
      this.keeper.soon();
    });
    window.addEventListener('pagehide', () => {
      this.keeper.keep();
      this.tabs.leave();
    });
    window.addEventListener('pageshow', (event) => {
      if (event.persisted) this.comeBack();
    });
    window.addEventListener('storage', () => this.kept.look());
  }

  /** A job from outside, with files of its own: it never takes the place of one that is kept. */
  openText(text: string, file: string, along: Files = new Map()): void {
    this.keeper.keep();
    const same = this.kept.jobs.peek().find((job) =>
      job.file === file && this.kept.text(job.id) === text);
    if (same) void this.openKept(same.id, along);
    else this.put(newId(), text, file, { along });
  }

  async openKept(id: string, along: Files = new Map()): Promise<void> {
    const mine = ++this.opening;
    this.keeper.keep(); // it may be this one
    const [elsewhere, own] = await Promise.all([this.tabs.elsewhere(id), this.ownOf(id)]);
    if (mine !== this.opening) return;
    this.keeper.keep();
    const job = this.kept.jobs.peek().find((one) => one.id === id);
    const text = this.kept.text(id);
    if (!job || text === null) return;
    this.put(id, text, job.file, { own, along, fields: this.kept.fields(id), elsewhere });
  }

  /** This tab keeps the job that another one has open. */
  takeOver(): Promise<void> {
    return this.keepHere(false);
  }

  /** As another tab kept it, unless it was edited here. `free`: that one let it go, and nobody is there
   * to keep what it kept otherwise. */
  private async keepHere(free: boolean): Promise<void> {
    const id = this.id.peek();
    if (id === null) return;
    const own = await this.ownOf(id);
    if (id !== this.id.peek() || !this.elsewhere.peek()) return;
    const text = this.kept.text(id), edited = this.keeper.isEdited();
    if (free && edited && text !== null) this.keeper.keepCopy(id, text);
    this.tabs.take(id);
    batch(() => {
      this.elsewhere.value = false;
      this.given.use(new Map([...this.given.ofJob, ...own, ...this.given.newer]));
      if (text !== null && !edited && text !== this.bench.text.peek())
        this.bench.begin(text, this.bench.file.peek());
    });
    this.keeper.take(id, text, edited);
  }

  private lose(): void {
    if (this.elsewhere.peek()) return;
    this.elsewhere.value = true;
    this.keeper.lose();
    this.given.mark();
  }

  /** The page is shown again as it was when it was left; another tab may have taken its job. */
  private comeBack(): void {
    this.kept.look();
    const id = this.id.peek();
    if (id === null) return;
    this.lose();
    this.tabs.waitFor(id);
  }

  /** Takes the job off the bench and out of what is kept. */
  forget(): void {
    const id = this.id.peek();
    if (id === null) return;
    this.keeper.keep();
    this.keeper.notAnyMore();
    this.kept.forget(id);
    this.files.forget(id, this.given.ofJob);
    this.id.value = null;
    this.elsewhere.value = false;
    this.tabs.leave();
    this.starting.value = true;
  }

  /** Takes one of those that are listed out of what is kept. */
  forgetKept(id: string): void {
    if (id === this.id.peek()) this.forget();
    else {
      this.kept.forget(id);
      this.files.forget(id);
      this.keeper.keep(); // there may be room for it now
    }
  }
  /** Takes it back that one was forgotten. */
  remember(id: string): void {
    const as = this.kept.remember(id);
    this.files.remember(id, as);
  }

  /** Shows the beginnings; the job stays kept. */
  start(): void {
    this.keeper.keep();
    this.starting.value = true;
  }

  /** The files that were kept with a job. */
  private ownOf(id: string): Promise<Files> {
    return this.files.of(id, (late) => {
      if (id === this.id.peek()) this.given.use(new Map([...late, ...this.given.ofJob]));
    });
  }

  private put(
    id: string, text: string, file: string,
    { own = new Map(), along, fields = [], elsewhere = false }: {
      own?: Files; along: Files; fields?: readonly Field[]; elsewhere?: boolean;
    },
  ): void {
    ++this.opening;
    this.keeper.keepAside();
    this.keeper.begin(text);
    this.elsewhere.value = elsewhere;
    this.id.value = id;
    if (elsewhere) this.tabs.waitFor(id);
    else this.tabs.take(id);
    this.files.refused.value = [];
    batch(() => {
      this.given.use(own, along); // before its text is worked out
      this.bench.begin(text, file, fields);
    });
    this.starting.value = false;
  }
}
