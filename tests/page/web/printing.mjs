// What there is to print and to buy, and where there is nothing why; what takes long and is stopped;
// how long a tab has what it shows.
import { changed, path, wait } from '../browser.mjs';
import { Swathe, exampleText } from '../suite.mjs';
import { watchedCores } from './trouble.mjs';

const kText = exampleText();
const kFile = 'tin-heron.toml';
const kWrong = changed(kText, ['width = "28 in"', 'width = "28 zz"']);

/** Addresses that are given up, and clocks that run so fast that a minute is over soon. */
function fastClocks() {
  window.revoked = [];
  const revoke = URL.revokeObjectURL.bind(URL);
  URL.revokeObjectURL = (address) => {
    window.revoked.push(address);
    revoke(address);
  };
  for (const name of ['setTimeout', 'setInterval']) {
    const real = window[name].bind(window);
    window[name] = (step, ms = 0, ...more) => real(step, ms >= 5000 ? ms / 100 : ms, ...more);
  }
}
/** Every state of the bar that shows how far an archive is. */
function watchedBar() {
  window.bars = [];
  new MutationObserver(() => {
    const bar = document.querySelector('progress[value]');
    if (bar) window.bars.push([bar.value, bar.max]);
  }).observe(document, { subtree: true, childList: true, attributes: true });
}
const isOff = (name) => {
  const found = [...document.querySelectorAll('button')].find((one) => (one.getAttribute('aria-label') ?? one.textContent) === name);
  return found !== undefined && (found.disabled || found.getAttribute('aria-disabled') === 'true');
};
const isOn = (name) => [...document.querySelectorAll('button')].some((one) =>
  (one.getAttribute('aria-label') ?? one.textContent) === name && !one.disabled && one.getAttribute('aria-disabled') !== 'true');

