/**
 * The core of Swathe in a worker, for a page or for node: what a job comes to, byte for byte as the
 * command has it.
 *
 * Requests are answered one after another, in the order in which they were made. Of those about the
 * open job a newer one overtakes an older one of its kind: the same question about the same sheet,
 * page or file; a picture of the same kind, or a verdict, unless `key` tells them apart; files or an
 * archive. `open` overtakes all of them, and an older `open`. Those promises reject with `Overtaken`.
 * So ask for a job stage by stage, the findings first. To make files while somebody goes on editing,
 * take another Swathe, given the first one's `wasm`.
 *
 * A promise rejects with `Failed` where the job is not to blame: the core came to its end (out of
 * memory, or a mistake of ours), could not be loaded, was closed or told to stop, or was asked for
 * what is not there. After an end the next request finds a new instance, with the files and the job
 * as before; a file or a job that ended the core as it was given or opened is left out.
 *
 * Lengths are in millimeters; lines and columns count from 1, and a column counts bytes.
 */
export class Swathe {
  constructor(options?: Options);

  /** The core, compiled. */
  readonly wasm: Promise<WebAssembly.Module>;
  /** How many instances have come to an end so far. */
  readonly ended: number;
  /** Bytes of memory that the instance at work had taken at its last answer. */
  readonly memory: number;

  /** Resolves once an instance is there; nothing needs to wait for it. */
  ready(): Promise<null>;
  /**
   * A file that jobs name (a font, a rule file), by the name that the job has for it. Kept here for
   * later instances; a job that is open has what it was opened with.
   */
  give(name: string, bytes: Uint8Array): Promise<null>;
  /** Of a given file: it is there no more. An instance that has it makes way for another, which opens
   * the job anew. */
  takeAway(name: string): void;

  /** Works a job out. After a refusal no job is open. */
  open(text: string | Uint8Array, options?: OpenOptions): Promise<Outcome<OpenJob>>;

  // Of the open job:
  findings(): Promise<{ season: string | null; findings: Finding[] }>;
  /** report.json, as the command writes it. */
  report(): Promise<Uint8Array>;
  /** In the order of work. Nothing is drawn for it. */
  sheets(): Promise<ListedSheet[]>;
  ways(): Promise<Ways>;
  pages(sheet: string): Promise<{ name: string; width_mm: number; height_mm: number }[]>;
  /** A page at full size, to be shown small; pages count from 0. */
  pageSvg(sheet: string, page?: number): Promise<string>;
  sheetPdf(sheet: string, options?: { created?: string }): Promise<Uint8Array>;
  // Where a job was refused, of the one that was open before; a newer one overtakes an older one of
  // its kind, whatever it shows, unless `key` tells them apart.
  // Pictures for a screen, each an SVG element as text, safe to be put into a page:
  plan(size?: PictureSize): Promise<string>;
  cover(bumper: string, size?: PictureSize & { as_printed?: boolean }): Promise<string>;
  cutThrough(size?: PictureSize): Promise<string>;
  /** What an observer sees; `all_round`: of one size for all bearings. */
  view(observer?: Observer, size?: PictureSize & { all_round?: boolean }): Promise<string>;
  /** Who can read it, from every bearing. */
  chart(observer?: Observer, size?: PictureSize): Promise<string>;
  /** What can be read from one place. `key`: of places that are all wanted, tells them apart. */
  verdict(observer?: Observer, options?: { key?: string }): Promise<PlaceVerdict>;
  /** The same from straight ahead, the left, behind and the right. */
  verdicts(): Promise<PlaceVerdict[]>;
  /** One of the files that the command writes, by its name. */
  file(name: string, options?: { created?: string }): Promise<Uint8Array>;
  /** All of them, or some kinds' ("pattern", "tiles", as `swathe make --only` has them). */
  files(options?: FilesOptions & { kinds?: string[] }): Promise<MadeFile[]>;
  /** All of them in one archive, as `swathe make --zip` writes it; then the given files of `add`. */
  zip(options?: FilesOptions & { add?: string[] }): Promise<Uint8Array>;

  // Of any text:
  /** What is wrong with its form and its keys alone; whether the parts fit is `open`'s to say. */
  read(text: string, options?: { file?: string }): Promise<Fault[]>;
  /** The files that a job names. */
  namedFiles(text: string): Promise<string[]>;
  /** The text with one key given another value (TOML, or a bare text); all else stays as it is. */
  set(text: string, key: string, value: string, options?: { file?: string }): Promise<Outcome<Change>>;
  /** The text with one key taken out. */
  remove(text: string, key: string, options?: { file?: string }): Promise<Outcome<Change>>;
  /** The keys that say a part of the model, "bracket.2". */
  keysOf(text: string, subject: string): Promise<KeyPlace[]>;

