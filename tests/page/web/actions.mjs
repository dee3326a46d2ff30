// What somebody does next, drawn: edits in fields and in the text, drags, undos, other jobs.
import { exampleText, pathsIn } from '../suite.mjs';
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { drawnText } from '../drawn_jobs.mjs';

const kTyped = ['28', '28 1/', '31 in', '70 cm', '0', '-3 in', '1e9', '', 'two feet', '26 1/2 in', '7/16', '"', '<b>', '5 in', '3/4 in', '12', '2'];
const kLines = ['', '[[bracket]]', 'width = "27 in"', 'side = "left"', '# words', 'x = [', '"""', '\u00e9', 'season = "none"', 'at = ["9 in", "front"]'];
/** Whether the page takes it for a job's text at all. */
function isText(path) {
  try {
    return !new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(path)).includes('\0');
  } catch {
    return false;
  }
}
const kJobs = [...pathsIn('examples/kinds', /\.toml$/), ...pathsIn('tests/manifest/jobs', /^refused-/)].filter(isText);

/** Actions by how often they are drawn. Each is {told, work(person)}; work gives false where there was
 * nothing to do it with. */
export function drawnAction(draw, state) {
  const pick = (list) => list[draw(list.length)];
  const actions = [
    [6, () => {
      const k = draw(1000), typed = pick(kTyped), arrow = draw(3) === 0;
      return { told: `types ${JSON.stringify(typed)} into field ${k}${arrow ? ', then an arrow key' : ''}`, work: async (person) => {
        const found = await person.page.evaluate((nth) => {
          const fields = [...document.querySelectorAll('.fields input[type=text]')];
          const field = fields[nth % fields.length];
          field?.focus();
          field?.select();
          return field !== undefined;
        }, k);
        if (!found) return false;
        if (typed === '') await person.page.keyboard.press('Backspace');
        else await person.page.keyboard.type(typed);
        if (arrow) await person.page.keyboard.press('ArrowUp');
      } };
    }],
    [3, () => {
      const k = draw(1000), to = draw(1000);
      return { told: `chooses ${to} of choice ${k}`, work: (person) => person.page.evaluate((nth, which) => {
        const lists = [...document.querySelectorAll('.fields select, .fields input[type=checkbox], .fields input[type=radio]')];
        const list = lists[nth % lists.length];
        if (!list) return false;
        if (list.tagName !== 'SELECT') {
          list.click();
          return true;
        }
        list.selectedIndex = which % list.options.length;
        list.dispatchEvent(new Event('change', { bubbles: true }));
        return true;
      }, k, to) };
    }],
    [5, () => {
      const k = draw(1000), px = draw(240) - 120, times = 2 + draw(6), escape = draw(6) === 0;
      return { told: `drags handle ${k} by ${px} pixels${escape ? ', then takes it back' : ''}`, work: async (person) => {
        const at = await person.page.evaluate((nth) => {
          const grips = [...document.querySelectorAll('[role=slider]')].filter((one) => one.closest('.stage'));
          const grip = grips[nth % grips.length];
          if (!grip) return null;
          grip.scrollIntoView({ block: 'nearest' });
          const { left, top, width, height } = grip.getBoundingClientRect();
          return { x: left + width / 2, y: top + height / 2, turn: (Math.PI * Number.parseFloat(grip.style.getPropertyValue('--turn'))) / 180 };
        }, k);
        if (!at) return false;
        const { mouse, keyboard } = person.page;
        await mouse.move(at.x, at.y);
        await mouse.down();
        for (let n = 1; n <= times; ++n)
          await mouse.move(at.x + (n / times) * px * Math.cos(at.turn), at.y + (n / times) * px * Math.sin(at.turn));
        if (escape) await keyboard.press('Escape');
        await mouse.up();
        await mouse.move(5, 5);
      } };
    }],
    [3, () => {
      const k = draw(1000), keys = Array.from({ length: 1 + draw(5) }, () => pick(['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'PageUp', 'PageDown', 'Enter', 'Escape']));
      return { told: `at handle ${k}: ${keys}`, work: async (person) => {
        const found = await person.page.evaluate((nth) => {
          const stops = [...document.querySelectorAll('[data-stop]')];
          stops[nth % stops.length]?.focus();
          return stops.length > 0;
        }, k);
        if (!found) return false;
        for (const key of keys) await person.page.keyboard.press(key);
      } };
    }],
    [4, () => {
      const line = draw(1000), words = pick(kLines), cut = draw(12);
      return { told: `in the text, at line ${line}: ${cut} signs out, ${JSON.stringify(words)} in`, work: async (person) => {
        await person.page.evaluate(() => [...document.querySelectorAll('.job .choose button')].find((one) => one.textContent === 'Text').click());
        const lines = await person.page.evaluate((nth) => {
          const all = [...document.querySelectorAll('.cm-line')];
          document.querySelector('.cm-content')?.focus();
          return all.length && nth % all.length;
        }, line);
        const { keyboard } = person.page;
        await keyboard.down('Control');
        await keyboard.press('Home');
        await keyboard.up('Control');
        for (let n = 0; n < lines; ++n) await keyboard.press('ArrowDown');
        await keyboard.press('End');
        for (let n = 0; n < cut; ++n) await keyboard.press('Backspace');
        if (words !== '') await keyboard.type(words);
      } };
    }],
    [2, () => ({ told: 'shows the fields', work: (person) => person.page.evaluate(() =>
      void [...document.querySelectorAll('.job .choose button')].find((one) => one.textContent === 'Fields').click()) })],
    [5, () => {
      const times = 1 + draw(6);
      return { told: `undoes ${times} times`, work: (person) => person.page.evaluate((count) => {
        for (let k = 0; k < count; ++k) [...document.querySelectorAll('button')].find((one) => one.textContent === 'Undo')?.click();
      }, times) };
    }],
    [2, () => {
      const times = 1 + draw(6);
      return { told: `does ${times} again`, work: (person) => person.page.evaluate((count) => {
        for (let k = 0; k < count; ++k) [...document.querySelectorAll('button')].find((one) => one.textContent === 'Redo')?.click();
      }, times) };
    }],
    [5, () => {
      const k = draw(1000);
      return { told: `presses button ${k} of the job, the pictures and the rules`, work: (person) => person.page.evaluate((nth) => {
        const buttons = [...document.querySelectorAll('.fields button, section.picture header button, .rules button, .show-cut, .choose button')]
          .filter((one) => !/Walk round|Own font/.test(one.textContent));
        buttons[nth % buttons.length]?.click();
        return buttons.length > 0;
      }, k) };
    }],
    [1, () => {
      const whole = draw(2) === 0, text = whole ? drawnText(draw) : readFileSync(pick(kJobs), 'utf8');
      const name = `job-${++state.jobs}.toml`;
      return { told: `opens ${whole ? 'a drawn job' : 'another job'}`, opens: text, work: (person) => person.choose(name, text) };
    }],
    [1, () => {
      const path = pick(kJobs);
      return { told: `opens ${basename(path)}`, opens: readFileSync(path, 'utf8'),
        work: (person) => person.choose(`job-${++state.jobs}.toml`, readFileSync(path)) };
    }],
  ];
  let at = draw(actions.reduce((sum, [often]) => sum + often, 0));
  for (const [often, make] of actions) {
    if (at < often) return make();
    at -= often;
  }
  throw new Error('none');
}
export const firstText = exampleText;
