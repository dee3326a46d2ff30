// One job is kept by one tab at a time. Tabs speak by way of the storage, whose events reach all the
// other tabs that share what is kept.
import { newId } from './new_id';
import { storage } from './storage';

const kKey = 'swathe.tabs';
/** How long another tab has to answer, in milliseconds. */
const kAnswer = 250;

interface Said {
  says: 'who has it' | 'I have it' | 'I take it';
  job: string;
  tab: string;
  at: number; // no two words alike, or no event is sent
}

export class Tabs {
  private readonly tab = newId();
  private readonly store = storage();
  private mine: string | null = null;
  private answered: (() => void) | null = null;
  private count = 0;

  /** `lost`: another tab took this tab's job. */
  constructor(private readonly lost: () => void) {
    window.addEventListener('storage', (event) => {
      if (event.key === kKey && event.newValue) this.hear(event.newValue);
    });
  }

  /** Whether another tab has the job open. */
  async elsewhere(job: string): Promise<boolean> {
    if (!this.store) return false;
    return new Promise((resolve) => {
      const late = setTimeout(() => done(false), kAnswer);
      const done = (found: boolean) => {
        clearTimeout(late);
        if (this.answered === answered) this.answered = null;
        resolve(found);
      };
      const answered = () => done(true);
      this.asked = job;
      this.answered = answered;
      this.say('who has it', job);
    });
  }
  private asked = '';

  /** This tab keeps the job from now on. */
  take(job: string): void {
    this.mine = job;
    this.say('I take it', job);
  }
  /** This tab does not keep any job. */
  leave(): void {
    this.mine = null;
  }

  private say(says: Said['says'], job: string): void {
    const said: Said = { says, job, tab: this.tab, at: Date.now() + ++this.count / 1000 };
    try {
      this.store?.setItem(kKey, JSON.stringify(said));
      this.store?.removeItem(kKey);
    } catch {
      // Full: then nothing is kept, and nothing can be lost.
    }
  }

  private hear(words: string): void {
    let said: Said;
    try {
      said = JSON.parse(words);
    } catch {
      return;
    }
    if (said.tab === this.tab) return;
    if (said.says === 'who has it' && said.job === this.mine) this.say('I have it', said.job);
    else if (said.says === 'I have it' && said.job === this.asked) this.answered?.();
    else if (said.says === 'I take it' && said.job === this.mine) {
      this.mine = null;
      this.lost();
    }
  }
}
