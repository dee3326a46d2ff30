// The keys that light up: those of the subjects that are pointed at or selected.
import { effect, signal } from '@preact/signals';
import type { ReadonlySignal } from '@preact/signals';
import type { Bench } from '../state/bench';

export interface LitKeys {
  pointed: ReadonlySignal<ReadonlySet<string>>;
  selected: ReadonlySignal<ReadonlySet<string>>;
}

/** Where what is pointed at changes fast, the keys of the last one alone are asked for. */
export function litKeys(bench: Bench): LitKeys {
  const known = new Map<string, readonly string[]>();
  let knownOf = '';

  async function keysOf(subject: string): Promise<readonly string[]> {
    const text = bench.text.peek();
    if (text !== knownOf) {
      known.clear();
      knownOf = text;
    }
    const before = known.get(subject);
    if (before) return before;
    const keys = (await bench.keysOf(subject)).map((place) => place.key);
    if (text === knownOf) known.set(subject, keys);
    return keys;
  }

  function follow(subjects: ReadonlySignal<readonly string[]>) {
    const lit = signal<ReadonlySet<string>>(new Set());
    effect(() => {
      const wanted = subjects.value;
      let newest = true;
      if (wanted.length === 0) {
        if (lit.peek().size > 0) lit.value = new Set();
        return;
      }
      void Promise.all(wanted.map(keysOf)).then((keys) => {
        if (newest) lit.value = new Set(keys.flat());
      }, () => {});
      return () => {
        newest = false;
      };
    });
    return lit;
  }

  return { pointed: follow(bench.pointed), selected: follow(bench.selected) };
}
