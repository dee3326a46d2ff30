// The bench at work: each new text is opened by the core, and what comes of it is told.
import { batch, computed, effect, signal } from '@preact/signals';
import type { ReadonlySignal, Signal } from '@preact/signals';
import type { FieldValue, Fault, Finding, KeyChange, Notice, Swathe } from 'swathe';
import { Overtaken } from 'swathe';
import type { Bench, Opened } from './bench';
import type { GivenFiles } from './files';
import { History } from './history';
import { late } from './late';
import { Together } from './together';
import { why } from './why';

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
}

const kTries = 8;

/** Resolves when what was set has been drawn, or soon where nothing is drawn. */
function drawn(): Promise<void> {
  return new Promise((done) => {
    const late = setTimeout(done, 60);
    requestAnimationFrame(() => setTimeout(() => {
      clearTimeout(late);
      done();
    }));
  });
}

/** A finding that was the same before keeps the mend and the advice that were found for it. */
function withMends(found: readonly Finding[], before: readonly Finding[]): Finding[] {
  const key = (one: Finding) =>
    [one.id, one.subject, one.measured, one.required, ...one.keys.map((at) => at.key)].join('\n');
  const known = new Map(before.map((one) => [key(one), one]));
  return found.map((one) => {
    const { mend = [], advice = '' } = known.get(key(one)) ?? {};
    return {
      ...one,
      mend: one.mend.length > 0 ? one.mend : mend,
      advice: one.advice !== '' ? one.advice : advice,
    };
  });
}

/** The same as before where nothing in it is other: who shows it need not show it again. */
function kept<Value>(found: Value, before: Value): Value {
  return JSON.stringify(found) === JSON.stringify(before) ? before : found;
}

