// The core at work, in a worker. An instance of it that came to an end (a trap, a failed assert, no
// memory) is replaced, and what it held is made anew from the text and the files that are kept here.

/** It could not be done, and the job is not to blame; the message says why. */
export class Failed extends Error {
  constructor(words) {
    super(words);
    this.name = 'Failed';
  }
}

export const Came = { Done: 0, Refused: 1 };

const kMostMemory = 2 ** 30;

const inNode = typeof process === 'object' && typeof process.versions?.node === 'string';

/** The core's WebAssembly, from where it lies beside this file. */
async function coreBeside() {
  const place = new URL('./swathe-core.wasm', import.meta.url);
  if (!inNode) return WebAssembly.compileStreaming(fetch(place));
  const { readFile } = await import('node:fs/promises');
  return WebAssembly.compile(await readFile(place));
}

/** A worker beside this file, in the form of a browser's. */
async function workerBeside() {
  const place = new URL('./start-worker.mjs', import.meta.url);
  if (!inNode) return new Worker(place, { type: 'module' });
  const { Worker: NodeWorker } = await import('node:worker_threads');
  const worker = new NodeWorker(place);
  const form = {
    onmessage: null,
    onerror: null,
    postMessage: (message) => worker.postMessage(message),
    terminate: () => worker.terminate(),
    ref: () => worker.ref(),
    unref: () => worker.unref(),
  };
  worker.on('message', (data) => form.onmessage?.({ data }));
  worker.on('error', (error) => form.onerror?.(error));
  return form;
}

/**
 * Does one task after another, {call, ...}: "nothing", once it is prepared; "open", with its `job`;
 * "ask" and "files", with their `request`. A task that is `settled` is one that nobody waits for any
 * more.
 */
export class Instance {
  wasm;
  ended = 0;
  memory = 0;

  #options;
  #worker = null;
  #closed = false;
  #files = new Map();
  #given = new Set(); // files that the worker has
  #hasTooMany = false; // it has a file that was taken away
  #job = null; // {text, request}: the job that was opened last, while it stands
  #shown = null; // the last one that could be opened: where a newer one was refused it is shown on
  #opened = null; // the one that the worker shows
  #number = 0;

  constructor(options) {
    this.#options = { mostMemory: kMostMemory, worker: workerBeside, ...options };
    const wasm = options.wasm ?? coreBeside();
    this.wasm = Promise.resolve(wasm).then((given) =>
      given instanceof WebAssembly.Module ? given : WebAssembly.compile(given));
    this.wasm.catch(() => {}); // said where it is first wanted
  }

  give(name, bytes) {
    this.#files.set(name, bytes);
    this.#given.delete(name);
  }

  /** A worker cannot lose a file: one that has it makes way for another. */
  takeAway(name) {
    const had = this.#files.delete(name);
    if (had && this.#worker) this.#hasTooMany = true;
  }

  /** What there is to send at once is sent at once. */
  async work(task) {
    if (this.#hasTooMany) this.end();
    if (task.call === 'open') this.#job = task.job;
    if (!this.#isPrepared()) await this.#prepare(task);
    if (task.settled) return null;
    if (task.call === 'nothing') return null;
    if (task.call === 'open') return this.#openJob(task, task.job);
    const job = this.#jobFor(task);
    if (job && job !== this.#opened) await this.#openJob(task, job);
    if (task.settled) return null;
    const answer = await this.#send(task, { call: task.call, request: task.request });
    return this.#checked(answer, task);
  }

  /** Between two files the worker looks whether it was told so. */
  stop(task) {
    if (task.call === 'files') this.#worker?.postMessage({ stop: task.id });
  }

  /** Whether there is a worker: it may be only on its way. */
  get isThere() {
    return this.#worker !== null;
  }

  /** Node goes on while there is something to do. */
  ref() {
    this.#worker?.ref?.();
  }
  unref() {
    this.#worker?.unref?.();
  }

  end() {
    if (!this.#worker) return;
    const worker = this.#worker;
    this.#worker = null;
    this.#opened = null;
    if (!this.#closed) this.ended += 1;
    worker.terminate();
    worker.stopWaiting?.();
  }

  close() {
    this.#closed = true;
    this.end();
  }

  #isPrepared() {
    return this.#worker !== null && [...this.#files.keys()].every((name) => this.#given.has(name));
  }

  /** A worker, with the files that jobs may name. */
  async #prepare(task) {
    if (!this.#worker) {
      this.#given.clear();
      this.#hasTooMany = false;
      this.#opened = null;
      const module = await this.wasm.catch((error) => {
        throw new Failed(`the core cannot be loaded: ${error.message}`);
      });
      const worker = await Promise.resolve().then(() => this.#options.worker()).catch((error) => {
        throw new Failed(`the core's worker cannot be started: ${error.message}`);
      });
      if (this.#closed) {
        worker.terminate();
        throw new Failed('the core was closed');
      }
      this.#worker = worker;
      await this.#send(task, { call: 'start', module, mostMemory: this.#options.mostMemory });
    }
    for (const [name, bytes] of this.#files) {
      if (this.#given.has(name)) continue;
      this.#given.add(name); // another of this name may be given while this one is on its way
      await this.#send(task, { call: 'give', name, bytes }).catch((error) => {
        // It would end the next instance as well.
        if (!task.settled && this.#files.get(name) === bytes) this.#files.delete(name);
        throw error;
      });
    }
  }

  /** What has to be open for it, though it may have been an earlier instance that opened it. */
  #jobFor(task) {
    if (task.ofShown) return this.#job ?? this.#shown;
    if (task.ofJob && !this.#job) throw new Failed('no job is open');
    return task.ofJob ? this.#job : null;
  }

  async #openJob(task, job) {
    const drop = () => {
      if (this.#job === job) this.#job = null;
      if (this.#shown === job) this.#shown = null;
    };
    try {
      const answer = await this.#send(task, { call: 'open', ...job });
      this.#checked(answer, { mayRefuse: true });
      if (answer.came === Came.Done) this.#opened = this.#shown = job;
      else drop();
      return answer;
    } catch (error) {
      if (!task.settled) drop(); // it would end the next instance as well
      throw error;
    }
  }

  #checked(answer, task) {
    if (answer.came === Came.Done || (answer.came === Came.Refused && task.mayRefuse)) return answer;
    throw new Failed(answer.came === Came.Refused
      ? answer.said.map((fault) => fault.text).join('\n')
      : answer.said);
  }

  /** One message to the worker and its answer. */
  #send(task, message) {
    const worker = this.#worker;
    if (!worker) return Promise.reject(new Failed('the core was ended'));
    const id = (task.id = ++this.#number);
    return new Promise((resolve, reject) => {
      const end = (words) => {
        reject(new Failed(`the core ended: ${words}; it is begun anew for what is asked next`));
        if (worker === this.#worker) this.end();
      };
      worker.stopWaiting = () => reject(new Failed('the core was ended'));
      worker.onerror = (error) => end(error?.message ?? 'its worker could not be started');
      worker.onmessage = ({ data }) => {
        if (data.id !== id) return;
        if (data.file !== undefined) {
          if (!task.settled) task.onFile?.(data.file);
        } else if (data.ended !== undefined) {
          end(data.ended);
        } else {
          this.memory = data.memory;
          resolve(data);
        }
      };
      worker.postMessage({ id, ...message });
    });
  }
}
