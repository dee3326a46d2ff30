// The core for a page or for node, as promises. It runs in a worker of its own, one request after
// another; what it is asked is said in swathe.d.ts.
//
// An instance of the core that came to an end (a trap, a failed assert, no memory) is replaced, and
// what it held is made anew from the text and the files that are kept here.

/** A newer request of its kind was made, or another job was opened. */
export class Overtaken extends Error {
  constructor() {
    super('a newer request overtook this one');
    this.name = 'Overtaken';
  }
}

/** It could not be done, and the job is not to blame; the message says why. */
export class Failed extends Error {
  constructor(words) {
    super(words);
    this.name = 'Failed';
  }
}

const kCame = { Done: 0, Refused: 1 };
const kMostMemory = 2 ** 30;
/** How long a call may run on after a newer request made it useless, in milliseconds. */
const kPatience = 2000;
const kStopped = 'it was stopped';

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

export class Swathe {
  /** The core, compiled: another Swathe may be given it. */
  wasm;
  /** How many instances of the core have come to an end so far. */
  ended = 0;
  /** Bytes of memory that the instance at work has taken. */
  memory = 0;

  #options;
  #worker = null;
  #closed = false;
  #files = new Map();
  #given = new Set(); // files that the worker has
  #job = null; // {text, request}: the job that was opened last, while it stands
  #shown = null; // the last one that could be opened: where a newer one was refused it is shown on
  #opened = null; // the one that the worker shows
  #lastText = ''; // what was opened last, though it may have been refused
  #waiting = [];
  #running = null;
  #number = 0;

  constructor(options = {}) {
    this.#options = { mostMemory: kMostMemory, worker: workerBeside, ...options };
    const wasm = options.wasm ?? coreBeside();
    this.wasm = Promise.resolve(wasm).then((given) =>
      given instanceof WebAssembly.Module ? given : WebAssembly.compile(given));
    this.wasm.catch(() => {}); // said where it is first wanted
  }

  /** Resolves once an instance of the core is there. */
  ready() {
    return this.#ask({ call: 'nothing' });
  }

  give(name, bytes) {
    this.#files.set(name, bytes);
    this.#given.delete(name);
    return this.#ask({ call: 'nothing' });
  }

