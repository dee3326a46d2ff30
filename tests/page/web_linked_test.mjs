// Linked pictures: whatever part is selected, pointed at or at fault in one view, is lit in all that
// show it, and in no other mark. Of drawn jobs, and of kinds with openings and more sides.
//
// SWATHE_PAGE_LONG: 40 drawn jobs.
import { browse, path } from './browser.mjs';
import { drawnJobs } from './drawn_jobs.mjs';
import { Swathe, done, kLong } from './suite.mjs';
import { atFault } from './web/at_fault.mjs';
import { allMarks, comesToBe, drawnOnce, listed, pointTo, pointToLine, wrongOf } from './web/lighting.mjs';

/** Of findings every so manyth is pointed at. */
const kEvery = kLong ? 1 : 3;

/** What can be stopped at by keyboard in the pictures, each once: where, and which parts. */
function allStops() {
  return [...document.querySelectorAll('section.picture [data-stop]')].map((stop) => ({
    region: stop.closest('section').getAttribute('aria-label'), stop: stop.getAttribute('data-stop'),
  }));
}
function chooseStop(region, stop) {
  const found = [...document.querySelectorAll(`section[aria-label="${region}"] [data-stop]`)]
    .find((one) => one.getAttribute('data-stop') === stop);
  found?.focus();
  found?.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true, cancelable: true }));
  return found !== undefined;
}

const core = new Swathe();
const jobs = drawnJobs(kLong ? 40 : 2);
for (const kind of kLong ? await core.kinds() : ['opening', 'hexagon']) {
  // With a number where there is room for one.
  const { value: { text: bare } } = await core.jobOfKind(kind);
  const numbered = bare.replace(/^# number = .*$/m, 'number = "20486"');
  jobs.push({ name: `${kind}.toml`, text: Buffer.from((await core.open(numbered)).ok ? numbered : bare) });
}

await browse('Chromium', async (browser) => {
  await atFault(browser, core);
  for (const job of jobs)
    await path(browser, job.name, {}, async (person) => {
      const text = job.text.toString();
      await person.openJob(job.name, text);
      await person.press('Cut-through');
      await person.until('every picture', () => document.querySelectorAll('svg.screen').length >= 7);
      await person.settled();
      const { value: { bumpers } } = await core.open(text);
      const wrong = [], chosen = new Set(), lit = new Map();
      for (const bumper of bumpers) {
        if (bumpers.length > 1) await person.press(`Cover ${bumper}`, undefined, 'tab');
        await person.settled();
        for (const { region, stop } of await person.page.evaluate(allStops)) {
          if (chosen.has(`${region} ${stop}`) && region !== 'Cover') continue;
          chosen.add(`${region} ${stop}`);
          if (!(await person.page.evaluate(chooseStop, region, stop))) continue;
          await drawnOnce(person);
          const marks = await allMarks(person);
          wrong.push(...wrongOf(marks, stop.split(' ')));
          for (const mark of marks) if (mark.lit) lit.set(stop, (lit.get(stop) ?? new Set()).add(mark.where));
        }
      }
      person.check(`${chosen.size} parts in pictures: lit where they are shown, and nowhere else`,
        chosen.size >= 8 && wrong.length === 0, listed(wrong));
      const alone = [...lit].filter(([stop, places]) => /^(bracket|bumper\.[^.]+\.(start|end)|numeral)/.test(stop) && places.size < 2);
      person.check('brackets, ends and numbers are lit in more than one picture', lit.size > 0 && alone.length === 0,
        alone.map(([stop, places]) => `${stop}: ${[...places]}`).join('\n'));

      // The same from a field, a finding and a line of the text.
      const unlike = [];
      const { value: fields } = await core.fields(text);
      const chooseField = async (key, subject) => {
        await person.page.evaluate(async (id) => {
          const name = document.getElementById(id);
          if (name.getAttribute('aria-expanded') === 'true') name.click();
          await new Promise((later) => setTimeout(later, 50));
          name.click();
        }, `field-${key.replaceAll('.', '-')}`);
        await drawnOnce(person);
        unlike.push(...wrongOf(await allMarks(person), [subject]));
      };
      const brackets = new Set(fields.filter(({ form }) => form === 'bracket.side').map(({ key }) => key.split('.')[1]));
      for (const number of brackets) await chooseField(`bracket.${number}`, `bracket.${number}`);
      for (const [k, bumper] of bumpers.entries())
        if (/^\w+$/.test(bumper)) await chooseField(`bumper.${k + 1}`, `bumper.${bumper}`);
      person.check('chosen among the fields they light up alike', unlike.length === 0, listed(unlike));

      // What a finding is about, pointed at among the rules.
      await person.page.evaluate(() => {
        for (const more of document.querySelectorAll('.findings h2 .more')) more.click();
      });
      const { findings } = await core.findings();
      const unpointed = new Set();
      for (const [k, { subjects }] of findings.filter(({ verdict }) => verdict !== 'fail').entries()) {
        if (k % kEvery !== 0) continue;
        await pointTo(person, '.findings:not(.fail) .finding', k);
        const wrong = await comesToBe(person, subjects, 'lit');
        if (wrong) unpointed.add(wrong);
      }
      person.check('what a finding is about lights up when it is pointed at', findings.length > 10 && unpointed.size === 0, listed(unpointed));

      const subjectOf = (key) => {
        const [table, number, part] = key.split('.');
        return table === 'bracket' ? `bracket.${number}`
          : `bumper.${fields.find((one) => one.key === `bumper.${number}.name`).shown}.${part === 'from' ? 'start' : 'end'}`;
      };
      const at = fields.filter(({ key, given }) => given && /^(bracket\.\d+\.at|bumper\.\d+\.(from|to))$/.test(key));
      await person.showText();
      const unlit = [];
      for (const { key, line } of at.slice(0, kLong ? at.length : 4)) {
        await person.goToLine(line);
        await drawnOnce(person);
        unlit.push(...wrongOf(await allMarks(person), [subjectOf(key)]));
      }
      person.check('and with the cursor on their line', at.length > 0 && unlit.length === 0, listed(unlit));

      // The pointer on a line, while something else is selected.
      const notPointed = [], selected = await allMarks(person);
      for (const { key, line } of at.slice(-3)) {
        await pointToLine(person, line);
        const wrong = await comesToBe(person, [subjectOf(key)], 'lit');
        if (wrong) notPointed.push(wrong);
      }
      person.check('with the pointer on a line, too', notPointed.length === 0, listed(notPointed));
      person.equal('and what is selected stays so', JSON.stringify(await allMarks(person)), JSON.stringify(selected));
      await person.page.mouse.move(2, 2);

      // And back: what is chosen in a picture is shown among the fields and in the text.
      await person.page.evaluate(() => document.activeElement.blur());
      const unshown = [];
      for (const { region, stop } of (await person.page.evaluate(allStops)).filter((one) => /^bracket\.\d+$/.test(one.stop))) {
        await person.page.evaluate(chooseStop, region, stop);
        const lines = fields.filter(({ key, given }) => given && key.startsWith(`${stop}.`)).map(({ line }) => line);
        const wanted = lines.map((line) => text.split('\n')[line - 1]);
        await person.until('its lines lit', (these) => {
          const lit = [...document.querySelectorAll('.cm-line.lit-line')].map((one) => one.textContent);
          return lit.length > 0 && lit.every((one) => these.includes(one));
        }, wanted).catch(() => unshown.push(stop));
      }
      person.check('what is chosen in a picture is lit in the text', unshown.length === 0, unshown.join('\n'));
    });
});
core.close();
done();
