// What may go wrong around the page: a core that ends, tabs that are not opened, a network that is
// not there, a small screen.
import { path, wait } from '../browser.mjs';
import { exampleText } from '../suite.mjs';

const kText = exampleText();
const kFile = 'tin-heron.toml';

/** Workers, of which one ends at a request where the test says so: `window.endsAt`; or the request
 * waits until the test lets it through: `window.holds`, `window.held`. */
export function watchedCores() {
  const Real = window.Worker;
  let count = 0;
  window.endsAt = window.holds = () => false;
  window.held = [];
  window.Worker = class extends Real {
    number = count++;
    postMessage(message, ...more) {
      const what = message.request?.ask ?? message.call;
      if (window.endsAt(what, this.number)) {
        window.endsAt = () => false;
        setTimeout(() => this.onerror?.(new ErrorEvent('error', { message: 'made to end' })), 10);
      } else if (window.holds(what)) {
        window.held.push(() => super.postMessage(message, ...more));
      } else {
        super.postMessage(message, ...more);
      }
    }
  };
}
function noRandomId() {
  delete Crypto.prototype.randomUUID;
}
function noRawDeflate() {
  const Real = window.DecompressionStream;
  window.DecompressionStream = class extends Real {
    constructor(format) {
      if (format === 'deflate-raw') throw new TypeError('no such format');
      super(format);
    }
  };
}
function noWebAssembly() {
  delete window.WebAssembly;
}
function noWorkers() {
  const Real = window.Worker;
  window.workers = false;
  window.Worker = function (address) {
    if (!window.workers) throw new Error('not today');
    return new Real(address);
  };
}
function noTabs() {
  window.open = () => null;
}

