// The page in a real browser, used as a person uses it: what is there is found by its role and its
// accessible name. Each Person finds a storage where nothing is, and the network is cut off.
import { mkdtempSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { check, folder, kTop } from './suite.mjs';

export const kPage = resolve(process.env.SWATHE_PAGE ?? join(kTop, 'build-page/swathe.html'));
/** A folder for pictures of the page; none are made where it is not given. */
export const kPictures = process.env.SWATHE_PAGE_PICTURES;

// Not beside this file: run.sh has it fetched into the build's folder.
export const driver = createRequire(join(process.env.SWATHE_PAGE_DRIVER ?? join(kTop, 'build-page/browsers'), 'any.js'));
const { default: puppeteer } = await import(pathToFileURL(driver.resolve('puppeteer-core')));

/** Nobody listens there: whatever is asked for over a network fails. This machine itself is no network. */
const kNowhere = '127.0.0.1:9';
const kBrowsers = {
  Chromium: {
    executablePath: '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--no-first-run', `--proxy-server=http://${kNowhere}`,
      '--disable-features=PreloadTopChromeWebUI,WebUIReloadButton,TabSearchPositionSetting'],
  },
  Firefox: {
    browser: 'firefox', executablePath: '/usr/bin/firefox-esr',
    extraPrefsFirefox: {
      'network.proxy.type': 1, 'network.proxy.http': '127.0.0.1', 'network.proxy.http_port': 9,
      'network.proxy.ssl': '127.0.0.1', 'network.proxy.ssl_port': 9,
    },
  },
};

/** How long something may take before it is said that it never came, in milliseconds. */
const kPatience = Number(process.env.SWATHE_PAGE_PATIENCE ?? 60_000);
export const wait = (ms) => new Promise((done) => setTimeout(done, ms));

/** One browser for the whole suite. */
export async function browse(name, work) {
  const profile = mkdtempSync(join(tmpdir(), 'swathe-browser-'));
  const browser = await puppeteer.launch({
    headless: true, userDataDir: profile, protocolTimeout: 300_000, ...kBrowsers[name],
  });
  try {
    await work(browser);
  } finally {
    await browser.close();
    rmSync(profile, { recursive: true, force: true });
  }
}

/** Keeps what the page hands to the browser to be saved, and addresses of what it opens. */
function keepWhatIsHanded() {
  const made = new Map();
  window.handed = [];
  window.opened = made;
  const create = URL.createObjectURL.bind(URL);
  URL.createObjectURL = (blob) => {
    const address = create(blob);
    made.set(address, blob);
    return address;
  };
  const click = HTMLAnchorElement.prototype.click;
  HTMLAnchorElement.prototype.click = function () {
    if (!this.hasAttribute('download')) return click.call(this);
    window.handed.push({ name: this.download, blob: made.get(this.href) });
    if (window.reallySaved) click.call(this);
  };
}

/** Empties what the browser keeps; how much of it makes the page another one. */
async function takenOut() {
  await new Promise((done) => {
    const asked = indexedDB.deleteDatabase('swathe');
    asked.onsuccess = asked.onerror = done;
  }).catch(() => {}); // refused
  const { length } = localStorage;
  localStorage.clear();
  return length;
}

/** Of a Blob in the page, as text that may travel. */
async function packed(blob) {
  const bytes = new Uint8Array(await blob.arrayBuffer());
  let signs = '';
  for (let k = 0; k < bytes.length; k += 0x8000) signs += String.fromCharCode(...bytes.subarray(k, k + 0x8000));
  return btoa(signs);
}

export class Person {
  constructor(browser, page, what) {
    Object.assign(this, { browser, page, what });
    page.setDefaultTimeout(kPatience);
    this.trouble = []; // in the console
    this.asked = []; // addresses
    this.watch(page);
  }