  // For a form that shows and changes a job:
  /** Every key as it stands in a text, those of each bumper and bracket one after another. */
  fields(text: string, options?: { file?: string }): Promise<Outcome<Field[]>>;
  /** What was typed for a key of a text, with steps added, as a value for `set`; an empty value is
   * for `remove`. Refused where the job would be at fault at this key. */
  typed(text: string, key: string, typed: string, options?: { steps?: number; file?: string }):
    Promise<Outcome<{ value: string; reads: string }>>;
  /** A text in which what a handle of a picture stands for has another distance; by the handles of
   * the job that was open last. `text`: that of the last `open` unless given. `snap`: to 1/4 in or
   * 5 mm, which is usual; else to 1/16 in or 1 mm. */
  moved(subjects: string, mm: number, options?: { snap?: boolean; text?: string }):
    Promise<Outcome<Moved>>;
  /** The same for what a key places, "bumper.1.to", which stays where it is: its "50%" becomes a
   * distance from a corner, at a gap for both bumpers. */
  fromCorner(text: string, key: string): Promise<Outcome<Moved>>;

  // Of none:
  /** What each key of a job and each check means. */
  words(): Promise<{
    keys: KeyWords[];
    checks: { id: string; asks: string; why: string }[];
    /** Those that may be there many times, [[bumper]]: so many. */
    tables: { path: string; counts: [least: number, most: number] }[];
  }>;
  choices(): Promise<Choices>;
  /** The commented job that `swathe new` writes where nobody answers. */
  newText(): Promise<string>;
  /** What somebody who starts a job is asked, by the answers given so far. */
  questions(answers?: string[]): Promise<Question[]>;
  /** The job of these answers; an empty one is the usual. A fault's line is its question, from 1. */
  newJob(answers: string[]): Promise<Outcome<{ text: string }>>;
  /** Names of kinds of jobs to start from. */
  kinds(): Promise<string[]>;
  jobOfKind(kind: string): Promise<Outcome<{ text: string }>>;
  /** The font in which labels are set. */
  labelFont(): Promise<Uint8Array>;
  /** Whether digits can be cut from a font file that was given. */
  lookAtFont(name: string): Promise<Outcome<{ name: string; axes: FontAxis[] }>>;

  /** Ends the worker; what still waits rejects. */
  close(): void;
}

export class Overtaken extends Error {}
export class Failed extends Error {}

export interface Options {
  /** The core's WebAssembly; where it is not given it is read from beside this file. */
  wasm?: WebAssembly.Module | BufferSource | Promise<WebAssembly.Module | BufferSource>;
  /** What an instance may take at most, in bytes: 2^30 unless said, at least 2^24, at most 2^31. */
  mostMemory?: number;
  /** Starts start-worker.mjs, or what it was bundled into; beside this file where it is not given. */
  worker?: () => WorkerLike | Promise<WorkerLike>;
}

/** What is used of a worker: a browser's has it. */
export interface WorkerLike {
  onmessage: ((event: any) => void) | null;
  onerror: ((error: any) => void) | null;
  postMessage(message: unknown): void;
  terminate(): void;
}

export interface OpenOptions {
  /** The name that stands in places; "job.toml" unless said. */
  file?: string;
  /** Whether changes that would mend what is wanting are looked for: yes unless said. It may take
   * several times as long as all else. */
  advice?: boolean;
}

export interface FilesOptions {
  /** The date in PDF files and in the archive, ISO 8601; that of the command unless said. */
  created?: string;
  /** After each file. */
  onFile?: (file: Omit<MadeFile, 'bytes'>) => void;
  /** Stops it, even before it has begun: the promise rejects with `Failed`. */
  signal?: AbortSignal;
}

export type Outcome<T> = { ok: true; value: T } | { ok: false; faults: Fault[] };

