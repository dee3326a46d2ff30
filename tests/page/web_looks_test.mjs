// How the page lies on screens of three sizes, with large text, in forced colors and with reduced
// motion; and axe-core on every state.
//
// SWATHE_PAGE_PICTURES: a folder that gets a picture of each state.
import { readFileSync } from 'node:fs';
import { browse, driver, path } from './browser.mjs';
import { Swathe, done, exampleText } from './suite.mjs';
import { watchedCores } from './web/trouble.mjs';

const kText = exampleText();
const kFile = 'tin-heron.toml';
const kAxe = readFileSync(driver.resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds, in words. */
async function violations(person) {
  const there = await person.page.evaluate(() => typeof window.axe !== 'undefined');
  if (!there) await person.page.evaluate(kAxe);
  return person.page.evaluate(async () => {
    const { violations } = await window.axe.run(document, { resultTypes: ['violations'] });
    return violations.map(({ id, help, nodes }) =>
      `${id}: ${help}\n${nodes.slice(0, 4).map((node) => `  ${node.target.join(' ')}: ${node.failureSummary?.split('\n')[1]?.trim() ?? ''}`).join('\n')}`);
  });
}

/** By how many pixels the page itself can be scrolled. */
const scrolls = () => {
  const page = document.scrollingElement;
  return [page.scrollWidth - document.documentElement.clientWidth, page.scrollHeight - document.documentElement.clientHeight];
};
/** Areas of the pictures, by region. */
const areas = () => [...document.querySelectorAll('.pane')].filter((pane) => pane.offsetParent !== null).map((pane) => {
  const { width, height } = (pane.querySelector('.stage') ?? pane).getBoundingClientRect();
  const drawn = pane.querySelector('svg.screen')?.getBoundingClientRect();
  return { name: pane.querySelector('section').getAttribute('aria-label'), area: width * height, height, width, drawn: drawn && drawn.width * drawn.height };
});

/** Controls that lie over each other, or whose words do not fit into them. */
const collisions = () => {
  const top = document.querySelector('dialog[open]') ?? document;
  const shown = [...top.querySelectorAll('button, input, select, textarea, a[href], summary')].filter((one) =>
    one.checkVisibility({ opacityProperty: true, visibilityProperty: true }) && !one.closest('.stops, .stage'));
  const seen = (one) => { // what of it is not hidden by what scrolls round it
    let { left, top, right, bottom } = one.getBoundingClientRect();
    for (let up = one.parentElement; up; up = up.parentElement) {
      if (getComputedStyle(up).overflow === 'visible') continue;
      const box = up.getBoundingClientRect();
      [left, top, right, bottom] = [Math.max(left, box.left), Math.max(top, box.top), Math.min(right, box.right), Math.min(bottom, box.bottom)];
    }
    return { left, top, right, bottom };
  };
  const name = (one) => `${one.tagName.toLowerCase()} "${one.getAttribute('aria-label') ?? one.labels?.[0]?.innerText ?? one.innerText}"`;
  const boxes = shown.map((one) => ({ one, ...seen(one) })).filter(({ left, top, right, bottom }) => right - left > 1 && bottom - top > 1);
  const told = [];
  for (const [k, a] of boxes.entries()) {
    for (const b of boxes.slice(k + 1)) {
      if (a.one.contains(b.one) || b.one.contains(a.one)) continue;
      const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
      const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
      if (across > 1.5 && down > 1.5) told.push(`${name(a.one)} lies over ${name(b.one)}`);
    }
    if (a.one.tagName === 'BUTTON' && a.one.scrollWidth > a.one.clientWidth + 2 && getComputedStyle(a.one).overflow !== 'visible')
      told.push(`${name(a.one)}: its words do not fit`);
  }
  return told;
};
/** Regions that lie over each other or out of the page, pictures larger than their room, and in a picture
 * words over words, or handles over handles. */
const overlaps = () => {
  const told = [];
  const each = (all, name, least, inside) => {
    const boxes = all.filter((one) => one.checkVisibility({ visibilityProperty: true })).map((one) => ({ one, box: one.getBoundingClientRect() }));
    for (const [k, a] of boxes.entries()) {
      if (a.box.left < inside.left - 1 || a.box.top < inside.top - 1 || a.box.right > inside.right + 1 || a.box.bottom > inside.bottom + 1)
        told.push(`${name(a.one)} sticks out`);
      for (const b of boxes.slice(k + 1)) {
        const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
        const down = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
        if (across > least && down > least) told.push(`${name(a.one)} lies over ${name(b.one)}`);
      }
    }
  };
  each([...document.querySelectorAll('section[aria-label]')].filter((one) => one.querySelector('section') === null &&
    !one.parentElement.closest('section[aria-label]')), (one) => `"${one.getAttribute('aria-label')}"`, 1, { left: 0, top: 0, right: innerWidth, bottom: innerHeight });
  for (const stage of document.querySelectorAll('.stage')) {
    const where = stage.closest('section').getAttribute('aria-label');
    each([...stage.querySelectorAll('svg.screen')], () => where, 1, stage.getBoundingClientRect());
    each([...stage.querySelectorAll('svg.screen .words > text')], (one) => `${where}: "${one.textContent}"`, 3, stage.getBoundingClientRect());
  }
  return told;
};
/** Controls smaller than WCAG 2.2, 2.5.8 asks, but words within a sentence. */
const tooSmall = () => [...document.querySelectorAll('button, input:not([type=radio]):not([type=checkbox]), select, [role=slider], [role=tab]')]
  .filter((one) => one.checkVisibility()).flatMap((one) => {
    const { width, height } = one.getBoundingClientRect();
    return width > 0 && (width < 23.5 || height < 23.5)
      ? [`${one.getAttribute('aria-label') ?? one.innerText}: ${Math.round(width)} by ${Math.round(height)}`] : [];
  });

/** Words that say in another way what has one word already. */
const otherWords = () => {
  const words = [...document.querySelectorAll('#page *')].flatMap((one) => [one.getAttribute('aria-label'), one.getAttribute('title'),
    ...[...one.childNodes].filter((node) => node.nodeType === Node.TEXT_NODE).map((node) => node.textContent)]).filter(Boolean).join('\n');
  return words.match(/\b(segment|skin|girth|butts|laps|typeface|tape sheet|quick-change|no more than)\b/gi) ?? [];
};

/** Numbers that the end of a line may break off from their fraction or unit, where they are read to act on. */
const breakable = () => [...document.querySelectorAll('.findings .finding, .findings .advice, .print .choices')].flatMap((one) =>
  one.textContent.match(/\d (\d+\/\d+|(in|ft|mm)\b)/g) ?? []);

/** Each state, in turn; with every way there, then what to do to leave it. */
async function states(person, see) {
  await person.find('button', 'Begin');
  await person.until('pictures of the kinds', () => document.querySelectorAll('.kinds svg').length > 5);
  await see('beginning');
  await person.press('Begin');
  await person.until('the bumpers so far', () => document.querySelector('figure svg') !== null);
  await see('question');
  await person.press('Back to the start');
  await person.openJob(kFile, kText);
  await see('job', true);
  await person.press('Cut-through');
  await person.settled();
  await see('cut-through', true);
  await person.press('Cut-through');
  await person.press('Text');
  await person.settled();
  await see('text', true);
  await person.press('Fields');
  await person.press('More about: Cloth');
  await (await person.page.$('#field-bracket-1')).click();
  await person.settled();
  await see('more fields', true);
  await person.press('Print');
  await person.until('ways to print', () => document.querySelector('input[type=radio]') !== null);
  await see('print', true);
  await person.press('See sheets: measuring sheet and templates');
  await person.until('sheets', () => document.querySelector('dialog img') !== null);
  await see('sheets');
  await person.page.keyboard.press('Escape');
  await person.press('To buy');
  await person.untilSaid('Plywood');
  await see('to buy', true);
  await person.press('Rules');
  await person.press('Walk round');
  await person.until('the machine and the chart', () => document.querySelectorAll('dialog[open] svg, [role=dialog] svg').length >= 2);
  await person.settled();
  await see('walk round');
  await person.page.keyboard.press('Escape');
  await person.press('About');
  await see('about');
  await person.page.keyboard.press('Escape');
  await person.fill('Width', '28 zz', await person.region('Frame'));
  await person.until('the fault', () => document.querySelector('.field [role=alert]') !== null);
  await see('half a value', true);
  await person.press('Print');
  await person.untilSaid('Nothing can be printed until', '[aria-label="Print"]');
  await see('half a value, print', true);
  await person.press('Go to the field');
  await person.until('the keyboard in it', () => document.activeElement?.value === '28 zz');
  await person.page.keyboard.press('Escape');
  await person.press('Rules');
  await person.openJob('rule.toml', kText.replace('width = "28 in"', 'width = "28 in"\nfloor_gap = "3 in"'));
  await see('a rule not met', true);
  await person.press('New');
  await person.choose('wrong.toml', kText.replace('width = "28 in"', 'width = "28 zz"'));
  await person.untilSaid('wrong in the job');
  await see('broken');
}

const kSizes = [[1366, 620], [1024, 470], [390, 700]];

await browse('Chromium', async (browser) => {
  for (const [width, height] of kSizes) {
    const phone = width < 600;
    await path(browser, `${width} by ${height}`, { width, height }, async (person) => {
      const found = { axe: [], scrolls: [], large: [], over: [], small: [], words: [], broken: [] };
      let seen = 0;
      await states(person, async (state, pictures = false) => {
        seen += 1;
        const told = (list, words) => list.push(...words.map((one) => `${state}: ${one}`));
        await person.picture(`${width}-${state.replaceAll(' ', '-')}`);
        told(found.axe, await violations(person));
        told(found.over, await person.page.evaluate(collisions));
        told(found.small, await person.page.evaluate(tooSmall));
        told(found.words, await person.page.evaluate(otherWords));
        told(found.broken, await person.page.evaluate(breakable));
        if (phone && state === 'broken')
          person.check('what is wrong is in sight', await person.page.evaluate(() => {
            scrollTo(0, 0);
            return document.querySelector('.faults').getBoundingClientRect().bottom < innerHeight;
          }));
        const [across, down] = await person.page.evaluate(scrolls);
        if (across > 0) told(found.scrolls, [`${across} pixels across`]);
        if (!phone && pictures && down > 0) told(found.scrolls, [`${down} pixels down`]);
        if (phone || !pictures) return;
        const all = await person.page.evaluate(areas);
        const cover = all.find((one) => one.name === 'Cover');
        for (const other of all)
          if (other !== cover && !(cover.area > other.area && cover.drawn > (other.name === 'Who can read it' ? 0 : other.drawn)))
            told(found.large, [`"${other.name}" has ${Math.round(other.area)} square pixels, the cover ${Math.round(cover.area)}`]);
        if (cover.height < 120) told(found.large, [`the cover is ${Math.round(cover.height)} pixels high`]);
      });
      person.check(`axe finds nothing in ${seen} states`, seen > 10 && found.axe.length === 0, found.axe.join('\n'));
      person.check(phone ? 'nothing is wider than the screen' : 'the page itself does not scroll', found.scrolls.length === 0, found.scrolls.join('\n'));
      if (!phone) person.check('the cover is the largest picture', found.large.length === 0, found.large.join('\n'));
      person.check('no control lies over another', found.over.length === 0, [...new Set(found.over)].slice(0, 30).join('\n'));
      person.check('one thing is not said in two ways', found.words.length === 0, found.words.join('\n'));
      person.check('no number is broken where a line ends', found.broken.length === 0, [...new Set(found.broken)].join('\n'));
      person.check('controls are at least 24 pixels', found.small.length === 0, [...new Set(found.small)].slice(0, 30).join('\n'));
    });
  }

  await path(browser, 'in trouble and at work', { before: [watchedCores] }, async (person) => {
    const found = [];
    const see = async (state) => {
      found.push(...(await violations(person)).map((one) => `${state}: ${one}`));
      await person.picture(`trouble-${state.replaceAll(' ', '-')}`);
    };
    await person.openJob(kFile, kText);
    await person.until('it kept', () => Object.keys(localStorage).some((key) => key.startsWith('swathe.job.')));
    const second = await person.another();
    await second.find('button', 'Begin');
    await second.press('Open Tin Heron, spring covers');
    await second.untilSaid('open in another tab');
    await second.found();
    found.push(...(await violations(second)).map((one) => `two tabs: ${one}`));
    await second.press('New');
    await second.find('button', 'Open Tin Heron, spring covers');
    found.push(...(await violations(second)).map((one) => `kept: ${one}`));
    await second.page.close();
    await person.page.bringToFront();
    await person.press('Print');
    await person.find('button', 'Save book.pdf');
    await person.drag('From above', 'gap between A and B', 20, { keep: false });
    await see('dragged');
    await person.page.mouse.up();
    await person.undoAll();
    await person.settled();
    await person.until('sheets counted', () => document.querySelector('[aria-label="Save book.pdf"]')?.disabled === false);
    await person.page.evaluate(() => (window.holds = (what) => what === 'files' || what === 'file'));
    await person.press('Save book.pdf');
    await person.untilSaid('Making book.pdf', '.foot');
    await person.press('Download all sheets (zip)');
    await person.until('how many there are', () => document.querySelector('progress[value]') !== null);
    await see('sheets being made');
    await person.press('Stop', await person.page.$('.making'));
    await person.press('Stop', await person.page.$('.foot'));
    await person.page.evaluate(() => {
      window.holds = () => false;
      Storage.prototype.setItem = () => {
        throw new DOMException('no room', 'QuotaExceededError');
      };
    });
    await person.fill('Title', 'No room');
    await person.untilSaid('There is no more room');
    await see('storage full');
    await person.page.evaluate(() => (window.endsAt = (what, core) => what === 'open' && core === 0));
    await person.putIn('Width', '27 in', await person.region('Frame'));
    await person.untilSaid('The drawing stopped');
    await see('a core that failed');
    person.check('axe finds nothing', found.length === 0, found.join('\n'));
  });

  // Other kinds of bumpers, with a number where there is room for one.
  const core = new Swathe();
  for (const kind of ['hexagon', 'opening'])
    for (const [width, height] of kSizes.slice(0, 2))
      await path(browser, `${kind}, ${width} by ${height}`, { width, height }, async (person) => {
        const { value: { text: bare } } = await core.jobOfKind(kind);
        const numbered = bare.replace(/^# number = .*$/m, 'number = "20486"');
        await person.openJob(`${kind}.toml`, (await core.open(numbered, { advice: false })).ok ? numbered : bare);
        await person.settled();
        await person.picture(`${width}-${kind}`);
        const scrolled = await person.page.evaluate(scrolls);
        person.check('the page itself does not scroll', scrolled.every((one) => one <= 0), scrolled.join(' by '));
        const all = await person.page.evaluate(areas);
        const cover = all.find((one) => one.name === 'Cover');
        const larger = all.filter((one) => one !== cover && one.area >= cover.area);
        person.check('the cover is the largest region', all.length >= 3 && cover.height >= 120 && larger.length === 0,
          all.map((one) => `${one.name}: ${Math.round(one.width)} by ${Math.round(one.height)}`).join('\n'));
        const over = [...await person.page.evaluate(collisions), ...await person.page.evaluate(overlaps)];
        person.check('nothing lies over anything else', over.length === 0, [...new Set(over)].join('\n'));
      });
  core.close();

  // A person who set the browser's text to twice its size.
  await path(browser, 'text twice as large', {
    before: [() => document.addEventListener('readystatechange', () => (document.documentElement.style.fontSize = '200%'))],
  }, async (person) => {
    await person.find('button', 'Begin');
    const wrong = [];
    const see = async (state) => {
      await person.picture(`twice-${state.replaceAll(' ', '-')}`);
      const [across] = await person.page.evaluate(scrolls);
      if (across > 0) wrong.push(`${state}: ${across} pixels across`);
      wrong.push(...(await person.page.evaluate(collisions)).map((one) => `${state}: ${one}`));
    };
    person.check('it is twice as large', await person.page.evaluate(() =>
      Number.parseFloat(getComputedStyle(document.querySelector('button')).fontSize) >= 24));
    await see('beginning');
    await person.openJob(kFile, kText);
    await see('job');
    for (const view of ['Text', 'Fields', 'Print', 'To buy', 'Rules']) {
      await person.press(view);
      await person.settled();
      await see(view);
    }
    person.check('words in pictures are, too', await person.page.evaluate(() =>
      Number(document.querySelector('.pane.cover svg .words').getAttribute('font-size')) >= 24));
    await person.drag('From above', 'gap between A and B', -50.8);
    person.check('and a gap can be dragged', /to = \["back", "12 in", "left"\]/.test(await person.jobText()));
    person.check('nothing is lost or lies over another', wrong.length === 0, [...new Set(wrong)].slice(0, 30).join('\n'));
  });

  await path(browser, 'forced colors', {}, async (person) => {
    const cdp = await person.page.createCDPSession();
    await cdp.send('Emulation.setEmulatedMedia', { features: [{ name: 'forced-colors', value: 'active' }] });
    await person.openJob(kFile, kText);
    person.check('they are in force', await person.page.evaluate(() => matchMedia('(forced-colors: active)').matches));
    const looks = (selector) => person.page.evaluate((wanted) => {
      const one = document.querySelector(wanted);
      const style = getComputedStyle(one);
      return ['color', 'backgroundColor', 'borderTopColor', 'borderTopWidth', 'borderTopStyle', 'outlineStyle', 'outlineWidth',
        'outlineColor', 'stroke', 'strokeWidth', 'fill', 'textDecorationLine', 'fontWeight'].map((name) => style[name]).join(' ');
    }, selector);
    person.check('what is pressed looks other than what is not',
      await looks('.choose [aria-pressed=true]') !== await looks('.choose [aria-pressed=false]'));
    const mark = '.pane.plan svg [data-subject="bracket.1"]';
    const before = await looks(mark);
    await (await person.page.$('#field-bracket-1')).click();
    await person.settled();
    person.check('what is selected looks other than before', await looks(mark) !== before, before);
    const knob = await person.page.evaluate(() => {
      const { borderTopColor, borderTopStyle, backgroundColor } = getComputedStyle(document.querySelector('.grip .knob'));
      return { borderTopColor, borderTopStyle, backgroundColor, ground: getComputedStyle(document.body).backgroundColor };
    });
    person.check('handles can be seen', (knob.borderTopStyle !== 'none' && knob.borderTopColor !== knob.ground) ||
      knob.backgroundColor !== knob.ground, JSON.stringify(knob));
    await (await person.find('button', 'Save job')).focus();
    await person.page.keyboard.press('Tab');
    person.check('focus can be seen', await person.page.evaluate(() => {
      const { outlineStyle, outlineWidth } = getComputedStyle(document.activeElement);
      return outlineStyle !== 'none' && Number.parseFloat(outlineWidth) > 0;
    }));
    const found = await violations(person);
    person.check('axe finds nothing', found.length === 0, found.join('\n'));
    await person.picture('forced-colors');
  });

  for (const scheme of ['dark', 'light'])
    await path(browser, `${scheme} colors`, {}, async (person) => {
      await person.page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: scheme }]);
      await person.openJob(kFile, kText);
      const found = await violations(person);
      person.check('axe finds nothing', found.length === 0, found.join('\n'));
      await person.picture(scheme);
    });

  await path(browser, 'reduced motion', {}, async (person) => {
    await person.page.emulateMediaFeatures([{ name: 'prefers-reduced-motion', value: 'reduce' }]);
    await person.openJob(kFile, kText);
    await person.fill('Width', '27 in', await person.region('Frame'));
    await (await person.page.$('#field-bracket-1')).click();
    await person.press('Print');
    await person.press('Download all sheets (zip)');
    const moving = await person.page.evaluate(() => {
      const seconds = (text) => Math.max(...text.split(',').map((one) => Number.parseFloat(one) * (one.includes('ms') ? 0.001 : 1)));
      const told = [...document.querySelectorAll('*')].flatMap((one) => {
        const { transitionDuration, animationName, animationDuration, scrollBehavior } = getComputedStyle(one);
        const name = `${one.tagName.toLowerCase()}.${one.getAttribute('class') ?? ''}`;
        return seconds(transitionDuration) > 0.01 || (animationName !== 'none' && seconds(animationDuration) > 0.01) ||
          scrollBehavior === 'smooth' ? [name] : [];
      });
      return [...new Set(told)];
    });
    person.check('nothing moves by itself', moving.length === 0, moving.join('\n'));
  });
});
done();
