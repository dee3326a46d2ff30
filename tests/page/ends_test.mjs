// What ends an instance of the core (no memory, a trap, a failed assert) fails one call, in words,
// and the next one finds a new instance with the files and the job as they were. Newer requests
// overtake older ones, and one that is at work for 2 s after that is ended.
import { readFileSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import { Failed, Overtaken, Swathe, byCommand, byCore, check, difference, done, exampleText, jobOf, kExample, kModule, pathsIn }
  from './suite.mjs';

const failure = (promise) => promise.then(() => null, (error) => error);
const wait = (ms) => new Promise((later) => setTimeout(later, ms));
const same = (a, b) => JSON.stringify(a) === JSON.stringify(b);
const example = jobOf(kExample);
const { files: theirs } = await byCommand(example);

/** A core whose worker does as `FAULT` says when it is asked for a sheet called so; `between` may put
 * something of its own before each worker. */
function failing(options = {}, between = (form) => form) {
  return new Swathe({ ...options, worker: () => {
    const worker = new Worker(new URL('./failing_worker.mjs', import.meta.url), { workerData: kModule });
    const form = { postMessage: (message) => worker.postMessage(message), terminate: () => worker.terminate(),
      ref: () => worker.ref(), unref: () => worker.unref() };
    worker.on('message', (data) => form.onmessage({ data }));
    worker.on('error', (error) => form.onerror(error));
    return between(form);
  } });
}
/** The same, whose second worker is 60 s late with the first call of that name. */
function late(call) {
  let workers = 0;
  return failing({}, (form) => {
    if ((workers += 1) !== 2) return form;
    const post = form.postMessage;
    form.postMessage = (message) => {
      if (message.call !== call) return post(message);
      const later = setTimeout(() => post(message), 60000);
      onEnd(form, () => clearTimeout(later));
    };
    return form;
  });
}
function onEnd(form, what) {
  const terminate = form.terminate;
  form.terminate = () => (what(), terminate());
  return form;
}

async function goodAfter(what, swathe, ended) {
  const { files: ours } = { files: new Map((await swathe.files()).map(({ name, bytes }) => [name, Buffer.from(bytes)])) };
  const told = difference(ours, theirs);
  check(`after ${what} the job is still open, and all its files are right`, told === '', told);
  check(`after ${what} ${ended} instance has come to its end`, swathe.ended === ended, swathe.ended);
}

for (const [fault, words] of [['trap', /broke off/], ['assert', /mistake of its own: session .*door\.cpp/],
  ['deep', /too deep/]]) {
  const swathe = failing();
  await swathe.open(example.text, { file: example.name });
  const error = await failure(swathe.pages(`FAULT ${fault}`));
  check(`${fault}: the call that failed says so`, error instanceof Failed && words.test(error.message), error);
  await goodAfter(fault, swathe, 1);
  swathe.close();
}

// Out of memory: as little as an instance can begin with is not enough for all files of a large frame.
{
  const swathe = new Swathe({ mostMemory: 2 ** 24 });
  const large = { ...example, text: Buffer.from(exampleText().replace('28 in', '60 in').replace('30 in', '60 in')) };
  const opened = await swathe.open(large.text, { file: large.name });
  check('a job opens in 16 MiB', opened.ok);
  const error = await failure(swathe.files());
  check('all its files do not fit, and the call says so', error instanceof Failed && /memory/.test(error.message), error);
  const svg = Buffer.from(await swathe.pageSvg('A-pattern'));
  check('after that a good one', svg.equals((await byCommand(large)).files.get('A-pattern.svg')));
  check('by a new instance', swathe.ended === 1, swathe.ended);
  swathe.close();
}

// A font that was given is given again, and a job that ends the core is not opened again.
{
  const swathe = failing();
  const path = pathsIn('tests/fuzz/corpus/font', /^osp-din\.woff2$/)[0];
  const own = { name: 'own.toml', files: new Map([['./own.woff2', readFileSync(path)]]),
    text: Buffer.from(exampleText().replace('font = "Anton"', 'font = "./own.woff2"')) };
  await byCore(swathe, own);
  await failure(swathe.pages('FAULT trap'));
  const svg = Buffer.from(await swathe.pageSvg('numerals'));
  check('a font of its own is there again', svg.equals((await byCommand(own)).files.get('numerals-1.svg')));
  const deadly = exampleText().replace('"Tin Heron', '"FAULT trap Tin Heron');
  const error = await failure(swathe.open(deadly));
  check('a job that ends the core says so', error instanceof Failed, error);
  const asked = await failure(swathe.findings());
  check('and is not opened again', asked instanceof Failed && /no job is open/.test(asked.message), asked);
  check('each took one instance', swathe.ended === 2, swathe.ended);
  check('then a good one', (await swathe.open(example.text)).ok);
  swathe.close();
}

// What a handle moves and what is shown are of the job that was open last, and so they are after an end.
{
  const swathe = failing();
  const size = { width: 480, height: 300 };
  await swathe.open(example.text, { file: example.name });
  const plan = await swathe.plan(size);
  const [, gap, mm] = /class="handle gap" data-subject="([^"]*)"[^>]*data-mm="([^"]*)"/.exec(plan);
  const text = exampleText();
  const move = () => swathe.moved(gap, Number(mm) + 26, { text });
  const before = await move();
  await failure(swathe.pages('FAULT trap'));
  check('after an end a handle moves what it moved', before.ok && same(await move().catch(String), before));
  await failure(swathe.pages('FAULT trap'));
  const [moved, other] = await Promise.all([move().catch(String), swathe.open(text.replace('28 in', '27 in'))]);
  check('by the job that was open, where another is opened after it', same(moved, before) && other.ok, JSON.stringify(moved));

  await swathe.open(example.text, { file: example.name });
  check('a job is refused', !(await swathe.open(text.replace('28 in', '1 in'))).ok);
  await failure(swathe.newJob(['FAULT trap']));
  const shown = await swathe.plan(size).catch(String);
  check('after an end the one before it is still shown', shown === plan, shown.slice(0, 80));
  check('its handles move', same(await move().catch(String), before));
  const asked = await failure(swathe.findings());
  check('and it is not taken for an open one', asked instanceof Failed && /no job is open/.test(asked.message), asked);
  check('each took one instance', swathe.ended === 3, swathe.ended);
  swathe.close();

  let begun = 0;
  const again = failing({}, (form) => {
    if ((begun += 1) > 1) return form;
    form.terminate();
    throw new Error('no worker');
  });
  check('a job is not opened where there is no worker', (await failure(again.open(example.text))) instanceof Failed);
  check('and moves where there is one again', same(await again.moved(gap, Number(mm) + 26, { text }).catch(String), before));
  again.close();
}

// Before the core is there newer requests overtake older ones as well, and one worker is begun.
{
  const { wasm } = new Swathe();
  for (const between of [() => {}, (swathe) => failure(swathe.give('own', new Uint8Array(8)))]) {
    let begun = 0, ended = 0;
    const swathe = failing({ wasm: wait(2600).then(() => wasm) }, (form) => {
      begun += 1;
      return onEnd(form, () => (ended += 1));
    });
    const first = failure(swathe.open(exampleText()));
    between(swathe);
    const second = swathe.open(exampleText()).then(({ ok }) => ok, String);
    const came = await Promise.race([second, wait(8000).then(() => 'no answer')]);
    check('while the core is loaded the newer of two jobs is opened', (await first) instanceof Overtaken && came === true, came);
    swathe.close();
    check('by one worker, which is ended', begun === 1 && ended === 1, `${begun} begun, ${ended} ended`);
  }
}

// A file or a job is not to blame where the worker was ended because nobody waited for it any more.
{
  const path = pathsIn('tests/fuzz/corpus/font', /^osp-din\.woff2$/)[0];
  const own = exampleText().replace('font = "Anton"', 'font = "./own.woff2"');
  for (const call of ['open', 'give']) {
    const swathe = late(call);
    await swathe.give('./own.woff2', readFileSync(path));
    const opened = await swathe.open(own);
    await failure(swathe.pages('FAULT trap'));
    const first = failure(swathe.findings());
    await wait(500);
    const second = await swathe.findings().catch(String);
    check(`where ${call} ran on, the next one opens the job again`, opened.ok && (await first) instanceof Overtaken
      && second.findings?.length > 0, second);
    check('with its files', (await swathe.open(own)).ok && swathe.ended === 2, swathe.ended);
    swathe.close();
  }
  const swathe = new Swathe({ mostMemory: 2 ** 24 });
  const giveTooLarge = () => failure(swathe.give('own', new Uint8Array(2 ** 25)));
  check('a file that ends the core says so', (await giveTooLarge()) instanceof Failed);
  check('and is not given again', (await swathe.ready().catch(String)) === null && swathe.ended === 1, swathe.ended);
  const error = giveTooLarge();
  await swathe.give('own', readFileSync(path));
  const looked = await swathe.lookAtFont('own').catch(String);
  check('one that is given in its place is there', (await error) instanceof Failed && looked.ok, looked);
  swathe.close();
}

// A file that is taken away is gone, with the instance that had it; the others are there again.
{
  const path = pathsIn('tests/fuzz/corpus/font', /^osp-din\.woff2$/)[0];
  const [own, other] = ['own', 'other'].map((name) => exampleText().replace('"Anton"', `"./${name}.woff2"`));
  const swathe = new Swathe();
  await Promise.all(['own', 'other'].map((name) => swathe.give(`./${name}.woff2`, readFileSync(path))));
  check('a job with a file is open', (await swathe.open(own)).ok);
  swathe.takeAway('./own.woff2');
  const shown = await failure(swathe.findings());
  check('a job whose file is taken away is not open any more', shown instanceof Failed, shown);
  const gone = await swathe.open(own);
  check('nor is it opened', !gone.ok && gone.faults.length === 1 && /cannot be found/.test(gone.faults[0].sentence), gone.faults?.[0]?.text);
  check('one whose file is left is', (await swathe.open(other)).ok && swathe.ended === 1, swathe.ended);
  swathe.takeAway('./never.woff2');
  swathe.give('./own.woff2', new Uint8Array(8));
  swathe.give('./own.woff2', readFileSync(path));
  check('given again it is there', (await swathe.open(own)).ok && swathe.ended === 1, swathe.ended);
  const busy = failure(swathe.findings());
  swathe.give('./own.woff2', new Uint8Array(8));
  swathe.takeAway('./own.woff2');
  check('and gone again, though another was on its way', !(await swathe.open(own)).ok && swathe.ended === 2, swathe.ended);
  await busy;
  swathe.close();
}

// Newer requests overtake older ones.
{
  const swathe = failing();
  await swathe.open(exampleText());
  const tries = [1, 2, 3, 4, 5].map((k) => swathe.open(exampleText().replace('28 in', `${25 + k} in`)));
  const came = await Promise.all(tries.map((one) => one.then(() => 'done', (error) => error)));
  check('of five jobs at once the last is opened', came.slice(0, 4).every((error) => error instanceof Overtaken) && came[4] === 'done', came);
  const first = failure(swathe.findings()), second = swathe.findings();
  check('of two questions the newer is answered', (await first) instanceof Overtaken && (await second).findings.length > 0);
  const pages = await Promise.all([swathe.pageSvg('A-pattern'), swathe.pageSvg('B-pattern')]);
  check('questions about two things are both answered', pages.every((svg) => svg.includes('</svg>')));
  const ahead = failure(swathe.verdict({ bearing: 0 })), behind = swathe.verdict({ bearing: 180 });
  check('of two places the newer is answered', (await ahead) instanceof Overtaken && (await behind).bearing === 180);
  const places = await Promise.all([0, 180].map((bearing) => swathe.verdict({ bearing }, { key: `${bearing}` }).catch(String)));
  check('both where they are told apart by their key', same(places.map(({ bearing }) => bearing), [0, 180]), places);
  const font = readFileSync(pathsIn('tests/fuzz/corpus/font', /^osp-din\.woff2$/)[0]);
  await Promise.all([swathe.give('twice', new Uint8Array(8)), swathe.give('twice', font)]);
  check('of two files of a name the newer is there', (await swathe.lookAtFont('twice')).ok);
  const old = failure(swathe.sheets());
  const opened = swathe.open(exampleText());
  check('another job overtakes what was asked of the last', (await old) instanceof Overtaken && (await opened).ok);
  check('none of it took an instance', swathe.ended === 0, swathe.ended);

  const stop = new AbortController();
  let seen = 0;
  const stopped = await failure(swathe.files({ signal: stop.signal, onFile: () => { if ((seen += 1) === 2) stop.abort(); } }));
  check('files that are made can be stopped between two', stopped instanceof Failed && seen === 2, `${stopped} ${seen}`);
  check('without an end', (await swathe.findings()).findings.length > 0 && swathe.ended === 0, swathe.ended);

  for (const make of ['files', 'zip']) {
    const never = await failure(swathe[make]({ signal: AbortSignal.abort() }));
    check(`${make} that were stopped before are not made`, never instanceof Failed && /stopped/.test(never.message), never);
  }

  let begun = Date.now();
  const slow = failure(swathe.pages('FAULT slow'));
  await wait(200);
  const newer = swathe.open(example.text, { file: example.name });
  check('one that runs on is overtaken at once', (await slow) instanceof Overtaken && Date.now() - begun < 1000);
  check('and ended when it has run 2 s more', (await newer).ok && Date.now() - begun > 2000 && Date.now() - begun < 6000, Date.now() - begun);
  await goodAfter('a call that ran on', swathe, 1);

  begun = Date.now();
  const short = failure(swathe.pages('FAULT short'));
  await wait(200);
  check('one that comes to its end before that is let run', (await swathe.open(exampleText())).ok && swathe.ended === 1, swathe.ended);
  await short;
  swathe.close();
  const closed = await failure(swathe.findings());
  check('what is closed says so', closed instanceof Failed && /closed/.test(closed.message), closed);
}
done();