export interface TextPlace {
  line: number;
  column: number;
}
export interface KeyPlace extends TextPlace {
  /** As `set` takes it: "bumper.2.from". */
  key: string;
}
export interface KeyChange {
  key: string;
  value: string;
}
export interface Fault extends TextPlace {
  /** As the command prints it: "FILE:LINE:COL: sentence". */
  text: string;
  sentence: string;
  file: string;
  key?: string;
  /** Changes that together would do; [] where none is known. */
  mend: KeyChange[];
}
export interface Notice extends TextPlace {
  text: string;
  sentence: string;
  key?: string;
}
export interface OpenJob {
  title: string;
  number: string;
  season: string | null;
  units: 'in' | 'mm';
  bumpers: string[];
  /** Keys that the job gives in vain. */
  notices: Notice[];
}
export interface Finding {
  id: string;
  rule: string;
  subject: string;
  required: string;
  measured: string;
  verdict: 'fail' | 'warn' | 'unknown' | 'pass';
  attested: 'official' | 'inferred' | 'quoted' | 'unverified';
  advice: string;
  /** Parts of the model, as marks carry them: "bumper.A.start". */
  subjects: string[];
  keys: KeyPlace[];
  mend: KeyChange[];
}
export interface ListedSheet {
  /** Its name, and that of its files less their ending. */
  stem: string;
  title: string;
  kind: string;
  /** The kind of its files. */
  files: string;
  paper: string;
  bumper: string | null;
}
export interface PictureSize {
  /** Pixels of CSS: 620 by 360 unless said. */
  width?: number;
  height?: number;
  /** Size of words, 13 unless said. */
  text?: number;
  /** The part to show, in the picture's own millimeters: two corners. */
  window?: [x: number, y: number, x: number, y: number];
  /** Tells pictures of a kind apart that are to be there side by side. */
  key?: string;
}
export interface Observer {
  /** Degrees, 0 straight ahead of the machine, counter-clockwise. */
  bearing?: number;
  /** From the machine's center; the job's nearest unless said. */
  distance?: number;
  /** The job's highest unless said. */
  eye_height?: number;
  /** Of the job's cloth colors, from 0. */
  color?: number;
}
export interface PlaceVerdict extends Required<Observer> {
  /** "" of any other place. */
  way: 'front' | 'left' | 'back' | 'right' | '';
  reads: 'number' | 'another' | 'nothing';
  text: string;
  out_to_mm: number | null;
  words: string;
  /** Parts of the model, a blank between each two. */
  subjects: string;
}
export interface PrintFile {
  name: string;
  pages: number;
  paper: string;
  bumper: string | null;
}
export interface Ways {
  /** Before all others. */
  first: PrintFile[];
  /** One of them is chosen, a cover. */
  ways: {
    kind: 'measures' | 'fold' | 'tiles' | 'print-shop';
    words: string;
    sheets: string;
    pages: number;
    files: PrintFile[];
  }[];
  numerals: PrintFile[];
  /** The build book, and what an observer sees. */
  book: PrintFile[];
  notes: string[];
}
export interface MadeFile {
  name: string;
  kind: string;
  /** 0 where it has none. */
  pages: number;
  paper: string;
  what: string;
  bytes: Uint8Array;
}
export interface Change {
  text: string;
  key: string;
  before: string;
  after: string;
}
export interface KeyWords {
  key: string;
  value: string;
  /** What `value` is: the default, or an example of a key that is needed or optional. */
  given: 'default' | 'needed' | 'optional';
  meaning: string;
  why: string;
  label: string;
  form: KeyForm;
}
/** What a key holds. */
export interface KeyForm {
  kind: 'length' | 'lengths' | 'points' | 'angle' | 'number' | 'count' | 'flag' | 'text' | 'digits'
    | 'choice' | 'color' | 'colors' | 'axes' | 'names' | 'side' | 'sides' | 'bumper' | 'end'
    | 'side-place' | 'paper';
  /** Of lengths in millimeters, of angles in degrees, of texts in characters. */
  range: [least: number, most: number] | null;
  /** Of a number; empty for a share. */
  unit: string;
  /** Of a choice all, else what may stand instead. */
  words: string[];
  /** Of a list. */
  counts: [least: number, most: number] | null;
}
/** A key as it stands in a job. */
export interface Field extends TextPlace {
  /** As `set` takes it: "bumper.2.from". */
  key: string;
  /** The key among `words`: "bumper.from". */
  form: string;
  /** It stands in the text, at its place; else its line is 0, and its value the default. */
  given: boolean;
  /** TOML; empty where there is none. */
  value: string;
  /** A text without its quotes, else as `value`. */
  shown: string;
}
export interface Moved {
  text: string;
  /** One of no value: the key was taken out. */
  changes: KeyChange[];
  /** As it stands now: on a whole step, and where it may be. */
  mm: number;
  words: string;
}
export interface Question {
  asks: string;
  example: string;
  usual: string;
}
export interface FontAxis {
  tag: string;
  least: number;
  most: number;
  value: number;
}
export interface Choices {
  version: string;
  fonts: { name: string; note: string; axes: Record<string, number> }[];
  papers: { name: string; width_mm: number; height_mm: number }[];
  seasons: string[];
}
