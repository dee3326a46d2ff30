// Requests wait here for the instance, which does one after another. A newer one overtakes those
// that it makes useless.
import { Failed } from './instance.mjs';

/** A newer request of its kind was made, or another job was opened. */
export class Overtaken extends Error {
  constructor() {
    super('a newer request overtook this one');
    this.name = 'Overtaken';
  }
}

/** How long a call may run on after a newer request made it useless, in milliseconds. */
const kPatience = 2000;
const kClosed = 'the core was closed';
const kStopped = 'it was stopped';

function isUseless(older, newer) {
  if (newer.call === 'open') return older.ofJob;
  return newer.kind !== undefined && newer.kind === older.kind;
}

export class Queue {
  #instance;
  #waiting = [];
  #running = null;
  #closed = false;

  constructor(instance) {
    this.#instance = instance;
  }

  /**
   * What the instance answers to a task. Beside what it does, a task says: `ofJob`, that it is about
   * the open job; its `kind`, of which the newest is wanted; a `signal` that stops it.
   */
  ask(task) {
    if (this.#closed) return Promise.reject(new Failed(kClosed));
    if (task.signal?.aborted) return Promise.reject(new Failed(kStopped));
    for (const other of this.#all()) if (isUseless(other, task)) this.#giveUp(other, new Overtaken());
    return new Promise((resolve, reject) => {
      const asked = { ...task, resolve, reject };
      task.signal?.addEventListener('abort', () => this.#giveUp(asked, new Failed(kStopped)));
      this.#waiting.push(asked);
      this.#next();
    });
  }

  close() {
    this.#closed = true;
    for (const task of this.#all()) this.#settle(task, new Failed(kClosed));
    this.#waiting = [];
  }

  #all() {
    return this.#running ? [...this.#waiting, this.#running] : [...this.#waiting];
  }

  #settle(task, outcome) {
    if (task.settled) return;
    task.settled = true;
    if (outcome instanceof Error) task.reject(outcome);
    else task.resolve(outcome);
  }

  /** The one that is at work goes on for a while: ending it costs more than most of them take. */
  #giveUp(task, error) {
    this.#settle(task, error);
    this.#waiting = this.#waiting.filter((other) => other !== task);
    if (task !== this.#running || task.patience) return;
    this.#instance.stop(task);
    task.patience = setTimeout(() => {
      // Where the worker is only on its way the next request wants it as well.
      if (task !== this.#running || !this.#instance.isThere) return;
      this.#instance.end();
      this.#done(task);
    }, kPatience);
  }

  #next() {
    if (this.#running || this.#waiting.length === 0) return;
    const task = (this.#running = this.#waiting.shift());
    this.#instance.ref();
    const end = (outcome) => {
      this.#done(task); // the worker has its next request before whoever asked takes up this answer
      this.#settle(task, outcome);
    };
    this.#instance.work(task).then(end, end);
  }

  #done(task) {
    clearTimeout(task.patience);
    if (task !== this.#running) return;
    this.#running = null;
    this.#instance.unref();
    this.#next();
  }
}
