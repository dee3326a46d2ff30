// The bench: a job's text and its history, edits, drags, and what is worked out of it.
import { batch, computed, signal } from '@preact/signals';
import type { ReadonlySignal } from '@preact/signals';
import type { FieldValue, Fault, Finding, KeyChange, Swathe } from 'swathe';
import type { Bench } from './bench';
import { changed } from './changed';
import type { GivenFiles } from './files';
import { HalfTyped } from './half_typed';
import { History } from './history';
import { late } from './late';
import { Pause } from './pause';
import { until } from './until';
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
  /** The same of what was typed or chosen: an undo while it is on its way into the job takes that back. */
  entering<T>(key: string, step: Promise<T>): Promise<T>;
  /** Resolves when what was typed or chosen is in the job and worked out; soon, too, where that takes long. */
  quiet(): Promise<boolean>;
  /** Works the job out once more, in a core begun anew. */
  again(): void;
  /** Findings whose mends were looked for, of the job of that version. */
  advised(version: number, findings: readonly Finding[]): void;
  /** Files that the job names and that are not in this page. */
  readonly missing: ReadonlySignal<readonly string[]>;
  /** What stands half typed in fields. It is ended by whatever else changes their keys. */
  readonly half: HalfTyped;
  /** Whether somebody types just now. */
  readonly pause: Pause;
}

const kTries = 8;
/** How long what waits for the job waits, in milliseconds. */
const kPatience = 3000;

export function makeBench(core: Swathe, files: GivenFiles): WorkBench {
  const begun = signal(false);
  const text = signal('');
  const file = signal('job.toml');
  const work = new Work(core, files, text, file);
  const half = new HalfTyped();
  const halfTyped = half.faults;
  const pause = new Pause();
  const dragging = signal(false);
  const busy = computed(() => work.under.value > 0);
  const stale = computed(() => work.openText.value !== text.value || halfTyped.value.size > 0);
  const steps = signal(0); // counts up where the history changes

  let history = new History('');
  let turn: Promise<unknown> = Promise.resolve();
  let drag: { kind: string } | null = null;
  let drags = 0;
  const entering: string[] = []; // keys whose values are on their way into the job
  let undone = 0; // counts up: what was typed and is on its way by then does not come into the job

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
  /** By the history: fields show what the job had then. */
  function goTo(move: () => void): void {
    move();
    batch(() => {
      half.end(); // before the pause, in which it would go back by itself
      show();
    });
    pause.over();
  }

  /** One change of these keys after the other, each of the text as it then is: a value "" takes the
   * key out. */
  function change(changes: readonly KeyChange[], kind: string) {
    const job = work.jobs, then = undone;
    const isOver = () => job !== work.jobs || (kind.startsWith('field:') && then !== undone);
    const run = async (): Promise<readonly Fault[]> => {
      for (let tries = 0; tries < kTries && job === work.jobs; ++tries) {
        const base = text.peek();
        const next = await changed(core, base, changes, file.peek());
        if (isOver()) break;
        if (typeof next !== 'string') return next;
        if (text.peek() !== base) continue; // it was edited meanwhile
        batch(() => {
          half.end(changes.map(({ key }) => key).filter((key) => kind !== `field:${key}`));
          edit(next, kind);
        });
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
    if (drag?.kind !== kind || !outcome.ok) return;
    const { text: next, changes } = outcome.value;
    batch(() => {
      half.end(changes.map(({ key }) => key));
      edit(next, kind);
    });
  }

  const { together, opened, faults, findings, notices, fields, bumper, trouble, missing } = work;
  return {
    get jobs() {
      return work.jobs;
    },
    core, together, text, file, opened, stale, faults, findings, notices, fields, bumper, dragging,
    begun, trouble, half, missing, pause,
    told: pause.told(faults, (all) => all.length, () => busy.value),
    toldHalf: pause.told(halfTyped, (all) => all.size),
    during: (step) => work.during(step),
    entering(key, step) {
      entering.push(key);
      return work.during(step).finally(() => entering.splice(entering.indexOf(key), 1));
    },
    quiet() {
      pause.over();
      return until(() => !busy.value, kPatience);
    },
    dimmed: late(() => stale.value && !dragging.value),
    busy,
    pointed: signal<readonly string[]>([]),
    selected: signal<readonly string[]>([]),
    canUndo: computed(() => steps.value >= 0 && (history.canUndo || halfTyped.value.size > 0)),
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
    set: (changes, kind = 'set') => change(changes, kind),
    remove: (keys, kind = 'remove') => change(keys.map((key) => ({ key, value: '' })), kind),

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

    undo: () => goTo(() => {
      // What was typed last is half a value, or on its way: of that field the whole one before it goes, too.
      const typed = [...halfTyped.peek().keys(), ...entering];
      undone += 1;
      if (typed.length === 0 || typed.some((key) => history.lastKind === `field:${key}`)) history.undo();
    }),
    redo: () => goTo(() => history.redo()),
    keysOf: (subject) => core.keysOf(text.peek(), subject),
  };
}
