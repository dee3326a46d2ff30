// A job that is open in several tabs: when the one that keeps it lets it go, another one does.
import { path, wait } from '../browser.mjs';
import { exampleText } from '../suite.mjs';

const kText = exampleText();
const kFile = 'tin-heron.toml';
const kTitle = 'Tin Heron, spring covers';
const kTitled = (title) => kText.replace(kTitle, title);
const kWords = 'open in another tab';

/** Titles of what the browser keeps, in their order. */
const titles = (person) => person.page.evaluate(() => Object.keys(localStorage)
  .filter((key) => key.startsWith('swathe.job.')).map((key) => JSON.parse(localStorage[key]).title).sort().join('; '));
const untilKept = (person, wanted) => person.until(`kept: ${wanted}`, (all) => Object.keys(localStorage)
  .filter((key) => key.startsWith('swathe.job.')).map((key) => JSON.parse(localStorage[key]).title).sort().join('; ') === all, wanted);
const isFree = (person) => person.until('no other tab keeps it', (words) => !document.body.innerText.includes(words), kWords);

/** Another tab with the kept job, which waits for it. */
async function waiting(person) {
  const second = await person.another();
  await second.press(`Open ${kTitle}`);
  await second.untilSaid(kWords);
  await second.found();
  return second;
}
async function retitle(person, title) {
  await person.page.bringToFront();
  await person.fill('Title', title);
  await person.untilSaid(title, 'h1');
  await person.settled();
}

export async function twoTabs(browser) {
  await path(browser, 'two tabs, one is closed', {}, async (person) => {
    await person.openJob(kFile, kText);
    await untilKept(person, kTitle);
    const second = await waiting(person);
    await retitle(second, 'Edited while it waited');
    const third = await person.another();
    await third.press(`Open ${kTitle}`);
    await third.untilSaid(kWords);
    await third.found();
    await person.page.close({ runBeforeUnload: true });
    await Promise.all([second, third].map(({ page }) => page.evaluate(() => new Promise((done) => setTimeout(done, 2500)))));
    const said = (await Promise.all([second, third].map((one) => one.words()))).map((all) => all.includes(kWords));
    second.check('of two that wait for it one keeps it', said[0] !== said[1], said.join());
    const [keeper, other] = said[1] ? [second, third] : [third, second];
    await keeper.page.bringToFront();
    await retitle(keeper, 'By who came to it');
    await untilKept(keeper, 'By who came to it');
    await keeper.page.close({ runBeforeUnload: true });
    await other.page.bringToFront();
    await isFree(other);
    await retitle(other, 'By the last one');
    await other.until('kept', () => Object.keys(localStorage).some((key) =>
      key.startsWith('swathe.job.') && JSON.parse(localStorage[key]).title === 'By the last one'));
    other.check('and then the last one does', true);
    await other.leave();
    person.page = await browser.newPage(); // to be closed
  });

  await path(browser, 'two tabs, one comes back to the page', {}, async (person) => {
    await person.openJob(kFile, kText);
    await untilKept(person, kTitle);
    const second = await waiting(person);
    const tells = (event) => person.page.evaluate((name) =>
      void window.dispatchEvent(new PageTransitionEvent(name, { persisted: true })), event);
    await tells('pagehide'); // as if another page were shown in its place
    await isFree(second);
    await retitle(second, 'By the second');
    await untilKept(second, 'By the second');
    await person.page.bringToFront();
    await tells('pageshow');
    await person.find('button', 'Keep it in this tab');
    await wait(1500);
    person.check('another tab took its job meanwhile, which is said', await person.there('button', 'Keep it in this tab'));
    await second.page.close({ runBeforeUnload: true });
    await isFree(person);
    await person.untilSaid('By the second', 'h1');
    person.check('until that one lets it go', true);
    await tells('pagehide');
    await tells('pageshow');
    await wait(1500);
    await isFree(person);
    await retitle(person, 'By the first');
    await untilKept(person, 'By the first');
    person.check('and where none took it, it keeps it as before', true);
  });

  await path(browser, 'two tabs, one opens another job', {}, async (person) => {
    await person.openJob(kFile, kText);
    await untilKept(person, kTitle);
    const second = await waiting(person);
    await retitle(person, 'By the first');
    await untilKept(person, 'By the first');
    await person.openJob('other.toml', kTitled('Another'));
    await second.page.bringToFront();
    await isFree(second);
    await second.untilSaid('By the first', 'h1');
    await second.found();
    second.equal('who waited has what the first one kept', await second.jobText(), kTitled('By the first'));
    await retitle(second, 'By the second');
    await untilKept(second, 'Another; By the second');
    await person.page.bringToFront();
    await person.press('New');
    await person.press('Open By the second');
    await person.untilSaid(kWords);
    await person.found();
    person.check('who comes back to it waits in turn', true);
    await retitle(second, 'Once more');
    await untilKept(second, 'Another; Once more');
    await retitle(person, 'Edited while it waited');
    await second.page.bringToFront();
    await second.openJob('third.toml', kTitled('A third'));
    await person.page.bringToFront();
    await isFree(person);
    await untilKept(person, 'A third; Another; Edited while it waited; Once more');
    person.check('what both edited is kept side by side', true);
    await second.page.close();
  });

  await path(browser, 'two tabs, one forgets it', {}, async (person) => {
    await person.openJob(kFile, kText);
    await untilKept(person, kTitle);
    const second = await waiting(person);
    await person.page.bringToFront();
    await person.press('Forget');
    await person.find('button', 'Begin');
    await second.page.bringToFront();
    await isFree(second);
    await wait(900);
    second.equal('what nobody edited stays forgotten', await titles(second), '');
    await retitle(second, 'Edited after it');
    await untilKept(second, 'Edited after it');
    await person.page.bringToFront();
    await person.press(`Undo: keep ${kTitle}`);
    await person.find('button', `Open ${kTitle}`);
    person.equal('taken back it takes no place of what was kept anew', await titles(person), `Edited after it; ${kTitle}`);
    await person.press('Open Edited after it');
    await person.untilSaid(kWords);
    await person.found();
    await retitle(person, 'Edited while it waited');
    await second.page.bringToFront();
    await second.press('Forget');
    await person.page.bringToFront();
    await isFree(person);
    await untilKept(person, `Edited while it waited; ${kTitle}`);
    person.check('what was edited while it waited is kept anew', true);
    await second.page.close();
  });
}
