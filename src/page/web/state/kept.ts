// Jobs kept in this browser, each under a name of its own.
import { signal } from '@preact/signals';
import type { Field } from 'swathe';
import { newId } from './new_id';
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
  /** Those for which the browser has no room: they are here until the page is closed. */
  private readonly only = new Map<string, string>();

  constructor() {
    this.look();
  }

  /** Lists anew what is there, the newest first. */
  look(): void {
    const ids = new Set(this.only.keys());
    for (let k = 0; k < (this.store?.length ?? 0); ++k) {
      const key = this.store!.key(k)!;
      if (key.startsWith(kPrefix)) ids.add(key.slice(kPrefix.length));
    }
    this.jobs.value = [...ids].map((id) => listed(id, this.read(id))).filter((job) => job !== null)
      .sort((a, b) => (a.saved < b.saved ? 1 : -1));
  }

  /** Whether the browser keeps it. */
  has(id: string): boolean {
    return this.store?.getItem(kPrefix + id) != null;
  }
  /** Whether it is lost when the page is closed. */
  isOnlyHere(id: string): boolean {
    return this.only.has(id);
  }
  text(id: string): string | null {
    const kept = this.read(id);
    return listed(id, kept) ? JSON.parse(kept!).text : null;
  }
  /** How the keys stood, so that the fields are there before the core is. */
  fields(id: string): Field[] {
    const { fields } = JSON.parse(this.read(id) ?? '{}');
    return Array.isArray(fields) ? fields : [];
  }

  /** Whether the browser does; else it is listed until the page is closed. */
  keep(job: KeptJob, text: string, fields: readonly Field[]): boolean {
    const { id, ...said } = job;
    const kept = JSON.stringify({ ...said, text, fields });
    const isKept = this.put(id, kept);
    this.look();
    return isKept;
  }

  forget(id: string): void {
    const kept = this.read(id);
    if (kept === null) return;
    this.only.delete(id);
    this.store?.removeItem(kPrefix + id);
    this.forgotten.value = new Map(this.forgotten.value).set(id, kept);
    if (this.state.value === 'full') this.state.value = 'works';
    for (const [other, words] of this.only) this.write(other, words); // there may be room for it now
    this.look();
  }
  /** Another one that is the same. */
  copy(id: string, as: string): void {
    const kept = this.read(id);
    if (kept !== null) this.put(as, kept);
    this.look();
  }
  /** Takes it back that one was forgotten; the id that it has then. It takes no other's place: another tab
   * that had it open may have kept it anew. */
  remember(id: string): string {
    const kept = this.forgotten.value.get(id);
    if (kept === undefined) return id;
    const as = this.has(id) ? newId() : id;
    this.put(as, kept);
    const left = new Map(this.forgotten.value);
    left.delete(id);
    this.forgotten.value = left;
    this.look();
    return as;
  }
  /** What is listed of one that was forgotten. */
  wasForgotten(id: string): KeptJob | null {
    return listed(id, this.forgotten.value.get(id) ?? null);
  }

  private read(id: string): string | null {
    return this.only.get(id) ?? this.store?.getItem(kPrefix + id) ?? null;
  }

  /** Whether the browser keeps it; else it is here until the page is closed. */
  private put(id: string, kept: string): boolean {
    const isKept = this.write(id, kept);
    if (!isKept) this.only.set(id, kept);
    return isKept;
  }

  private write(id: string, kept: string): boolean {
    if (!this.store) return false;
    try {
      this.store.setItem(kPrefix + id, kept);
      this.only.delete(id);
      this.state.value = 'works';
    } catch (error) {
      this.state.value = isFull(error) ? 'full' : 'refused';
    }
    return this.state.value === 'works';
  }
}
