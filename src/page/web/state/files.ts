// Files that jobs name: fonts of one's own, rule files. They stay in this page.
import { signal } from '@preact/signals';
import type { Swathe } from 'swathe';

/** Whether a name is that of a font, as a job may have it. */
export function isFont(name: string): boolean {
  return /\.(ttf|otf|woff2)$/i.test(name);
}

export class GivenFiles {
  private bytes = new Map<string, Uint8Array>();
  private cores = new Set<Swathe>();
  /** Counts up with each file. */
  readonly version = signal(0);

  get names(): string[] {
    return [...this.bytes.keys()];
  }

  /** This core has all of them from now on. */
  serve(core: Swathe): Swathe {
    this.cores.add(core);
    for (const [name, bytes] of this.bytes) core.give(name, bytes).catch(() => {});
    return core;
  }
  leave(core: Swathe): void {
    this.cores.delete(core);
  }

  of(name: string): Uint8Array | undefined {
    return this.bytes.get(name);
  }

  /** One that turned out to be of no use. */
  drop(name: string): void {
    this.bytes.delete(name);
    this.version.value += 1;
  }

  /** One that ends a core is not kept. */
  async give(name: string, bytes: Uint8Array): Promise<void> {
    const before = this.bytes.get(name);
    this.bytes.set(name, bytes);
    try {
      await Promise.all([...this.cores].map((core) => core.give(name, bytes)));
    } catch (error) {
      if (before) this.bytes.set(name, before);
      else this.bytes.delete(name);
      throw error;
    } finally {
      this.version.value += 1;
    }
  }
}
