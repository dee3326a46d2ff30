// What may go wrong around the page: a core that ends, tabs that are not opened, a network that is
// not there, a small screen.
import { path, wait } from '../browser.mjs';
import { exampleText } from '../suite.mjs';

const kText = exampleText();
const kFile = 'tin-heron.toml';

/** Workers of which one ends where it is asked to open a job, as often as the test says. */
function endingCores() {
  const Real = window.Worker;
  window.endings = 0;
  window.workers = [];
  window.Worker = class extends Real {
    constructor(...given) {
      super(...given);
      window.workers.push(this);
    }
    postMessage(message, ...more) {
      if (window.endings > 0 && Object.values(message).includes('open')) {
        window.endings -= 1;
        setTimeout(() => this.onerror?.(new ErrorEvent('error', { message: 'made to end' })), 10);
        return;
      }
      super.postMessage(message, ...more);
    }
  };
}
function noTabs() {
  window.open = () => null;
}

export async function trouble(browser) {
  await path(browser, 'a core that is made to fail', { before: [endingCores] }, async (person) => {
    await person.openJob(kFile, kText);
    await person.until('the core behind at rest', () => document.querySelectorAll('.findings').length > 0);
    await wait(1500);
    await person.page.evaluate(() => (window.endings = 1));
    await person.putIn('Width', '27 in', await person.region('Frame'));
    await person.untilSaid('The drawing broke off');
    const text = await person.jobText();
    person.equal('the text is kept', text, kText.replace('width = "28 in"', 'width = "27 in"'));
    await person.press('Try again');
    await person.untilSaid('front 27 in', '.pane.plan');
    await person.settled();
    person.check('tried again it draws', !(await person.words()).includes('The drawing broke off'));
    await person.undoAll();
    await person.untilSaid('front 28 in', '.pane.plan');
    person.equal('and all is as before', await person.jobText(), kText);
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
    await person.press('Stop');
    await person.untilSaid('Stopped. Nothing was saved.');
    person.equal('nothing is saved', await person.handedCount(), count);
    await person.find('button', 'Download all sheets (zip)');
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
