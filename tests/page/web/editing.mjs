// A job is changed: in a field, in the text, by dragging, by key, by a button that mends.
import { changed, path, wait } from '../browser.mjs';
import { Swathe, exampleText, command, layOut } from '../suite.mjs';

const kText = exampleText();
const kFile = 'tin-heron.toml';
const lineOf = (words) => kText.slice(0, kText.indexOf(words)).split('\n').length;

/** The command's report of a job. */
async function reportOf(text) {
  const where = layOut({ name: kFile, text, files: new Map() });
  const { status, out, err } = await command(['report', kFile], where);
  if (status !== 0) throw new Error(err);
  return JSON.parse(out);
}
/** The figures that "To buy" takes from a report. */
async function buysAsReported(person, text) {
  const { stock } = await reportOf(text);
  await person.press('To buy');
  await person.untilSaid(`${stock.padding.pieces.length} noodles`, '[aria-label="To buy"]');
  await person.untilSaid(`${Math.round(100 * stock.sheets_used_fraction)} % used`, '[aria-label="To buy"]');
  await person.press('Rules');
}

export async function editing(browser) {
  const core = new Swathe();

  const wide = await core.set(kText, 'frame.width', '26 1/2 in');
  const kWide = changed(kText, ['width = "28 in"', 'width = "26 1/2 in"']);
  await path(browser, 'a width in its field', {}, async (person) => {
    person.equal('the core changes the one value', wide.value.text, kWide);
    await person.openJob(kFile, kText);
    await person.fill('Width', '26 1/2', await person.region('Frame'));
    await person.untilSaid('26 1/2 in = 673.1 mm');
    await person.untilSaid('front 26 1/2 in', '.pane.plan');
    await person.settled();
    person.equal('the job\'s text is the command\'s', await person.jobText(), kWide);
    await buysAsReported(person, kWide);
    await person.undo();
    person.equal('one undo takes the typing back', await person.jobText(), kText);
    await person.press('Redo');
    await person.settled();
    person.equal('and Redo does it again', await person.jobText(), kWide);
  });

  await path(browser, 'a width in the text', {}, async (person) => {
    await person.openJob(kFile, kText);
    await person.showText();
    await person.retype(lineOf('width = "28 in"'), 'width = "26 1/2 in"');
    await person.untilSaid('front 26 1/2 in', '.pane.plan');
    await person.settled();
    person.equal('the job\'s text is the command\'s', await person.jobText(), kWide);
    await person.press('Fields');
    person.equal('the field shows it', await person.valueOf('Width', await person.region('Frame')), '26 1/2 in');
    await buysAsReported(person, kWide);
    await person.undoAll();
    person.equal('undo goes back to the start', await person.jobText(), kText);
  });

  const kWindows = (text) => text.replaceAll('\n', '\r\n');
  await path(browser, 'lines that end as on Windows', {}, async (person) => {
    await person.openJob(kFile, kWindows(kText));
    await person.showText();
    await person.settled();
    person.equal('the text shown changes nothing', await person.jobText(), kWindows(kText));
    await person.retype(lineOf('width = "28 in"'), 'width = "26 1/2 in"');
    await person.untilSaid('front 26 1/2 in', '.pane.plan');
    await person.settled();
    person.equal('a line typed anew is all that is other', await person.jobText(), kWindows(kWide));
    await person.press('Fields');
    await person.fill('Width', '28 in', await person.region('Frame'));
    await person.untilSaid('front 28 in', '.pane.plan');
    await person.press('Text');
    await person.settled();
    person.equal('so it is with a field', await person.jobText(), kWindows(kText));
  });

  await path(browser, 'a picture enlarged', {}, async (person) => {
    await person.openJob(kFile, kText);
    const cover = await person.region('Cover');
    const isWhole = () => person.page.evaluate(() =>
      document.querySelector('.pane.cover [aria-label="Show all"]').getAttribute('aria-disabled'));
    person.equal('all of it is shown at first', await isWhole(), 'true');
    await person.press('Larger', cover);
    await person.settled();
    await person.fill('Title', 'Autumn covers');
    await person.untilSaid('Autumn covers', 'h1');
    await person.settled();
    person.equal('it stays so while something else is typed', await isWhole(), 'false');
    await person.press('Cover B', cover, 'tab');
    await person.settled();
    person.equal('another cover is shown whole', await isWhole(), 'true');
  });

  await path(browser, 'what is wrong while somebody types', {}, async (person) => {
    await person.openJob(kFile, kText);
    await person.page.evaluate(() => {
      window.told = 0;
      new MutationObserver(() => {
        if (document.querySelector('.faults, .fault, .item.at-fault')) window.told += 1;
      }).observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
    });
    const told = () => person.page.evaluate(() => window.told);
    await person.select('Width', await person.region('Frame'));
    // In the page, by its own clock: a slow machine is no pause. 2 in and 26 1 in are worked out, too.
    await person.page.evaluate(async () => {
      for (const key of '26 1/2 in') {
        document.execCommand('insertText', false, key);
        await new Promise((done) => setTimeout(done, 150));
      }
    });
    await person.untilSaid('front 26 1/2 in', '.pane.plan');
    person.equal('a value on the way is not called wrong', await told(), 0);
    person.equal('the job has the whole one', await person.jobText(), kWide);
    await person.select('Width', await person.region('Frame'));
    await person.page.keyboard.type('2');
    await person.until('it is told when they pause', () => document.querySelector('.rules .faults') !== null);
    await person.page.keyboard.type('8 in');
    await person.until('what is mended is told', () => document.querySelector('.faults, .fault') === null);
    await person.select('Width', await person.region('Frame'));
    await person.page.keyboard.type('2');
    await person.page.keyboard.press('Enter');
    await person.until('with Enter it is told', () => document.querySelector('.rules .faults') !== null);
    await person.undoAll();
  });

  await path(browser, 'what cannot be read typed at once', {}, async (person) => {
    await person.openJob(kFile, kText);
    await person.select('Width', await person.region('Frame'));
    // Faster than any of it is read.
    await person.page.evaluate(() => {
      for (const key of '26 zz') document.execCommand('insertText', false, key);
    });
    await person.until('the fault at the field', () => document.activeElement.getAttribute('aria-invalid') === 'true');
    await person.settled();
    person.equal('the job is as it was', await person.jobText(), kText);
    person.equal('only the field is at fault', await person.page.evaluate(() =>
      document.querySelectorAll('.fields .field.at-fault').length), 1);
  });

  await path(browser, 'half a value', {}, async (person) => {
    await person.openJob(kFile, kText);
    const drawn = () => person.page.evaluate(() => [...document.querySelectorAll('.pane.plan svg path')].map((one) => one.getAttribute('d')).join());
    const before = await drawn();
    await person.putIn('Width', '26 1/', await person.region('Frame'));
    await person.until('the fault at the field', () => document.activeElement.getAttribute('aria-invalid') === 'true');
    person.check('the fault is told in words', (await person.page.evaluate(() =>
      document.getElementById(document.activeElement.getAttribute('aria-describedby').split(' ')[0]).innerText)).length > 10);
    await person.until('it dimmed', () => document.querySelector('.pane.plan .stage.dimmed') !== null);
    person.check('the last good picture stays, dimmed', await drawn() === before);
    person.equal('the job is as it was', await person.jobText(), kText);
    await person.page.keyboard.type('2');
    await person.untilSaid('front 26 1/2 in', '.pane.plan');
    await person.settled();
    person.equal('and is changed when the value is whole', await person.jobText(), kWide);
    await person.page.keyboard.press('ArrowUp');
    await person.untilSaid('front 26 9/16 in', '.pane.plan');
    await person.page.keyboard.press('ArrowDown');
    await person.untilSaid('front 26 1/2 in', '.pane.plan');
    await person.undoAll();
    person.equal('undo goes back to the start', await person.jobText(), kText);
  });

  // A place: the gap on the back, which both bumpers' ends say with "50%".
  const kGap = changed(kText, ['to = ["back", "50%"]', 'to = ["back", "12 in", "left"]'],
    ['from = ["back", "50%"]', 'from = ["back", "12 in", "left"]']);
  await path(browser, 'a shared end is dragged', {}, async (person) => {
    await person.openJob(kFile, kText);
    await person.drag('From above', 'gap between A and B', -2 * 25.4);
    person.equal('both bumpers move, and their places are written', await person.jobText(), kGap);
    person.equal('it is told where it is', await (await person.handle('From above', 'gap between A and B'))
      .evaluate((element) => element.getAttribute('aria-valuetext')), '12 in from the corner with left');
    await buysAsReported(person, kGap);
    await person.undo();
    person.equal('one undo takes both back', await person.jobText(), kText);
    person.check('and nothing is left to undo', await person.page.evaluate(() =>
      [...document.querySelectorAll('button')].find((one) => one.textContent === 'Undo').getAttribute('aria-disabled')) === 'true');
  });
  await path(browser, 'the same in fields', {}, async (person) => {
    await person.openJob(kFile, kText);
    const field = async (name, end) => {
      const bumper = await person.find('group', name);
      if (!(await person.there('group', end, bumper))) await (await bumper.waitForSelector('button')).click();
      return person.find('group', end, bumper);
    };
    await (await person.find('combobox', 'where', await field('A', 'To'))).select('distance');
    await person.settled();
    person.equal('said from a corner it stays where it is, for both bumpers', await person.jobText(),
      kGap.replaceAll('"12 in", "left"', '"14 in", "left"'));
    // The one that leaves room first.
    for (const [name, end] of [['B', 'From'], ['A', 'To']]) {
      await person.fill('distance', '12 in', await field(name, end));
      await person.settled();
    }
    person.equal('gives the same text', await person.jobText(), kGap);
  });
  await path(browser, 'the same in the text', {}, async (person) => {
    await person.openJob(kFile, kText);
    await person.showText();
    await person.retype(lineOf('to = ["back", "50%"]'), 'to = ["back", "12 in", "left"]');
    await person.retype(lineOf('from = ["back", "50%"]'), 'from = ["back", "12 in", "left"]');
    await person.settled();
    person.equal('gives the same text', await person.jobText(), kGap);
    await buysAsReported(person, kGap);
  });

  await path(browser, 'a bracket is dragged', {}, async (person) => {
    await person.openJob(kFile, kText);
    await person.drag('Cover', 'bracket 1', 25.4);
    const kMoved = kText.replace('at = ["9 in", "front"]', 'at = ["10 in", "front"]');
    person.equal('by an inch on the cover', await person.jobText(), kMoved);
    await person.drag('From above', 'bracket 1', 2000);
    const moved = await person.jobText();
    const at = /at = \["([^"]+)", "front"\]/.exec(moved)?.[1];
    await core.open(moved);
    person.check('beyond its board it stops where the job can still be made', (await core.open(moved)).ok &&
      /^(1[0-9]|2[0-9])( \d+\/\d+)? in$/.test(at), at);
    person.check('no fault is left', await person.page.$('.faults') === null);
    await person.undo();
    await person.undo();
    person.equal('undo takes both moves back', await person.jobText(), kText);
    await person.drag('From above', 'bracket 1', 76.2, { key: 'Escape' });
    await person.settled();
    person.equal('Escape takes back what is being dragged', await person.jobText(), kText);
  });

  await path(browser, 'an automatic number is dragged', {}, async (person) => {
    await person.openJob(kFile, kText);
    person.check('its place is not in the job', !kText.includes('numerals.place'));
    await person.drag('Cover', 'number on left', 2 * 25.4);
    const text = await person.jobText();
    const places = [...text.matchAll(/^\[\[numerals\.place\]\]$/gm)].length;
    person.equal('every side\'s place is written', places, 4);
    person.check('and the sides that were chosen are not said twice', !/^sides = /m.test(text), text);
    const read = await core.fields(text);
    const left = read.value.find((field) => field.form === 'numerals.place.side' && field.shown === 'left');
    const center = read.value.find((field) => field.key === left.key.replace(/side$/, 'center'));
    person.equal('with the new place on the left', center.value, '["17 in", "front"]');
    person.check('all comments stay', kText.split('\n').filter((line) => line.startsWith('#')).every((line) => text.includes(line)));
    await person.undo();
    person.equal('one undo takes all of it back', await person.jobText(), kText);
  });

  await path(browser, 'by keyboard alone', {}, async (person) => {
    await person.openJob(kFile, kText);
    const { keyboard } = person.page;
    const at = () => person.page.evaluate(() => {
      const { activeElement: one } = document;
      return one.getAttribute('aria-label') ?? one.textContent;
    });
    // Back with Shift: beyond its end the page has no focus, and not every browser gives it back.
    const tabTo = async (wanted, back = false) => {
      if (back) await keyboard.down('Shift');
      let found = false;
      for (let k = 0; k < 200 && !found; ++k) {
        await keyboard.press('Tab');
        found = (await at()) === wanted;
      }
      if (back) await keyboard.up('Shift');
      return found;
    };
    await person.page.evaluate(() => document.activeElement.blur());
    person.check('Tab reaches the handles', await tabTo('bracket 1'));
    // One soon after the other is one step.
    await Promise.all([keyboard.press('ArrowDown'), keyboard.press('PageUp')]);
    await wait(600);
    await person.settled();
    const kKeyed = kText.replace('at = ["9 in", "front"]', 'at = ["9 5/16 in", "front"]');
    person.equal('arrow keys move by 1/16 in, Page Up by 1/4 in', await person.jobText(), kKeyed);
    await keyboard.press('ArrowRight');
    person.equal('across the way they go on to the next part', await at(), 'bracket 2');
    await keyboard.down('Control');
    await keyboard.press('z');
    await keyboard.up('Control');
    await person.settled();
    person.equal('Ctrl+Z is one step back', await person.jobText(), kText);
    person.check('Tab reaches Print', await tabTo('Print'));
    await keyboard.press('Enter');
    await person.untilSaid('Print test page');
    person.check('Tab reaches Save job', await tabTo('Save job', true));
    const count = await person.handedCount();
    await keyboard.press('Enter');
    person.equal('and the job is saved', (await person.saved(count)).bytes.toString(), kText);
    person.check('Tab reaches the text', await (async () => {
      await tabTo('Text');
      await keyboard.press('Enter');
      return tabTo('Job as text');
    })());
    await keyboard.press('Tab');
    person.check('and leaves it again', (await at()) !== 'Job as text');
  });

  // A wide gap too near a corner: its finding leads to the end of a bumper.
  const kGaping = changed(kText, ['to = ["back", "50%"]', 'to = ["back", "5 in", "left"]']);
  await path(browser, 'from a finding to its field', {}, async (person) => {
    await person.openJob(kFile, kGaping);
    await person.untilSaid('wider gap', '[aria-label="Rules"]');
    await person.page.evaluate(() =>
      [...document.querySelectorAll('.finding')].find((one) => one.textContent.includes('wider gap')).focus());
    await person.page.keyboard.press('Enter');
    person.check('the keyboard goes there, too', await person.until('focus in a field', () =>
      document.activeElement?.closest('.fields [data-key^="bumper."]')?.dataset.key));
  });

  // A rule that is broken, and its mend.
  const kBroken = changed(kText, ['width = "28 in"', 'width = "28 in"\nfloor_gap = "3 in"']);
  await path(browser, 'a rule is broken and mended', {}, async (person) => {
    await person.openJob(kFile, kBroken);
    await person.untilSaid('not met', '[aria-label="Rules"]');
    person.check('it has a sign in the picture', await person.page.$('.fault-sign') !== null);
    const mends = await person.until('its mend', () =>
      [...document.querySelectorAll('.findings.fail .mend')].map((one) => one.textContent).join('\n'));
    await (await person.page.$('.findings.fail .mend')).click();
    await person.until('the rule met', () => document.querySelector('.findings.fail') === null);
    await person.settled();
    const mended = await person.jobText();
    const opened = await core.open(mended);
    const { findings } = await core.findings();
    person.check(`"${mends}" mends it`, opened.ok && findings.every((one) => one.verdict !== 'fail'), mended);
    person.check('the sign is gone', await person.page.$('.fault-sign') === null);
    await person.undo();
    person.equal('undo breaks it again', await person.jobText(), kBroken);
    await person.untilSaid('not met', '[aria-label="Rules"]');
  });
  core.close();
}
