// What somebody types into a field, on its way into the job.
import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Fault, Outcome } from 'swathe';
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
  return bench.toldHalf.value.get(key);
}

function sayAt(bench: WorkBench, key: string, faults: readonly Fault[]): void {
  if (faults.length === 0 || !shown.has(key)) clearHalfTyped(bench, key);
  else bench.halfTyped.value = new Map(bench.halfTyped.peek()).set(key, faults);
}

interface Read {
  value: string;
  reads: string;
}

/** Reads what was typed for a key; nothing where another job is on the bench by then. */
async function read(bench: WorkBench, key: string, typed: string, steps = 0): Promise<Outcome<Read> | null> {
  const job = bench.jobs;
  try {
    const outcome = await bench.during(
      bench.core.typed(bench.text.peek(), key, typed, { steps, file: bench.file.peek() }));
    return job === bench.jobs ? outcome : null;
  } catch (error) {
    bench.trouble.value = why(error);
    return null;
  }
}

/** Puts what was read into the job, nothing for the usual. */
async function put(bench: WorkBench, key: string, { value }: Read): Promise<void> {
  const job = bench.jobs;
  const given = bench.fields.peek().find((one) => one.key === key)?.given ?? true;
  const faults = value !== '' ? await bench.set([{ key, value }], `field:${key}`)
    : given ? await bench.remove([key]) : [];
  if (job === bench.jobs) sayAt(bench, key, faults);
}

/** What was chosen or given at once. What cannot be read is said at the field, and the job stays as
 * it was. */
export async function typeInto(bench: WorkBench, key: string, typed: string): Promise<void> {
  const outcome = await read(bench, key, typed);
  if (outcome?.ok) await put(bench, key, outcome.value);
  else if (outcome) sayAt(bench, key, outcome.faults);
}

/** A draft: what stands in the field while somebody types; null: the job's own value. */
export function useDraft(bench: WorkBench, key: string) {
  const draft = useSignal<string | null>(null);
  const reads = useSignal('');
  const newest = useRef(0);
  const takenBack = useRef(0); // all up to this one
  const passed = useRef<Read | null>(null); // the newest that could be read and was not put into the job

  /** Only what was typed last goes into the job, and where that cannot be read what could be last: of
   * "28 zz" typed at once the 28, not the 2. `steps`: of an arrow key, added to what is typed. */
  async function type(typed: string, steps = 0): Promise<void> {
    const mine = ++newest.current;
    if (steps === 0) {
      draft.value = typed;
      bench.pause.typed();
    }
    reads.value = '';
    const outcome = await read(bench, key, typed, steps);
    if (!outcome) return;
    if (mine !== newest.current) {
      if (outcome.ok && mine > takenBack.current) passed.current = outcome.value;
      return;
    }
    const last = outcome.ok ? outcome.value : passed.current;
    passed.current = null;
    if (last) await put(bench, key, last);
    if (mine !== newest.current) return;
    if (!outcome.ok) return sayAt(bench, key, outcome.faults);
    reads.value = outcome.value.reads;
    if (steps !== 0) draft.value = bare(outcome.value.value);
  }
  function leave(): void {
    bench.pause.over();
    reads.value = '';
    if (!bench.halfTyped.peek().has(key)) draft.value = null;
  }
  function takeBack(): void {
    takenBack.current = ++newest.current;
    passed.current = null;
    bench.pause.over();
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
