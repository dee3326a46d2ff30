// Digits of a file that somebody drops on the page: the sheets have them as the command draws them.
import { execFileSync } from 'node:child_process';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { changed, path } from '../browser.mjs';
import { byCommand, difference, exampleText, folder, pathsIn } from '../suite.mjs';

const kText = exampleText();
const kFile = 'tin-heron.toml';
const kOwn = 'house.ttf'; // no name of a font that is built in

function unpacked(zip) {
  const where = folder();
  writeFileSync(join(where, 'all.zip'), zip);
  execFileSync('unzip', ['-q', 'all.zip', '-d', 'all'], { cwd: where });
  return new Map(readdirSync(join(where, 'all')).map((name) => [name, readFileSync(join(where, 'all', name))]));
}

export async function ownFont(browser) {
  const [file] = pathsIn('fonts-open/staatliches', /\.ttf$/);
  const own = readFileSync(file);
  const text = changed(kText, ['"Anton"', `"${kOwn}"`]);
  await path(browser, 'digits of one\'s own are drawn', {}, async (person) => {
    const { files: theirs, faults } = await byCommand({ name: kFile, text, files: new Map([[kOwn, own]]) });
    person.check('the command makes the job with the file beside it', theirs !== undefined, faults?.join('\n'));
    const { files: built } = await byCommand({ name: kFile, text: kText, files: new Map() });
    await person.openJob(kFile, kText);
    await person.page.evaluate((name, signs) => {
      const data = new DataTransfer();
      data.items.add(new File([Uint8Array.from(atob(signs), (one) => one.charCodeAt(0))], name));
      document.querySelector('[data-key="numerals.font"] select').dispatchEvent(
        new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
    }, kOwn, own.toString('base64'));
    await person.until('its name in the job', (name) => document.querySelector('[data-key="numerals.font"] select').value === name, kOwn);
    await person.found();
    person.equal('the job names it', await person.jobText(), text);
    const count = await person.handedCount();
    await person.press('Print');
    await person.press('Download all sheets (zip)');
    const ours = unpacked((await person.saved(count)).bytes);
    person.check('it travels in the zip', ours.get(kOwn)?.equals(own) === true);
    ours.delete(kOwn);
    person.check(`the other ${theirs.size} files are the command's`, theirs.size > 10 && difference(ours, theirs) === '', difference(ours, theirs));
    const other = [...ours].filter(([name, bytes]) => /numeral/.test(name) && !built.get(name)?.equals(bytes)).map(([name]) => name);
    person.check('and its digits are others than those built in', other.some((name) => name.endsWith('.pdf')), [...ours.keys()].join('\n'));
  });
}
