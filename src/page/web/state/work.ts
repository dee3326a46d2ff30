// The job's text worked out: the core opens each new one, and what comes of it is told.
import { batch, effect, signal } from '@preact/signals';
import type { ReadonlySignal } from '@preact/signals';
import type { FieldValue, Fault, Finding, Notice, Swathe } from 'swathe';
import { Overtaken } from 'swathe';
import type { Opened } from './bench';
import type { GivenFiles } from './files';
import { Together } from './together';
import { why } from './why';

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

export class Work {
  readonly opened = signal<Opened | null>(null);
  /** The text that is open. */
  readonly openText = signal<string | null>(null);
  readonly faults = signal<readonly Fault[]>([]);
  readonly findings = signal<readonly Finding[]>([]);
  readonly notices = signal<readonly Notice[]>([]);
  readonly fields = signal<readonly FieldValue[]>([]);
  readonly bumper = signal('');
  readonly missing = signal<readonly string[]>([]);
  readonly trouble = signal<string | null>(null);
  /** How many steps are under way. */
  readonly under = signal(0);
  readonly together = new Together();

  #jobs = 0; // so many were begun
  #worked: string | null = null; // what was worked out last: text, file and files
  #working = 0; // the job that is being worked out
  #version = 0;

  constructor(
    private readonly core: Swathe,
    private readonly files: GivenFiles,
    private readonly text: ReadonlySignal<string>,
    private readonly file: ReadonlySignal<string>,
  ) {
    effect(() => {
      files.version.value;
      void this.follow();
    });
  }

  /** Counts the jobs that were begun. */
  get jobs(): number {
    return this.#jobs;
  }

  /** What follows is of another job, whose fields may be known. */
  begin(known: readonly FieldValue[]): void {
    this.#jobs += 1;
    this.opened.value = null;
    this.openText.value = null;
    this.faults.value = [];
    this.missing.value = [];
    this.findings.value = [];
    this.notices.value = [];
    this.fields.value = known;
    this.trouble.value = null;
  }

  /** Works it out once more, in a core begun anew. */
  again(): void {
    this.trouble.value = null;
    this.#worked = null;
    void this.follow();
  }

  /** Findings whose mends were looked for, of the job of that version. */
  advised(version: number, found: readonly Finding[]): void {
    if (this.opened.peek()?.version === version) this.#find(found);
  }

  /** Counts as under way while `step` lasts. */
  async during<T>(step: Promise<T>): Promise<T> {
    this.under.value = this.under.peek() + 1;
    try {
      return await step;
    } finally {
      this.under.value = this.under.peek() - 1;
    }
  }

  /** Works out the text as it now is, and as it is then, until it is not edited any more. */
  async follow(): Promise<void> {
    const job = this.#jobs;
    if (job === 0 || this.#working === job) return;
    this.#working = job;
    await this.during(this.#workOn(job));
  }

  async #workOn(job: number): Promise<void> {
    try {
      while (job === this.#jobs && this.#worked !== this.#wanted) {
        this.#worked = this.#wanted;
        await this.#work(this.text.peek(), job);
        if (job !== this.#jobs || this.#worked === this.#wanted) break;
        // Pictures of this one are let come before the next one overtakes them.
        await drawn();
        await this.core.ready().catch(() => {});
      }
    } finally {
      if (this.#working === job) this.#working = 0;
    }
  }

  get #wanted(): string {
    return `${this.#jobs} ${this.files.version.peek()} ${this.file.peek()}\n${this.text.peek()}`;
  }

  async #work(now: string, job: number): Promise<void> {
    try {
      // Pictures come before the fields, which show already what was typed; but at first.
      const early = this.fields.peek().length === 0 ? this.#readFields(now, job) : null;
      early?.catch(() => {}); // told of the opening
      const outcome = await this.core.open(now, { file: this.file.peek(), advice: false });
      if (job !== this.#jobs) return;
      // Before the pictures, with which they are shown.
      const asked = outcome.ok ? this.together.ask(this.core.findings()) : null;
      batch(() => {
        this.trouble.value = null;
        if (outcome.ok) {
          const { notices, bumpers } = outcome.value;
          this.opened.value = { version: ++this.#version, job: outcome.value };
          this.openText.value = now;
          this.notices.value = kept(notices, this.notices.peek());
          if (!bumpers.includes(this.bumper.peek())) this.bumper.value = bumpers[0] ?? '';
        }
        this.faults.value = kept(outcome.ok ? [] : outcome.faults, this.faults.peek());
      });
      const found = await asked;
      if (found && job === this.#jobs) this.#find(withMends(found.findings, this.findings.peek()));
      // What is dragged on meanwhile has its fields read when it rests.
      await (early ?? (this.#worked === this.#wanted ? this.#readFields(now, job) : null));
      const named = outcome.ok ? [] : await this.core.namedFiles(now);
      if (job === this.#jobs)
        this.missing.value = named.filter((one) => !this.files.names.includes(one));
    } catch (error) {
      if (error instanceof Overtaken || job !== this.#jobs) return;
      this.trouble.value = why(error);
    }
  }

  #find(findings: readonly Finding[]): void {
    this.findings.value = kept(findings, this.findings.peek());
  }

  async #readFields(now: string, job: number): Promise<void> {
    const read = await this.core.fields(now, { file: this.file.peek() });
    if (read.ok && job === this.#jobs) this.fields.value = read.value;
  }
}
