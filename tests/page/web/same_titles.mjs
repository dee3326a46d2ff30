// Kept jobs that have one title, and those that were opened together.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { path } from '../browser.mjs';
import { exampleText, folder } from '../suite.mjs';

const kText = exampleText();
const kTitle = 'Tin Heron, spring covers';
const kNames = ['one.toml', 'two.toml', 'three.toml'];

export async function sameTitles(browser) {
  await path(browser, 'kept jobs with one title', {}, async (person) => {
    const text = (k) => (k === 2 ? kText.replace(kTitle, 'Another') : `${kText}# ${k}\n`);
    const files = kNames.map((name, k) => {
      const where = join(folder(), name);
      writeFileSync(where, text(k));
      return where;
    });
    const chooser = await person.page.waitForSelector('input[type=file]');
    await chooser.evaluate((element) => (element.multiple = true)); // as if dropped
    await chooser.uploadFile(...files);
    await person.until('the last one', () => document.querySelector('h1')?.textContent.includes('three.toml'));
    await person.found();
    await person.press('New');
    await person.find('button', `Open ${kTitle} (one.toml)`);
    await person.find('button', `Open ${kTitle} (two.toml)`);
    await person.find('button', 'Open Another');
    person.check('those that were opened together are listed by title, and by file where it is the same', true);
    const said = await person.words(await person.page.$('.kept ul'));
    person.check('which is seen, too', said.includes(`${kTitle} (two.toml)\n20486, `), said);
    await person.page.reload();
    await person.press(`Open ${kTitle} (two.toml)`);
    await person.found();
    person.equal('the one that is asked for is opened', await person.jobText(), text(1));
    await person.press('New');
    await person.press(`Forget ${kTitle} (one.toml)`);
    await person.find('button', `Undo: keep ${kTitle} (one.toml)`);
    person.check('what is forgotten goes by the same name', true);
    await person.openJob('two.toml', `${text(1)}# again\n`);
    await person.press('New');
    await person.until('names with dates', (title) => {
      const names = [...document.querySelectorAll('.kept .open')].map((one) => one.getAttribute('aria-label'));
      return names.filter((name) => name.startsWith(`Open ${title} (two.toml, `)).length === 2;
    }, kTitle);
    person.check('and of those with one file name, the dates are told', true);
  });
}
