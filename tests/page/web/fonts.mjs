// What the paths with fonts of one's own do, ask and put in the browser's way.
import { readFileSync } from 'node:fs';
import { changed, wait } from '../browser.mjs';
import { Swathe, exampleText, pathsIn } from '../suite.mjs';

export const kFile = 'tin-heron.toml';
export const kTitle = 'Tin Heron, spring covers';
export const kText = exampleText();
export const kOwn = changed(kText, ['"Anton"', '"own.ttf"']);
export const titled = (text, title) => changed(text, [kTitle, title]);

const bytesOf = (where, like) => readFileSync(pathsIn(where, like)[0]);
export const kFont = bytesOf('fonts-open/bebas-neue', /\.otf$/);
export const kOther = bytesOf('fonts-open/staatliches', /\.ttf$/);

/** Every fault that the page shows, be it for one painting. */
export function watchFaults() {
  window.shown = [];
  new MutationObserver(() => {
    for (const one of document.querySelectorAll('.faults, .font .notice, .notes .strong')) window.shown.push(one.textContent);
  }).observe(document, { childList: true, subtree: true });
}
export const shown = (person) => person.page.evaluate(() => window.shown.splice(0).join('\n'));

/** Cores that end where they are given a file, where the test says so. */
export function endAtFiles() {
  const Real = window.Worker;
  window.Worker = class extends Real {
    postMessage(message, ...more) {
      if (message.call !== 'give' || !window.endsAtFiles) return super.postMessage(message, ...more);
      setTimeout(() => this.onerror?.(new ErrorEvent('error', { message: 'made to end' })), 10);
    }
  };
}

/** The ways in which a browser may keep no files. */
export const kRefusals = {
  refused: () => Object.defineProperty(window, 'indexedDB', { get() { throw new DOMException('no', 'SecurityError'); } }),
  absent: () => Object.defineProperty(window, 'indexedDB', { value: undefined }),
  asleep: () => (IDBFactory.prototype.open = () => ({})),
  full: () => (IDBObjectStore.prototype.put = () => {
    throw new DOMException('full', 'QuotaExceededError');
  }),
};

/** A browser that is slow in looking for what it keeps. */
export function lateFiles() {
  const { open } = IDBFactory.prototype;
  IDBFactory.prototype.open = function (...given) {
    const late = {};
    setTimeout(() => {
      const asked = open.apply(this, given);
      for (const what of ['onupgradeneeded', 'onsuccess', 'onerror'])
        asked[what] = (event) => (Object.assign(late, { result: asked.result, transaction: asked.transaction }), late[what]?.(event));
    }, 4000);
    return late;
  };
}

/** The files that are kept, each as "TITLE OF ITS JOB: NAME SIZE". */
export const keptFiles = (person) => person.page.evaluate(() => new Promise((done) => {
  const asked = indexedDB.open('swathe');
  asked.onupgradeneeded = () => asked.transaction.abort(); // nobody has made it yet
  asked.onerror = () => done('');
  asked.onsuccess = () => {
    const base = asked.result, found = [];
    base.transaction('files').objectStore('files').openCursor().onsuccess = ({ target: { result: at } }) => {
      if (at) {
        const job = localStorage[`swathe.job.${at.key[0]}`];
        found.push(`${job ? JSON.parse(job).title : 'nothing'}: ${at.key[1]} ${at.value.length}`);
        at.continue();
      } else {
        base.close();
        done(found.sort().join(', '));
      }
    };
  };
}));
export async function untilKept(person, what, wanted) {
  let found;
  for (let k = 0; k < 100 && found !== wanted; ++k) {
    await wait(100);
    found = await keptFiles(person);
  }
  person.equal(what, found, wanted);
}
export const size = (bytes, title = kTitle) => `${title}: own.ttf ${bytes.length}`;

/** As if dropped on the page, or on the field for it. */
export const drop = (person, files, where = 'body') => person.page.evaluate((all, selector) => {
  const data = new DataTransfer();
  for (const [name, signs] of all)
    data.items.add(new File([Uint8Array.from(atob(signs), (one) => one.charCodeAt(0))], name));
  document.querySelector(selector).dispatchEvent(
    new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
}, Object.entries(files).map(([name, bytes]) => [name, Buffer.from(bytes).toString('base64')]), where);
export async function dropOnField(person, bytes) {
  await drop(person, { 'own.ttf': bytes }, '[data-key="numerals.font"] .font');
  await person.until('its name in the job', () =>
    document.querySelector('[data-key="numerals.font"] select').value === 'own.ttf');
  await wait(100);
  await person.found();
}
/** The digits on the cover once they are drawn, at any size: which of the places in each are filled. */
export async function drawn(person) {
  await person.found();
  await person.until('no fault', () => document.querySelector('.faults') === null);
  await person.settled();
  return person.page.evaluate(() => [...document.querySelectorAll('.pane.cover .numeral path')].map((digit) => {
    const { x, y, width, height } = digit.getBBox();
    return Array.from({ length: 144 }, (_, k) => Number(digit.isPointInFill(
      new DOMPoint(x + (((k % 12) + 0.5) / 12) * width, y + ((Math.floor(k / 12) + 0.5) / 12) * height)))).join('');
  }).join(''));
}
/** The same, once they are others than those. */
export async function drawnAnew(person, than) {
  let found = than;
  for (let k = 0; k < 100 && alike(found, than); ++k) {
    await wait(50);
    found = await drawn(person);
  }
  return found;
}
/** But for what is on an outline. */
export function alike(a, b) {
  return a !== '' && a.length === b.length && [...a].filter((sign, k) => sign !== b[k]).length < 0.03 * a.length;
}
export async function openKept(person, title) {
  await person.press(`Open ${title}`);
  await person.untilSaid(title, 'h1');
}
/** Single files and the archive, which two other cores make, are those of a core that knows this font alone. */
export async function isPrintedWith(person, text, font) {
  const core = new Swathe();
  await core.give('own.ttf', font);
  await core.open(text, { file: 'other.toml' });
  await person.press('Print');
  const count = await person.handedCount();
  await person.until('sheets of this job', () =>
    document.querySelector('[aria-label="Save numerals.pdf"]')?.disabled === false);
  await person.press('Save numerals.pdf');
  person.check('its sheets, too', (await person.saved(count)).bytes.equals(Buffer.from(await core.file('numerals.pdf'))));
  await person.press('Download all sheets (zip)');
  person.check('and its zip', (await person.saved(count + 1)).bytes.equals(Buffer.from(await core.zip({ add: ['own.ttf'] }))));
  core.close();
}
export const reload = (person) => person.page.reload();
