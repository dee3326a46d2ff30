// Files made for their own sake, beside the job that somebody goes on editing.
import { signal } from '@preact/signals';
import { Overtaken } from 'swathe';
import type { Swathe } from 'swathe';
import type { Back } from '../state/back';
import type { GivenFiles } from '../state/files';
import { late } from '../state/late';

export interface Making {
  /** What is made. */
  name: string;
  /** So many of its PDFs are there, of so many; of 0: it is not known yet. */
  done: number;
  of: number;
  stop: () => void;
}

export interface MakingOne {
  name: string;
  stop: () => void;
}

export class Maker {
  /** The way to print the pattern that was chosen. */
  readonly way = signal('');
  /** The archive that is being made just now. */
  readonly making = signal<Making | null>(null);
  /** The single file that is. */
  readonly one = signal<MakingOne | null>(null);
  /** That takes so long that it is to be seen. */
  readonly oneIsLate = late(() => this.one.value !== null);
  /** What came of the last one that was asked for, and of which job (`WorkBench.jobs`). */
  readonly told = signal<{ job: number; words: string }>({ job: 0, words: '' });

  /** `start`: another core of the same WebAssembly. */
  constructor(private readonly start: () => Swathe, private readonly files: GivenFiles) {}

  /** All files of a job in one archive, own fonts in it; nothing where it was stopped. */
  async zip(text: string, file: string, name: string): Promise<Uint8Array | null> {
    const stop = new AbortController();
    const given = this.files.names; // another job may be opened meanwhile
    this.making.value = { name, done: 0, of: 0, stop: () => stop.abort() };
    try {
      return await this.with(async (core) => {
        stop.signal.addEventListener('abort', () => core.close());
        const opened = await core.open(text, { file });
        if (!opened.ok) throw new Error(opened.faults.map((fault) => fault.sentence).join(' '));
        const named = await core.namedFiles(text);
        const stems = (await core.sheets()).map((sheet) => sheet.stem);
        this.come(0, stems.length);
        return core.zip({
          add: given.filter((one) => named.includes(one)),
          onFile: (made) => this.come(placeOf(made.name, stems) + 1, stems.length),
        });
      });
    } catch (error) {
      if (stop.signal.aborted) return null;
      throw error;
    } finally {
      this.making.value = null;
    }
  }

  /** One file, made by the core behind. */
  async file(back: Back, name: string): Promise<Uint8Array | 'stopped' | 'overtaken'> {
    let stopped = false;
    const mine: MakingOne = {
      name,
      stop: () => {
        stopped = true;
        back.again();
      },
    };
    this.one.value = mine;
    try {
      return await back.core.file(name);
    } catch (error) {
      if (error instanceof Overtaken) return stopped ? 'stopped' : 'overtaken';
      throw error;
    } finally {
      if (this.one.peek() === mine) this.one.value = null;
    }
  }

  private come(done: number, of: number): void {
    const now = this.making.peek();
    if (now) this.making.value = { ...now, done: Math.max(now.done, done), of };
  }

  /** A core of its own for what takes long, ended after it. */
  async with<T>(step: (core: Swathe) => Promise<T>): Promise<T> {
    const core = this.files.lend(this.start());
    try {
      return await step(core);
    } finally {
      core.close();
    }
  }
}

/** The sheet that a file is of, or -1: a drawing has its sheet's name, and a number of several. */
function placeOf(name: string, stems: readonly string[]): number {
  return stems.indexOf(name.replace(/(-\d+)?\.\w+$/, ''));
}
