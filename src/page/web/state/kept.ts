// Jobs kept in this browser, each under a name of its own.
import { signal } from '@preact/signals';
import type { Field } from 'swathe';
import { isFull, storage } from './storage';

export interface KeptJob {
  id: string;
  file: string;
  title: string;
  number: string;
  /** When it was kept last, ISO 8601. */
  saved: string;
}

const kPrefix = 'swathe.job.';

export type Keeping = 'works' | 'refused' | 'full';

/** What is listed of a kept job; nothing where somebody else wrote something else there. */
function listed(id: string, kept: string | null): KeptJob | null {
  try {
    const { file, title, number, saved, text } = JSON.parse(kept ?? '');
    if (typeof text !== 'string' || typeof file !== 'string') return null;
    return { id, file, title: String(title ?? ''), number: String(number ?? ''), saved: String(saved ?? '') };
  } catch {
    return null;
  }
}

export class KeptJobs {
  private store = storage();
  readonly state = signal<Keeping>(this.store ? 'works' : 'refused');
  readonly jobs = signal<readonly KeptJob[]>([]);
  /** Those that were forgotten since the page was opened: what was kept of them, by id. */
  readonly forgotten = signal<ReadonlyMap<string, string>>(new Map());

  constructor() {
    this.look();
  }

  /** Lists anew what is there, the newest first. */
  look(): void {
    const found: KeptJob[] = [];
    for (let k = 0; k < (this.store?.length ?? 0); ++k) {
      const key = this.store!.key(k)!;
      if (!key.startsWith(kPrefix)) continue;
      const id = key.slice(kPrefix.length);
      const job = listed(id, this.store!.getItem(key));
      if (job) found.push(job);
    }
    this.jobs.value = found.sort((a, b) => (a.saved < b.saved ? 1 : -1));
  }

  has(id: string): boolean {
    return this.store?.getItem(kPrefix + id) != null;
  }
  text(id: string): string | null {
    const kept = this.store?.getItem(kPrefix + id) ?? null;
    return listed(id, kept) ? JSON.parse(kept!).text : null;
  }
  /** How the keys stood, so that the fields are there before the core is. */
  fields(id: string): Field[] {
    const { fields } = JSON.parse(this.store?.getItem(kPrefix + id) ?? '{}');
    return Array.isArray(fields) ? fields : [];
  }

  /** Whether it could be. */
  keep(job: KeptJob, text: string, fields: readonly Field[]): boolean {
    const { id, ...said } = job;
    return this.write(id, JSON.stringify({ ...said, text, fields }));
  }

  forget(id: string): void {
    const kept = this.store?.getItem(kPrefix + id);
    if (kept == null) return;
    this.store!.removeItem(kPrefix + id);
    this.forgotten.value = new Map(this.forgotten.value).set(id, kept);
    if (this.state.value === 'full') this.state.value = 'works';
    this.look();
  }
  /** Takes it back that one was forgotten. */
  remember(id: string): void {
    const kept = this.forgotten.value.get(id);
    if (kept === undefined) return;
    if (!this.write(id, kept)) return;
    const left = new Map(this.forgotten.value);
    left.delete(id);
    this.forgotten.value = left;
  }
  /** What is listed of one that was forgotten. */
  wasForgotten(id: string): KeptJob | null {
    return listed(id, this.forgotten.value.get(id) ?? null);
  }

  private write(id: string, kept: string): boolean {
    if (!this.store) return false;
    try {
      this.store.setItem(kPrefix + id, kept);
      this.state.value = 'works';
    } catch (error) {
      this.state.value = isFull(error) ? 'full' : 'refused';
    }
    this.look();
    return this.state.value === 'works';
  }
}
