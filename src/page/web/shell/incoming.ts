// What comes from outside: files dropped or chosen, text that is pasted, links.
import { effect, signal } from '@preact/signals';
import type { Desk } from '../state/desk';
import { isFont } from '../state/files';
import type { GivenFiles } from '../state/files';
import type { WorkBench } from '../state/make_bench';
import { sharedIn } from '../state/share';
import { say } from '../words/en';

const kMostJob = 2e6;
const kMostFile = 20e6;

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

  async take(given: readonly File[]): Promise<void> {
    this.told.value = '';
    const named = this.bench.begun.peek()
      ? await this.bench.core.namedFiles(this.bench.text.peek()).catch(() => []) : [];
    // A job's own files before the job.
    const inOrder = [...given].sort((a, b) => Number(isFont(b.name)) - Number(isFont(a.name)));
    for (const file of inOrder) {
      // A job may name it within a folder.
      const name = named.find((one) => one === file.name || one.endsWith(`/${file.name}`));
      try {
        if (name !== undefined || isFont(file.name)) await this.give(file, name ?? file.name);
        else await this.open(file);
      } catch {
        // A folder, or a font that ends the core.
        this.told.value = isFont(file.name) ? say.job.notAFont : say.states.notText(file.name);
      }
    }
  }

  /** What somebody pasted where nothing takes text. */
  paste(text: string): void {
    if (/^\s*\[/m.test(text) && text.includes('=')) this.desk.openText(text, 'job.toml');
  }

  /** A job behind the "#" of the page's address. */
  async link(): Promise<void> {
    const shared = await sharedIn(location.hash);
    if (shared.came === 'none') return;
    history.replaceState(null, '', location.pathname + location.search);
    if (shared.came === 'text') this.desk.openText(shared.text, 'job.toml');
    else this.told.value = shared.came === 'broken' ? say.states.linkBroken : say.states.linkTooLong;
  }

  private async give(file: File, name: string): Promise<void> {
    if (file.size > kMostFile) {
      this.told.value = say.states.tooLarge(file.name);
      return;
    }
    await this.files.give(name, new Uint8Array(await file.arrayBuffer()));
    this.told.value = say.states.fileGiven(file.name);
  }

  private async open(file: File): Promise<void> {
    if (file.size > kMostJob) {
      this.told.value = say.states.tooLarge(file.name);
      return;
    }
    const bytes = new Uint8Array(await file.arrayBuffer());
    let text: string;
    try {
      text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
    } catch {
      this.told.value = say.states.notText(file.name);
      return;
    }
    if (text.includes('\0')) this.told.value = say.states.notText(file.name);
    else this.desk.openText(text, file.name);
  }
}
