// How fast the page answers, as a table. Not a test: what a machine takes depends on what else it
// does. Budgets stand beside what was measured.
//
// usage: node web_latency.mjs [COUNT]    COUNT edits and drag steps of each kind, 200 unless said
// env:   SWATHE_PAGE, SWATHE_PAGE_DRIVER   as for the suites; SWATHE_PAGE_BROWSER: Firefox
import { browse, kPage, Person, wait } from './browser.mjs';
import { exampleText } from './suite.mjs';

const kCount = Number(process.argv[2] ?? 200);
const kText = exampleText();

/** Watches the pictures: when each was last drawn anew, and how often. */
function watchPictures() {
  const pictures = new Map();
  window.watched = pictures;
  for (const pane of document.querySelectorAll('.pane .sheet, .pane .view')) {
    const name = pane.closest('section').getAttribute('aria-label');
    const now = { at: 0, times: 0, name };
    pictures.set(pane, now);
    new MutationObserver(() => {
      now.at = performance.now();
      now.times += 1;
    }).observe(pane, { childList: true });
  }
  window.pressed = 0;
  document.addEventListener('keydown', (event) => (window.pressed = event.timeStamp), true);
  document.addEventListener('input', () => {
    const { pressed } = window;
    requestAnimationFrame(() => setTimeout(() => (window.typed = performance.now() - pressed)));
  }, true);
}

const share = (sorted, part) => sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))];
function row(what, times, budget) {
  const sorted = [...times].sort((a, b) => a - b);
  const ms = (value) => `${value.toFixed(0).padStart(6)} ms`;
  console.log(`${what.padEnd(52)}${String(times.length).padStart(5)}${ms(share(sorted, 0.5))}${ms(share(sorted, 0.95))}${ms(sorted[sorted.length - 1])}   ${budget}`);
}

/** From the key press until every picture has changed that does, and was painted. */
async function edit(person, key) {
  await person.page.evaluate(() => {
    window.typed = null;
    for (const one of window.watched.values()) one.before = one.times;
  });
  await person.page.keyboard.press(key);
  // They come one after the other; none for so long means that all are there.
  return person.page.evaluate(() => new Promise((done) => {
    const began = performance.now();
    const look = () => {
      const changed = [...window.watched.values()].filter((one) => one.times > one.before);
      const last = Math.max(0, ...changed.map((one) => one.at));
      const now = performance.now();
      if ((changed.length > 0 && now - last > 400) || now - began > 3000)
        done({
          all: last - window.pressed, typed: window.typed,
          plan: Math.max(0, ...changed.filter((one) => one.name === 'From above').map((one) => one.at)) - window.pressed,
          cover: Math.max(0, ...changed.filter((one) => one.name === 'Cover').map((one) => one.at)) - window.pressed,
          changed: changed.length,
        });
      else setTimeout(look, 25);
    };
    look();
  }));
}

async function edits(person, what, name, region, budget) {
  const field = await person.find('textbox', name, await person.region(region));
  await field.focus();
  const all = [], plan = [], cover = [];
  for (let k = 0; k < kCount; ++k) {
    const found = await edit(person, k % 20 < 10 ? 'ArrowUp' : 'ArrowDown');
    if (found.changed === 0) continue;
    all.push(found.all);
    if (found.plan > 0) plan.push(found.plan);
    if (found.cover > 0) cover.push(found.cover);
  }
  row(`${what}: all pictures`, all, budget);
  row(`${what}: from above`, plan, '');
  row(`${what}: the cover`, cover, '');
}

async function drag(person, region, name, budget) {
  const handle = await person.handle(region, name);
  const { left, top, width, height, turn } = await handle.evaluate((element) => {
    const box = element.getBoundingClientRect();
    return { left: box.left, top: box.top, width: box.width, height: box.height,
      turn: (Math.PI * Number.parseFloat(element.style.getPropertyValue('--turn'))) / 180 };
  });
  const x = left + width / 2, y = top + height / 2;
  const { mouse } = person.page;
  await mouse.move(x, y);
  await mouse.down();
  await person.page.evaluate((where) => {
    window.steps = [];
    const pane = [...window.watched].find(([, one]) => one.name === where)[0];
    let moved = 0;
    document.addEventListener('pointermove', (event) => (moved ||= event.timeStamp), true);
    new MutationObserver(() => {
      const now = performance.now();
      window.steps.push({ at: now, late: moved ? now - moved : null });
      moved = 0;
    }).observe(pane, { childList: true });
  }, region);
  const began = Date.now();
  for (let k = 1; k <= kCount; ++k) {
    const px = 30 * Math.sin((k / 40) * 2 * Math.PI);
    await mouse.move(x + px * Math.cos(turn), y + px * Math.sin(turn));
    await wait(16);
  }
  const steps = await person.page.evaluate(() => window.steps);
  const seconds = (Date.now() - began) / 1000;
  await mouse.up();
  await person.settled();
  row(`dragging ${name}, ${region.toLowerCase()}: a step until drawn`, steps.map((one) => one.late).filter((one) => one !== null), budget);
  const apart = steps.slice(1).map((one, k) => one.at - steps[k].at);
  row('  from one picture to the next', apart, `${(steps.length / seconds).toFixed(1)} a second (at least 15)`);
}

