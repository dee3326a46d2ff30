// Fields: what is half typed and taken back, places, one more of a table, words for values.
import { changed, path, wait } from '../browser.mjs';
import { Swathe, exampleText } from '../suite.mjs';

const kText = exampleText();
const kFile = 'tin-heron.toml';
const kNarrow = changed(kText, ['width = "28 in"', 'width = "26 in"']);

export async function fields(browser) {
  const core = new Swathe();

  /** The group of a field, whose table is opened. */
  async function fieldOf(person, table, name) {
    const item = await person.find('group', table);
    if (!(await person.there('group', name, item))) await (await item.waitForSelector('.item-name')).click();
    return person.find('group', name, item);
  }
  const isGood = (person) => person.until('nothing at fault, nothing dimmed', () =>
    document.querySelector('.field.at-fault, .stage.dimmed, .faults') === null);
  const isAtFault = (person) => person.until('the fault at the field', () => document.querySelector('.field.at-fault') !== null);

  await path(browser, 'half a value is taken back', {}, async (person) => {
    await person.openJob(kFile, kText);
    const frame = await person.region('Frame');
    await person.fill('Width', '26 in', frame);
    await person.untilSaid('front 26 in', '.pane.plan');
    await wait(700); // a pause
    await person.putIn('Width', '26 1/', frame);
    await isAtFault(person);
    person.check('the fault has the field\'s name', /^"Width" is "26 1\/", expected/.test(await person.page.evaluate(() =>
      document.querySelector('.field.at-fault .fault').innerText)));
    await person.undo();
    await isGood(person);
    person.equal('Undo: the field shows what the job has', await person.valueOf('Width', frame), '28 in');
    person.equal('which is as it was', await person.jobText(), kText);
    await person.putIn('Width', '26 1/', frame);
    await isAtFault(person);
    await person.press('Redo');
    await person.settled();
    await isGood(person);
    person.equal('so does Redo', await person.valueOf('Width', frame), '26 in');
    person.equal('and the job is that', await person.jobText(), kNarrow);
    const padding = await person.region('Padding');
    await person.putIn('Diameter', '3 1/', padding);
    await isAtFault(person);
    await person.undo();
    await isGood(person);
    person.equal('Undo takes half a value back alone where its field gave the job nothing', await person.jobText(), kNarrow);
    await person.putIn('Diameter', '3 1/', padding);
    await isAtFault(person);
    await person.press('Diameter: Clear: use the usual value', padding);
    await person.settled();
    await isGood(person);
    person.equal('the field\'s × too', await person.valueOf('Diameter', padding), '2.5 in');
    person.check('and the key is gone', !(await person.jobText()).includes('diameter'));
    await person.undoAll();
    await person.settled();
    // Left at once: before it is read.
    await person.putIn('Width', '26 1/', frame);
    await person.page.evaluate(() => document.activeElement.blur());
    await isAtFault(person);
    person.equal('who leaves it finds it as it was', await person.valueOf('Width', frame), '26 1/');
    await person.select('Width', frame);
    await person.page.keyboard.press('Escape');
    await isGood(person);
    person.equal('Escape takes it back', await person.valueOf('Width', frame), '28 in');
    await person.press('More about: Frame');
    await person.putIn('Play at the frame', '0 in', frame);
    await person.settled();
    await person.page.keyboard.press('ArrowDown');
    await person.settled();
    person.equal('a step past the limit is none', await person.valueOf('Play at the frame', frame), '0 in');
    await isGood(person);
  });

  await path(browser, 'a click at the end of a field', {}, async (person) => {
    const text = changed(kText, ['[numerals]', '[cloth]\ncolors = { red = "#b5121b", blue = "#1b3a93" }\n\n[numerals]']);
    await person.openJob(kFile, text);
    const { mouse } = person.page;
    for (const where of ['job.number', 'padding.diameter', 'numerals.font', 'cloth.colors']) {
      for (const place of await person.page.$$(`[data-key="${where}"] :is(input[type=text], select)`)) {
        await place.evaluate((element) => element.scrollIntoView({ block: 'center' }));
        const { x, y, width, height } = await place.boundingBox();
        await mouse.move(x + width - 8, y + height / 2);
        await mouse.click(x + width - 8, y + height / 2);
        await person.page.keyboard.press('Escape');
        await place.dispose();
      }
    }
    await person.settled();
    person.equal('takes nothing out', await person.jobText(), text);
  });

  await path(browser, 'a value wrong at its end', {}, async (person) => {
    await person.openJob(kFile, kText);
    const job = await person.region('The job'), frame = await person.region('Frame');
    await person.fill('Team number', '44718899', job);
    await isAtFault(person);
    await person.settled();
    person.equal('no beginning of it is left in the job', await person.jobText(), kText);
    person.equal('it stands in the field', await person.valueOf('Team number', job), '44718899');
    await person.press('Save job');
    await person.untilSaid('A value that is marked as wrong in its field is not in it', '.notes');
    await person.select('Team number', job);
    await person.page.keyboard.press('Escape');
    await isGood(person);
    await person.fill('Width', '26 in', frame);
    await person.untilSaid('front 26 in', '.pane.plan');
    await wait(700); // a pause
    await person.fill('Width', '999999 in', frame);
    await isAtFault(person);
    await person.settled();
    person.equal('what was whole before a pause stays', await person.jobText(), kNarrow);
    await person.undoAll();
    await person.settled();
    person.equal('which can be undone', await person.jobText(), kText);
    await person.fill('Width', '999999 in', frame);
    await person.page.keyboard.down('Control');
    await person.page.keyboard.press('z'); // before a pause
    await person.page.keyboard.up('Control');
    await wait(700);
    await person.settled();
    person.equal('undone at once it stays undone', await person.jobText(), kText);
    await person.fill('Width', '27,5 in', frame);
    await person.untilSaid('front 27 1/2 in', '.pane.plan');
    person.equal('a comma is read as a point', await person.jobText(), changed(kText, ['width = "28 in"', 'width = "27.5 in"']));
  });

  await path(browser, 'a distance from a corner', {}, async (person) => {
    await person.openJob(kFile, kText);
    const place = await fieldOf(person, 'bracket 1', 'Place');
    const distance = () => person.valueOf('distance', place);
    await person.putIn('distance', '9 x', place);
    await person.page.evaluate(() => document.activeElement.blur());
    await isAtFault(person);
    await person.settled();
    person.equal('what is at fault stays', await distance(), '9 x');
    await person.select('distance', place);
    await person.page.keyboard.press('Escape');
    await isGood(person);
    person.equal('Escape takes it back', await distance(), '9 in');
    await person.putIn('distance', '9 x', place);
    await isAtFault(person);
    await (await person.find('combobox', 'from the corner with', place)).select('back');
    await person.settled();
    await isGood(person);
    person.equal('another corner ends it, too', await distance(), '9 in');
    await person.undo();
    await person.select('distance', place);
    await person.page.keyboard.press('ArrowUp');
    await person.untilSaid('9 1/16 in = 230.19 mm');
    await person.settled();
    person.equal('an arrow key is 1/16 in', await person.jobText(), changed(kText, ['"left"\nat = ["9 in", "front"]', '"left"\nat = ["9 1/16 in", "front"]']));
    await person.putIn('distance', '10', place);
    await person.untilSaid('10 in = 254 mm');
    await person.settled();
    person.equal('a bare number has the job\'s unit', await person.jobText(), changed(kText, ['"left"\nat = ["9 in", "front"]', '"left"\nat = ["10 in", "front"]']));
    const end = await fieldOf(person, 'A', 'To');
    await person.select('part of the side', end);
    await person.page.keyboard.press('ArrowUp');
    await person.settled();
    person.equal('of a part of the side it is 1 %', await person.valueOf('part of the side', end), '51%');
    await person.undoAll();
    await person.settled();
    person.equal('undo goes back to the start', await person.jobText(), kText);
    await person.select('part of the side', end);
    await person.press('More about: Boards'); // which moves up as soon as the field is left
    person.check('a button below a field is pressed', await person.there('button', 'Less about: Boards'));
    await person.putIn('Sheet as bought', '48, 2 m', await person.region('Boards'));
    await person.untilSaid('48 in = 1219.2 mm; 78.74 in = 2000 mm');
  });

  await path(browser, 'one more of a table', {}, async (person) => {
    await person.openJob(kFile, kText);
    const tables = (text, table) => text.split(`[[${table}]]`).length - 1;
    for (const [button, table, count] of [
      ['Add a bumper', 'bumper', 1], ['Add a bracket', 'bracket', 3], ['Add an opening', 'opening', 2], ['Add a place', 'numerals.place', 2],
    ]) {
      for (let k = 1; k <= count; ++k) {
        const before = await person.jobText();
        await person.press(button);
        await person.until(`${button}: done`, () => document.querySelector('[aria-busy=true]') === null);
        await person.settled();
        const text = await person.jobText();
        const { ok, faults } = await core.open(text, { advice: false });
        person.check(`${button}, ${k}: the job can be made`, ok && tables(text, table) > tables(before, table), faults?.map((one) => one.text).join('\n') ?? text);
        await person.undo();
        person.equal('one undo takes it back', await person.jobText(), before);
        await person.press('Redo');
        await person.settled();
      }
      await person.undoAll();
      await person.settled();
      person.equal('undo goes back to the start', await person.jobText(), kText);
    }
  });

  const valuesOf = async (text, form) => (await core.fields(text)).value.filter((one) => one.form === form).map((one) => one.shown);
  const failedIn = async (text) => {
    await core.open(text, { advice: false });
    return (await core.findings()).findings.filter((one) => one.verdict === 'fail').map((one) => one.id).join();
  };
  const removed = async (person, table, name) => {
    const item = await person.find('group', name, await person.region(table));
    if (!(await person.there('button', `Remove ${name}`, item))) await (await item.waitForSelector('.item-name')).click();
    await person.press(`Remove ${name}`, item);
    await person.settled();
  };

  await path(browser, 'one more bumper where none is', {}, async (person) => {
    for (const [kind, gone, first, second] of [
      ['corner-pieces', ['D', 'C'], ['["back", "50%"]', '["front", "50%"]'], ['["right", "50%"]', '["front", "50%"]']],
      ['one-a-side', ['B'], ['["left", "corner"]', '["left", "corner"]'], null],
      ['one-a-side', ['D', 'C'], ['["back", "corner"]', '["right", "corner"]'], ['["right", "corner"]', '["right", "corner"]']],
      ['short-leg', ['A'], ['["front", "10 in", "right"]', '["back", "50%"]'], null],
    ]) {
      const { value } = await core.jobOfKind(kind);
      await person.openJob(`${kind} ${gone.join('')}.toml`, value.text);
      for (const name of gone) await removed(person, 'Bumpers', name);
      for (const ends of [first, second]) {
        if (!ends) continue;
        await person.press('Add a bumper');
        await person.settled();
        const text = await person.jobText();
        const [from, to] = [await valuesOf(text, 'bumper.from'), await valuesOf(text, 'bumper.to')].map((all) => all.at(-1));
        person.equal(`${kind}: the new one is where none was`, `${from} ${to}`, ends.join(' '));
      }
      person.equal(`${kind}: no rule is broken that was not`, await failedIn(await person.jobText()), await failedIn(value.text));
    }
  });

  await path(browser, 'an opening taken out', {}, async (person) => {
    const { value: { text: halves } } = await core.jobOfKind('c-halves');
    const { value: { text: opening } } = await core.jobOfKind('opening');
    const ends = async (text) => [...await valuesOf(text, 'bumper.from'), ...await valuesOf(text, 'bumper.to')].join(' ');
    const one = '[[opening]]\nside = "front"\nwidth = "14 in"\n';
    for (const [name, text, place] of [
      ['one that was added', halves, '["front", "50%"]'],
      ['one of a file', opening, '["front", "50%"]'],
      ['one with a center of its own', changed(opening, [one, `${one}center = "55%"\n`]), '["front", "55%"]'],
      ['one placed from a corner', changed(opening, [one, `${one}center = ["13 in", "left"]\n`]), '["front", "13 in", "left"]'],
    ]) {
      await person.openJob('opening.toml', text);
      if (text === halves) {
        await person.press('Add an opening');
        await person.settled();
      }
      const before = await person.jobText();
      person.check(`${name}: bumpers end at it`, (await ends(before)).includes('["front", "opening"]'));
      await removed(person, 'Openings', 'opening 1');
      const after = await person.jobText();
      person.check(`${name}: the job can be made`, (await core.open(after)).ok, after);
      person.check(`${name}: they end where its middle was`, (await ends(after)).split(place).length === 3, await ends(after));
      if (text === halves) person.equal(`${name}: the job is as it was`, after, halves);
      await person.undo();
      person.equal(`${name}: one undo brings it back`, await person.jobText(), before);
    }
  });

  await path(browser, 'an opening moved to another side', {}, async (person) => {
    const { value: { text: halves } } = await core.jobOfKind('c-halves');
    const { value: { text: opening } } = await core.jobOfKind('opening');
    const placed = changed(opening, ['width = "14 in"\n', 'width = "14 in"\ncenter = ["13 in", "left"]\n']);
    for (const [name, text, side] of [
      ['round a corner', halves, 'left'], ['across', halves, 'back'], ['in one long bumper', opening, 'right'],
      ['placed from a corner', placed, 'left'],
    ]) {
      await person.openJob('opening.toml', text);
      if (text === halves) {
        await person.press('Add an opening');
        await person.settled();
      }
      const before = await person.jobText();
      const item = await person.find('group', 'opening 1');
      if (!(await person.there('combobox', 'Side', item))) await (await item.waitForSelector('.item-name')).click();
      await (await person.find('combobox', 'Side', item)).select(side);
      await person.until('it has begun', () => document.querySelector('[aria-busy=true]') !== null);
      await person.settled();
      const after = await person.jobText();
      person.equal(`${name}: it is there`, (await valuesOf(after, 'opening.side')).join(), side);
      person.check(`${name}: the job can be made`, (await core.open(after)).ok, after);
      person.equal(`${name}: no rule is broken that was not`, await failedIn(after), await failedIn(before));
      await person.undo();
      person.equal(`${name}: one undo takes it back`, await person.jobText(), before);
    }
  });

  await path(browser, 'one more color', {}, async (person) => {
    const { value: { text } } = await core.jobOfKind('c-halves');
    const colors = async () => (await valuesOf(await person.jobText(), 'cloth.colors'))[0].match(/[\w-]+(?= =)/g).join();
    const offered = () => person.there('button', 'Add a color');
    await person.openJob('colors.toml', text);
    person.check('red and blue are there: none is offered that a rule forbids', !(await offered()));
    for (const name of ['blue', 'red']) {
      const field = await person.find('group', 'Colors');
      await (await field.waitForSelector('input[type=text]')).focus();
      await person.press(`Remove ${name}`, field);
      await person.settled();
      await person.press('Add a color');
      await person.settled();
      person.check(`${name} is lacking: it comes back`, (await colors()).split(',').sort().join() === 'blue,red', await colors());
      person.equal('no rule is broken', await failedIn(await person.jobText()), '');
    }
    for (const season of ['none', '2016']) {
      await person.choose(`colors-${season}.toml`, changed(text, ['season = "2026"', `season = "${season}"`]));
      await person.press('Add a color');
      await person.settled();
      person.equal(`${season}: no rule names colors, any may be added`, await colors(), 'red,blue,black');
      person.check('and one more', await offered());
    }
  });

  await path(browser, 'presses that follow each other quickly', {}, async (person) => {
    const { value } = await core.jobOfKind('c-halves');
    await person.openJob('halves.toml', value.text);
    const said = () => person.page.evaluate(() => document.querySelector('[aria-label="Brackets"] [role=status]').innerText);
    // All at once: together they take long.
    await person.page.evaluate(() => {
      const button = [...document.querySelectorAll('button')].find((one) => one.textContent === 'Add a bracket');
      for (let k = 0; k < 8; ++k) button.click();
    });
    await wait(50);
    person.equal('nothing is said of it at first', await said(), '');
    await person.until('it is said after a while', () => document.querySelector('[aria-label="Brackets"] [role=status]').innerText === 'Adding …');
    await person.settled();
    person.equal('and no more when all are there', await said(), '');
    await person.undoAll();
    await person.settled();
    for (let k = 0; k < 4; ++k) {
      await person.press('Add a bracket');
      await wait(100);
    }
    await person.settled();
    const text = await person.jobText();
    person.equal('each press adds a bracket, on another side', (await valuesOf(text, 'bracket.side')).sort().join(), 'back,front,left,right');
    person.check('the job can be made', (await core.open(text)).ok);
    for (let k = 0; k < 4; ++k) await person.undo();
    person.equal('each is a step of its own', await person.jobText(), value.text);
  });

  // As many openings as sides, and none is free.
  await path(browser, 'no room for one more', {}, async (person) => {
    const { value } = await core.jobOfKind('hook-and-loop');
    await person.openJob('held.toml', value.text);
    let said = '';
    for (let k = 0; k < 6 && said === ''; ++k) {
      await person.press('Add a bumper');
      await person.settled();
      said = await person.page.evaluate(() => document.querySelector('[aria-label="Bumpers"] > [role=alert]')?.innerText ?? '');
    }
    person.check('it is said why', /^There is no room for one more bumper: \w/.test(said), said);
    person.check('and the job is as good as before', (await core.open(await person.jobText())).ok);
  });

  await path(browser, 'words for values', {}, async (person) => {
    await person.openJob(kFile, kText);
    const chosen = async (name, within) => (await person.find('combobox', name, within)).evaluate((one) => one.selectedOptions[0].textContent);
    person.equal('a choice nobody made', await chosen('Solid or hollow', await person.region('Padding')), 'not said');
    await person.press('More about: Number');
    const number = await person.region('Number');
    person.equal('a height as the rules ask', await person.valueOf('Height', number), 'as the rules ask');
    person.equal('axes that are none', await person.valueOf('Axes', number), '');
    await person.putIn('Height', '4 in', number);
    await person.settled();
    await person.putIn('Height', 'As the rules ask', number);
    await person.settled();
    person.check('the job has its own word for it', (await person.jobText()).includes('height = "season"'), await person.jobText());
    await person.undoAll();
    person.equal('undo goes back to the start', await person.jobText(), kText);
  });

  await path(browser, 'what the test page measures', {}, async (person) => {
    await person.openJob(kFile, kText);
    await person.press('Print');
    const print = await person.region('Print');
    await print.waitForSelector('.measured');
    const answer = async (name, words) => {
      await person.fill(name, words, print);
      await person.page.keyboard.press('Tab');
      await person.settled();
    };
    await answer('Across', '99.2');
    person.equal('one answer alone is not kept', await person.jobText(), kText);
    await answer('Down', '100,4');
    await person.untilSaid('Kept in the job');
    person.check('both are kept in the job', (await person.jobText()).includes('measured = ["99.2 mm", "100.4 mm"]'), await person.jobText());
    await answer('Across', '');
    await person.untilSaid('Give both, or empty both.');
    await answer('Down', '');
    person.check('emptied they are taken out', !(await person.jobText()).includes('measured'), await person.jobText());
    person.equal('and the fields stay empty', await person.valueOf('Across', print) + await person.valueOf('Down', print), '');
    await person.undo();
    person.equal('Undo brings them back', await person.valueOf('Across', print), '99.2 mm');
    await person.undoAll();
    await person.settled();
    person.equal('undo goes back to the start', await person.jobText(), kText);
  });
  core.close();
}
