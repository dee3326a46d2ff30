// A second core behind the first: what may take its time, so that no picture waits for it. It has
// the job open a moment after the last edit.
import { effect, signal } from '@preact/signals';
import type { ReadonlySignal } from '@preact/signals';
import { Overtaken } from 'swathe';
import type { Swathe } from 'swathe';
import type { WorkBench } from './make_bench';
import { why } from './why';

/** How long nobody edits before it begins, in milliseconds. */
const kPause = 350;

export interface Back {
  readonly core: Swathe;
  /** The version of the job that it has open; 0: none. */
  readonly version: ReadonlySignal<number>;
  /** Opens that job once more: what it was asked before comes to nothing. */
  again(): void;
}

export function workBehind(bench: WorkBench, core: Swathe): Back {
  const version = signal(0);

  async function follow(of: number): Promise<void> {
    try {
      const outcome = await core.open(bench.text.peek(), { file: bench.file.peek() });
      if (!outcome.ok || bench.opened.peek()?.version !== of) return;
      version.value = of;
      bench.advised(of, (await core.findings()).findings);
    } catch (error) {
      if (error instanceof Overtaken) return;
      version.value = 0;
      if (bench.opened.peek()?.version === of) bench.trouble.value = why(error);
    }
  }

  effect(() => {
    const of = bench.opened.value?.version;
    const still = !bench.dragging.value && !bench.stale.value;
    if (of === undefined) version.value = 0; // another job
    if (of === undefined || !still) return;
    const timer = setTimeout(() => void follow(of), kPause);
    return () => clearTimeout(timer);
  });

  return {
    core,
    version,
    again() {
      const of = version.peek();
      version.value = 0;
      if (of > 0) void follow(of);
    },
  };
}
