// Somebody walks round the machine: what is seen and said from each place is what the core says of it.
import { path } from '../browser.mjs';
import { Swathe, exampleText } from '../suite.mjs';

const kText = exampleText();
const kFile = 'tin-heron.toml';
const kEye = 'Where you stand';

/** What a picture shows: outlines, their colors, and what it says of itself. */
const kShown = / (?:d|fill)="[^"]*"|<desc>[^<]*/g;
const shownBy = (text) => text.match(kShown).join('\n');

/** The walk round the machine, as it stands open in the page, against the core's own answers. */
class Walk {
  constructor(person, core) {
    Object.assign(this, { person, core, page: person.page });
  }
  async open() {
    await this.person.press('Walk round');
    this.dialog = await this.page.waitForSelector('dialog.round[open]');
    await this.person.until('the eye', () => document.querySelector('.eye-grip') !== null);
  }
  ofEye() {
    return this.page.evaluate(() => {
      const { left, top, width, height } = document.querySelector('.eye-grip').getBoundingClientRect();
      const ground = document.querySelector('.round-ground').getBoundingClientRect();
      const { center, radii } = document.querySelector('dialog.round .chart svg.screen').dataset;
      const eye = document.querySelector('.eye-grip');
      return {
        x: left + width / 2, y: top + height / 2, ground: { x: ground.left, y: ground.top },
        center: center.split(' ').map(Number), radii: radii.split(' ').map((pair) => pair.split(':').map(Number)),
        now: Number(eye.getAttribute('aria-valuenow')), says: eye.getAttribute('aria-valuetext'),
      };
    });
  }
  /** Which place of the chart a place of the screen is. */
  async placeAt(x, y) {
    const { ground, center, radii } = await this.ofEye();
    const across = x - ground.x - center[0], down = y - ground.y - center[1];
    const px = Math.hypot(across, down);
    const k = Math.max(1, radii.findIndex(([at]) => px <= at));
    const [[a, near], [b, far]] = px >= radii.at(-1)[0] ? [radii.at(-1), [Infinity, radii.at(-1)[1]]] : radii.slice(k - 1, k + 1);
    return {
      bearing: ((Math.atan2(-across, -down) * 180) / Math.PI + 360) % 360,
      distance: Math.round(b === Infinity ? near : near + ((far - near) * Math.max(0, px - a)) / (b - a)),
    };
  }

  /** A setting moved to its end, or by a step. */
  async key(name, key) {
    const slider = await this.person.find('slider', name, this.dialog);
    await slider.focus();
    await slider.dispose();
    await this.page.keyboard.press(key);
  }
  setting(name) {
    return this.page.evaluate((wanted) => {
      const one = [...document.querySelectorAll('dialog.round .setting')].find((label) => label.querySelector('span').textContent === wanted);
      return { mm: Number(one.querySelector('input').value), says: one.querySelector('output').textContent };
    }, name);
  }

  async sameAs(selector, wanted) {
    return this.person.until(`${selector} as the core draws it`, (where, like, all) => {
      const text = document.querySelector(`dialog.round ${where} svg.screen`)?.outerHTML ?? '';
      return text.match(new RegExp(like, 'g'))?.join('\n') === all;
    }, selector, kShown.source, wanted);
  }
  sizeOf(selector) {
    return this.page.evaluate((where) => {
      const { width, height } = document.querySelector(`dialog.round ${where} .view`).getBoundingClientRect();
      return { width, height };
    }, selector);
  }
  /** Verdict and picture are those of the place; what the verdict says. */
  async standsAt(what, observer, { reads, says }) {
    const { person, core } = this;
    const verdict = await core.verdict(observer);
    person.equal(`${what}: it ${reads === 'number' ? 'can' : 'cannot'} be read there`, verdict.reads, reads);
    const wanted = `${reads === 'number' ? '' : '! '}${says}: ${verdict.words}`;
    await person.until(`"${wanted}"`, (words) => document.querySelector('dialog.round .verdict').textContent === words, wanted);
    person.check(`${what}: "${wanted}"`, true);
    await this.sameAs('.seen', shownBy(await core.view(observer, { ...(await this.sizeOf('.seen')), all_round: true })));
    person.check(`${what}: the machine as seen from there`, true);
    return verdict;
  }
  async chartAs(observer) {
    await this.sameAs('.chart', shownBy(await this.core.chart(observer, await this.sizeOf('.chart'))));
  }
}

