// Linked pictures: whatever part is selected in one view, is lit in all that show it, and in no
// other mark. Of drawn jobs, and of kinds with openings and more sides.
//
// SWATHE_PAGE_LONG: 40 drawn jobs.
import { browse, path } from './browser.mjs';
import { drawnJobs } from './drawn_jobs.mjs';
import { Swathe, done, exampleText, kLong } from './suite.mjs';

/** What stands for all parts of a kind. */
const kAll = {
  bumpers: /^bumper\.[^.]+$/, boards: /^bumper\.[^.]+\.board\./, padding: /^bumper\.[^.]+\.padding\./,
  numerals: /^numeral\./,
};
/** Whether a mark that shows `shown` shows the part `part`, or a piece of it. */
function shows(picture, shown, part) {
  if (shown === part || shown.startsWith(`${part}.`)) return true;
  if (kAll[part]?.test(shown)) return true;
  // A cut-through shows once what is alike in all.
  return picture === 'cut-through' && (kAll[shown]?.test(part) ?? false);
}
/** Whether a mark has to be lit. Of a whole bumper its own cover shows the cloth alone. */
function isLit(picture, mark, selected) {
  return selected.some((part) => {
    if (picture === 'cover' && kAll.bumpers.test(part)) return mark.cloth && mark.subjects.includes(part);
    if (picture === 'cover' && part === 'bumpers') return mark.cloth && mark.subjects.some((shown) => kAll.bumpers.test(shown));
    return mark.subjects.some((shown) => shows(picture, shown, part));
  });
}

/** All marks on the page: in which picture, what each shows, and whether it is lit. */
function allMarks() {
  return [...document.querySelectorAll('svg.screen')].filter((svg) => !svg.closest('.kinds')).flatMap((svg) => {
    const picture = svg.getAttribute('class').split(' ')[1];
    const where = svg.closest('[aria-label]')?.getAttribute('aria-label') ?? picture;
    return [...svg.querySelectorAll('[data-subject]')].map((mark) => ({
      picture, where, subjects: mark.getAttribute('data-subject').split(' '),
      cloth: mark.closest('.cloth') !== null, lit: mark.classList.contains('selected'),
    }));
  });
}
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

function wrongOf(marks, selected) {
  return marks.filter((mark) => mark.lit !== isLit(mark.picture, mark, selected))
    .map((mark) => `${mark.where}: "${mark.subjects.join(' ')}" is ${mark.lit ? 'lit' : 'not lit'} with ${selected.join(' ')}`);
}
const drawnOnce = (person) => person.page.evaluate(() =>
  new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));

const core = new Swathe();
const jobs = drawnJobs(kLong ? 40 : 2);
for (const kind of kLong ? await core.kinds() : ['opening', 'hexagon']) {
  // With a number where there is room for one.
  const { value: { text: bare } } = await core.jobOfKind(kind);
  const numbered = bare.replace(/^# number = .*$/m, 'number = "20486"');
  jobs.push({ name: `${kind}.toml`, text: Buffer.from((await core.open(numbered)).ok ? numbered : bare) });
}

await browse('Chromium', async (browser) => {
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
          const marks = await person.page.evaluate(allMarks);
          wrong.push(...wrongOf(marks, stop.split(' ')));
          for (const mark of marks) if (mark.lit) lit.set(stop, (lit.get(stop) ?? new Set()).add(mark.where));
        }
      }
      person.check(`${chosen.size} parts in pictures: lit where they are shown, and nowhere else`,
        chosen.size >= 8 && wrong.length === 0, [...new Set(wrong)].slice(0, 20).join('\n'));
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
        unlike.push(...wrongOf(await person.page.evaluate(allMarks), [subject]));
      };
      const brackets = new Set(fields.filter(({ form }) => form === 'bracket.side').map(({ key }) => key.split('.')[1]));
      for (const number of brackets) await chooseField(`bracket.${number}`, `bracket.${number}`);
      for (const [k, bumper] of bumpers.entries())
        if (/^\w+$/.test(bumper)) await chooseField(`bumper.${k + 1}`, `bumper.${bumper}`);
      person.check('chosen among the fields they light up alike', unlike.length === 0, [...new Set(unlike)].slice(0, 20).join('\n'));

      const at = fields.filter(({ key, given }) => given && /^(bracket\.\d+\.at|bumper\.\d+\.(from|to))$/.test(key));
      await person.showText();
      const unlit = [];
      for (const field of at.slice(0, kLong ? at.length : 4)) {
        const [table, number, part] = field.key.split('.');
        const subject = table === 'bracket' ? `bracket.${number}`
          : `bumper.${fields.find(({ key }) => key === `bumper.${number}.name`).shown}.${part === 'from' ? 'start' : 'end'}`;
        await person.goToLine(field.line);
        await drawnOnce(person);
        const marks = await person.page.evaluate(allMarks);
        unlit.push(...wrongOf(marks, [subject]));
      }
      person.check('and with the cursor on their line', at.length > 0 && unlit.length === 0, [...new Set(unlit)].slice(0, 20).join('\n'));

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