export function makeBench(core: Swathe, files: GivenFiles): WorkBench {
  const begun = signal(false);
  const text = signal('');
  const file = signal('job.toml');
  const opened = signal<Opened | null>(null);
  const openText = signal<string | null>(null);
  const faults = signal<readonly Fault[]>([]);
  const findings = signal<readonly Finding[]>([]);
  const notices = signal<readonly Notice[]>([]);
  const fields = signal<readonly FieldValue[]>([]);
  const halfTyped = signal<ReadonlyMap<string, readonly Fault[]>>(new Map());
  const bumper = signal('');
  const dragging = signal(false);
  const trouble = signal<string | null>(null);
  const missing = signal<readonly string[]>([]);
  const stale = computed(() => openText.value !== text.value || halfTyped.value.size > 0);
  const under = signal(0); // steps under way
  const steps = signal(0); // counts up where the history changes

  const together = new Together();
  let history = new History('');
  let worked: string | null = null; // what was worked out last: text, file and files
  let working = 0; // the job that is being worked out
  let version = 0;
  let jobs = 0; // counts the jobs put on the bench
  let turn: Promise<unknown> = Promise.resolve();
  let drag: { kind: string } | null = null;
  let drags = 0;

  const wanted = () => `${jobs} ${files.version.peek()} ${file.peek()}\n${text.peek()}`;

  async function during<T>(step: Promise<T>): Promise<T> {
    under.value = under.peek() + 1;
    try {
      return await step;
    } finally {
      under.value = under.peek() - 1;
    }
  }

  async function pump(): Promise<void> {
    const job = jobs;
    if (working === job || !begun.peek()) return;
    working = job;
    under.value = under.peek() + 1;
    try {
      while (job === jobs && worked !== wanted()) {
        worked = wanted();
        await work(text.peek(), job);
        if (job !== jobs || worked === wanted()) break;
        // Pictures of this one are let come before the next one overtakes them.
        await drawn();
        await core.ready().catch(() => {});
      }
    } finally {
      if (working === job) working = 0;
      under.value = under.peek() - 1;
    }
  }

  async function readFields(now: string, job: number): Promise<void> {
    const read = await core.fields(now, { file: file.peek() });
    if (read.ok && job === jobs) fields.value = read.value;
  }

  async function work(now: string, job: number): Promise<void> {
    try {
      // Pictures come before the fields, which show already what was typed; but at first.
      const early = fields.peek().length === 0 ? readFields(now, job) : null;
      early?.catch(() => {}); // told of the opening
      const outcome = await core.open(now, { file: file.peek(), advice: false });
      if (job !== jobs) return;
      // Before the pictures, with which they are shown.
      const asked = outcome.ok ? together.ask(core.findings()) : null;
      batch(() => {
        trouble.value = null;
        if (outcome.ok) {
          opened.value = { version: ++version, job: outcome.value };
          openText.value = now;
          notices.value = kept(outcome.value.notices, notices.peek());
          if (!outcome.value.bumpers.includes(bumper.peek()))
            bumper.value = outcome.value.bumpers[0] ?? '';
        }
        faults.value = kept(outcome.ok ? [] : outcome.faults, faults.peek());
      });
      const found = await asked;
      if (found && job === jobs) findings.value = kept(withMends(found.findings, findings.peek()), findings.peek());
      // What is dragged on meanwhile has its fields read when it rests.
      await (early ?? (worked === wanted() ? readFields(now, job) : null));
      const named = outcome.ok ? [] : await core.namedFiles(now);
      if (job === jobs) missing.value = named.filter((one) => !files.names.includes(one));
    } catch (error) {
      if (error instanceof Overtaken || job !== jobs) return;
      trouble.value = why(error);
    }
  }

  function show(): void {
    batch(() => {
      text.value = history.text;
      steps.value += 1;
    });
    void pump();
  }

  function edit(next: string, kind: string): void {
    history.add(next, kind, Date.now());
    show();
  }

  /** One change of the text after the other, each of the text as it then is. */
  function change(kind: string, step: (text: string) => Promise<readonly Fault[] | string>) {
    const job = jobs;
    const run = async (): Promise<readonly Fault[]> => {
      for (let tries = 0; tries < kTries && job === jobs; ++tries) {
        const base = text.peek();
        const next = await step(base);
        if (job !== jobs) break;
        if (typeof next !== 'string') return next;
        if (text.peek() !== base) continue; // it was edited meanwhile
        edit(next, kind);
        return [];
      }
      return [];
    };
    const done = during(turn.then(run, run));
    turn = done.catch(() => {});
    return done.catch((error): readonly Fault[] => {
      trouble.value = why(error);
      return [];
    });
  }

  async function moveTo(subject: string, mm: number, snap: boolean, kind: string): Promise<void> {
    const outcome = await core.moved(subject, mm, { snap, text: text.peek() });
    if (drag?.kind === kind && outcome.ok) edit(outcome.value.text, kind);
  }

  effect(() => {
    files.version.value;
    void pump();
  });

  return {
    get jobs() {
      return jobs;
    },
    core, together, text, file, opened, stale, faults, findings, notices, fields, bumper, dragging,
    begun, trouble, halfTyped, missing, during,
    dimmed: late(() => stale.value && !dragging.value),
    busy: computed(() => under.value > 0),
    pointed: signal<readonly string[]>([]),
    selected: signal<readonly string[]>([]),
    canUndo: computed(() => steps.value >= 0 && history.canUndo),
    canRedo: computed(() => steps.value >= 0 && history.canRedo),

    begin(first, name, known = []) {
      jobs += 1;
      history = new History(first);
      drag = null;
      batch(() => {
        begun.value = true;
        file.value = name;
        opened.value = null;
        openText.value = null;
        faults.value = [];
        missing.value = [];
        findings.value = [];
        notices.value = [];
        fields.value = known;
        halfTyped.value = new Map();
        dragging.value = false;
        trouble.value = null;
        this.pointed.value = [];
        this.selected.value = [];
        text.value = first;
        steps.value += 1;
      });
      void pump();
    },
    again() {
      trouble.value = null;
      worked = null;
      void pump();
    },
    advised(of, found) {
      if (opened.peek()?.version === of) findings.value = kept(found, findings.peek());
    },

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
        trouble.value = why(error);
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
