// What the page gives is what the command writes: the zip, the PDF of each print button, and the
// answers to scripts. In Chromium and Firefox, with the network cut off.
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { browse, changed, path } from './browser.mjs';
import { byCommand, command, difference, done, exampleText, folder, jobOf, kExample, layOut, pathsIn } from './suite.mjs';

const kText = exampleText();
const kFile = 'tin-heron.toml';
const sum = (bytes) => createHash('sha256').update(bytes).digest('hex');

async function commandsZip(job) {
  const where = layOut(job);
  const { status, err } = await command(['make', job.name, '--zip', 'all.zip'], where);
  if (status !== 0) throw new Error(err);
  return readFileSync(join(where, 'all.zip'));
}
function unpacked(zip) {
  const where = folder();
  writeFileSync(join(where, 'all.zip'), zip);
  execFileSync('unzip', ['-q', 'all.zip', '-d', 'all'], { cwd: where });
  return new Map(readdirSync(join(where, 'all')).map((name) => [name, readFileSync(join(where, 'all', name))]));
}
const namesIn = (zip) => {
  const where = folder();
  writeFileSync(join(where, 'all.zip'), zip);
  return execFileSync('unzip', ['-Z1', 'all.zip'], { cwd: where, encoding: 'utf8' }).trim().split('\n');
};

async function zipOf(person) {
  const count = await person.handedCount();
  await person.press('Print');
  await person.press('Download all sheets (zip)');
  return person.saved(count);
}

/** What the page answers to scripts, with sums for bytes. */
async function asked(person, text, file, given = {}) {
  return person.page.evaluate(async (text, file, given) => {
    const hex = async (bytes) => [...new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))]
      .map((byte) => byte.toString(16).padStart(2, '0')).join('');
    const files = Object.fromEntries(Object.entries(given).map(([name, signs]) =>
      [name, Uint8Array.from(atob(signs), (one) => one.charCodeAt(0))]));
    const made = await window.swathe.files(text, files, file);
    const report = await window.swathe.report(text, files, file);
    const check = await window.swathe.check(text, files, file);
    return {
      files: made.ok ? await Promise.all(made.value.map(async (one) => [one.name, await hex(one.bytes)])) : made,
      report, check,
    };
  }, text, file, given);
}

