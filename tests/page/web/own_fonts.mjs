// Fonts of one's own are kept with the job that names them, and are there when it is opened again.
import { path, wait } from '../browser.mjs';
import {
  kFile, kTitle, kText, kOwn, titled, kFont, kOther, watchFaults, shown, endAtFiles, kRefusals,
  lateFiles, keptFiles, untilKept, size, drop, dropOnField, drawn, drawnAnew, alike, openKept, isPrintedWith,
  reload,
} from './fonts.mjs';

export async function ownFonts(browser) {
  await path(browser, 'a font is kept with its job', { before: [watchFaults] }, async (person) => {
    await person.openJob(kFile, kText);
    const usual = await drawn(person);
    await dropOnField(person, kFont);
    const own = await drawn(person);
    person.check('digits are drawn with it', !alike(own, usual));
    await untilKept(person, 'it is kept', size(kFont));
    await reload(person);
    await openKept(person, kTitle);
    person.check('opened again the digits are drawn with it', alike(await drawn(person), own));
    person.equal('no fault was shown', await shown(person), '');
    person.equal('its text is as it was left', await person.jobText(), kOwn);
    const count = await person.handedCount();
    await person.press('Print');
    await person.press('Download all sheets (zip)');
    person.check('the zip has it', (await person.saved(count)).bytes.includes('own.ttf'));

    await person.press('Rules');
    await person.showText();
    await person.retype(1, 'x = [');
    await person.until('a fault', () => document.querySelector('.faults') !== null);
    await wait(900);
    person.equal('while the text is broken it stays', await keptFiles(person), size(kFont));
    await person.undoAll();
    await person.press('Fields');
    await drawn(person);
    await person.page.select('[data-key="numerals.font"] select', 'Anton');
    await untilKept(person, 'a file that the job does not name is not kept', '');
    await person.undo();
    await untilKept(person, 'one that it names again is', size(kFont));
    await person.press('Forget');
    await untilKept(person, 'a job that is forgotten leaves none', '');
    await person.press(`Undo: keep ${kTitle}`);
    await untilKept(person, 'taken back it has its own', size(kFont));
    await reload(person);
    await person.press(`Forget ${kTitle}`);
    await untilKept(person, 'so has one that was not open', '');
    await person.press(`Undo: keep ${kTitle}`);
    await untilKept(person, 'where it is taken back', size(kFont));
    await openKept(person, kTitle);
    person.check('and digits are drawn with it', alike(await drawn(person), own));
    person.equal('without a fault', await shown(person), '');
    await person.press('Forget');
    await reload(person);
    await person.find('button', 'Begin');
    person.equal('forgotten it is gone when the page is closed', await keptFiles(person), '');
  });

  await path(browser, 'each job has its own font', { before: [watchFaults] }, async (person) => {
    await person.choose('none.toml', titled(kOwn, 'Without'));
    await person.untilSaid('not in this page: own.ttf');
    await wait(600); // until it is kept
    await person.choose(kFile, kText);
    await dropOnField(person, kFont);
    const one = await drawn(person);
    await untilKept(person, 'the first has its own', size(kFont));
    await drop(person, { 'other.toml': Buffer.from(titled(kOwn, 'Another')), 'own.ttf': kOther });
    await person.untilSaid('Another', 'h1');
    const other = await drawn(person);
    person.check('another of that name is drawn with its own', !alike(other, one));
    await untilKept(person, 'each is kept with its job', `${size(kOther, 'Another')}, ${size(kFont)}`);
    for (const again of [false, true]) {
      if (again) await reload(person);
      else await person.press('New');
      await openKept(person, kTitle);
      person.check(`${again ? 'opened again' : 'one after the other'} the first is drawn with its own`, alike(await drawn(person), one));
      await person.press('New');
      await openKept(person, 'Another');
      person.check('the second with its own', alike(await drawn(person), other));
    }
    await isPrintedWith(person, titled(kOwn, 'Another'), kOther);
    await shown(person);
    await person.press('New');
    await person.press('Open Without');
    await person.untilSaid('not in this page: own.ttf');
    await person.untilSaid('cannot be found', '.faults');
    person.check('one that has none is not given those of others', true);
    await person.press('New');
    await shown(person);
    await openKept(person, kTitle);
    person.check('after it the first is drawn with its own again', alike(await drawn(person), one));
    person.equal('and no fault was shown', await shown(person), '');
  });

  for (const [how, refuse] of Object.entries(kRefusals))
    await path(browser, `files are not kept: ${how}`, { before: [refuse] }, async (person) => {
      await person.openJob(kFile, kText);
      await dropOnField(person, kFont);
      const own = await drawn(person);
      if (how !== 'asleep') await person.untilSaid('This browser does not keep own.ttf');
      await wait(600);
      await person.press('New');
      await openKept(person, kTitle);
      person.check('while the page is there it is used', alike(await drawn(person), own));
      await reload(person);
      await openKept(person, kTitle);
      await person.untilSaid('not in this page: own.ttf');
      await person.untilSaid('cannot be found', '.faults');
      await person.give('own.ttf', kFont);
      person.check('then it is asked for, and given it is used', alike(await drawn(person), own));
    });

  await path(browser, 'files that are kept come late', { before: [lateFiles] }, async (person) => {
    await person.openJob(kFile, kText);
    await dropOnField(person, kFont);
    const own = await drawn(person);
    await untilKept(person, 'it is kept', size(kFont));
    await reload(person);
    await openKept(person, kTitle);
    await person.untilSaid('not in this page: own.ttf');
    await person.until('no fault any more', () => document.querySelector('.faults') === null);
    person.check('a job that did not wait for it is drawn with it', alike(await drawn(person), own));
    await wait(600);
    person.equal('and keeps it', await keptFiles(person), size(kFont));
  });

  await path(browser, 'a kept font that is of no use', { before: [endAtFiles] }, async (person) => {
    await person.openJob(kFile, kText);
    await dropOnField(person, kFont);
    const own = await drawn(person);
    await untilKept(person, 'it is kept', size(kFont));
    await reload(person);
    await person.find('button', `Open ${kTitle}`);
    await person.page.evaluate(() => (window.endsAtFiles = true));
    await openKept(person, kTitle);
    await person.untilSaid('not in this page: own.ttf');
    await person.untilSaid('cannot be found', '.faults');
    person.equal('where it ends the core the job opens without it', await person.jobText(), kOwn);
    await person.page.evaluate(() => (window.endsAtFiles = false));
    await person.give('own.ttf', kFont);
    person.check('and with it when it is given anew', alike(await drawn(person), own));
    await wait(900); // until that is kept

    await person.page.evaluate(() => new Promise((done, fail) => {
      const asked = indexedDB.open('swathe');
      asked.onupgradeneeded = () => fail(new Error('nothing is kept'));
      asked.onsuccess = () => {
        const change = asked.result.transaction('files', 'readwrite');
        change.objectStore('files').openCursor().onsuccess = ({ target: { result: at } }) => at?.update(new Uint8Array(100));
        change.oncomplete = () => (asked.result.close(), done());
      };
    }));
    await reload(person);
    await openKept(person, kTitle);
    await person.untilSaid('not a font', '.faults');
    person.equal('where it is broken the job opens with that fault', await person.jobText(), kOwn);
    await person.give('own.ttf', kFont);
    person.check('and a whole one mends it', alike(await drawn(person), own));
    await untilKept(person, 'which is kept in its place', size(kFont));
    await person.page.evaluate(() => window.addEventListener('pagehide', () => localStorage.clear()));
    await reload(person);
    await untilKept(person, 'what is left of a job that is not there is swept', '');
  });

  await path(browser, 'a font dropped beside its field', {}, async (person) => {
    const offered = () => [...document.querySelectorAll('[data-key="numerals.font"] option')].map((one) => one.value);
    await person.openJob(kFile, kText);
    await drop(person, { 'own.ttf': Buffer.from('no font at all') });
    await person.untilSaid('not a font', '.notes');
    person.check('one of no use is not offered', !(await person.page.evaluate(offered)).includes('own.ttf'));
    await drop(person, { 'own.ttf': kFont });
    await person.untilSaid('own.ttf is in this page now. Choose it in the field', '.notes');
    await person.page.select('[data-key="numerals.font"] select', 'own.ttf');
    await person.found();
    person.equal('another may be chosen', await person.jobText(), kOwn);
  });

  await path(browser, 'a font in two tabs', { before: [watchFaults] }, async (person) => {
    await person.openJob(kFile, kText);
    await dropOnField(person, kFont);
    const own = await drawn(person);
    await untilKept(person, 'the first keeps it', size(kFont));
    const second = await person.another();
    await openKept(second, kTitle);
    await second.untilSaid('open in another tab');
    person.check('the second has it, too', alike(await drawn(second), own));
    person.equal('without a fault', await shown(second), '');
    await dropOnField(second, kOther);
    const other = await drawnAnew(second, own);
    await wait(900);
    person.equal('what is given to it is not kept', await keptFiles(second), size(kFont));
    await second.press('Keep it in this tab');
    await untilKept(second, 'until it keeps the job', size(kOther));
    await person.page.bringToFront();
    await person.untilSaid('open in another tab');
    await person.press('Keep it in this tab');
    await person.until('taken over', () => !document.body.innerText.includes('open in another tab'));
    person.check('whoever takes it over has what was kept last', alike(await drawnAnew(person, own), other) && !alike(other, own));
    await wait(900);
    person.equal('and keeps that', await keptFiles(person), size(kOther));
    await second.page.close();
  });

  await path(browser, 'a font of a job that is forgotten, with no room', {}, async (person) => {
    await person.openJob(kFile, kText);
    await dropOnField(person, kFont);
    const own = await drawn(person);
    await untilKept(person, 'it is kept', size(kFont));
    await reload(person);
    await person.find('button', `Open ${kTitle}`);
    await person.page.evaluate(() => (Storage.prototype.setItem = () => {
      throw new DOMException('full', 'QuotaExceededError');
    }));
    await person.press(`Forget ${kTitle}`);
    await untilKept(person, 'it is forgotten', '');
    await person.press(`Undo: keep ${kTitle}`);
    await openKept(person, kTitle);
    person.check('taken back, it is there until the page is closed', alike(await drawn(person), own));
    await wait(900);
    person.equal('and not kept', await keptFiles(person), '');
  });

  await path(browser, 'a font in two tabs that both edit', {}, async (person) => {
    await person.openJob(kFile, kText);
    await dropOnField(person, kFont);
    await untilKept(person, 'the first keeps it', size(kFont));
    const second = await person.another();
    await openKept(second, kTitle);
    await second.untilSaid('open in another tab');
    await second.page.bringToFront();
    await second.fill('Title', 'By the second');
    await second.untilSaid('By the second', 'h1');
    await person.page.bringToFront();
    await person.fill('Title', 'By the first');
    await untilKept(person, 'it has another title', size(kFont, 'By the first'));
    await person.press('New');
    await person.openJob('other.toml', titled(kText, 'Another'));
    await second.page.bringToFront();
    await untilKept(second, 'each has it', `${size(kFont, 'By the first')}, ${size(kFont, 'By the second')}`);
    await second.page.close();
  });
}
