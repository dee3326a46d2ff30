// The bench: a job's text and its history, edits, drags, and what is worked out of it.
import { batch, computed, signal } from '@preact/signals';
import type { ReadonlySignal, Signal } from '@preact/signals';
import type { FieldValue, Fault, Finding, KeyChange, Swathe } from 'swathe';
import type { Bench } from './bench';
import type { GivenFiles } from './files';
import { History } from './history';
import { late } from './late';
import { Pause } from './pause';
import { why } from './why';
import { Work } from './work';

export interface WorkBench extends Bench {
  /** Puts another job on the bench, with its fields where they are known; what was edited before is
   * forgotten. */
  begin(text: string, file: string, fields?: readonly FieldValue[]): void;
  /** Whether there is a job at all. */
  readonly begun: ReadonlySignal<boolean>;
  /** Counts the jobs that were put on the bench. */
  readonly jobs: number;
  /** Something that was edited is still on its way into the job or the pictures. */
  readonly busy: ReadonlySignal<boolean>;
  /** Counts as busy while `step` lasts. */
  during<T>(step: Promise<T>): Promise<T>;
  /** Works the job out once more, in a core begun anew. */
  again(): void;
  /** Findings whose mends were looked for, of the job of that version. */
  advised(version: number, findings: readonly Finding[]): void;
  /** Files that the job names and that are not in this page. */
  readonly missing: ReadonlySignal<readonly string[]>;
  /** What is wrong with what stands half typed in a field, by its key. */
  readonly halfTyped: Signal<ReadonlyMap<string, readonly Fault[]>>;
  /** Whether somebody types just now. */
  readonly pause: Pause;
}

const kTries = 8;

export function makeBench(core: Swathe, files: GivenFiles): WorkBench {
  const begun = signal(false);
  const text = signal('');
  const file = signal('job.toml');
  const work = new Work(core, files, text, file);
  const halfTyped = signal<ReadonlyMap<string, readonly Fault[]>>(new Map());
  const pause = new Pause();
  const dragging = signal(false);
  const stale = computed(() => work.openText.value !== text.value || halfTyped.value.size > 0);
  const steps = signal(0); // counts up where the history changes

  let history = new History('');
  let turn: Promise<unknown> = Promise.resolve();
  let drag: { kind: string } | null = null;
  let drags = 0;

  function show(): void {
    batch(() => {
      text.value = history.text;
      steps.value += 1;
    });
    void work.follow();
  }

  function edit(next: string, kind: string): void {
    history.add(next, kind, Date.now());
    show();
  }

  /** One change of the text after the other, each of the text as it then is. */
  function change(kind: string, step: (text: string) => Promise<readonly Fault[] | string>) {
    const job = work.jobs;
    const run = async (): Promise<readonly Fault[]> => {
      for (let tries = 0; tries < kTries && job === work.jobs; ++tries) {
        const base = text.peek();
        const next = await step(base);
        if (job !== work.jobs) break;
        if (typeof next !== 'string') return next;
        if (text.peek() !== base) continue; // it was edited meanwhile
        edit(next, kind);
        return [];
      }
      return [];
    };
    const done = work.during(turn.then(run, run));
    turn = done.catch(() => {});
    return done.catch((error): readonly Fault[] => {
      if (job === work.jobs) work.trouble.value = why(error);
      return [];
    });
  }

  async function moveTo(subject: string, mm: number, snap: boolean, kind: string): Promise<void> {
    const outcome = await core.moved(subject, mm, { snap, text: text.peek() });
    if (drag?.kind === kind && outcome.ok) edit(outcome.value.text, kind);
  }

  const { together, opened, faults, findings, notices, fields, bumper, trouble, missing, under } = work;
  return {
    get jobs() {
      return work.jobs;
    },
    core, together, text, file, opened, stale, faults, findings, notices, fields, bumper, dragging,
    begun, trouble, halfTyped, missing, pause,
    told: pause.told(faults, (all) => all.length),
    toldHalf: pause.told(halfTyped, (all) => all.size),
    during: (step) => work.during(step),
    dimmed: late(() => stale.value && !dragging.value),
    busy: computed(() => under.value > 0),
    pointed: signal<readonly string[]>([]),
    selected: signal<readonly string[]>([]),
    canUndo: computed(() => steps.value >= 0 && history.canUndo),
    canRedo: computed(() => steps.value >= 0 && history.canRedo),

    begin(first, name, known = []) {
      history = new History(first);
      drag = null;
      pause.over();
      batch(() => {
        work.begin(known);
        begun.value = true;
        file.value = name;
        halfTyped.value = new Map();
        dragging.value = false;
        this.pointed.value = [];
        this.selected.value = [];
        text.value = first;
        steps.value += 1;
      });
      void work.follow();
    },
    again: () => work.again(),
    advised: (version, found) => work.advised(version, found),

    edit,
    set: (changes: readonly KeyChange[], kind = 'set') =>
      change(kind, async (base) => {
        let next = base;
        for (const { key, value } of changes) {
          const outcome = await core.set(next, key, value, { file: file.peek() });
          if (!outcome.ok) return outcome.faults;
          next = outcome.value.text;
        }
        return next;
      }),
    remove: (keys) =>
      change('remove', async (base) => {
        let next = base;
        for (const key of keys) {
          const outcome = await core.remove(next, key, { file: file.peek() });
          if (!outcome.ok) return outcome.faults;
          next = outcome.value.text;
        }
        return next;
      }),

    async drag(subject, mm, stage, snap) {
      drag ??= { kind: `drag:${++drags}` };
      const mine = drag;
      dragging.value = true;
      try {
        await moveTo(subject, mm, snap, mine.kind);
      } catch (error) {
        work.trouble.value = why(error);
      } finally {
        if (stage === 'drop' && drag === mine) {
          drag = null;
          dragging.value = false;
        }
      }
    },
    takeBack() {
      if (!drag) return;
      history.drop(drag.kind);
      drag = null;
      dragging.value = false;
      show();
    },

    undo() {
      history.undo();
      show();
    },
    redo() {
      history.redo();
      show();
    },
    keysOf: (subject) => core.keysOf(text.peek(), subject),
  };
}