export async function printing(browser) {
  await path(browser, 'nothing to print, and why', {}, async (person) => {
    await person.choose('wrong.toml', kWrong);
    await person.untilSaid('wrong in the job');
    await person.press('Print');
    await person.untilSaid('"Frame, width" is "28 zz"', '[aria-label="Print"]');
    person.check('the fault is said', (await person.said('Print')).includes('Nothing can be printed until'), await person.said('Print'));
    person.check('there is no picture of who can read it, and that is said',
      (await person.said('Who can read it')).includes('No picture yet'), await person.said('Who can read it'));
    await person.press('Walk round');
    await wait(200);
    person.check('nor a walk round', await person.page.evaluate(isOff, 'Walk round') &&
      await person.page.evaluate(() => document.querySelector('dialog[open]') === null));
    await person.press('See Rules');
    person.check('and one gets to where it is put right', (await person.said('Rules')).includes('28 zz'));
  });

  await path(browser, 'half a value, and nothing to print', {}, async (person) => {
    await person.openJob(kFile, kText);
    await person.press('Print');
    await person.until('the sheets', isOn, 'Print test page');
    await person.fill('Width', '28 zz', await person.region('Frame'));
    await person.untilSaid('28 zz', '[aria-label="Print"]');
    person.check('it is said why buttons are off', await person.page.evaluate(isOff, 'Print test page') &&
      (await person.said('Print')).includes('Nothing can be printed until'), await person.said('Print'));
    await person.page.evaluate(() => document.activeElement.blur());
    await person.press('Go to the field');
    await person.until('the keyboard in the field', () => document.activeElement?.value === '28 zz');
    await person.page.keyboard.press('Escape');
    await person.until('the sheets', isOn, 'Print test page');
    person.check('put right, nothing is said any more', !(await person.said('Print')).includes('Nothing can be printed'));
  });

  await path(browser, 'a tab as long as it is there', { before: [fastClocks] }, async (person) => {
    await person.openJob(kFile, kText);
    await person.press('Print');
    await person.until('the sheets', isOn, 'Open A-measures.pdf');
    const count = await person.handedCount();
    await person.press('Save A-measures.pdf');
    const { bytes } = await person.saved(count);
    await person.until('the saved one given up', () => window.revoked.length > 0);
    const before = await person.page.evaluate(() => [...window.opened.keys()]);
    const came = new Promise((done) => person.browser.once('targetcreated', done));
    await person.press('Open A-measures.pdf');
    const tab = await came;
    const address = await person.until('its address', (known) => [...window.opened].find(([key, blob]) =>
      blob.type === 'application/pdf' && !known.includes(key))?.[0], before);
    person.check('what is opened is what is saved', (await person.madeAt(address)).equals(bytes));
    await wait(2000); // more than three minutes
    person.check('it has what it shows', !(await person.page.evaluate((one) => window.revoked.includes(one), address)));
    await (await tab.page()).close();
    await person.until('what it showed given up', (one) => window.revoked.includes(one), address);
    person.check('until it is closed', true);
  });

  await path(browser, 'one PDF that is stopped', { before: [watchedCores] }, async (person) => {
    await person.openJob(kFile, kText);
    await person.press('Print');
    await person.until('the sheets', isOn, 'Save book.pdf');
    await person.page.evaluate(() => (window.holds = (what) => what === 'file'));
    const count = await person.handedCount();
    await person.press('Save book.pdf');
    await person.untilSaid('Making book.pdf', '[aria-label="Print"]');
    await person.press('Rules');
    await person.page.evaluate(() => {
      const seen = () => (window.firstFoot ??= document.querySelector('[aria-label="Print"] .foot'));
      new MutationObserver(seen).observe(document.body, { childList: true, subtree: true });
    });
    await person.press('Print');
    await person.until('the sheets', () => document.querySelectorAll('.print section').length > 3);
    person.check('the button to stop it stays where it was when sheets are counted',
      await person.page.evaluate(() => window.firstFoot.isConnected && window.firstFoot.querySelector('button') !== null));
    await person.press('Stop');
    await person.untilSaid('Stopped. Nothing was saved.');
    await person.page.evaluate(() => (window.holds = () => false));
    person.equal('nothing is saved', await person.handedCount(), count);
    await person.until('the sheets', isOn, 'Save test-page.pdf');
    await person.press('Save test-page.pdf');
    person.equal('and the next one is', (await person.saved(count)).name, 'test-page.pdf');
  });

  await path(browser, 'pressed at once', {}, async (person) => {
    await person.openJob(kFile, kText);
    await person.press('Print');
    await person.until('the sheets', isOn, 'Save A-measures.pdf');
    await person.fill('Across', '97 mm');
    await person.fill('Down', '103 mm');
    const count = await person.handedCount();
    await person.press('Save job');
    const job = (await person.saved(count)).bytes.toString();
    person.check('the saved job has what the scales measure', job.includes('measured = ["97 mm", "103 mm"]'), job);
    await person.until('the sheets', isOn, 'Save A-measures.pdf');
    await person.fill('Width', '26 in', await person.region('Frame'));
    await person.press('Save A-measures.pdf');
    const { bytes } = await person.saved(count + 1);
    const core = new Swathe();
    await core.open(changed(job, ['width = "28 in"', 'width = "26 in"']), { file: kFile });
    person.check('a sheet is of the job as it was typed', bytes.equals(Buffer.from(await core.file('A-measures.pdf'))));
    await person.fill('Down', '102 mm');
    await person.press('Download all sheets (zip)');
    const zip = await person.saved(count + 2);
    await core.open(await person.jobText(), { file: kFile });
    person.check('and so is the archive', zip.bytes.equals(Buffer.from(await core.zip())) && (await person.jobText()).includes('"102 mm"'));
    core.close();
  });

  await path(browser, 'an archive on its way', { before: [watchedCores, watchedBar] }, async (person) => {
    await person.openJob(kFile, kText);
    await person.press('Print');
    await person.until('the sheets', isOn, 'Print test page');
    await person.page.evaluate(() => (window.holds = (what) => what === 'files'));
    await person.press('Download all sheets (zip)');
    await person.until('how many there are', () => document.querySelector('progress[value]') !== null);
    await person.press('Rules');
    await person.press('Print');
    await person.press('Stop');
    await person.untilSaid('Stopped. Nothing was saved.');
    await person.press('Rules');
    await person.press('Print');
    person.check('that it was stopped is still said later', (await person.said('Print')).includes('Stopped. Nothing was saved.'));
    await person.page.evaluate(() => {
      window.holds = () => false;
      window.bars = [];
    });
    const count = await person.handedCount();
    await person.press('Download all sheets (zip)');
    await person.saved(count);
    const bars = await person.page.evaluate(() => window.bars);
    const [done, of] = bars.at(-1) ?? [];
    person.check('its bar comes to its end, and never goes back', of > 10 && done === of && bars.length > 5 &&
      bars.every(([now], k) => k === 0 || now >= bars[k - 1][0]), JSON.stringify(bars));
  });

  await path(browser, 'what to buy in millimeters', {}, async (person) => {
    await person.openJob(kFile, changed(kText, ['season = "2026"', 'season = "2026"\nunits = "mm"']));
    await person.press('To buy');
    await person.untilSaid('Plywood', '[aria-label="To buy"]');
    const said = await person.said('To buy');
    person.check('the sheet is said in millimeters', said.includes('of 1219 mm x 2438 mm'), said);
    person.check('no inches are left', !/\d in\b|No\. \d/.test(said), said);
  });

  await path(browser, 'a job without a number', {}, async (person) => {
    await person.press('Four corner pieces');
    await person.found();
    await person.untilSaid('No number yet', '[aria-label="Who can read it"]');
    const said = await person.said('Who can read it');
    person.check('that is said once, and nothing is marked', said.split('number').length - 1 === 2 && !said.includes('!') &&
      await person.page.evaluate(() => document.querySelector('.way.unread') === null), said);
    await person.fill('Team number', '254');
    await person.until('what can be read', () => document.querySelector('.way.read, .way.unread') !== null);
    await person.settled();
    person.check('with one it is gone', !(await person.said('Who can read it')).includes('No number yet'));
  });
}
