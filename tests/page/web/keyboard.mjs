// Where the keyboard is after something that was used with it is gone.
import { changed, path } from '../browser.mjs';
import { exampleText } from '../suite.mjs';

const kText = exampleText();
const kFile = 'tin-heron.toml';
const kTitle = 'Tin Heron, spring covers';

/** Who has the keyboard: its name, or else the key of its field. */
const holder = () => {
  const at = document.activeElement;
  return at.getAttribute('aria-label') ?? (at.matches('button') ? at.textContent : at.closest('[data-key]')?.dataset.key ?? at.tagName);
};
async function enter(person, role, name, within) {
  const control = await person.find(role, name, within);
  await control.focus();
  await control.dispose();
  await person.page.keyboard.press('Enter');
}
async function has(person, what, wanted) {
  let found;
  for (let tries = 0; tries < 100 && found !== wanted; ++tries) {
    await person.settled();
    found = await person.page.evaluate(holder);
  }
  person.equal(`${what}, the keyboard is there`, found, wanted);
}

export async function keyboard(browser) {
  await path(browser, 'keyboard: in fields', {}, async (person) => {
    const text = changed(kText, ['[numerals]', '[cloth]\ncolors = { red = "#b5121b", blue = "#1b3a93", gold = "#c9971c" }\n\n[numerals]']);
    await person.openJob(kFile, text);
    const frame = await person.region('Frame');
    for (const typed of ['26 in', '26 1/']) {
      await person.putIn('Width', typed, frame);
      await person.page.keyboard.down('Control');
      await person.page.keyboard.press('z');
      await person.page.keyboard.up('Control');
      await has(person, `"${typed}" undone by key`, 'frame.width');
      person.equal('and the field shows the job\'s value', await person.valueOf('Width', frame), '28 in');
    }
    await person.page.keyboard.press('ArrowUp');
    await person.settled();
    person.equal('which goes on from there', await person.valueOf('Width', frame), '28 1/16 in');
    await person.undoAll();
    await person.page.focus('[data-key="job.title"] input');
    await person.page.keyboard.press('Tab');
    await person.page.keyboard.press('Enter');
    await has(person, 'a value cleared', 'job.title');
    person.check('in its field', await person.page.evaluate(() => document.activeElement.matches('input')));
    const cloth = await person.region('Cloth');
    await person.page.focus('[data-key="cloth.colors"] input'); // where each is shown
    await enter(person, 'button', 'Remove gold', cloth);
    await has(person, 'the last color removed', 'color red');
    await enter(person, 'button', 'Remove red', cloth);
    await has(person, 'a color before another one removed', 'color blue');
    const openings = await person.region('Openings');
    await enter(person, 'button', 'Add an opening', openings);
    await enter(person, 'button', 'Remove opening 1', openings);
    await has(person, 'the only opening removed', 'Add an opening');
  });

  await path(browser, 'keyboard: in rules', {}, async (person) => {
    await person.openJob(kFile, changed(kText, ['width = "28 in"', 'width = "28 in"\nfloor_gap = "3 in"']));
    await person.until('a mend', () => document.querySelector('.findings.fail .mend') !== null);
    await person.page.focus('.findings.fail .mend');
    const name = await person.page.evaluate(holder);
    await person.page.keyboard.press('Enter');
    await person.until('it is used', (mend) => document.activeElement.textContent !== mend, name);
    await person.settled();
    person.check('a rule mended, the keyboard is among the rules', await person.page.evaluate(() =>
      document.activeElement.matches('.rules button, .rules summary')));
  });

  await path(browser, 'keyboard: what is forgotten', {}, async (person) => {
    await person.openJob(kFile, kText);
    await enter(person, 'button', 'Forget');
    await has(person, 'the open job forgotten', 'Begin');
    await enter(person, 'button', `Undo: keep ${kTitle}`);
    await has(person, 'taken back', `Open ${kTitle}`);
    await enter(person, 'button', `Forget ${kTitle}`);
    await has(person, 'a kept job forgotten', `Undo: keep ${kTitle}`);
  });
}
