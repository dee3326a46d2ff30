// Random actions, one after the other, and after each: the text is one that reads, and then no fault
// is shown, or its faults are those of the core; undo goes back exactly, and redo forth; nothing is
// said in the console; memory stays what it was.
//
// SWATHE_PAGE_LONG: 2,000 actions; else 200. SWATHE_SEED: another draw.
import { browse, path } from './browser.mjs';
import { drawing } from './drawn_jobs.mjs';
import { Swathe, done, kLong } from './suite.mjs';
import { drawnAction, firstText } from './web/actions.mjs';

const kActions = Number(process.env.SWATHE_PAGE_ACTIONS ?? (kLong ? 2000 : 200));
const kUndoEach = 40; // actions between two walks back to the start
const kMemoryEach = Math.max(20, Math.floor(kActions / 5));
/** What memory may grow by, once the page is warm: the steps to undo, and a few megabytes. */
const kMoreHeap = 4e6, kMoreNodes = 2500;

const seed = Number(process.env.SWATHE_SEED ?? 20486);
const draw = drawing(seed);
console.log(`    drawn with SWATHE_SEED=${seed}`);

/** The text as it stands, without a change of focus. */
const textNow = async (person) => {
  const count = await person.handedCount();
  await person.page.evaluate(() => document.dispatchEvent(new KeyboardEvent('keydown', { key: 's', ctrlKey: true, bubbles: true, cancelable: true })));
  const { bytes } = await person.saved(count);
  await person.page.evaluate(() => (window.handed.length = 0));
  return bytes.toString();
};
/** What the page shows of it. */
const shown = (person) => person.page.evaluate(() => {
  const faults = [...document.querySelectorAll('.rules .faults li p:first-child')].map((one) => one.title); // in the core's words
  return {
    faults, hasRules: document.querySelector('.rules') !== null,
    half: document.querySelectorAll('.field [role=alert]').length,
    dimmed: document.querySelector('.stage.dimmed') !== null,
    trouble: [...document.querySelectorAll('.notes .strong')].map((one) => one.innerText).join(),
  };
});
const showRules = (person) => person.page.evaluate(() =>
  void [...document.querySelectorAll('.beside .choose button')].find((one) => one.textContent === 'Rules')?.click());

/** Nothing is moved or worked out any more; a job at fault stays dimmed. */
async function atRest(person) {
  let before = '', still = 0;
  for (let k = 0; k < 400 && still < 4; ++k) {
    const now = await person.page.evaluate(() => new Promise((done) => setTimeout(() => done(JSON.stringify([
      document.querySelectorAll('.stage.moving, [aria-busy=true]').length, document.querySelectorAll('.stage.dimmed').length,
      document.querySelector('.rules')?.textContent.length, document.querySelector('.pane.plan svg')?.textContent,
      document.querySelector('.fields')?.textContent.length,
    ])), 30)));
    still = now === before && now.startsWith('[0') ? still + 1 : 0;
    before = now;
  }
}

await browse('Chromium', async (browser) => {
  await path(browser, `${kActions} actions`, {}, async (person) => {
    const core = new Swathe(), state = { jobs: 0 };
    await person.openJob('job-0.toml', firstText());
    const cdp = await person.page.createCDPSession();
    const memory = async () => {
      await cdp.send('HeapProfiler.collectGarbage');
      const { JSHeapUsedSize, Nodes } = await person.page.metrics();
      return { heap: JSHeapUsedSize, nodes: Nodes, workers: person.page.workers().length };
    };
    let first = firstText(); // of the job that is open
    const log = [], unread = [], notBack = [], memories = [];
    const fail = (list, words) => list.push(`after action ${log.length}: ${words}\n  ${log.slice(-4).join('\n  ')}`);
    const walkBack = async () => {
      await atRest(person);
      const last = await textNow(person);
      const steps = await person.undoAll();
      await atRest(person);
      const back = await textNow(person);
      if (back !== first) fail(notBack, `undo comes to\n${back}`);
      const redo = (count) => person.page.evaluate((times) => {
        for (let k = 0; k < times; ++k) [...document.querySelectorAll('button')].find((one) => one.textContent === 'Redo').click();
      }, count);
      if (steps > 0) await redo(steps - 1); // one was of half a value, which does not come again
      await atRest(person);
      if (await textNow(person) === last) return;
      await redo(1);
      await atRest(person);
      if (await textNow(person) !== last) fail(notBack, 'redo does not come to where it was');
    };

    for (let k = 0; k < kActions; ++k) {
      if (k > 0 && k % kUndoEach === 0) await walkBack();
      if (k % kMemoryEach === 0) memories.push(await memory());
      const action = drawnAction(draw, state);
      if (action.opens !== undefined && k % kUndoEach !== 0) await walkBack();
      await action.work(person);
      log.push(action.told);
      if (action.opens !== undefined) first = action.opens;
      await atRest(person);
      await showRules(person);
      const text = await textNow(person);
      const opened = await core.open(text, { file: `job-${state.jobs}.toml`, advice: false });
      const wanted = opened.ok ? [] : opened.faults.map((fault) => fault.sentence);
      let page;
      const unsaid = () => opened.ok && page.half === 0 && page.dimmed; // half a value is told in a pause
      for (let tries = 0; tries < 50; ++tries) {
        page = await shown(person);
        if (page.faults.join('\n') === wanted.join('\n') && !unsaid()) break;
        await new Promise((later) => setTimeout(later, 100));
      }
      if (page.faults.join('\n') !== wanted.join('\n')) fail(unread, `the page says "${page.faults}", the core "${wanted}"`);
      if (page.trouble !== '') fail(unread, page.trouble);
      if (unsaid()) fail(unread, 'the pictures of a whole job stay dimmed');
      if (unread.length + notBack.length > 5) break;
    }
    await walkBack();
    memories.push(await memory());
    core.close();
    person.check(`${log.length} actions: each text reads, or shows its faults`, log.length === kActions && unread.length === 0, unread.join('\n'));
    person.check('undo goes back exactly, and redo forth', notBack.length === 0, notBack.join('\n'));
    const warm = memories[1], end = memories[memories.length - 1];
    const told = memories.map(({ heap, nodes, workers }) => `${(heap / 1e6).toFixed(1)} MB, ${nodes} nodes, ${workers} workers`).join('\n');
    person.check('memory stays what it was', end.heap - warm.heap < kMoreHeap && end.nodes - warm.nodes < kMoreNodes && end.workers <= warm.workers, told);
    console.log(`    ${told.replaceAll('\n', '\n    ')}`);
  });
});
done();
