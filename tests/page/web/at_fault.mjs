// What is wrong points at its place: in every picture, at its fields and at its lines.
import { changed, path } from '../browser.mjs';
import { exampleText } from '../suite.mjs';
import { allMarks, comesToBe, drawnOnce, isLit, pointTo } from './lighting.mjs';

const kText = exampleText();
const kFile = 'tin-heron.toml';
const lineOf = (words, text = kText) => text.slice(0, text.indexOf(words)).split('\n').length;

/** One job for each kind of part that a rule is about. */
const kBroken = {
  'corners, boards, padding, frame': [['diameter = "2.5 in"', 'diameter = "1.5 in"']],
  'ends': [['name = "A"', 'name = "A"\nend_clearance = "2 in"']],
  'one color of cloth': [['[[bumper]]\nname = "A"', '[cloth.colors]\nblue = "#1b3a93"\ngreen = "#118833"\n\n[[bumper]]\nname = "A"']],
  'all numerals': [['font = "Anton"', 'font = "Anton"\ncolor = "#ff0000"']],
  'one numeral': [['font = "Anton"', 'font = "Anton"\nheight = "3 in"']],
};

/** The signs in each picture. */
const allSigns = (person) => person.page.evaluate(() =>
  [...document.querySelectorAll('.fault-sign')].map((one) => ({
    where: one.closest('section').getAttribute('aria-label'), words: one.getAttribute('aria-label').replaceAll('\u00a0', ' '),
  })));
const openAllMore = (person) => person.page.evaluate(async () => {
  for (const item of document.querySelectorAll('.item-name[aria-expanded=false]')) item.click();
  await new Promise(requestAnimationFrame);
  for (const more of document.querySelectorAll('.fields .more[aria-expanded=false]')) more.click();
});
const wordsOf = ({ subject, measured, required }) =>
  `${subject[0].toUpperCase()}${subject.slice(1)}: ${measured}. The rule asks: ${required}.`;

/** Marks at fault in the pictures of the model; those who look on say for themselves what they see. */
async function wrongMarks(person, parts) {
  const wrong = (await allMarks(person, 'at-fault')).filter(({ picture, lit, ...mark }) =>
    lit !== (!/view|chart/.test(picture) && isLit(picture, mark, parts)));
  return wrong.map((mark) => `${mark.where}: "${mark.subjects}" ${mark.lit ? 'is' : 'is not'} at fault`).join('\n');
}

async function pointsAtItsPlace(person, core, text) {
  await core.open(text);
  const broken = (await core.findings()).findings.filter(({ verdict }) => verdict === 'fail');
  person.check('rules are not met', broken.length > 0);
  const wrong = await wrongMarks(person, broken.flatMap(({ subjects }) => subjects));
  person.check('the parts are at fault in the pictures, and no others', wrong === '', wrong);
  const signs = await allSigns(person);
  const signsOf = (finding) => signs.filter(({ words }) => words.includes(wordsOf(finding)));
  const none = broken.filter((finding) => signsOf(finding).length === 0);
  person.check('each has its sign', none.length === 0, none.map(({ id }) => id).join());
  const many = broken.filter((finding) => new Set(signsOf(finding).map(({ where }) => where)).size !== signsOf(finding).length);
  person.check('and one in a picture', many.length === 0, many.map(({ id }) => id).join());

  const hidden = await person.page.evaluate(() =>
    [...document.querySelectorAll('.field.rule-not-met')].length < document.querySelectorAll('.fields .rule-sign').length);
  await openAllMore(person);
  await drawnOnce(person);
  const shown = await person.page.evaluate(() => Object.fromEntries([...document.querySelectorAll('.field')].map((one) => {
    const described = [one, ...one.querySelectorAll('[aria-describedby]')].map((each) => each.getAttribute('aria-describedby')).find(Boolean);
    return [one.dataset.key, {
      isMarked: one.classList.contains('rule-not-met'), sign: one.querySelector('.label .rule-sign')?.textContent,
      said: (described ?? '').split(' ').map((id) => document.getElementById(id)?.textContent ?? '').join(' ').replaceAll('\u00a0', ' '),
    }];
  })));
  const untold = [];
  for (const [key, field] of Object.entries(shown)) {
    const its = broken.filter(({ keys }) => keys.some((one) => one.key === key || one.key.startsWith(`${key}.`)));
    if (field.isMarked !== its.length > 0 || (field.sign === '!') !== its.length > 0) untold.push(`${key} is ${field.isMarked ? '' : 'not '}marked`);
    for (const finding of its) if (!field.said.includes(wordsOf(finding))) untold.push(`${key}: ${field.said}`);
  }
  person.check('it is told at its fields, and at no others', Object.values(shown).some(({ isMarked }) => isMarked) && untold.length === 0, untold.join('\n'));
  return hidden;
}

