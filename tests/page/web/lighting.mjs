// What lights up in the pictures, and what has to: said here once more, in other words than the page's.

/** What stands for all parts of a kind. */
const kAll = {
  bumpers: /^bumper\.[^.]+$/, boards: /^bumper\.[^.]+\.board\./, padding: /^bumper\.[^.]+\.padding\./,
  numerals: /^numeral\./, cloth: /^cloth\./,
};
const isCloth = (part) => /^cloth(\.|$)/.test(part);
/** Whether a mark that shows `shown` shows the part `part`, or a piece of it. */
function shows(picture, shown, part) {
  if (shown === part || shown.startsWith(`${part}.`)) return true;
  if (kAll[part]?.test(shown)) return true;
  if (/^digit\./.test(part)) return kAll.numerals.test(shown);
  if (/^corner\./.test(part)) return shown.replace(/^bumper\.[^.]+\./, '') === part;
  if (picture === 'view' && isCloth(part)) return kAll.bumpers.test(shown);
  // A cut-through shows once what is alike in all.
  return picture === 'cut-through' && (kAll[shown]?.test(part) ?? false);
}
/** Whether a mark has to be lit. Of a whole bumper, and of all cloth, covers show the cloth alone. */
export function isLit(picture, mark, parts) {
  return parts.some((part) => {
    if (picture === 'cover' && kAll.bumpers.test(part)) return mark.cloth && mark.subjects.includes(part);
    if (picture === 'cover' && (part === 'bumpers' || isCloth(part))) return mark.cloth && mark.subjects.some((shown) => kAll.bumpers.test(shown));
    return mark.subjects.some((shown) => shows(picture, shown, part));
  });
}

/** All marks on the page: in which picture, what each shows, and whether it has a class. */
export function allMarks(person, name = 'selected') {
  return person.page.evaluate((wanted) =>
    [...document.querySelectorAll('svg.screen')].filter((svg) => !svg.closest('.kinds')).flatMap((svg) => {
      const picture = svg.getAttribute('class').split(' ')[1];
      const where = svg.closest('[aria-label]')?.getAttribute('aria-label') ?? picture;
      return [...svg.querySelectorAll('[data-subject]')].map((mark) => ({
        picture, where, subjects: mark.getAttribute('data-subject').split(' '),
        cloth: mark.closest('.cloth') !== null, lit: mark.classList.contains(wanted),
      }));
    }), name);
}

/** Marks that are lit and should not be, or should be and are not, in words. */
export function wrongOf(marks, parts) {
  return marks.filter((mark) => mark.lit !== isLit(mark.picture, mark, parts))
    .map((mark) => `${mark.where}: "${mark.subjects.join(' ')}" is ${mark.lit ? 'lit' : 'not lit'} with ${parts.join(' ')}`);
}
export const listed = (wrong) => [...new Set(wrong)].slice(0, 20).join('\n');

export const drawnOnce = (person) => person.page.evaluate(() =>
  new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));

/** Waits until marks with a class are those of these parts, and no others; what is wrong at the end. */
export async function comesToBe(person, parts, name, patience = 200) {
  let wrong = [];
  for (let k = 0; k < patience; ++k) {
    await drawnOnce(person);
    wrong = wrongOf(await allMarks(person, name), parts);
    if (wrong.length === 0) return '';
  }
  return listed(wrong);
}

/** Puts the pointer on the nth of such elements, in the middle of the view. */
export async function pointTo(person, selector, nth = 0) {
  const at = await person.page.evaluate((wanted, k) => {
    const found = document.querySelectorAll(wanted)[k];
    found?.scrollIntoView({ block: 'center' });
    const box = found?.getBoundingClientRect();
    return box ? { x: box.left + Math.min(box.width / 2, 30), y: box.top + Math.min(box.height / 2, 8) } : null;
  }, selector, nth);
  if (!at) throw new Error(`nothing to point at: ${selector} ${nth}`);
  await person.page.mouse.move(at.x, at.y);
}
/** Puts the pointer on a line of the text, wherever that is scrolled to. */
export async function pointToLine(person, line) {
  const at = await person.until(`line ${line} in sight`, async (number) => {
    const scroller = document.querySelector('.cm-scroller');
    const shown = [...document.querySelectorAll('.cm-lineNumbers .cm-gutterElement')]
      .find((one) => one.textContent === String(number) && one.style.visibility !== 'hidden');
    const box = shown?.getBoundingClientRect(), within = scroller.getBoundingClientRect();
    if (box && box.top > within.top && box.bottom < within.bottom) return { x: within.left + 60, y: box.top + 6 };
    const last = Number([...document.querySelectorAll('.cm-lineNumbers .cm-gutterElement')].at(-1).textContent);
    if (box) scroller.scrollTop += box.top - within.top - within.height / 2;
    else scroller.scrollTop += number > last ? within.height / 2 : -within.height / 2;
    await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
    return null;
  }, line);
  await person.page.mouse.move(at.x, at.y);
}
