// An enlarged picture, by keyboard alone.
import { path, wait } from '../browser.mjs';
import { exampleText } from '../suite.mjs';

const kText = exampleText();

export async function enlarged(browser) {
  await path(browser, 'an enlarged picture by keyboard', {}, async (person) => {
    await person.openJob('tin-heron.toml', kText);
    const { keyboard } = person.page;
    const withShift = async (key) => {
      await keyboard.down('Shift');
      await keyboard.press(key);
      await keyboard.up('Shift');
      await person.settled();
    };
    const origin = () => person.page.evaluate(() =>
      document.querySelector('.pane.plan svg').dataset.origin.split(' ').map(Number));
    const stops = () => person.page.evaluate(() =>
      [...document.querySelectorAll('.pane.plan [data-stop]')].map((one) => one.dataset.stop).filter((one) => /^bracket|numeral|\.end /.test(one)).join('\n'));
    const current = () => person.page.evaluate(() => {
      const one = document.activeElement, box = one.getBoundingClientRect();
      const within = one.closest('.stage')?.getBoundingClientRect();
      const [x, y] = [box.left + box.width / 2, box.top + box.height / 2];
      return { name: one.getAttribute('aria-label'), isInside: Boolean(within) && x >= within.left && x <= within.right && y >= within.top && y <= within.bottom };
    });

    const all = await stops();
    const plan = await person.region('From above');
    await (await person.find('button', 'Larger', plan)).focus();
    for (let k = 0; k < 4; ++k) await keyboard.press('Enter');
    await person.settled();
    const [x, y] = await origin();
    await withShift('ArrowLeft');
    await withShift('ArrowUp');
    const moved = await origin();
    person.check('Shift and arrow keys move it', moved[0] > x + 20 && moved[1] > y + 20, `${x}, ${y} to ${moved}`);
    person.equal('what lies beyond its edge can be stopped at all the same', await stops(), all);
    const beyond = await person.page.evaluate(() => {
      const within = document.querySelector('.pane.plan .stage').getBoundingClientRect();
      return [...document.querySelectorAll('.pane.plan .grip')].filter((one) => {
        const { left, top } = one.getBoundingClientRect();
        return left > within.right || top > within.bottom;
      }).map((one) => one.getAttribute('aria-label'));
    });
    person.check('some lies there', beyond.includes('bracket 4'), beyond.join());

    await person.page.evaluate(() => document.querySelector('.pane.plan .stops [tabindex="0"]').focus());
    person.check('the first stop is one in sight', (await current()).isInside);
    await keyboard.press('Home');
    for (let k = 0; k < 60 && (await current()).name !== 'bracket 4'; ++k) await keyboard.press('ArrowRight');
    await person.until('it is brought in', () => {
      const one = document.activeElement, within = one.closest('.stage')?.getBoundingClientRect();
      const { left, top, right, bottom } = one.getBoundingClientRect();
      return within && left >= within.left && right <= within.right && top >= within.top && bottom <= within.bottom;
    });
    await person.settled();
    person.equal('and has the keyboard', (await current()).name, 'bracket 4');
    const before = await origin();
    await withShift('ArrowDown');
    const after = await origin();
    person.check('Shift and an arrow key move the picture, not the handle', after[1] < before[1] - 20, `${before} to ${after}`);
    person.equal('which leaves the job as it is', await person.jobText(), kText);
    person.equal('and the keyboard where it was', (await current()).name, 'bracket 4');
    await keyboard.press('ArrowUp');
    await wait(600);
    await person.settled();
    person.check('an arrow key alone moves the handle', (await person.jobText()) !== kText);
    await person.undo();
    person.equal('in one step', await person.jobText(), kText);
  });
}
