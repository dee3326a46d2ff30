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

export interface WorkBench extends Bench {
  /** Puts another job on the bench, with its fields where they are known; what was edited before is
   * forgotten. */
  begin(text: string, file: string, fields?: readonly FieldValue[]): void;
  /** Whether there is a job at all. */
  readonly begun: ReadonlySignal<boolean>;
  rename(file: string): void;
  /** The core came to an end or cannot be had: why. */
  readonly trouble: Signal<string | null>;
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

/** Why, less what the module says of itself. */
function wordsOf(error: unknown): string {
  const words = error instanceof Error ? error.message : String(error);
  return words.replace(/^the core ended: /, '').replace(/; it is begun anew.*$/, '');
}

/** A finding that was the same before keeps the mend that was found for it. */
function withMends(found: readonly Finding[], before: readonly Finding[]): Finding[] {
  const key = (one: Finding) => [one.id, one.subject, one.measured, one.required].join('\n');
  const mends = new Map(before.map((one) => [key(one), one.mend]));
  return found.map((one) =>
    one.mend.length > 0 ? one : { ...one, mend: mends.get(key(one)) ?? [] });
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
  let working = false;
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
    if (working) return;
    working = true;
    under.value = under.peek() + 1;
    try {
      while (begun.peek() && worked !== wanted()) {
        worked = wanted();
        await work(text.peek(), jobs);
        if (worked === wanted()) break;
        // Pictures of this one are let come before the next one overtakes them.
        await drawn();
        await core.ready().catch(() => {});
      }
    } finally {
      working = false;
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
      missing.value = named.filter((one) => !files.names.includes(one));
    } catch (error) {
      if (error instanceof Overtaken || job !== jobs) return;
      trouble.value = wordsOf(error);
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
    const run = async (): Promise<readonly Fault[]> => {
      for (let tries = 0; tries < kTries; ++tries) {
        const base = text.peek();
        const next = await step(base);
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
      if (!(error instanceof Overtaken)) trouble.value = wordsOf(error);
      return [];
    });
  }

  async function moveTo(subject: string, mm: number, snap: boolean, kind: string): Promise<void> {
    for (let tries = 0; tries < kTries; ++tries) {
      try {
        const outcome = await core.moved(subject, mm, { snap, text: text.peek() });
        if (drag?.kind === kind && outcome.ok) edit(outcome.value.text, kind);
        return;
      } catch (error) {
        if (!(error instanceof Overtaken)) throw error;
        if (drag?.kind !== kind) return;
      }
    }
  }

  effect(() => {
    files.version.value;
    void pump();
  });

  return {
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
    rename(name) {
      file.value = name;
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
        trouble.value = wordsOf(error);
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
