// What somebody types into a field, on its way into the job.
import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Fault } from 'swathe';
import type { WorkBench } from '../state/make_bench';
import { why } from '../state/why';

export function clearHalfTyped(bench: WorkBench, key: string): void {
  if (!bench.halfTyped.peek().has(key)) return;
  const rest = new Map(bench.halfTyped.peek());
  rest.delete(key);
  bench.halfTyped.value = rest;
}

const shown = new Set<string>(); // keys whose fields are there

/** What is wrong with what stands half typed in this key's field. It is gone with the field: nobody
 * could see what it is. */
export function useHalfTyped(bench: WorkBench, key: string): readonly Fault[] | undefined {
  useEffect(() => {
    shown.add(key);
    return () => {
      shown.delete(key);
      clearHalfTyped(bench, key);
    };
  }, [key]);
  return bench.halfTyped.value.get(key);
}

function sayAt(bench: WorkBench, key: string, faults: readonly Fault[]): void {
  if (faults.length === 0 || !shown.has(key)) clearHalfTyped(bench, key);
  else bench.halfTyped.value = new Map(bench.halfTyped.peek()).set(key, faults);
}

interface Read {
  value: string;
  reads: string;
}

/**
 * Reads what was typed for a key and puts it into the job, nothing typed for the usual. What cannot
 * be read is said at the field, and the job stays as it was. `current`: whether it is still wanted.
 */
export async function typeInto(
  bench: WorkBench, key: string, typed: string, steps = 0, current: () => boolean = () => true,
): Promise<Read | null> {
  const job = bench.jobs;
  try {
    const outcome = await bench.during(
      bench.core.typed(bench.text.peek(), key, typed, { steps, file: bench.file.peek() }));
    if (!current() || job !== bench.jobs) return null;
    if (!outcome.ok) {
      sayAt(bench, key, outcome.faults);
      return null;
    }
    const { value } = outcome.value;
    const given = bench.fields.peek().find((one) => one.key === key)?.given ?? true;
    const faults = value !== '' ? await bench.set([{ key, value }], `field:${key}`)
      : given ? await bench.remove([key]) : [];
    if (job === bench.jobs) sayAt(bench, key, faults);
    return outcome.value;
  } catch (error) {
    bench.trouble.value = why(error);
    return null;
  }
}

/** A draft: what stands in the field while somebody types; null: the job's own value. */
export function useDraft(bench: WorkBench, key: string) {
  const draft = useSignal<string | null>(null);
  const reads = useSignal('');
  const newest = useRef(0);

  /** `steps`: of an arrow key, added to what is typed. */
  async function type(typed: string, steps = 0): Promise<void> {
    const mine = ++newest.current;
    if (steps === 0) draft.value = typed;
    reads.value = '';
    const read = await typeInto(bench, key, typed, steps, () => mine === newest.current);
    if (read === null || mine !== newest.current) return;
    reads.value = read.reads;
    if (steps !== 0) draft.value = bare(read.value);
  }
  function leave(): void {
    reads.value = '';
    if (!bench.halfTyped.peek().has(key)) draft.value = null;
  }
  function takeBack(): void {
    ++newest.current;
    draft.value = null;
    reads.value = '';
    clearHalfTyped(bench, key);
  }
  return { draft, reads, type, leave, takeBack };
}

/** A text's value without its quotes. */
function bare(value: string): string {
  return /^"([^"\\]*)"$/.exec(value)?.[1] ?? value;
}
