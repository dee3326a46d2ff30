// What comes from outside: files dropped or chosen, text that is pasted, links.
import { effect, signal } from '@preact/signals';
import type { Desk } from '../state/desk';
import { isFont } from '../state/files';
import type { GivenFiles } from '../state/files';
import type { WorkBench } from '../state/make_bench';
import { sharedIn } from '../state/share';
import { takeFont } from '../state/take_font';
import { say } from '../words/en';

const kMostJob = 2e6;
const kMostFile = 20e6;

/** Whether a text may be a job: it has a table's name, and a key with a value. One that is named as a job
 * is opened anyway, and says what is wrong. */
function isLikeJob(text: string): boolean {
  return /^\s*\[\[?[a-z_.]+\]\]?\s*(#.*)?$/m.test(text) && /^\s*[a-z_.]+\s*=/m.test(text);
}

/** The name that a job has for a file, which it may name within a folder. */
function nameOf(file: File, named: readonly string[]): string | undefined {
  return named.find((one) => one === file.name || one.endsWith(`/${file.name}`));
}

export class Incoming {
  /** What there is to say about what came last. */
  readonly told = signal('');

  constructor(
    private readonly bench: WorkBench,
    private readonly desk: Desk,
    private readonly files: GivenFiles,
  ) {
    effect(() => {
      desk.id.value;
      this.told.value = ''; // it was of another job
    });
  }

  /** A job comes with the files that come with it; files alone are for the job that is here. */
  async take(given: readonly File[]): Promise<void> {
    this.told.value = '';
    const named = this.bench.begun.peek() ? await this.namedIn(this.bench.text.peek()) : [];
    const files = given.filter((file) => isFont(file.name) || nameOf(file, named) !== undefined);
    let opened = false;
    for (const file of given.filter((one) => !files.includes(one))) {
      const text = await this.textOf(file);
      if (text === null) continue;
      const along = files.length > 0 ? await this.read(files, await this.namedIn(text)) : undefined;
      this.desk.openText(text, file.name, along);
      opened = true;
    }
    if (opened) return;
    for (const [name, bytes] of await this.read(files, named)) await this.give(name, bytes, named.includes(name));
  }

  /** What somebody pasted where nothing takes text. */
  paste(text: string): void {
    if (isLikeJob(text)) this.desk.openText(text, 'job.toml');
  }

  /** A job behind the "#" of the page's address. */
  async link(): Promise<void> {
    const shared = await sharedIn(location.hash);
    if (shared.came === 'none') return;
    history.replaceState(null, '', location.pathname + location.search);
    if (shared.came === 'text') this.desk.openText(shared.text, 'job.toml');
    else this.told.value = shared.came === 'broken' ? say.states.linkBroken : say.states.linkTooLong;
  }

  private namedIn(text: string): Promise<string[]> {
    return this.bench.core.namedFiles(text).catch(() => []);
  }

  /** Files by the names that a job has for them. */
  private async read(files: readonly File[], named: readonly string[]): Promise<Map<string, Uint8Array>> {
    const found = new Map<string, Uint8Array>();
    for (const file of files) {
      if (file.size > kMostFile) {
        this.told.value = say.states.tooLarge(file.name);
        continue;
      }
      const bytes = await file.arrayBuffer().catch(() => null); // a folder
      if (bytes) found.set(nameOf(file, named) ?? file.name, new Uint8Array(bytes));
      else this.told.value = this.noUse(file.name);
    }
    return found;
  }

  private async give(name: string, bytes: Uint8Array, isNamed: boolean): Promise<void> {
    const toJob = this.bench.begun.peek() && !this.desk.starting.peek();
    const trouble = isFont(name)
      ? await takeFont(this.bench.core, this.files, name, bytes, toJob)
      : await this.files.give(name, bytes, toJob).then(() => '', () => this.noUse(name)); // it ended the core
    this.told.value = trouble || (isFont(name) && !isNamed ? say.states.fontGiven(name) : say.states.fileGiven(name));
  }
  private noUse(name: string): string {
    return isFont(name) ? say.job.notAFont : say.states.notText(name);
  }

  /** A job's text; nothing where there is none, which is said. */
  private async textOf(file: File): Promise<string | null> {
    if (file.size > kMostJob) {
      this.told.value = say.states.tooLarge(file.name);
      return null;
    }
    try {
      const bytes = new Uint8Array(await file.arrayBuffer());
      const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
      if (!text.includes('\0') && (/\.toml$/i.test(file.name) || isLikeJob(text))) return text;
    } catch {
      // A folder, or no text.
    }
    this.told.value = say.states.notText(file.name);
    return null;
  }
}