  /** `before`: functions that run in the page before its own scripts. */
  static async come(browser, what, { address = pathToFileURL(kPage).href, width = 1366, height = 620, before = [] } = {}) {
    const page = await browser.newPage();
    const person = new Person(browser, page, what);
    await page.setViewport({ width, height });
    person.before = [keepWhatIsHanded, ...before];
    for (const script of person.before) await page.evaluateOnNewDocument(script);
    await page.goto(address);
    const left = await page.evaluate(takenOut).catch(() => 0); // not where storage is refused
    if (left > 0) await page.reload();
    return person;
  }

  /** The same person in another tab. */
  async another(address = pathToFileURL(kPage).href) {
    const page = await this.browser.newPage();
    const there = new Person(this.browser, page, this.what);
    there.trouble = this.trouble;
    there.asked = this.asked;
    await page.setViewport(this.page.viewport());
    for (const script of this.before) await page.evaluateOnNewDocument(script);
    await page.goto(address);
    return there;
  }

  watch(page) {
    page.on('console', (message) => {
      if (['error', 'warn', 'warning', 'assert'].includes(message.type())) this.trouble.push(`console: ${message.text()}`);
    });
    page.on('pageerror', (error) => this.trouble.push(`error: ${error.stack ?? error}`));
    page.on('request', (request) => this.asked.push(request.url()));
    page.on('dialog', (dialog) => {
      this.trouble.push(`dialog: ${dialog.message()}`);
      void dialog.dismiss();
    });
  }
  async leave() {
    // After the page's own last words, which keep the job.
    await Promise.race([wait(3000), this.page.evaluate(() =>
      window.addEventListener('pagehide', () => localStorage.clear())).catch(() => {})]);
    await this.page.close();
  }

  // --- finding ------------------------------------------------------------------------------------

  find(role, name, within = this.page) {
    return within.waitForSelector(`::-p-aria([name="${name}"][role="${role}"])`);
  }
  async there(role, name, within = this.page) {
    const found = await within.$(`::-p-aria([name="${name}"][role="${role}"])`);
    await found?.dispose();
    return found !== null;
  }
  region(name) {
    return this.find('region', name);
  }
  async press(name, within, role = 'button') {
    // What is shown anew while a hand is on its way is pressed where it then stands.
    for (let tries = 0; ; ++tries) {
      const found = await this.find(role, name, within);
      try {
        // Scrolled to where it can be pressed, and pressed where it then lies.
        await found.evaluate((element) => element.scrollIntoView({ block: 'nearest' }));
        await found.click();
        return;
      } catch (error) {
        if (tries > 0 || !/detached/.test(String(error))) throw error;
      } finally {
        await found.dispose();
      }
    }
  }
  /** As they are read: where a line may not break is no other space. */
  async words(within = this.page) {
    return (await within.evaluate((element) => (element ?? document.body).innerText)).replaceAll('\u00a0', ' ');
  }
  /** What a region says. */
  async said(region) {
    return this.words(await this.region(region));
  }

  /** Asks the page again and again. */
  async until(what, holds, ...given) {
    const end = Date.now() + kPatience;
    for (;;) {
      const found = await this.page.evaluate(holds, ...given);
      if (found) return found;
      if (Date.now() > end) throw new Error(`it never came: ${what}`);
      await wait(40);
    }
  }
  /** In the body stand the scripts, too, and all that they may say. */
  async untilSaid(words, within = '#page') {
    return this.until(`"${words}"`, (wanted, where) =>
      [...document.querySelectorAll(where)].some((one) => one.textContent.replaceAll('\u00a0', ' ').includes(wanted)), words, within);
  }
  /** A fault among those that "Rules" lists, in the core's words: it is said with the fields' labels. */
  async untilFault(sentence) {
    return this.until(`"${sentence}"`, (wanted) =>
      [...document.querySelectorAll('.faults li p')].some((one) => one.title === wanted), sentence);
  }
  /** Nothing is worked out, drawn or moved any more. */
  async settled() {
    let still = 0;
    const end = Date.now() + kPatience;
    while (still < 3) {
      const busy = await this.page.evaluate(() => new Promise((done) => {
        const ask = () => done(document.querySelector('.stage.moving, [aria-busy=true]') !== null);
        setTimeout(() => requestAnimationFrame(ask), 25);
      }));
      still = busy ? 0 : still + 1;
      if (Date.now() > end) throw new Error('it never came to rest');
    }
  }

