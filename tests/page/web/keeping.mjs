// A job is saved, kept, forgotten, shared, and open in two tabs; with own fonts.
import { createServer } from 'node:http';
import { readFileSync } from 'node:fs';
import { changed, kPage, path, wait } from '../browser.mjs';
import { exampleText, pathsIn } from '../suite.mjs';
import { ownFonts } from './own_fonts.mjs';

const kText = exampleText();
const kFile = 'tin-heron.toml';
const kTitle = 'Tin Heron, spring covers';
const kTitled = (title) => kText.replace(kTitle, title);

/** What is written to the clipboard, where the browser lets a page write. */
function keepWhatIsCopied() {
  window.copied = [];
  Object.defineProperty(navigator, 'clipboard', { value: {
    writeText: async (text) => void window.copied.push(text),
  } });
}
function refuseStorage() {
  Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError'); } });
}
function fullStorage() {
  const setItem = Storage.prototype.setItem;
  window.full = true;
  Storage.prototype.setItem = function (...given) {
    if (window.full) throw new DOMException('full', 'QuotaExceededError');
    setItem.apply(this, given);
  };
}

/** Until what was edited is kept: it is a moment after the edit. */
const kept = (person, text) => person.until('the job kept', (wanted) => Object.keys(localStorage)
  .some((key) => key.startsWith('swathe.job.') && JSON.parse(localStorage[key]).text === wanted), text);

