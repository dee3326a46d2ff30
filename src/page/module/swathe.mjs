// The core for a page or for node, as promises. It runs in a worker of its own, one request after
// another; what it is asked is said in swathe.d.ts.
import { Came, Failed, Instance } from './instance.mjs';
import { Overtaken, Queue } from './queue.mjs';

export { Failed, Overtaken };

export class Swathe {
  #instance;
  #queue;
  #lastText = ''; // what was opened last, though it may have been refused

  constructor(options = {}) {
    this.#instance = new Instance(options);
    this.#queue = new Queue(this.#instance);
  }

  get wasm() {
    return this.#instance.wasm;
  }
  get ended() {
    return this.#instance.ended;
  }
  get memory() {
    return this.#instance.memory;
  }

  ready() {
    return this.#queue.ask({ call: 'nothing' });
  }

  give(name, bytes) {
    this.#instance.give(name, bytes);
    return this.ready();
  }
  takeAway(name) {
    this.#instance.takeAway(name);
  }

  open(text, { file = 'job.toml', advice = true } = {}) {
    this.#lastText = typeof text === 'string' ? text : new TextDecoder().decode(text);
    const job = { text: typeof text === 'string' ? new TextEncoder().encode(text) : text,
      request: { file, advice } };
    return this.#outcome({ call: 'open', ofJob: true, job });
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
  fromCorner(text, key) {
    return this.#outcome({ call: 'ask', ofShown: true, request: { ask: 'from_corner', text, key } });
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
    return (await this.#queue.ask({ call: 'ask', request: { ask: 'label_font' } })).bytes;
  }
  lookAtFont(name) {
    return this.#outcome({ call: 'ask', request: { ask: 'look_at_font', name } });
  }

  close() {
    this.#queue.close();
    this.#instance.close();
  }

  async #said(ask, more = {}) {
    return (await this.#queue.ask({ call: 'ask', request: { ask, ...more } })).said;
  }
  /** Newer requests overtake those that ask the same of the same thing. */
  #askOfJob(ask, more = {}, ofShown = false) {
    const kind = [ask, more.sheet, more.page, more.name, more.key].join(' ');
    return this.#queue.ask({ call: 'ask', kind, ofJob: true, ofShown, request: { ask, ...more } });
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
    return this.#queue.ask({ call: 'files', kind: 'files', ofJob: true, ...more });
  }

  /** What may be refused: {ok, value} or {ok, faults}. */
  async #outcome(task) {
    const answer = await this.#queue.ask({ ...task, mayRefuse: true });
    return answer.came === Came.Refused
      ? { ok: false, faults: answer.said }
      : { ok: true, value: answer.said };
  }
}
