// The files that a job names are kept with it, where the browser lets us; where it does not, the page
// is as it would be without.
import { signal } from '@preact/signals';
import type { Swathe } from 'swathe';
import type { GivenFiles } from './files';
import { KeptFiles } from './kept_files';
import type { Files } from './kept_files';

/** How long a job that is opened waits for its files, in milliseconds. */
const kPatience = 1500;
const kNone: Files = new Map();

export class JobFiles {
  /** Names of those that this browser would not keep. */
  readonly refused = signal<readonly string[]>([]);

  private readonly kept = new KeptFiles();
  private readonly forgotten = new Map<string, Promise<Files>>();
  private turn: Promise<unknown> = Promise.resolve();

  /** `isKept`: whether this browser has a job of that id. */
  constructor(
    private readonly core: Swathe,
    private readonly given: GivenFiles,
    private readonly isKept: (job: string) => boolean,
  ) {}

  /** What is left of jobs that are not kept any more: the page was closed too soon. */
  sweep(): void {
    this.kept.sweep(this.isKept).catch(() => {});
  }

  /** Those kept with a job. Where the browser takes long there are none, and `late` is told of them. */
  async of(job: string, late: (files: Files) => void): Promise<Files> {
    const coming = this.next(async () => {
      const taken = await (this.forgotten.get(job) ?? kNone);
      return new Map([...taken, ...await this.kept.get(job).catch(() => kNone)]);
    });
    const patience = new Promise<null>((done) => setTimeout(() => done(null), kPatience));
    const files = await Promise.race([coming, patience]);
    if (!files) void coming.then(late);
    return files ?? kNone;
  }

  /**
   * Keeps those that a job names. `whole`: its text is whole, and others that were kept with it are
   * not. `isMine`: still this tab's to keep.
   */
  keep(job: string, text: string, whole: boolean, isMine: () => boolean): void {
    const held = this.given.all;
    if (held.size === 0) return;
    void this.next(async () => {
      const named = await this.core.namedFiles(text).catch(() => null);
      if (!named || !isMine() || !this.isKept(job)) return;
      const files = new Map([...held].filter(([name]) => named.includes(name)));
      const kept = this.kept.put(job, files, (name) => whole && !named.includes(name));
      this.refused.value = await kept.then(() => [], () => [...files.keys()]);
    });
  }

  /** They are no longer kept; until the page is closed they may be taken back, with `more`. */
  forget(job: string, more: Files = kNone): void {
    const found = this.kept.delete(job).catch(() => kNone);
    this.forgotten.set(job, found.then((files) => new Map([...files, ...more])));
  }
  /** They are kept again, by the id that the job has then; where this browser does not, they stay here. */
  remember(job: string, as: string): void {
    const files = this.forgotten.get(job) ?? Promise.resolve(kNone);
    this.forgotten.delete(job);
    this.forgotten.set(as, files);
    void this.next(async () => {
      const found = await files;
      if (!this.isKept(as)) return;
      await this.kept.put(as, found, () => false).then(() => this.forgotten.delete(as), () => {});
    });
  }
  /** Another job has the same. */
  copy(job: string, as: string): void {
    void this.next(async () => this.kept.put(as, await this.kept.get(job), () => false)).catch(() => {});
  }

  /** One after the other. */
  private next<T>(step: () => Promise<T>): Promise<T> {
    const mine = this.turn.then(step);
    this.turn = mine.catch(() => {});
    return mine;
  }
}