export async function keeping(browser) {
  await path(browser, 'saved, closed, opened again', {}, async (person) => {
    await person.openJob(kFile, kText);
    await person.fill('Title', 'Autumn covers');
    await person.untilSaid('Autumn covers', 'h1');
    await person.settled();
    const count = await person.handedCount();
    await person.press('Save job');
    const { name, bytes } = await person.saved(count);
    person.equal('the file has its name', name, kFile);
    person.equal('and the job\'s text', bytes.toString(), kTitled('Autumn covers'));
    await kept(person, kTitled('Autumn covers'));
    await person.page.reload();
    await person.find('button', 'Begin');
    person.check('opened again the page shows no job until it is asked', await person.page.$('.stage') === null);
    await person.press('Open Autumn covers');
    await person.found();
    person.equal('the kept job is as it was left', await person.jobText(), kTitled('Autumn covers'));
    await person.press('New');
    await person.openJob(kFile, bytes.toString());
    await person.press('New');
    person.equal('the same file again is the same job', await person.page.evaluate(() =>
      Object.keys(localStorage).filter((key) => key.startsWith('swathe.job.')).length), 1);
    await person.openJob(kFile, kText);
    await kept(person, kText);
    await person.press('New');
    person.check('another file opens beside it', await person.there('button', 'Open Autumn covers') &&
      await person.there('button', `Open ${kTitle}`));
    await person.press('Forget Autumn covers');
    await person.find('button', 'Undo: keep Autumn covers');
    person.check('what is forgotten is gone', !(await person.there('button', 'Open Autumn covers')));
    await person.press('Undo: keep Autumn covers');
    await person.press('Open Autumn covers');
    await person.found();
    person.equal('and can be had back', await person.jobText(), kTitled('Autumn covers'));
    await person.press('Forget');
    await person.find('button', 'Begin');
    person.check('Forget takes the open one out', !(await person.there('button', 'Open Autumn covers')));
    await person.page.reload();
    await person.find('button', `Open ${kTitle}`);
    person.check('for good once the page is closed', !(await person.there('button', 'Undo: keep Autumn covers')));
  });

  await path(browser, 'shared from a file', { before: [keepWhatIsCopied] }, async (person) => {
    await person.openJob(kFile, kText);
    await person.press('Copy job as text');
    await person.untilSaid('copied as text');
    person.equal('the clipboard has the text', await person.page.evaluate(() => window.copied.join()), kText);
    await person.press('New');
    await person.page.evaluate((text) => {
      const data = new DataTransfer();
      data.setData('text/plain', text);
      document.activeElement?.blur();
      document.body.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
    }, kTitled('From a friend'));
    await person.found();
    person.equal('pasted it is the job', await person.jobText(), kTitled('From a friend'));
  });

  await shared(browser);

  await path(browser, 'a font is dropped', {}, async (person) => {
    const [file] = pathsIn('tests/fuzz/corpus/font', /^osp-din\.woff2$/);
    const bytes = readFileSync(file);
    await person.openJob(kFile, kText);
    const drop = (name, base64) => person.page.evaluate((called, signs) => {
      const data = new DataTransfer();
      data.items.add(new File([Uint8Array.from(atob(signs), (one) => one.charCodeAt(0))], called));
      document.querySelector('[data-key="numerals.font"] select').dispatchEvent(
        new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
    }, name, base64);
    await drop('broken.ttf', Buffer.from('no font at all').toString('base64'));
    await person.until('why it is none', () =>
      document.querySelector('[data-key="numerals.font"] [role=alert]')?.innerText.length > 10);
    person.equal('a broken one changes nothing', await person.jobText(), kText);
    const inFolder = kText.replace('"Anton"', '"fonts/own.woff2"');
    await person.choose('in-folder.toml', inFolder);
    await person.untilSaid('fonts/own.woff2', '[role=status]');
    await person.give('own.woff2', bytes);
    await person.until('no fault', () => document.querySelector('.faults') === null);
    person.equal('one that the job names within a folder is taken for that', await person.jobText(), inFolder);
    await person.choose(kFile, kText);
    await person.found();
    await drop('own.woff2', bytes.toString('base64'));
    await person.until('its name in the job', () =>
      document.querySelector('[data-key="numerals.font"] select').value === 'own.woff2');
    await person.settled();
    const text = await person.jobText();
    person.equal('a whole one is named in the job', text, kText.replace('"Anton"', '"own.woff2"'));
    await person.until('no fault', () => document.querySelector('.faults') === null);
    await drop('own.woff2', Buffer.from('no font at all').toString('base64'));
    await person.until('why it is none', () =>
      document.querySelector('[data-key="numerals.font"] [role=alert]')?.innerText.length > 10);
    await person.settled();
    person.check('a broken one of the same name does not take its place', await person.page.evaluate(() =>
      document.querySelector('.faults') === null));
    const count = await person.handedCount();
    await person.press('Print');
    await person.press('Download all sheets (zip)');
    const zip = await person.saved(count);
    person.check('the zip has the file', zip.bytes.includes('own.woff2'));
    await person.undoAll();
    person.equal('undo goes back to the start', await person.jobText(), kText);
  });

  await ownFonts(browser);

  await path(browser, 'storage refused', { before: [refuseStorage] }, async (person) => {
    await person.untilSaid('keeps nothing for this page');
    await person.openJob(kFile, kText);
    await person.untilSaid('Save your job before you close it', '[role=status]');
    const count = await person.handedCount();
    await person.press('Save job');
    person.equal('the job can be saved', (await person.saved(count)).bytes.toString(), kText);
    await person.fill('Title', 'Autumn covers');
    await person.untilSaid('Autumn covers', 'h1');
    await person.openJob('other.toml', kTitled('Another'));
    await person.press('New');
    await person.untilSaid('until this page is closed', '.kept');
    await person.press('Open Autumn covers');
    await person.untilSaid('Autumn covers', 'h1');
    await person.found();
    person.equal('a job that was edited is there when another one was opened', await person.jobText(), kTitled('Autumn covers'));
    await person.press('New');
    await person.press('Forget Autumn covers');
    await person.press('Undo: keep Autumn covers');
    await person.press('Open Autumn covers');
    await person.untilSaid('Autumn covers', 'h1');
    await person.found();
    person.equal('one that was forgotten can be had back', await person.jobText(), kTitled('Autumn covers'));
  });
  await path(browser, 'storage full', { before: [fullStorage] }, async (person) => {
    await person.openJob(kFile, kText);
    await person.untilSaid('no more room', '[role=status]');
    await person.fill('Title', 'Autumn covers');
    await person.settled();
    person.equal('one can go on', await person.jobText(), kTitled('Autumn covers'));
  });
  await path(browser, 'room made in a full storage', { before: [fullStorage] }, async (person) => {
    await person.page.evaluate(() => (window.full = false));
    await person.openJob('other.toml', kTitled('Another'));
    await kept(person, kTitled('Another'));
    await person.press('New');
    await person.openJob(kFile, kText);
    await kept(person, kText);
    await person.page.evaluate(() => (window.full = true));
    await person.fill('Title', 'Autumn covers');
    await person.untilSaid('no more room', '[role=status]');
    await person.press('New');
    await person.page.evaluate(() => (window.full = false));
    await person.press('Forget Another');
    await kept(person, kTitled('Autumn covers'));
    person.check('what could not be kept is kept then', true);
    await person.page.evaluate(() => (window.full = true));
    await person.press('Undo: keep Another');
    await person.find('button', 'Open Another');
    await person.untilSaid('until this page is closed', '.kept');
    person.check('what was forgotten comes back where there is no room for it, until the page is closed', true);
    await person.page.evaluate(() => (window.full = false));
    await person.press('Forget Another');
    await person.press('Undo: keep Another');
    await kept(person, kTitled('Another'));
    person.check('and is kept where there is', true);
  });

  await path(browser, 'two tabs', {}, async (person) => {
    await person.openJob(kFile, kText);
    await kept(person, kText);
    const second = await person.another();
    await second.press(`Open ${kTitle}`);
    await second.untilSaid('open in another tab');
    await second.found();
    await second.page.bringToFront();
    await second.fill('Title', 'Not kept');
    await second.untilSaid('Not kept', 'h1');
    await wait(900);
    person.equal('what the later one changes is not kept', await second.page.evaluate(() => Object.keys(localStorage)
      .filter((key) => key.startsWith('swathe.job.')).map((key) => JSON.parse(localStorage[key]).title).join()), kTitle);
    await second.press('New');
    await second.press(`Open ${kTitle}`);
    await second.untilSaid('open in another tab');
    await second.found();
    await second.press('New');
    await second.press('Forget Not kept');
    person.check('but when it goes on to another, it is listed beside the first one\'s', true);
    await second.press(`Open ${kTitle}`);
    await second.untilSaid('open in another tab');
    await second.found();
    await second.press('Keep it in this tab');
    await second.until('taken over', () => !document.body.innerText.includes('open in another tab'));
    await person.page.bringToFront();
    await person.untilSaid('open in another tab');
    await second.page.bringToFront();
    await second.fill('Title', 'Taken over');
    await kept(second, kTitled('Taken over'));
    await person.page.bringToFront();
    await person.fill('Title', 'The first');
    await wait(900);
    person.equal('and then it is the first one\'s that is not', await person.page.evaluate(() => Object.keys(localStorage)
      .filter((key) => key.startsWith('swathe.job.')).map((key) => JSON.parse(localStorage[key]).title).join()), 'Taken over');
    await second.page.close();
  });
}

/** From a server the page has a link; who opens it has the job. */
async function shared(browser) {
  const page = readFileSync(kPage);
  const asked = [];
  const server = createServer((request, response) => {
    asked.push(request.url);
    response.setHeader('content-type', 'text/html; charset=utf-8').end(page);
  });
  await new Promise((ready) => server.listen(0, '127.0.0.1', ready));
  const address = `http://127.0.0.1:${server.address().port}/swathe.html`;
  await path(browser, 'shared from a server', { address, before: [keepWhatIsCopied] }, async (person) => {
    await person.openJob(kFile, kText);
    await person.press('Copy link');
    const link = await person.until('a link', () => window.copied[0]);
    person.check('it is this page\'s, and what is behind # no server sees', link.startsWith(`${address}#job=`) && link.length < 2000, link);
    const friend = await person.another(link);
    await friend.found();
    person.equal('whoever opens it has the job', await friend.jobText(), kText);
    person.equal('and its address is bare again', await friend.page.evaluate(() => location.href), address);
    for (const [bad, words] of [['#job=AAAA', 'damaged'], [`${link.slice(link.indexOf('#')).slice(0, 300)}`, 'damaged'],
      ['#job=%3Cscript%3E', 'damaged'], [`#job=${'A'.repeat(70_000)}`, 'too long']]) {
      await friend.page.evaluate((hash) => (location.hash = hash), bad);
      await friend.untilSaid(words);
      person.equal(`a link "${bad.slice(0, 20)}" is said, and the job stays`, await friend.jobText(), kText);
      await friend.press('Close this message');
    }
    // 64 MB of one letter, in few bytes.
    const bomb = await friend.page.evaluate(async () => {
      const stream = new Blob([new Uint8Array(2 ** 26).fill(97)]).stream().pipeThrough(new CompressionStream('deflate-raw'));
      const bytes = new Uint8Array(await new Response(stream).arrayBuffer());
      let signs = '';
      for (const byte of bytes) signs += String.fromCharCode(byte);
      return btoa(signs).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
    });
    await friend.page.evaluate((hash) => (location.hash = hash), `#job=${bomb.slice(0, 60_000)}`);
    await friend.untilSaid('too long');
    person.check('one that unpacks to more than a job is not opened', true);
    await friend.page.close();
    await person.page.bringToFront();
    const noise = changed(kText, ['# Angle brackets',
      `# ${Array.from({ length: 20_000 }, (_, k) => ((k * 7919) % 9973).toString(36)).join('')}\n# Angle brackets`]);
    await person.press('New');
    await person.openJob('long.toml', noise);
    await person.press('Copy link');
    await person.untilSaid('too long for a link');
    person.check('a job too long for a link is said', true);
    person.check('the server was asked for the page alone', asked.every((one) => one === '/swathe.html'), asked.join('\n'));
  });
  server.close();
}