  open(text, { file = 'job.toml', advice = true } = {}) {
    for (const task of [...this.#waiting, this.#running]) if (task?.ofJob) this.#overtake(task);
    this.#lastText = typeof text === 'string' ? text : new TextDecoder().decode(text);
    const job = { text: typeof text === 'string' ? new TextEncoder().encode(text) : text,
      request: { file, advice } };
    this.#job = job;
    return this.#outcome({ call: 'open', kind: 'open', ofJob: true, job });
  }

  findings() {
    return this.#ofJob('findings');
  }
  report() {
    return this.#bytesOfJob('report');
  }
  sheets() {
    return this.#ofJob('sheets');
  }
  ways() {
    return this.#ofJob('ways');
  }
  pages(sheet) {
    return this.#ofJob('pages', { sheet });
  }
  async pageSvg(sheet, page = 0) {
    return new TextDecoder().decode(await this.#bytesOfJob('page_svg', { sheet, page }));
  }
  sheetPdf(sheet, { created } = {}) {
    return this.#bytesOfJob('sheet_pdf', { sheet, created });
  }
  file(name, { created } = {}) {
    return this.#bytesOfJob('file', { name, created });
  }

  // Of one kind of picture, and of places to look from, the newest is the one that is wanted; several
  // of one kind that are to be there side by side are told apart by `key`.
  plan(size = {}) {
    return this.#picture('plan', size);
  }
  cover(bumper, size = {}) {
    return this.#picture('cover', { bumper, ...size });
  }
  cutThrough(size = {}) {
    return this.#picture('cut_through', size);
  }
  view(observer = {}, size = {}) {
    return this.#picture('view', { ...observer, ...size });
  }
  chart(observer = {}, size = {}) {
    return this.#picture('chart', { ...observer, ...size });
  }
  async verdict(observer = {}, { key } = {}) {
    return (await this.#askOfShown('verdict', { ...observer, key })).said;
  }
  async verdicts() {
    return (await this.#askOfShown('verdicts')).said;
  }

  async files({ kinds, created, onFile, signal } = {}) {
    const answer = await this.#made({ request: { kinds, created }, onFile, signal });
    return answer.said;
  }
  async zip({ created, add, onFile, signal } = {}) {
    const answer = await this.#made({ request: { created, add, archive: true }, onFile, signal });
    return answer.bytes;
  }

  read(text, { file } = {}) {
    return this.#said('read', { text, file });
  }
  namedFiles(text) {
    return this.#said('named_files', { text });
  }
  set(text, key, value, { file } = {}) {
    return this.#outcome({ call: 'ask', request: { ask: 'set', text, key, value, file } });
  }
  remove(text, key, { file } = {}) {
    return this.#outcome({ call: 'ask', request: { ask: 'remove', text, key, file } });
  }
  keysOf(text, subject) {
    return this.#said('keys_of', { text, subject });
  }
  fields(text, { file } = {}) {
    return this.#outcome({ call: 'ask', request: { ask: 'fields', text, file } });
  }
  typed(text, key, typed, { steps, file } = {}) {
    return this.#outcome({ call: 'ask', request: { ask: 'typed', text, key, typed, steps, file } });
  }
  moved(subjects, mm, { snap, text = this.#lastText } = {}) {
    const request = { ask: 'move', text, subjects, mm, snap };
    return this.#outcome({ call: 'ask', ofShown: true, request });
  }
  words() {
    return this.#said('words');
  }
  choices() {
    return this.#said('choices');
  }
  async newText() {
    return (await this.#said('new_text')).text;
  }
  questions(answers = []) {
    return this.#said('questions', { answers });
  }
  newJob(answers) {
    return this.#outcome({ call: 'ask', request: { ask: 'job_of_answers', answers } });
  }
  kinds() {
    return this.#said('kinds');
  }
  jobOfKind(kind) {
    return this.#outcome({ call: 'ask', request: { ask: 'job_of_kind', kind } });
  }
  async labelFont() {
    return (await this.#ask({ call: 'ask', request: { ask: 'label_font' } })).bytes;
  }
  lookAtFont(name) {
    return this.#outcome({ call: 'ask', request: { ask: 'look_at_font', name } });
  }

  close() {
    this.#closed = true;
    for (const task of [...this.#waiting, this.#running])
      if (task) this.#settle(task, new Failed('the core was closed'));
    this.#waiting = [];
    this.#endWorker();
  }

  // --- requests ---------------------------------------------------------------------------------

  async #said(ask, more = {}) {
    return (await this.#ask({ call: 'ask', request: { ask, ...more } })).said;
  }
  /** Newer requests overtake those that ask the same of the same thing. */
  #askOfJob(ask, more = {}, ofShown = false) {
    const kind = [ask, more.sheet, more.page, more.name, more.key].join(' ');
    return this.#ask({ call: 'ask', kind, ofJob: true, ofShown, request: { ask, ...more } });
  }
  /** Where a job was refused, of the one that was open before. */
  #askOfShown(ask, more) {
    return this.#askOfJob(ask, more, true);
  }
  async #ofJob(ask, more) {
    return (await this.#askOfJob(ask, more)).said;
  }
  async #bytesOfJob(ask, more) {
    return (await this.#askOfJob(ask, more)).bytes;
  }
  async #picture(ask, more) {
    return new TextDecoder().decode((await this.#askOfShown(ask, more)).bytes);
  }
  #made(more) {
    return this.#ask({ call: 'files', kind: 'files', ofJob: true, ...more });
  }

  /** What may be refused: {ok, value} or {ok, faults}. */
  async #outcome(task) {
    const answer = await this.#ask({ ...task, mayRefuse: true });
    return answer.came === kCame.Refused
      ? { ok: false, faults: answer.said }
      : { ok: true, value: answer.said };
  }

  #ask(task) {
    if (this.#closed) return Promise.reject(new Failed('the core was closed'));
    if (task.signal?.aborted) return Promise.reject(new Failed(kStopped));
    if (task.kind !== undefined)
      for (const other of [...this.#waiting, this.#running])
        if (other?.kind === task.kind) this.#overtake(other);
    return new Promise((resolve, reject) => {
      const asked = { ...task, resolve, reject };
      task.signal?.addEventListener('abort', () => this.#stop(asked));
      this.#waiting.push(asked);
      this.#next();
    });
  }

  #settle(task, outcome) {
    if (task.settled) return;
    task.settled = true;
    if (outcome instanceof Error) task.reject(outcome);
    else task.resolve(outcome);
  }

  /** The one that is at work goes on for a while: ending it costs more than most of them take. */
  #overtake(task) {
    this.#settle(task, new Overtaken());
    this.#giveUp(task);
  }
  #stop(task) {
    this.#settle(task, new Failed(kStopped));
    this.#giveUp(task);
  }
  #giveUp(task) {
    this.#waiting = this.#waiting.filter((other) => other !== task);
    if (task !== this.#running || task.patience) return;
    if (task.call === 'files') this.#worker?.postMessage({ stop: task.id });
    task.patience = setTimeout(() => {
      // Where the worker is only on its way the next request wants it as well.
      if (task !== this.#running || !this.#worker) return;
      this.#endWorker();
      this.#done(task);
    }, kPatience);
  }

  // --- the worker -------------------------------------------------------------------------------

  #next() {
    if (this.#running || this.#waiting.length === 0) return;
    const task = (this.#running = this.#waiting.shift());
    this.#worker?.ref?.();
    const end = (outcome) => {
      this.#done(task); // the worker has its next request before whoever asked takes up this answer
      this.#settle(task, outcome);
    };
    this.#work(task).then(end, end);
  }

  #done(task) {
    clearTimeout(task.patience);
    if (task !== this.#running) return;
    this.#running = null;
    this.#worker?.unref?.();
    this.#next();
  }

  /** What there is to send at once is sent at once. */
  async #work(task) {
    if (!this.#isPrepared()) await this.#prepare(task);
    if (task.settled) throw new Overtaken();
    if (task.call === 'nothing') return null;
    if (task.call === 'open') return this.#openJob(task, task.job);
    const job = this.#jobFor(task);
    if (job && job !== this.#opened) await this.#openJob(task, job);
    if (task.settled) throw new Overtaken();
    const answer = await this.#send(task, { call: task.call, request: task.request });
    return this.#checked(answer, task);
  }

  #isPrepared() {
    return this.#worker !== null && [...this.#files.keys()].every((name) => this.#given.has(name));
  }

  /** A worker, with the files that jobs may name. */
  async #prepare(task) {
    if (!this.#worker) {
      this.#given.clear();
      this.#opened = null;
      const module = await this.wasm.catch((error) => {
        throw new Failed(`the core cannot be loaded: ${error.message}`);
      });
      const worker = await this.#options.worker();
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
    if (task.ofJob && this.#job) return this.#job;
    if (task.ofJob && !task.ofShown) throw new Failed('no job is open');
    return task.ofShown ? this.#shown : null;
  }

  async #openJob(task, job) {
    const drop = () => {
      if (this.#job === job) this.#job = null;
      if (this.#shown === job) this.#shown = null;
    };
    try {
      const answer = await this.#send(task, { call: 'open', ...job });
      this.#checked(answer, { mayRefuse: true });
      if (answer.came === kCame.Done) this.#opened = this.#shown = job;
      else drop();
      return answer;
    } catch (error) {
      if (!task.settled) drop(); // it would end the next instance as well
      throw error;
    }
  }

  #checked(answer, task) {
    if (answer.came === kCame.Done || (answer.came === kCame.Refused && task.mayRefuse)) return answer;
    throw new Failed(answer.came === kCame.Refused
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
        if (worker === this.#worker) this.#endWorker();
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

  #endWorker() {
    if (!this.#worker) return;
    const worker = this.#worker;
    this.#worker = null;
    this.#opened = null;
    if (!this.#closed) this.ended += 1;
    worker.terminate();
    worker.stopWaiting?.();
  }
}
