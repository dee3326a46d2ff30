// Files that the job on the bench may name: fonts of one's own, rule files.
import { signal } from '@preact/signals';
import type { Swathe } from 'swathe';
import type { Files } from './kept_files';

/** Whether a name is that of a font, as a job may have it. */
export function isFont(name: string): boolean {
  return /\.(ttf|otf|woff2)$/i.test(name);
}

export class GivenFiles {
  private own = new Map<string, Uint8Array>(); // the job's
  private older: Files = new Map(); // what it came with
  private page = new Map<string, Uint8Array>(); // all that was given since the page was opened
  private cores: Swathe[] = [];
  /** Counts up with each change. */
  readonly version = signal(0);

  /** The job's own; and what the page was given, where the job has none of that name. */
  get all(): Files {
    return new Map([...this.page, ...this.own]);
  }
  get names(): string[] {
    return [...this.all.keys()];
  }
  get ofJob(): Files {
    return this.own;
  }
  /** Of those what was given since it came to the bench, or since `mark`. */
  get newer(): Files {
    return new Map([...this.own].filter(([name, bytes]) => this.older.get(name) !== bytes));
  }
  mark(): void {
    this.older = new Map(this.own);
  }

  /** This core has them from now on, whichever job they are of. */
  serve(core: Swathe): Swathe {
    this.cores.push(core);
    return this.lend(core);
  }
  /** This core has those that there are now. */
  lend(core: Swathe): Swathe {
    for (const [name, bytes] of this.all) core.give(name, bytes).catch(() => {});
    return core;
  }

  /** A job on the bench has these, and those that came along with it, which the page has then, too. */
  use(files: Files, along: Files = new Map()): void {
    const own = new Map([...files, ...along]);
    const coming = this.change(() => {
      this.own = own;
      this.older = files;
      along.forEach((bytes, name) => this.page.set(name, bytes));
    });
    this.version.value += 1;
    for (const [name, given] of coming) {
      const bytes = own.get(name);
      // One that ends a core is missing, as if nobody had given it.
      given.catch(() => bytes && [this.page, own].forEach((all) => this.takeBack(all, name, bytes)));
    }
  }

  /**
   * A file for the job, or else only for the page. One that ends a core is not kept; nor is one that
   * turns out to be of no use: what is returned takes it back.
   */
  async give(name: string, bytes: Uint8Array, toJob = true): Promise<() => void> {
    const places = (toJob ? [this.page, this.own] : [this.page]).map((files) => ({ files, before: files.get(name) }));
    const takeBack = () => places.forEach(({ files, before }) => this.takeBack(files, name, bytes, before));
    try {
      await Promise.all(this.change(() => places.forEach(({ files }) => files.set(name, bytes))).values());
    } catch (error) {
      takeBack();
      throw error;
    } finally {
      this.version.value += 1;
    }
    return takeBack;
  }

  /** Unless another one took its place. */
  private takeBack(files: Map<string, Uint8Array>, name: string, bytes: Uint8Array, before?: Uint8Array) {
    if (files.get(name) !== bytes) return;
    const coming = this.change(() => (before ? files.set(name, before) : files.delete(name)));
    for (const given of coming.values()) given.catch(() => {});
    this.version.value += 1;
  }

  /** Gives the cores what is other after a step, and takes from them what is gone. */
  private change(step: () => void): Map<string, Promise<unknown>> {
    const before = this.all;
    step();
    const now = this.all;
    for (const name of before.keys())
      if (!now.has(name)) this.cores.forEach((core) => core.takeAway(name));
    return new Map([...now].filter(([name, bytes]) => before.get(name) !== bytes)
      .map(([name, bytes]) => [name, Promise.all(this.cores.map((core) => core.give(name, bytes)))]));
  }
}
