// What somebody types into a field, on its way into the job.
import { useSignal, useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Fault, Outcome } from 'swathe';
import type { WorkBench } from '../state/make_bench';
import { why } from '../state/why';
import { whenReleased } from './press';

const shown = new Set<string>(); // keys whose fields are there

/** What is wrong with what stands half typed in this key's field. It is gone with the field: nobody
 * could see what it is. */
export function useHalfTyped(bench: WorkBench, key: string): readonly Fault[] | undefined {
  useEffect(() => {
    shown.add(key);
    return () => {
      shown.delete(key);
      bench.half.say(key, []);
    };
  }, [key]);
  return bench.toldHalf.value.get(key);
}

function sayAt(bench: WorkBench, key: string, faults: readonly Fault[]): void {
  bench.half.say(key, shown.has(key) ? faults : []);
}

export interface Read {
  /** Of the whole key, as `set` takes it; "" for the usual. */
  value: string;
  /** What it came to, for who typed it. */
  reads: string;
  /** What stands in the field after a step. */
  stepped?: string;
}
/** Reads what was typed, with steps of arrow keys added. */
export type Reader = (typed: string, steps: number) => Promise<Outcome<Read>>;

/** The core's own reading of a whole key. */
export function wholeKey(bench: WorkBench, key: string): Reader {
  return (typed, steps) => bench.core.typed(bench.text.peek(), key, typed, { steps, file: bench.file.peek() });
}

/** Nothing where another job is on the bench by then. */
async function read(bench: WorkBench, reader: Reader, typed: string, steps = 0): Promise<Outcome<Read> | null> {
  const job = bench.jobs;
  try {
    const outcome = await reader(typed, steps);
    return job === bench.jobs ? outcome : null;
  } catch (error) {
    bench.trouble.value = why(error);
    return null;
  }
}

/** The value that a key has in the job. */
interface Before {
  value: string;
  given: boolean;
}

function valueOf(bench: WorkBench, key: string): Before {
  const { value = '', given = false } = bench.fields.peek().find((one) => one.key === key) ?? {};
  return { value, given };
}

/** Puts what was read into the job, nothing for the usual. */
async function put(bench: WorkBench, key: string, { value }: Read): Promise<void> {
  const job = bench.jobs;
  const given = bench.fields.peek().find((one) => one.key === key)?.given ?? true;
  const faults = value !== '' ? await bench.set([{ key, value }], `field:${key}`)
    : given ? await bench.remove([key], `field:${key}`) : [];
  if (job === bench.jobs) sayAt(bench, key, faults);
}

/** What was chosen or given at once. What cannot be read is said at the field, and the job stays as
 * it was. */
export function typeInto(bench: WorkBench, key: string, typed: string): Promise<void> {
  return bench.entering(key, choose(bench, key, typed));
}

async function choose(bench: WorkBench, key: string, typed: string): Promise<void> {
  const outcome = await read(bench, wholeKey(bench, key), typed);
  if (!outcome) return;
  if (!outcome.ok) return sayAt(bench, key, outcome.faults);
  await put(bench, key, outcome.value);
  if (!bench.half.has(key)) bench.half.end([key]); // what was typed before
}

/** A draft: what stands in the field while somebody types, and after it while it is at fault; null: the
 * job's own value. */
export function useDraft(bench: WorkBench, key: string, reader: Reader = wholeKey(bench, key)) {
  const draft = useSignal<string | null>(null);
  const reads = useSignal('');
  const newest = useRef(0);
  const left = useRef(false);
  const under = useRef(0); // so many are being read
  const before = useRef<Before | null>(null); // what the job had when whoever types began, or paused last

  useSignalEffect(() => {
    if (!bench.half.ended.value(key)) return;
    ++newest.current;
    draft.value = null;
    reads.value = '';
    before.current = null;
  });

  /** When whoever types pauses and leaves what cannot be read, the job has what it had before: a
   * beginning of it, the 44718 of "44718899", is not what is meant. */
  function settle(mine: number, isRead: boolean): void {
    const job = bench.jobs;
    bench.pause.whenOver(() => {
      const was = before.current;
      if (mine !== newest.current || job !== bench.jobs || !was) return;
      if (isRead) before.current = null;
      else if (was.given) void bench.set([{ key, value: was.value }], `field:${key}`);
      else void bench.remove([key], `field:${key}`);
    });
  }

  /** Only what was typed last goes into the job. `steps`: of an arrow key, added to what is typed; one that
   * cannot be made is none. */
  async function take(typed: string, steps: number): Promise<void> {
    const mine = ++newest.current;
    const outcome = await read(bench, reader, typed, steps);
    if (!outcome || mine !== newest.current) return;
    if (outcome.ok) await put(bench, key, outcome.value);
    else if (steps === 0) sayAt(bench, key, outcome.faults);
    if (mine !== newest.current) return;
    if (outcome.ok) {
      reads.value = outcome.value.reads;
      if (steps !== 0) draft.value = outcome.value.stepped ?? bare(outcome.value.value);
    }
    settle(mine, outcome.ok || steps !== 0);
  }
  async function type(typed: string, steps = 0): Promise<void> {
    left.current = false;
    before.current ??= valueOf(bench, key);
    if (steps === 0) {
      draft.value = typed;
      bench.pause.typed();
    }
    reads.value = '';
    under.current += 1;
    await bench.entering(key, take(typed, steps));
    under.current -= 1;
    showJobs();
  }
  /** Who has left sees the job's own value again, but for what is at fault. */
  function showJobs(): void {
    if (!left.current || under.current > 0) return;
    reads.value = '';
    if (!bench.half.has(key)) draft.value = null;
  }
  function leave(): void {
    left.current = true;
    whenReleased(() => {
      bench.pause.over();
      showJobs();
    });
  }
  function takeBack(): void {
    bench.pause.over();
    bench.half.end([key]);
  }
  return { draft, reads, type, leave, takeBack };
}

/** A text's value without its quotes. */
export function bare(value: string): string {
  return /^"([^"\\]*)"$/.exec(value)?.[1] ?? value;
}