async function files(browser) {
  const job = jobOf(kExample);
  const { files: theirs } = await byCommand(job);
  const zip = await commandsZip(job);

  await path(browser, 'the zip', {}, async (person) => {
    await person.page.setOfflineMode(true).catch(() => {}); // not in every browser's driver
    await person.openJob(kFile, kText);
    const { name, bytes } = await zipOf(person);
    person.equal('has the job\'s name', name, 'tin-heron.zip');
    person.check('is the command\'s, byte for byte', bytes.equals(zip), difference(unpacked(bytes), unpacked(zip)));
    person.equal('begins with the start sheet', namesIn(bytes)[0], '00-start-here.pdf');
  });

  await path(browser, 'each print button', {}, async (person) => {
    await person.openJob(kFile, kText);
    await person.press('Print');
    const wrong = [], seen = new Set();
    const ways = await person.until('ways to print', () => document.querySelectorAll('[aria-label="Print"] input[type=radio]').length);
    for (let way = 0; way < ways; ++way) {
      await person.page.evaluate((k) => document.querySelectorAll('[aria-label="Print"] input[type=radio]')[k].click(), way);
      await person.until('its files', () => !document.querySelector('[aria-label="Print"] button[aria-label^="Save "]')?.disabled);
      const names = await person.page.evaluate(() => [...document.querySelectorAll('[aria-label="Print"] button[aria-label^="Save "]')]
        .map((one) => one.getAttribute('aria-label').slice('Save '.length)));
      for (const name of names) {
        if (seen.has(name)) continue;
        seen.add(name);
        const count = await person.handedCount();
        await person.press(`Save ${name}`);
        const saved = await person.saved(count);
        if (saved.name !== name || !theirs.get(name)?.equals(saved.bytes)) wrong.push(name);
      }
    }
    const pdfs = [...theirs.keys()].filter((name) => name.endsWith('.pdf'));
    person.check(`${seen.size} files are the command's`, seen.size > 5 && wrong.length === 0, wrong.join('\n'));
    const missing = pdfs.filter((name) => !seen.has(name));
    person.check('every PDF that the command writes has its button', missing.length === 0, missing.join('\n'));
  });

  await path(browser, 'the test page in a tab', {}, async (person) => {
    await person.openJob(kFile, kText);
    await person.press('Print');
    const tab = new Promise((came) => person.browser.once('targetcreated', came));
    await person.press('Print test page');
    const opened = await tab;
    const address = await person.until('its address', () =>
      [...window.opened].find(([, blob]) => blob.type === 'application/pdf')?.[0]);
    person.check('it is the command\'s', (await person.madeAt(address)).equals(theirs.get('test-page.pdf')));
    await (await opened.page())?.close();
  });

  await path(browser, 'a rule not met', {}, async (person) => {
    const broken = { name: kFile, text: Buffer.from(changed(kText, ['width = "28 in"', 'width = "28 in"\nfloor_gap = "3 in"'])), files: new Map() };
    await person.openJob(kFile, broken.text.toString());
    await person.press('Print');
    await person.untilSaid('A rule is not met', '[aria-label="Print"]');
    await person.until('its files', () => document.querySelector('[aria-label="Save 00-start-here.pdf"]')?.disabled === false);
    const count = await person.handedCount();
    await person.press('Save 00-start-here.pdf');
    const { bytes } = await person.saved(count);
    const { files: made } = await byCommand(broken);
    person.check('the start sheet is the command\'s, which says so', bytes.equals(made.get('00-start-here.pdf')) &&
      !bytes.equals(theirs.get('00-start-here.pdf')));
  });

  await path(browser, 'scripts', {}, async (person) => {
    const ours = await asked(person, kText, kFile);
    const wrong = ours.files.filter(([name, one]) => !theirs.has(name) || sum(theirs.get(name)) !== one);
    person.check(`files: ${theirs.size} as the command writes them`, ours.files.length === theirs.size && wrong.length === 0, wrong);
    const report = JSON.parse(theirs.get('report.json'));
    person.equal('report: the command\'s', JSON.stringify(ours.report.value), JSON.stringify(report));
    const told = ({ id, subject, measured, required, verdict }) => [id, subject, measured, required, verdict].join(' | ');
    person.equal('check: as in the report', ours.check.value.map(told).join('\n'), report.checks.map(told).join('\n'));

    const wrongText = kText.replace('width = "28 in"', 'width = "28 zz"');
    const refused = await asked(person, wrongText, kFile);
    const { faults } = await byCommand({ name: kFile, text: wrongText, files: new Map() });
    for (const name of ['files', 'report', 'check'])
      person.equal(`${name}: refused in the command's words`, refused[name].faults?.map((one) => one.text).join('\n'), faults.join('\n'));

    const [font] = pathsIn('tests/fuzz/corpus/font', /^osp-din\.woff2$/);
    const own = { name: kFile, text: kText.replace('"Anton"', '"own.woff2"'), files: new Map([['own.woff2', readFileSync(font)]]) };
    const withFont = await asked(person, own.text, kFile, { 'own.woff2': readFileSync(font).toString('base64') });
    const made = await byCommand(own);
    if (made.faults) person.equal('an own font: refused in the command\'s words', withFont.files.faults?.map((one) => one.text).join('\n'), made.faults.join('\n'));
    else person.check('an own font: the command\'s files', withFont.files.every?.(([name, one]) => sum(made.files.get(name)) === one), withFont.files);
  });
}

const only = process.env.SWATHE_PAGE_BROWSER;
for (const name of ['Chromium', 'Firefox'])
  if (!only || only === name)
    await browse(name, async (browser) => {
      console.log(`-- ${await browser.version()}`);
      await files(browser);
    });
done();