export async function atFault(browser, core) {
  for (const [what, changes] of Object.entries(kBroken))
    await path(browser, `a rule about ${what}`, {}, async (person) => {
      const text = changed(kText, ...changes);
      await person.openJob(kFile, text);
      await person.press('Cut-through');
      await person.until('every picture', () => document.querySelectorAll('svg.screen').length >= 7);
      await person.settled();
      const hidden = await pointsAtItsPlace(person, core, text);
      if (what === 'one numeral') person.check('"More" has the sign of what it hides', hidden);

      await person.showText();
      await person.until('the lines', () => document.querySelector('.cm-line.rule-not-met') !== null);
      const lines = await person.page.evaluate(() => [...document.querySelectorAll('.cm-line.rule-not-met')].map((one) => one.textContent));
      const [, anew] = changes[0];
      person.check('so does the line that breaks it', lines.some((line) => anew.split('\n').includes(line)), lines.join('\n'));
      await person.page.keyboard.press('F8');
      person.check('with words', await person.until('the words', () =>
        /Rule not met/.test(document.querySelector('.cm-tooltip-lint, .cm-panel-lint')?.textContent ?? '')));
    });

  await path(browser, 'from a finding to its place', {}, async (person) => {
    await person.openJob(kFile, changed(kText, ...kBroken['one numeral']));
    await person.page.evaluate(() => document.querySelector('.findings.fail .finding').click());
    await person.until('the field', () => Boolean(document.activeElement?.closest('[data-key="numerals.height"]')));
    person.equal('the parts of the finding are selected', await comesToBe(person, ['numeral.1'], 'selected'), '');
    person.check('and it is lit itself', await person.page.$('.findings.fail li.lit') !== null);
    await person.page.keyboard.press('Tab');
    await person.page.keyboard.down('Shift');
    await person.page.keyboard.press('Tab');
    await person.page.keyboard.up('Shift');
    person.equal('whoever comes to the field by themselves selects what it says', await comesToBe(person, ['numerals'], 'selected'), '');
  });
  await path(browser, 'from a color to its field', {}, async (person) => {
    await person.openJob(kFile, changed(kText, ...kBroken['one color of cloth']));
    await person.page.evaluate(() => document.querySelector('.findings.fail .finding').click());
    await person.until('the field', () => Boolean(document.activeElement?.closest('[data-key="cloth.colors"]')));
    person.equal('the cloth is selected', await comesToBe(person, ['cloth.green'], 'selected'), '');
  });
  await path(browser, 'a part and its rules', {}, async (person) => {
    await person.openJob(kFile, changed(kText, ['height = "5 in"', 'height = "4 in"']));
    // Where nothing lies over it is for the browser to say.
    await person.page.evaluate(() => document.querySelector('.plan [data-subject="bumper.A.board.left"]')
      .dispatchEvent(new PointerEvent('pointermove', { bubbles: true, pointerType: 'mouse' })));
    await person.until('rules about boards lit', () => document.querySelectorAll('.findings.fail li.lit').length === 2);
    person.equal('what is pointed at in a picture lights up', await comesToBe(person, ['bumper.A.board.left'], 'lit'), '');
    for (const part of ['bracket.1', 'numeral.2', 'bumper.A.end bumper.B.start']) {
      await pointTo(person, `.pane.plan .grip[data-subject="${part}"]`);
      person.equal(`${part}, under the pointer, too`, await comesToBe(person, part.split(' '), 'lit'), '');
    }
    await person.page.mouse.move(2, 2);
    person.equal('and goes out again', await comesToBe(person, [], 'lit'), '');
  });

  const kBracket = 'at = ["9 in", "front"]';
  await path(browser, 'a fault and its part', {}, async (person) => {
    await person.openJob(kFile, kText);
    await person.showText();
    await person.retype(lineOf(kBracket), 'at = ["29 in", "front"]');
    await person.until('the fault', () => document.querySelector('.rules .faults') !== null);
    await person.until('its sign', () => document.querySelectorAll('.fault-sign').length === 2);
    person.equal('the bracket is at fault in the last good pictures', await wrongMarks(person, ['bracket.1']), '');
    const signs = await allSigns(person);
    person.check('with a sign that says why', signs.every(({ words }) => words.includes('the bracket ends 32 in')), JSON.stringify(signs));
    await person.retype(lineOf(kBracket), kBracket);
    await person.until('no sign', () => document.querySelector('.fault-sign') === null);
    person.equal('mended, none is', await wrongMarks(person, []), '');
    await person.press('Fields');
    await person.putIn('Width', '26 zz', await person.region('Frame'));
    await person.until('its sign', () => document.querySelector('.fault-sign') !== null);
    person.equal('so it is with what cannot be read in a field', await wrongMarks(person, ['side.front', 'side.back']), '');
  });

  const kLines = changed(kText, ['holes = [["3/4 in", "3/4 in"], ["2 1/4 in", "3/4 in"]]\ncloth = "under"\n\n[[bracket]]\nside = "right"',
    'holes = [\n  ["3/4 in", "3/4 in"],\n  ["2 1/4 in", "3/4 in"],\n]\ncloth = "under"\n\n[[bracket]]\nside = "right"']);
  await path(browser, 'lines of the text', {}, async (person) => {
    await person.openJob(kFile, kLines);
    await person.showText();
    const at = async (what, line, parts) => {
      await person.goToLine(line);
      person.equal(what, await comesToBe(person, parts, 'selected'), '');
    };
    const holes = lineOf('holes = [', kLines);
    await at('a later line of a value selects what its first one does', holes + 2, ['bracket.1']);
    await person.until('all of its lines lit', (nth) => [0, 1, 2, 3].every((k) =>
      document.querySelectorAll('.cm-line')[nth - 1 + k].classList.contains('lit-line')), holes);
    await at('the head of a table selects what it is about', lineOf('name = "B"', kLines) - 1, ['bumper.B']);
    await at('and of the second bracket', lineOf('side = "right"', kLines) - 1, ['bracket.2']);
    await at('a comment selects nothing', lineOf('# Latch plates', kLines), []);
  });
}
