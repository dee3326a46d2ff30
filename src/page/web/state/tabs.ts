// One job is kept by one tab at a time. Tabs speak by way of the storage, whose events reach all the
// other tabs that share what is kept.
import { newId } from './new_id';
import { storage } from './storage';

const kKey = 'swathe.tabs';
/** How long another tab has to answer, in milliseconds. */
const kAnswer = 250;

interface Said {
  says: 'who has it' | 'I have it' | 'I take it' | 'I take it, as it is free' | 'I let it go';
  job: string;
  tab: string;
  at: number; // no two words alike, or no event is sent
}

export class Tabs {
  private readonly tab = newId();
  private readonly store = storage();
  private mine: string | null = null;
  private since = 0; // when this tab said that it takes it
  private waiting: string | null = null; // for this one
  private readonly asking = new Set<(had: string) => void>();
  private count = 0;

  /** `lost`: another tab took this tab's job. `came`: the job that it waited for is this tab's now. */
  constructor(private readonly lost: () => void, private readonly came: () => void) {
    window.addEventListener('storage', (event) => {
      if (event.key === kKey && event.newValue) this.hear(event.newValue);
    });
  }

  /** Whether another tab has the job open. */
  async elsewhere(job: string): Promise<boolean> {
    if (!this.store) return false;
    return new Promise((resolve) => {
      const done = (found: boolean) => {
        clearTimeout(late);
        this.asking.delete(answered);
        resolve(found);
      };
      const answered = (had: string) => had === job && done(true);
      const late = setTimeout(() => done(false), kAnswer);
      this.asking.add(answered);
      this.say('who has it', job);
    });
  }

  /** This tab keeps the job from now on. */
  take(job: string): void {
    if (this.mine !== job) this.leave();
    this.waiting = null;
    this.mine = job;
    this.since = this.say('I take it', job);
  }
  /** Another tab keeps the job, and this one as soon as no other does. */
  waitFor(job: string): void {
    this.leave();
    this.waiting = job;
    void this.takeIfFree(); // it may have been let go meanwhile
  }
  /** This tab does not keep any job. */
  leave(): void {
    const had = this.mine;
    this.mine = this.waiting = null;
    if (had !== null) this.say('I let it go', had);
  }

  private async takeIfFree(): Promise<void> {
    const job = this.waiting;
    if (job === null || await this.elsewhere(job) || this.waiting !== job) return;
    this.waiting = null;
    this.mine = job;
    this.since = this.say('I take it, as it is free', job);
    await new Promise((done) => setTimeout(done, kAnswer)); // another one may have said so before
    if (this.mine === job) this.came();
  }

  /** When it was said. */
  private say(says: Said['says'], job: string): number {
    const said: Said = { says, job, tab: this.tab, at: Date.now() + ++this.count / 1000 };
    try {
      this.store?.setItem(kKey, JSON.stringify(said));
      this.store?.removeItem(kKey);
    } catch {
      // Full: then nothing is kept, and nothing can be lost.
    }
    return said.at;
  }

  private hear(words: string): void {
    let said: Said;
    try {
      said = JSON.parse(words);
    } catch {
      return;
    }
    if (said.tab === this.tab) return;
    const { says, job } = said;
    if (says === 'who has it') {
      if (job === this.mine) this.say('I have it', job);
    } else if (says === 'I let it go') {
      if (job === this.waiting) void this.takeIfFree();
    } else {
      this.asking.forEach((answered) => answered(job));
      if (job === this.mine && says !== 'I have it') this.otherTakes(said);
    }
  }

  /** Of two that take what is free the first to say so has it. */
  private otherTakes({ says, job, tab, at }: Said): void {
    const isFirst = this.since < at || (this.since === at && this.tab < tab);
    if (says === 'I take it, as it is free' && isFirst) {
      this.say('I take it', job);
      return;
    }
    this.mine = null;
    this.waiting = job;
    this.lost();
  }
}
