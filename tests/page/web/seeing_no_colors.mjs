// Somebody who sees no colors: what is pointed at, chosen, at fault or cannot be read is told by lines, signs or words, too.
import { changed, path } from '../browser.mjs';
import { exampleText } from '../suite.mjs';

/** Low padding, a number too small on the front, and none on the right. */
const kText = changed(exampleText(), ['width = "28 in"', 'width = "28 in"\nfloor_gap = "3 in"'],
  ['font = "Anton"', 'font = "Anton"\nheight = "3 in"'], ['"back", "right"]', '"back"]']);

/** Of the page as it is seen: how far any dot is from a grey. */
async function mostColor(person) {
  const picture = await person.page.screenshot({ encoding: 'base64' });
  const dark = await person.browser.newPage(); // the page's own policy would be in the way
  const most = await dark.evaluate(async (signs) => {
    const bytes = Uint8Array.from(atob(signs), (one) => one.charCodeAt(0));
    const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const canvas = new OffscreenCanvas(image.width, image.height).getContext('2d');
    canvas.drawImage(image, 0, 0);
    const { data } = canvas.getImageData(0, 0, image.width, image.height);
    let found = 0;
    for (let k = 0; k < data.length; k += 4)
      found = Math.max(found, Math.max(data[k], data[k + 1], data[k + 2]) - Math.min(data[k], data[k + 1], data[k + 2]));
    return found;
  }, picture);
  await dark.close();
  return most;
}

/** Points at each part in the pictures, and chooses it: marks that then look as before but for colors and tints. */
async function untold() {
  /** Marks in all pictures, by picture and what they show; `on`: lit, or selected. */
  const looks = (on) => {
    const found = new Map();
    for (const mark of document.querySelectorAll('.picture svg.screen [data-subject]')) {
      const { stroke, strokeWidth, strokeDasharray, textDecorationLine, textDecorationStyle, filter } = getComputedStyle(mark);
      const name = `${mark.closest('svg').getAttribute('class')} of ${mark.closest('section').getAttribute('aria-label')}: ${mark.dataset.subject}`;
      const group = found.get(name) ?? { looks: '', on: false };
      group.on ||= mark.classList.contains(on);
      group.looks += [stroke === 'none' ? 0 : strokeWidth, strokeDasharray, textDecorationLine, textDecorationStyle, filter, ''].join(' ');
      found.set(name, group);
    }
    return found;
  };
  document.activeElement.blur();
  const plain = looks('lit'), wrong = new Set(), seen = { lit: 0, selected: 0 };
  const stops = [...document.querySelectorAll('.plan [data-stop], .cover [data-stop]')].map((one) => [one.closest('section'), one.dataset.stop]);
  for (const [region, stop] of stops)
    for (const [state, key] of [['lit', 'Escape'], ['selected', 'Enter']]) {
      const one = [...region.querySelectorAll('[data-stop]')].find(({ dataset }) => dataset.stop === stop);
      one.focus();
      one.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
      if (state === 'selected') one.blur(); // chosen, and no longer pointed at
      await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
      for (const [name, now] of looks(state)) {
        if (now.on) seen[state] += 1;
        if (now.on && now.looks === plain.get(name)?.looks) wrong.add(`${state}: ${name}`);
      }
    }
  return { seen, wrong: [...wrong] };
}

/** Marks at fault that nothing but their color tells of. */
function faultsUntold() {
  return [...document.querySelectorAll('.picture svg.screen .at-fault')].filter((mark) => {
    const { stroke, strokeDasharray, textDecorationLine } = getComputedStyle(mark);
    if ((stroke !== 'none' && strokeDasharray !== 'none') || textDecorationLine === 'underline') return false;
    const box = mark.getBoundingClientRect();
    return ![...mark.closest('.stage').querySelectorAll('.fault-sign')].some((sign) => {
      const { left, top, width, height } = sign.getBoundingClientRect();
      const x = left + width / 2, y = top + height / 2;
      return sign.textContent === '!' && x > box.left - 24 && x < box.right + 24 && y > box.top - 24 && y < box.bottom + 24;
    });
  }).map((mark) => `${mark.closest('svg').getAttribute('class')}: ${mark.dataset.subject}`);
}

export async function seeingNoColors(browser) {
  await path(browser, 'in grey', {}, async (person) => {
    await person.page.emulateVisionDeficiency('achromatopsia');
    await person.openJob('grey.toml', kText);
    const color = await mostColor(person);
    person.check('no color is seen', color <= 4, color);

    const kinds = await person.page.evaluate(() => [...document.querySelectorAll('.picture svg.screen')].filter((svg) => svg.querySelector('.at-fault'))
      .map((svg) => svg.getAttribute('class')));
    const faults = await person.page.evaluate(faultsUntold);
    person.check('what is at fault is dashed, underlined or signed', kinds.length === 2 && faults.length === 0, `${kinds}\n${faults.join('\n')}`);
    const signs = await person.page.evaluate(() => [...document.querySelectorAll('.findings h2 .sign')].map((one) => one.textContent));
    person.check('how a rule stands has its sign', signs.length === 4 && new Set(signs).size === 4 && signs.every((one) => one.length === 1), signs.join(' '));
    const ways = await person.page.evaluate(() => [...document.querySelectorAll('.way')].map((way) =>
      `${way.classList.contains('unread')} ${way.innerText.startsWith('!')} ${getComputedStyle(way).borderTopStyle === 'dashed'}`));
    person.equal('a side from which nobody can read it has a sign and a dashed line', ways.join(), 'false false false,false false false,false false false,true true true');

    const { seen, wrong } = await person.page.evaluate(untold);
    person.check(`${seen.lit} groups of marks pointed at, ${seen.selected} chosen: each has another line than before`,
      seen.lit > 40 && seen.selected > 40 && wrong.length === 0, wrong.join('\n'));
  });
}
