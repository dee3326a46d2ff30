// What is moved by hand or by key, in whole steps: an opening, and all in a metric job.
import { changed, path } from '../browser.mjs';
import { Swathe, exampleText, pathsIn } from '../suite.mjs';
import { readFileSync } from 'node:fs';

const kFile = 'tin-heron.toml';
const kOpening = readFileSync(pathsIn('examples/kinds', /^opening\.toml$/)[0], 'utf8');
const kMetric = changed(exampleText(), ['season = "2026"', 'season = "2026"\nunits = "mm"']);

const figure = (person) => person.until('the figure', () => document.querySelector('.stage .figure')?.innerText);
const valueText = async (person, region, name) =>
  (await person.handle(region, name)).evaluate((element) => element.getAttribute('aria-valuetext'));
/** Keys at a handle, with nothing in between: of a slow machine, too, they are one step. */
async function keys(person, region, name, ...pressed) {
  await (await person.handle(region, name)).evaluate((element, all) => {
    element.focus();
    for (const key of all) element.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
  }, pressed);
  await person.until('the keys at an end', () => document.querySelector('.stage.moving') === null);
  await person.settled();
}
/** With the first bracket so far from the front. */
const bracketAt = (text, at) => text.replace('at = ["9 in", "front"]', `at = ["${at}", "front"]`);

export async function moving(browser) {
  const core = new Swathe();

  await path(browser, 'an opening is dragged', {}, async (person) => {
    const opened = await core.open(kOpening, { advice: false });
    const moved = async (mm, snap = true) => (await core.moved('side.front', mm, { snap, text: kOpening })).value.text;
    const kMoved = kOpening.replace('width = "14 in"\n', 'width = "14 in"\ncenter = ["16 in", "right"]\n');
    person.equal('the core moves its middle', opened.ok && await moved(16 * 25.4), kMoved);
    await person.openJob('opening.toml', kOpening);
    person.equal('at first it is in the middle', await valueText(person, 'From above', 'opening on front'), 'middle 14 in from the corner with right');
    // A little off the whole step, which it is set to.
    await person.drag('From above', 'opening on front', 2 * 25.4 + 2, { keep: false });
    person.equal('its place is shown while it is dragged', (await figure(person)).replace('opening on front: ', ''), 'middle 16 in from the corner with right');
    await person.page.mouse.up();
    await person.settled();
    person.equal('the job\'s text is the command\'s', await person.jobText(), kMoved);
    await core.open(kMoved, { advice: false });
    const { stock } = JSON.parse(Buffer.from(await core.report()));
    await person.press('To buy');
    await person.untilSaid(`${stock.padding.pieces.length} noodles`, '[aria-label="To buy"]');
    await person.press('Rules');
    await person.drag('From above', 'opening on front', 200, { steps: 25 });
    const far = await person.jobText();
    person.check('beside its corner it stops where the job can still be made', (await core.open(far, { advice: false })).ok &&
      /^center = \["(1[6-9]|2[01])( \d+\/\d+)? in", "right"\]$/m.test(far), far);
    person.check('no fault is left', await person.page.$('.faults') === null);
    await person.undo();
    await person.undo();
    person.equal('undo takes both moves back', await person.jobText(), kOpening);
    await person.drag('From above', 'opening on front', 76.2, { key: 'Escape' });
    await person.settled();
    person.equal('Escape takes back what is being dragged', await person.jobText(), kOpening);
    await keys(person, 'From above', 'opening on front', 'PageUp', 'ArrowLeft', 'ArrowLeft', 'ArrowRight');
    await core.open(kOpening, { advice: false });
    person.equal('keys move it as they point, by 1/4 and 1/16 in', await person.jobText(), await moved((14 + 5 / 16) * 25.4, false));
    await person.undo();
    person.equal('all of them are one step back', await person.jobText(), kOpening);
  });

  await path(browser, 'steps of a metric job', {}, async (person) => {
    await person.openJob(kFile, kMetric);
    person.equal('a place is told in millimeters', await valueText(person, 'From above', 'bracket 1'), '229 mm from the corner with front');
    await person.drag('From above', 'bracket 1', 56.4, { keep: false });
    person.equal('so it is while it is dragged', (await figure(person)).replace('bracket 1: ', ''), '285 mm from the corner with front');
    await person.page.mouse.up();
    await person.settled();
    person.equal('a drag goes to whole 5 mm', await person.jobText(), bracketAt(kMetric, '285 mm'));
    await person.undo();
    await person.drag('Cover', 'bracket 1', 56.4);
    person.equal('on the cover, too', await person.jobText(), bracketAt(kMetric, '285 mm'));
    await keys(person, 'From above', 'bracket 1', 'ArrowDown', 'ArrowDown', 'ArrowUp');
    person.equal('arrow keys go by 1 mm', await person.jobText(), bracketAt(kMetric, '286 mm'));
    await keys(person, 'From above', 'bracket 1', 'PageUp', 'PageUp', 'PageDown');
    person.equal('Page Up and Page Down by 5 mm', await person.jobText(), bracketAt(kMetric, '291 mm'));
    const hint = await (await person.handle('From above', 'bracket 1')).evaluate((element) =>
      document.getElementById(element.getAttribute('aria-describedby')).textContent);
    person.check('which is told', hint.includes('by 1 mm, Page Up and Page Down by 5 mm'), hint);
    await person.drag('From above', 'gap between A and B', -40.6);
    person.equal('a gap of both bumpers goes to whole 5 mm', await person.jobText(), bracketAt(kMetric, '291 mm')
      .replaceAll('["back", "50%"]', '["back", "315 mm", "left"]'));
    const width = await person.select('Width', await person.region('Frame'));
    await width.dispose();
    await person.page.keyboard.press('ArrowUp');
    await person.untilSaid('front 712 mm', '.pane.plan');
    await person.settled();
    person.equal('a field\'s arrow keys by 1 mm', await person.valueOf('Width', await person.region('Frame')), '712 mm');
    await person.press('Walk round');
    await person.untilSaid('At the front, 6.1 m away', 'dialog .verdict');
    await person.page.keyboard.press('Escape');
    await person.undoAll();
    person.equal('undo goes back to the start', await person.jobText(), kMetric);
  });
  core.close();
}
