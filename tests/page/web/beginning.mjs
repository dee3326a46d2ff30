// The ways to begin: the questions, a kind, a file, a pasted text; and what comes of a file that is
// broken or somebody else's.
import { changed, path } from '../browser.mjs';
import { Swathe, exampleText } from '../suite.mjs';

const kText = exampleText();

export async function beginning(browser) {
  const core = new Swathe();

  await path(browser, 'a newcomer, from the questions to the measuring sheet', {}, async (person) => {
    person.equal('nothing of a stranger\'s is there', await person.page.evaluate(() =>
      [document.body.innerText, ...[...document.querySelectorAll('input, textarea')].map((one) => one.value)].join('\n')
        .match(/20486|Tin Heron/)?.[0] ?? 'nothing'), 'nothing');
    const answers = ['26 in x 31 in', '', '4 sides', 'left 9 in from front, 3 in x 2 in', '', '123 stencil', 'tabloid'];
    await person.press('Begin');
    for (const [k, answer] of answers.entries()) {
      const [question] = (await core.questions(answers.slice(0, k))).slice(k);
      await person.find('textbox', question.asks);
      if (answer !== '') await person.fill(question.asks, answer);
      await person.until('the bumpers so far', (wanted) =>
        wanted === 0 || document.querySelector('figure svg') !== null, k);
      await person.page.keyboard.press('Enter');
    }
    await person.found();
    const made = await core.newJob(answers);
    person.equal('the job is the one that "swathe new" writes', await person.jobText(), made.value.text);
    await person.press('Print');
    await (await person.page.waitForSelector('input[type=radio][value=measures]')).click();
    await person.press('See sheets: measuring sheet and templates');
    const dialog = await person.find('dialog', 'See sheets: measuring sheet and templates');
    await person.until('a sheet shown small', () => document.querySelector('dialog img') !== null);
    const count = await person.handedCount();
    await person.press('Save A-measures.pdf', dialog);
    const { name, bytes } = await person.saved(count);
    await core.open(made.value.text, { file: 'job.toml' });
    person.check('its measuring sheet is the core\'s', name === 'A-measures.pdf' &&
      bytes.equals(Buffer.from(await core.file('A-measures.pdf'))), `${name}, ${bytes.length} bytes`);
  });

  await path(browser, 'a wrong answer', {}, async (person) => {
    const [first, second] = await core.questions([]);
    await person.press('Begin');
    await person.fill(first.asks, '26 in by moonlight');
    await person.until('what is wrong with it', () => document.querySelector('[role=alert]')?.innerText.length > 10);
    await person.page.keyboard.press('Enter');
    person.check('goes no further', await person.there('textbox', first.asks));
    await person.fill(first.asks, '26 in x 31 in');
    await person.until('no fault', () => document.querySelector('[role=alert]') === null);
    await person.page.keyboard.press('Enter');
    await person.find('textbox', second.asks);
    await person.press('Back');
    person.equal('and stays when one goes back', await person.valueOf(first.asks), '26 in x 31 in');
    await person.press('Back to the start');
    person.check('one can leave', await person.there('button', 'Begin'));
  });

  await path(browser, 'a kind', {}, async (person) => {
    await person.press('Four corner pieces');
    await person.found();
    const kind = await core.jobOfKind('corner-pieces');
    person.equal('is the core\'s', await person.jobText(), kind.value.text);
    person.check('and has no number of somebody\'s', !/^number = /m.test(kind.value.text), kind.value.text);
  });

  await path(browser, 'a pasted text', {}, async (person) => {
    await person.find('textbox', 'Job as text, to paste');
    await person.page.evaluate((text) => {
      const area = document.querySelector('textarea');
      area.focus();
      document.execCommand('insertText', false, text);
    }, kText);
    await person.press('Open the pasted text');
    await person.found();
    person.equal('is opened as it is', await person.jobText(), kText);
  });

  const kWrong = kText.replace('width = "28 in"', 'width = "28 zz"');
  await path(browser, 'a first file that is broken', {}, async (person) => {
    await person.choose('wrong.toml', kWrong);
    await person.untilSaid('wrong in the job', '[aria-label="Rules"]');
    const { faults } = await core.open(kWrong, { file: 'wrong.toml' });
    await person.untilFault(faults[0].sentence);
    person.check('with its field\'s name', (await person.said('Rules')).includes('"Frame, width" is "28 zz"'));
    await person.find('textbox', 'Job as text');
    await person.until('its place underlined', () => document.querySelector('.cm-lintRange-error') !== null);
    person.check('there is no picture, and why is said', await person.page.$('.stage svg') === null &&
      /No picture yet: something in the job is wrong/.test(await person.said('From above')), await person.said('From above'));
    await person.press(`Go to line ${faults[0].line} of the text`);
    await person.until('its line', () => document.activeElement.getAttribute('aria-label') === 'Job as text' &&
      document.querySelector('.cm-activeLine').textContent.includes('28 zz'));
    await person.retype(faults[0].line, 'width = "28 in"');
    await person.found();
    person.equal('mended in the text it is the job', await person.jobText(), kText);
  });

  await path(browser, 'files that are no job', {}, async (person) => {
    for (const [name, bytes, words] of [
      ['shopping.txt', Buffer.from('cloth = 3 yd\nnoodles: 8\n'), 'is not a job file'],
      ['report.json', Buffer.from('{\n  "bumpers": [\n    ["a = b"]\n  ]\n}\n'), 'is not a job file'],
      ['a.png', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 0xff, 0xfe]), 'is not a job file'],
      ['large.toml', Buffer.alloc(2_100_000, 'a'), 'is too large'],
    ]) {
      await person.give(name, bytes);
      await person.untilSaid(words);
      person.check(`${name}: is said, and nothing else happens`, await person.there('button', 'Begin'));
    }
  });

  // Markup wherever a job has text of its own.
  const kMarkup = '<img src=x onerror=alert(1)><script>alert(2)</script>&amp;';
  const kHostile = changed(kText, ['Tin Heron, spring covers', kMarkup],
    ['name = "A"', 'name = "<b onclick=alert(3)>A"'], ['name = "B"', 'name = "javascript:alert(4)"'],
    ['width = "28 in"\ndepth = "30 in"', 'corners = [[28, 30], [0, 30], [0, 0], [28, 0]]\nsides = ["front", "left", "back", "right"]'],
    ['[numerals]', '[cloth]\ncolors = { "<i>red</i>" = "#b5121b", "url(x)" = "#1b3a93" }\n\n[numerals]'])
    .replaceAll('"front"', '"<u>front</u>"')
    .concat('\n# </script><svg onload=alert(5)>\n');
  await path(browser, 'a stranger\'s job with markup in every text', {}, async (person) => {
    const { ok, faults } = await core.open(kHostile);
    person.check('it can be opened', ok, faults?.map((one) => one.text).join('\n'));
    await person.choose('<b>.toml', kHostile);
    await person.settled();
    await person.found();
    for (const view of ['Text', 'Fields', 'Print', 'To buy', 'Rules', 'Cut-through']) {
      await person.press(view);
      await person.settled();
    }
    const found = await person.page.evaluate(() => [...document.querySelectorAll(
      '#page img[src=x], #page script, #page u, #page [onerror], #page [onclick], #page [onload], foreignObject, #page i, #page b')]
      .filter((one) => !/^[IB]$/.test(one.tagName) || /^(red|A|front)$/.test(one.textContent)).map((one) => one.outerHTML));
    person.check('no markup of it is on the page', found.length === 0, found.join('\n'));
    person.check('it is shown as text', (await person.words()).includes('<script>alert(2)</script>'));
    person.equal('and it is kept as it came', await person.jobText(), kHostile);
    person.check('no script of it ran', !person.trouble.some((one) => one.startsWith('dialog')), person.trouble.join('\n'));
  });
  // Signs that are not shown, wherever a job has text of its own, and markup where the core takes none.
  const kTexts = {
    title: (words) => changed(kText, ['Tin Heron, spring covers', words]),
    season: (words) => changed(kText, ['season = "2026"', `season = "${words}"`]),
    bumper: (words) => changed(kText, ['name = "A"', `name = "${words}"`]),
    side: (words) => changed(kText, ['depth = "30 in"', `depth = "30 in"\nsides = ["${words}", "left", "back", "right"]`]),
    color: (words) => changed(kText, ['[numerals]', `[cloth]\ncolors = { "${words}" = "#b5121b" }\n\n[numerals]`]),
    font: (words) => changed(kText, ['"Anton"', `"${words}.ttf"`]),
    'the bumper of a bracket': (words) => changed(kText, ['cloth = "under"\n\n# Latch', `cloth = "under"\nbumper = "${words}"\n\n# Latch`]),
    'the bumper of a place': (words) => changed(kText, ['sides = ["front", "left", "back", "right"]',
      `[[numerals.place]]\nside = "left"\nbumper = "${words}"`]),
  };
  for (const [what, words] of [['a control character', 'a\u0007b'], ['one written as an escape', 'a\\u0001b'],
    ['one that turns text round', 'a\u202eb'], ['markup', '<img src=x onerror=alert(1)>']])
    await path(browser, `a job with ${what} in each text`, {}, async (person) => {
      for (const [key, textWith] of Object.entries(kTexts)) {
        const text = textWith(words), name = `${key.replaceAll(' ', '-')}.toml`;
        const opened = await core.open(text, { file: name, advice: false });
        await person.choose(name, text);
        if (opened.ok) await person.found();
        else for (const { sentence } of opened.faults) await person.untilFault(sentence);
        person.equal(`${key}: it is ${opened.ok ? 'opened' : 'refused'} as by the command, and kept as it came`, await person.jobText(), text);
        for (const view of ['Fields', 'Print', 'To buy', 'Rules']) await person.press(view);
        const odd = await person.page.evaluate(() => [
          document.querySelector('#page [onerror]')?.outerHTML ?? '',
          /[\u0000-\u0008\u000b-\u001f\u202a-\u202e\u2066-\u2069]/.exec([...document.querySelectorAll('#page .beside, #page [role=alert]')]
            .map((one) => one.innerText).join())?.[0] ?? '',
        ].join(''));
        person.equal(`${key}: none of it is taken for more than text`, odd, '');
      }
      person.check('no script of it ran', !person.trouble.some((one) => one.startsWith('dialog')), person.trouble.join('\n'));
    });

  await path(browser, 'a job file is dropped', {}, async (person) => {
    const drop = (name, text) => person.page.evaluate((called, words) => {
      const data = new DataTransfer();
      data.items.add(new File([words], called, { type: 'text/plain' }));
      const event = (type) => new DragEvent(type, { dataTransfer: data, bubbles: true, cancelable: true });
      const over = event('dragover');
      document.querySelector('#page').dispatchEvent(over);
      document.querySelector('#page').dispatchEvent(event('drop'));
      return over.defaultPrevented;
    }, name, text);
    person.check('the page takes files', await drop('tin-heron.toml', kText));
    await person.found();
    person.equal('dropped where there is no job, it is the job', await person.jobText(), kText);
    const kOther = changed(kText, ['Tin Heron, spring covers', 'From a friend']);
    await drop('friend.toml', kOther);
    await person.untilSaid('From a friend', 'h1');
    await person.found();
    person.equal('dropped on a job, it opens', await person.jobText(), kOther);
    await person.press('New');
    person.check('beside the one that was there', await person.there('button', 'Open Tin Heron, spring covers'));
  });
  core.close();
}
