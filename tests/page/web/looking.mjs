// A job is looked at: its cover as it is printed.
import { path } from '../browser.mjs';
import { exampleText } from '../suite.mjs';

const kText = exampleText();
const kFile = 'tin-heron.toml';

/** Places along each outline of the cover, in millimeters of the model, by its map but as if that were never turned over. */
function outlinesOfCover() {
  const svg = document.querySelector('.pane.cover svg.screen');
  const { mmPerPx, origin, mirrored } = svg.dataset;
  const [x0, y0] = origin.split(' ').map(Number);
  return {
    mirrored: mirrored !== undefined, mm: Number(mmPerPx),
    marks: [...svg.querySelectorAll('.cloth path, .numeral path, .bracket .areas path')].map((path) => {
      const length = path.getTotalLength();
      return {
        name: `${path.closest('[data-subject]').dataset.subject} ${path.closest('svg > g').getAttribute('class')}`,
        at: Array.from({ length: 9 }, (_, k) => path.getPointAtLength((k / 8) * length)).map(({ x, y }) => [mmPerPx * (x - x0), mmPerPx * (y0 - y)]),
      };
    }),
    turned: [...svg.querySelectorAll('text')].filter((one) => {
      const { a, b, c, d } = one.getCTM();
      return a * d - b * c <= 0;
    }).map((one) => one.textContent),
    words: svg.querySelectorAll('text').length,
  };
}

export async function looking(browser) {
  await path(browser, 'a cover as it is printed', {}, async (person) => {
    await person.openJob(kFile, kText);
    const cover = await person.region('Cover');
    const outlines = () => person.page.evaluate(outlinesOfCover);
    const outside = await outlines();
    person.check('outside up it is not turned over', !outside.mirrored);
    await person.press('as printed', cover, 'switch');
    await person.until('it turned over', () => document.querySelector('.pane.cover svg.screen').dataset.mirrored !== undefined);
    await person.settled();
    const printed = await outlines();
    const wrong = [];
    for (const [k, { name, at }] of outside.marks.entries()) {
      const there = printed.marks[k];
      const apart = there?.name === name ? Math.max(...at.map(([x, y], n) => Math.hypot(-x - there.at[n][0], y - there.at[n][1]))) : Infinity;
      if (!(apart < 1.5 * outside.mm)) wrong.push(`${name}: ${apart.toFixed(1)} mm off`);
    }
    person.check(`${outside.marks.length} outlines of cloth, digits and brackets are turned over, left for right`,
      outside.marks.length > 8 && printed.marks.length === outside.marks.length && wrong.length === 0, wrong.join('\n'));
    person.check('which can be seen', outside.marks.some(({ at }, k) => Math.hypot(at[0][0] - printed.marks[k].at[0][0], at[0][1] - printed.marks[k].at[0][1]) > 50));
    person.check('words read as before', printed.words > 5 && printed.turned.length === 0, printed.turned.join('\n'));
    await person.drag('Cover', 'bracket 1', 25.4);
    person.equal('what is dragged goes with the pointer', await person.jobText(), kText.replace('at = ["9 in", "front"]', 'at = ["10 in", "front"]'));
    await person.undo();
    await person.press('as printed', cover, 'switch');
    await person.until('it turned back', () => document.querySelector('.pane.cover svg.screen').dataset.mirrored === undefined);
    await person.press('Close this message'); // that the job was saved: it takes room
    await person.settled();
    person.equal('and back it is as it was', JSON.stringify(await outlines()), JSON.stringify(outside));
  });
}