  // --- the job ------------------------------------------------------------------------------------

  /** A file, as if chosen. */
  async give(name, text) {
    const where = join(folder(), name);
    writeFileSync(where, text);
    const chooser = await this.page.waitForSelector('input[type=file]');
    await chooser.uploadFile(where);
    await chooser.dispose();
  }
  async choose(name, text) {
    await this.give(name, text);
    await this.until(`${name} on the page`, (wanted) => document.querySelector('h1')?.textContent.includes(wanted), name);
  }
  async openJob(name, text) {
    await this.choose(name, text);
    await this.found();
  }
  /** Pictures and findings are there. */
  async found() {
    await this.until('pictures and findings', () =>
      document.querySelectorAll('.stage svg').length >= 2 && document.querySelector('.findings') !== null);
    await this.settled();
  }

  /** What the page would save, by the key for it. */
  async jobText() {
    const count = await this.page.evaluate(() => window.handed.length);
    await this.page.keyboard.down('Control');
    await this.page.keyboard.press('s');
    await this.page.keyboard.up('Control');
    return (await this.saved(count)).bytes.toString();
  }
  /** The file that was handed to the browser after so many others. */
  async saved(count = 0) {
    const name = await this.until('a file to save', (after) => window.handed[after]?.name, count);
    const signs = await this.page.evaluate(`(${packed})(window.handed[${count}].blob)`);
    return { name, bytes: Buffer.from(signs, 'base64') };
  }
  handedCount() {
    return this.page.evaluate(() => window.handed.length);
  }
  /** The bytes behind an address that the page made. */
  async madeAt(address) {
    const signs = await this.page.evaluate(`(${packed})(window.opened.get(${JSON.stringify(address)}))`);
    return Buffer.from(signs, 'base64');
  }

  /** The field of this name, ready for something else than what stands there. */
  async select(name, within) {
    const field = await this.find('textbox', name, within);
    await field.evaluate((element) => {
      element.scrollIntoView({ block: 'nearest' });
      element.focus();
      element.select();
    });
    return field;
  }
  /** As if pasted: all at once, where what is typed key by key may be a value on the way. */
  async putIn(name, words, within) {
    const field = await this.select(name, within);
    await field.evaluate((element, all) => document.execCommand('insertText', false, all), words);
    await field.dispose();
  }
  /** Types into the field of this name, in place of what stands there. */
  async fill(name, words, within) {
    const field = await this.select(name, within);
    if (words === '') await this.page.keyboard.press('Backspace');
    else await this.page.keyboard.type(words);
    await field.dispose();
  }
  valueOf(name, within) {
    return this.find('textbox', name, within).then((field) => field.evaluate((element) => element.value));
  }

  async showText() {
    await this.press('Text');
    const editor = await this.find('textbox', 'Job as text');
    await editor.focus();
    await editor.dispose();
  }
  /** Puts other words in place of a line of the text, which is shown. */
  async retype(line, words) {
    const { keyboard } = this.page;
    const both = async (modifier, key) => {
      await keyboard.down(modifier);
      await keyboard.press(key);
      await keyboard.up(modifier);
    };
    await this.goToLine(line);
    await keyboard.press('Home');
    await both('Shift', 'End');
    await keyboard.type(words);
  }

  /** By arrow keys, which take a long line in several steps. */
  async goToLine(line) {
    const { keyboard } = this.page;
    await keyboard.down('Control');
    await keyboard.press('Home');
    await keyboard.up('Control');
    for (let k = 0; k < 500; ++k) {
      const [at, text] = await this.page.evaluate(() => {
        const active = document.querySelector('.cm-activeLine');
        return [[...active.parentNode.children].indexOf(active) + 1, active.textContent];
      });
      if (at === line) return text;
      await keyboard.press('ArrowDown');
    }
    throw new Error(`there is no line ${line}`);
  }

