// The job on the page: its text is the state, and all that is shown follows from it.
import type { ReadonlySignal, Signal } from '@preact/signals';
import type {
  FieldValue, Fault, Finding, KeyChange, KeyPlace, Notice, OpenJob, Swathe,
} from 'swathe';
import type { Together } from './together';

/** A job that the core has open; `version` counts up with each. */
export interface Opened {
  version: number;
  job: OpenJob;
}

/** What every part of the page is given. */
export interface Bench {
  /** For all questions about the open job. */
  readonly core: Swathe;
  /** What is shown of one text comes up at once. */
  readonly together: Together;
  /** The core came to an end or cannot be had: why. */
  readonly trouble: Signal<string | null>;
  /** The job's text, as edited. */
  readonly text: ReadonlySignal<string>;
  /** The name of its file, "job.toml". */
  readonly file: ReadonlySignal<string>;
  /** The last good one that the core has open. */
  readonly opened: ReadonlySignal<Opened | null>;
  /** The text is newer than what is open, or at fault. */
  readonly stale: ReadonlySignal<boolean>;
  /** It has been so for a while, and nothing is dragged: pictures are dimmed. */
  readonly dimmed: ReadonlySignal<boolean>;
  readonly faults: ReadonlySignal<readonly Fault[]>;
  readonly findings: ReadonlySignal<readonly Finding[]>;
  readonly notices: ReadonlySignal<readonly Notice[]>;
  /** What is told of `faults`, when whoever types pauses, and of what stands half typed in a field, by its
   * key. */
  readonly told: ReadonlySignal<readonly Fault[]>;
  readonly toldHalf: ReadonlySignal<ReadonlyMap<string, readonly Fault[]>>;
  /** Every key as it stands, of the last text that could be read. */
  readonly fields: ReadonlySignal<readonly FieldValue[]>;

  /** Subjects pointed at, like ["bumper.A.start"]. */
  readonly pointed: Signal<readonly string[]>;
  readonly selected: Signal<readonly string[]>;
  /** The name of the cover that is shown. */
  readonly bumper: Signal<string>;

  /** One step to undo; edits of one kind that follow each other closely are one. */
  edit(text: string, kind: string): void;
  /**
   * Gives keys other values, in one step, "" takes one out; what is wrong with them, where it cannot be
   * done. With a `kind`, steps of that kind that follow each other closely are one.
   */
  set(changes: readonly KeyChange[], kind?: string): Promise<readonly Fault[]>;
  /** Takes keys out, in one step. */
  remove(keys: readonly string[], kind?: string): Promise<readonly Fault[]>;
  /** Moves the handle of a subject; from the first 'drag' to its 'drop' is one step. */
  drag(subject: string, mm: number, stage: 'drag' | 'drop', snap: boolean): Promise<void>;
  /** Ends a drag and leaves the job as it was before it. */
  takeBack(): void;
  /** Whether something is dragged just now: what is slow to draw may wait. */
  readonly dragging: ReadonlySignal<boolean>;

  undo(): void;
  redo(): void;
  readonly canUndo: ReadonlySignal<boolean>;
  readonly canRedo: ReadonlySignal<boolean>;

  keysOf(subject: string): Promise<readonly KeyPlace[]>;
}