await browse(process.env.SWATHE_PAGE_BROWSER ?? 'Chromium', async (browser) => {
  console.log(`${await browser.version()}; ${kPage}`);
  console.log(`${''.padEnd(52)}${'count'.padStart(5)}${'median'.padStart(9)}${'95 %'.padStart(9)}${'most'.padStart(9)}   budget`);
  const starts = { fields: [], pictures: [], slowed: [] };
  const isSlowed = (k) => k >= 5;
  const canSlow = (await browser.version()).startsWith('Chrome');
  for (let k = 0; k < (canSlow ? 8 : 5); ++k) {
    const person = await Person.come(browser, 'start');
    await person.openJob('tin-heron.toml', kText);
    await person.until('it kept', () => Object.keys(localStorage).some((key) => key.startsWith('swathe.job.') &&
      JSON.parse(localStorage[key]).fields.length > 0));
    // As somebody who comes back: from the address to the job's fields and pictures.
    await person.page.evaluateOnNewDocument(() => {
      const look = () => {
        const open = document.querySelector('button.open');
        if (open && !window.pressedOpen) {
          window.pressedOpen = true;
          open.click();
        }
        if (!window.fieldsAt && document.querySelector('.fields input')) window.fieldsAt = performance.now();
        if (!window.picturesAt && document.querySelectorAll('.pane .stage svg').length >= 2) window.picturesAt = performance.now();
        else requestAnimationFrame(look);
      };
      requestAnimationFrame(look);
    });
    if (isSlowed(k)) await person.page.emulateCPUThrottling(4);
    await person.page.reload();
    await person.found();
    const { fieldsAt, picturesAt } = await person.page.evaluate(() => ({ fieldsAt: window.fieldsAt, picturesAt: window.picturesAt }));
    if (!isSlowed(k)) starts.fields.push(fieldsAt);
    (isSlowed(k) ? starts.slowed : starts.pictures).push(picturesAt);
    await person.leave();
  }
  row('from opening the page to the fields', starts.fields, '1000 ms');
  row('from opening the page to the pictures', starts.pictures, '1500 ms');
  if (canSlow) row('the same with the processor slowed four times', starts.slowed, '4000 ms');

  const person = await Person.come(browser, 'latency');
  await person.openJob('tin-heron.toml', kText);
  await wait(1500); // the core behind comes to rest
  await person.page.evaluate(watchPictures);
  await edits(person, 'a step of the width', 'Width', 'Frame', '60, 120 ms');
  const number = await person.find('textbox', 'Team number');
  await number.focus();
  const digits = [], typed = [];
  for (let k = 0; k < kCount; ++k) {
    await number.evaluate((element) => element.setSelectionRange(2, 3));
    const found = await edit(person, String(1 + (k % 9)));
    if (found.changed === 0) continue;
    digits.push(found.all);
    if (found.typed !== null) typed.push(found.typed);
  }
  row('a digit of the number: all pictures', digits, '120, 200 ms');
  row('a key until it stands in the field', typed, '');
  await drag(person, 'From above', 'gap between A and B', '');
  await drag(person, 'Cover', 'bracket 1', '');
  await drag(person, 'Cover', 'number on left', '');

  // A job at the limits: typing has to go on.
  const crowded = kText + Array.from({ length: 36 }, (_, k) => `
[[bracket]]
side = "${['left', 'right', 'front', 'back'][k % 4]}"
at = ["${1 + 2 * Math.floor(k / 4)} in", "${k % 4 < 2 ? 'back' : 'left'}"]
width = "1/2 in"
height = "1/2 in"
down = "3 in"
`).join('');
  await person.press('New');
  await person.openJob('crowded.toml', crowded);
  await wait(1500);
  await person.page.evaluate(watchPictures);
  const title = await person.find('textbox', 'Title');
  await title.focus();
  const keys = [];
  for (let k = 0; k < Math.min(kCount, 100); ++k) {
    await person.page.evaluate(() => (window.typed = null));
    await person.page.keyboard.press('x');
    const late = await person.until('the key', () => window.typed);
    keys.push(late);
    if (k % 10 === 9) for (let n = 0; n < 10; ++n) await person.page.keyboard.press('Backspace');
  }
  row('40 brackets: a key until it stands in the field', keys, '100 ms');
  await person.leave();
});