export async function trouble(browser) {
  await path(browser, 'a core that is made to fail', { before: [watchedCores] }, async (person) => {
    await person.openJob(kFile, kText);
    await person.until('the core behind at rest', () => document.querySelectorAll('.findings').length > 0);
    await wait(1500);
    await person.page.evaluate(() => (window.endsAt = (what, core) => what === 'open' && core === 0));
    await person.putIn('Width', '27 in', await person.region('Frame'));
    await person.untilSaid('The drawing stopped');
    const text = await person.jobText();
    person.equal('the text is kept', text, kText.replace('width = "28 in"', 'width = "27 in"'));
    await person.press('Try again');
    await person.untilSaid('front 27 in', '.pane.plan');
    await person.settled();
    person.check('tried again it draws', !(await person.words()).includes('The drawing stopped'));
    await person.undoAll();
    await person.untilSaid('front 28 in', '.pane.plan');
    person.equal('and all is as before', await person.jobText(), kText);
  });

  await path(browser, 'a picture that is made to fail', { before: [watchedCores] }, async (person) => {
    await person.openJob(kFile, kText);
    await wait(1500);
    await person.page.evaluate(() => (window.endsAt = (what) => what === 'cover'));
    await person.putIn('Width', '27 in', await person.region('Frame'));
    await person.untilSaid('The drawing stopped');
    person.check('it is said', true);
    await person.press('Try again');
    await person.until('all well', () => !document.body.innerText.includes('The drawing stopped'));
    await person.settled();
    person.check('tried again it draws', await person.page.evaluate(() =>
      document.querySelector('.pane.plan').textContent.includes('front 27 in')));
  });

  await path(browser, 'the core behind is made to fail', { before: [watchedCores] }, async (person) => {
    await person.openJob(kFile, kText);
    await wait(1500);
    await person.press('Print');
    await person.page.evaluate(() => (window.endsAt = (what, core) => what === 'open' && core > 0));
    await person.putIn('Width', '27 in', await person.region('Frame'));
    await person.untilSaid('The drawing stopped');
    await person.press('Try again');
    const page = await person.until('the test page to print', () =>
      [...document.querySelectorAll('button')].find((one) => one.textContent === 'Print test page' && !one.disabled) !== undefined);
    person.check('tried again it prints', page);
  });

  // What is on its way for one job is of no use to the next.
  await path(browser, 'another job while a value is read', { before: [watchedCores] }, async (person) => {
    const other = kText.replace('Tin Heron, spring covers', 'Another');
    await person.openJob('other.toml', other);
    await person.until('it kept', (text) => Object.values(localStorage).some((one) => one.includes(text)), 'Another');
    await person.press('New');
    await person.openJob(kFile, kText);
    await wait(1500);
    await person.page.evaluate(() => (window.holds = (what) => what === 'typed'));
    await person.putIn('Width', '27 in', await person.region('Frame'));
    await person.until('it on its way', () => window.held.length > 0);
    await person.press('New');
    await person.press('Open Another');
    await person.untilSaid('Another', 'h1');
    await person.page.evaluate(() => {
      window.holds = () => false;
      window.held.forEach((send) => send());
    });
    await person.found();
    await wait(500);
    person.equal('its text is as it came', await person.jobText(), other);
  });

  await path(browser, 'what to buy for another job', {}, async (person) => {
    await person.openJob(kFile, kText);
    await person.press('To buy');
    await person.untilSaid('noodles', '[aria-label="To buy"]');
    await person.choose('broken.toml', kText.replace('width = "28 in"', 'width = "28 inn"'));
    await person.press('To buy');
    await person.untilSaid('Nothing can be counted yet', '[aria-label="To buy"]');
    await wait(800);
    person.check('is not that of the one before', !(await person.said('To buy')).includes('noodles'));
  });

  for (const [what, lacks] of [['unpack the core', noRawDeflate], ['run it', noWebAssembly]])
    await path(browser, `a browser that cannot ${what}`, { before: [lacks] }, async (person) => {
      person.check('is said to be too old', (await person.words()).includes('This browser is too old for this page'), await person.words());
      person.check('and nothing else is there', !(await person.there('button', 'Begin')));
    });

  await path(browser, 'questions without a core', { before: [noWorkers] }, async (person) => {
    await person.press('Four corner pieces');
    await person.untilSaid('It could not be made: the browser did not start a part of this page');
    await person.press('Begin');
    await person.untilSaid('The questions cannot be asked: the browser did not start a part of this page');
    await person.press('Back to the start');
    await person.press('Begin');
    await person.untilSaid('The questions cannot be asked');
    await person.page.evaluate(() => (window.workers = true));
    await person.press('Try again');
    await person.untilSaid('Question 1 of 7');
    person.check('tried again they are', !(await person.words()).includes('cannot be asked'));
  });

  await path(browser, 'a page that came over plain http', { before: [noRandomId] }, async (person) => {
    await person.openJob(kFile, kText);
    person.equal('works as any other', await person.jobText(), kText);
  });

  await path(browser, 'tabs blocked', { before: [noTabs] }, async (person) => {
    await person.openJob(kFile, kText);
    await person.press('Print');
    const count = await person.handedCount();
    await person.press('Print test page');
    const { name, bytes } = await person.saved(count);
    person.check('the sheet is saved instead', name === 'test-page.pdf' && bytes.subarray(0, 5).toString() === '%PDF-', name);
    await person.untilSaid('did not open a tab');
  });

  await path(browser, 'no network', {}, async (person) => {
    await person.page.setOfflineMode(true);
    await person.page.reload();
    await person.openJob(kFile, kText);
    for (const view of ['Text', 'Fields', 'Print', 'To buy', 'Rules', 'Cut-through', 'Walk round']) {
      await person.press(view);
      await person.settled();
    }
    await person.page.keyboard.press('Escape');
    await person.press('About');
    await person.press('Show the licenses');
    await person.untilSaid('FreeType', 'dialog');
    await person.press('Close');
    await person.press('Print');
    const count = await person.handedCount();
    await person.press('Download all sheets (zip)');
    const { name, bytes } = await person.saved(count);
    person.check('all of it works', name === 'tin-heron.zip' && bytes.length > 1e5, name);
  });

  await path(browser, 'a zip that is stopped', {}, async (person) => {
    await person.openJob(kFile, kText);
    await person.press('Print');
    const count = await person.handedCount();
    await person.press('Download all sheets (zip)');
    await person.until('the keyboard at "Stop"', () => document.activeElement.innerText === 'Stop');
    await person.page.keyboard.press('Enter');
    await person.untilSaid('Stopped. Nothing was saved.');
    person.equal('nothing is saved', await person.handedCount(), count);
    await person.until('the keyboard where it was', () => document.activeElement.innerText === 'Download all sheets (zip)');
  });

  await path(browser, 'on a phone', { width: 390, height: 700 }, async (person) => {
    person.check('the beginnings fit across', await fits(person));
    await person.openJob(kFile, kText);
    person.check('the job fits across', await fits(person));
    for (const name of ['From above', 'Cover', 'Who can read it', 'Rules', 'Job'])
      person.check(`one gets to "${name}"`, await (await person.region(name)).evaluate((element) => {
        element.scrollIntoView({ block: 'center' });
        const { width, height, left, right } = element.getBoundingClientRect();
        return width > 250 && height > 60 && left >= 0 && right <= innerWidth;
      }));
    const count = await person.handedCount();
    await person.press('Save job');
    person.equal('and saves the job', (await person.saved(count)).bytes.toString(), kText);
    await person.picture('phone');
  });
}

const fits = (person) => person.page.evaluate(() =>
  document.scrollingElement.scrollWidth <= document.documentElement.clientWidth);