export async function walking(browser) {
  const core = new Swathe();
  await path(browser, 'the observer walked round', {}, async (person) => {
    await core.open(kText, { advice: false });
    await person.openJob(kFile, kText);
    const walk = new Walk(person, core);
    await walk.open();
    const { keyboard, mouse } = person.page;
    person.equal('the keyboard is at the eye', await person.page.evaluate(() => document.activeElement.getAttribute('aria-label')), kEye);
    await walk.standsAt('at first', { bearing: 0 }, { reads: 'number', says: 'At the front, 20 ft away' });
    await walk.chartAs({ bearing: 0 });
    person.equal('high as the job has it', (await walk.setting('How high your eyes are')).says, '63 in');

    // Out past the last ring, behind on the left; back in again.
    const from = await walk.ofEye();
    const ring = from.radii.at(-1)[0];
    const at = { x: Math.round(from.ground.x + from.center[0] - 0.74 * ring), y: Math.round(from.ground.y + from.center[1] + 0.74 * ring) };
    const far = await walk.placeAt(at.x, at.y);
    await mouse.move(from.x, from.y);
    await mouse.down();
    await mouse.move(at.x, at.y, { steps: 6 });
    await mouse.up();
    const behind = '135° round to the machine’s left, 70 ft away';
    const verdict = await walk.standsAt('dragged to the outer ring', far, { reads: 'nothing', says: behind });
    person.check('it is said how near one has to come', /^too far away to read: come within [\d.]+ ft$/.test(verdict.words), verdict.words);
    const dragged = await walk.ofEye();
    person.equal('the eye says where it is', `${dragged.now} ${dragged.says}`, `-135 ${behind}`);
    person.check('and lies on the ring, towards the pointer', Math.abs(Math.hypot(dragged.x - from.ground.x - from.center[0],
      dragged.y - from.ground.y - from.center[1]) - ring) < 1.5 && Math.hypot(dragged.x - at.x, dragged.y - at.y) < 0.1 * ring, JSON.stringify(dragged));
    person.equal('the distance is that of the place', (await walk.setting('How far away')).says, '70 ft');
    const inside = { x: Math.round(from.ground.x + from.center[0] + 60), y: Math.round(from.ground.y + from.center[1] - 80) };
    const near = await walk.placeAt(inside.x, inside.y);
    await mouse.move(dragged.x, dragged.y);
    await mouse.down();
    await mouse.move(inside.x, inside.y, { steps: 6 });
    await mouse.up();
    const feet = `${Math.round((10 * near.distance) / 304.8) / 10} ft`;
    await walk.standsAt('dragged near again', near, { reads: 'number', says: `37° round to the machine’s right, ${feet} away` });
    const back = await walk.ofEye();
    person.check('the eye is under the pointer', Math.hypot(back.x - inside.x, back.y - inside.y) < 1.5, JSON.stringify(back));

    await (await person.page.$('.eye-grip')).focus();
    let bearing = Math.round(near.bearing);
    for (const [key, by] of [['ArrowLeft', 5], ['ArrowUp', 5], ['PageUp', 45], ['ArrowRight', -5], ['PageDown', -45], ['ArrowDown', -5], ['PageDown', -45]]) {
      await keyboard.press(key);
      bearing += by;
    }
    await walk.standsAt('by keys', { bearing, distance: near.distance }, { reads: 'number', says: `${360 - bearing}° round to the machine’s right, ${feet} away` });

    await person.press('Back', walk.dialog);
    await walk.standsAt('by its button', { bearing: 180, distance: near.distance }, { reads: 'number', says: `At the back, ${feet} away` });
    person.equal('which is pressed alone', await person.page.evaluate(() =>
      [...document.querySelectorAll('dialog.round [aria-pressed=true]')].map((one) => one.innerText).join()), 'Back');

    await walk.key('How far away', 'End');
    const away = (await walk.setting('How far away')).mm;
    person.check('one can go out of sight', away > 25_000, away);
    await walk.standsAt('as far as it goes', { bearing: 180, distance: away }, { reads: 'nothing', says: `At the back, ${Math.round(away / 30.48) / 10} ft away` });
    await walk.key('How far away', 'Home');
    await walk.key('How far away', 'ArrowRight');
    person.equal('and near, a foot a step', (await walk.setting('How far away')).says, '4 ft');
    const near4 = { bearing: 180, distance: 4 * 304.8 }, says = 'At the back, 4 ft away';
    await walk.standsAt('near', near4, { reads: 'nothing', says }); // too steep from above

    for (const [key, high, reads] of [['End', '98 in', 'nothing'], ['Home', '0 in', 'number'], ['ArrowRight', '1 in', 'number']]) {
      await walk.key('How high your eyes are', key);
      const { mm, says: told } = await walk.setting('How high your eyes are');
      person.equal(`${key}: so high are the eyes`, told, high);
      await walk.standsAt(`eyes ${high} up`, { ...near4, eye_height: mm }, { reads, says });
      await walk.chartAs({ ...near4, eye_height: mm });
      person.check(`eyes ${high} up: the chart is that of the height`, true);
    }

    await (await person.find('combobox', 'Covers', walk.dialog)).select('1');
    await walk.standsAt('in blue covers', { ...near4, eye_height: 25.4, color: 1 }, { reads: 'number', says });
    person.check('they are told to be blue', await person.page.evaluate(() =>
      document.querySelector('dialog.round .seen desc').textContent.includes('blue covers')));
    await keyboard.press('Escape');
    await person.until('it closed', () => document.querySelector('dialog[open]') === null);
    person.equal('the keyboard is where it was', await person.page.evaluate(() => document.activeElement.innerText), 'Walk round');
    person.equal('whoever walks round changes nothing', await person.jobText(), kText);
  });
  core.close();
}