  async undoAll() {
    for (let k = 0; k < 500; ++k) {
      const on = await this.page.evaluate(() => {
        const undo = [...document.querySelectorAll('button')].find((one) => one.textContent === 'Undo');
        if (undo?.getAttribute('aria-disabled') !== 'false') return false;
        undo.click();
        return true;
      });
      if (!on) return k;
    }
    throw new Error('Undo never comes to an end');
  }
  async undo() {
    await this.press('Undo');
    await this.settled();
  }

  // --- dragging -----------------------------------------------------------------------------------

  /** The handle of a part in a picture, in the middle of the view. */
  async handle(region, name) {
    const handle = await this.find('slider', name, await this.region(region));
    await handle.evaluate((element) => element.scrollIntoView({ block: 'nearest' }));
    return handle;
  }
  /** Drags it by so many millimeters along its way, or to `to`; with `keep` it is let go of. */
  async drag(region, name, mm, { steps = 8, keep = true, key = null } = {}) {
    const handle = await this.handle(region, name);
    const at = await handle.evaluate((element) => {
      const { left, top, width, height } = element.getBoundingClientRect();
      const svg = element.closest('.stage').querySelector('svg');
      return {
        x: left + width / 2, y: top + height / 2,
        turn: (Math.PI * Number.parseFloat(element.style.getPropertyValue('--turn'))) / 180,
        mmPerPx: Number(svg.dataset.mmPerPx) * svg.viewBox.baseVal.width / svg.getBoundingClientRect().width,
      };
    });
    const px = mm / at.mmPerPx;
    const { mouse } = this.page;
    await mouse.move(at.x, at.y);
    await mouse.down();
    for (let k = 1; k <= steps; ++k) {
      await mouse.move(at.x + (k / steps) * px * Math.cos(at.turn), at.y + (k / steps) * px * Math.sin(at.turn));
      await wait(20);
    }
    if (key) await this.page.keyboard.press(key);
    if (keep) await mouse.up();
    if (keep) await this.settled();
    await handle.dispose();
  }

  // --- telling ------------------------------------------------------------------------------------

  check(what, holds, detail) {
    return check(`${this.what}: ${what}`, holds, detail);
  }
  equal(what, found, wanted) {
    return this.check(what, found === wanted, `found:  ${found}\nwanted: ${wanted}`);
  }
  async picture(name) {
    if (!kPictures) return;
    mkdirSync(kPictures, { recursive: true });
    await this.page.screenshot({ path: join(kPictures, `${name}.png`) });
  }
}

const kOnly = process.env.SWATHE_PAGE_ONLY;
let few = /./;
/** Of the paths that come, those with such names alone. */
export function takeFew(names) {
  few = names;
}

/** One path of a person: where it breaks off, that is what is not ok. */
export async function path(browser, what, options, work) {
  if (!few.test(what) || (kOnly && !new RegExp(kOnly).test(what))) return;
  let person;
  try {
    person = await Person.come(browser, what, options);
    await work(person);
    person.check('nothing in the console', person.trouble.length === 0, person.trouble.join('\n'));
    const foreign = person.asked.filter((address) =>
      !/^(blob:|data:|about:)/.test(address) && address.replace(/[#?].*$/, '') !== (options.address ?? pathToFileURL(kPage).href).replace(/[#?].*$/, ''));
    person.check('nothing is asked for but the page and its blobs', foreign.length === 0, foreign.join('\n'));
  } catch (error) {
    check(`${what}: it goes to its end`, false, [error.stack, ...(person?.trouble ?? [])].join('\n'));
    if (person && kPictures) await person.picture(`broken-off-${what.replace(/\W+/g, '-')}`).catch(() => {});
  } finally {
    await person?.leave();
  }
}

/** A job's text with a part of it changed, which has to be there once. */
export function changed(text, ...changes) {
  let now = text;
  for (const [old, anew] of changes) {
    if (now.split(old).length !== 2) throw new Error(`not there once: ${old}`);
    now = now.replace(old, () => anew);
  }
  return now;
}
export const bytesOf = (path) => readFileSync(path);
