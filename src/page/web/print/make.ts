// Files made for their own sake, beside the job that somebody goes on editing.
import { signal } from '@preact/signals';
import type { Swathe } from 'swathe';
import type { GivenFiles } from '../state/files';

export interface Making {
  /** What is made. */
  name: string;
  done: number;
  stop: () => void;
}

export class Maker {
  /** What is being made just now. */
  readonly making = signal<Making | null>(null);

  /** `start`: another core of the same WebAssembly. */
  constructor(private readonly start: () => Swathe, private readonly files: GivenFiles) {}

  /** All files of a job in one archive, own fonts in it; nothing where it was stopped. */
  async zip(text: string, file: string, name: string): Promise<Uint8Array | null> {
    const stop = new AbortController();
    const given = this.files.names; // another job may be opened meanwhile
    this.making.value = { name, done: 0, stop: () => stop.abort() };
    try {
      return await this.with(async (core) => {
        stop.signal.addEventListener('abort', () => core.close());
        const opened = await core.open(text, { file });
        if (!opened.ok) throw new Error(opened.faults.map((fault) => fault.sentence).join(' '));
        const named = await core.namedFiles(text);
        return core.zip({
          add: given.filter((one) => named.includes(one)),
          onFile: () => {
            const now = this.making.value;
            if (now) this.making.value = { ...now, done: now.done + 1 };
          },
        });
      });
    } catch (error) {
      if (stop.signal.aborted) return null;
      throw error;
    } finally {
      this.making.value = null;
    }
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
