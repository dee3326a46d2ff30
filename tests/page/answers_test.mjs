// What is asked of the core besides files: its answers against those of the command, of its report
// and of the files that lie here.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Swathe, byCommand, check, command, done, examples, exampleText, folder, jobOf, kExample, kTop, layOut, pathsIn }
  from './suite.mjs';

const swathe = new Swathe();
const example = jobOf(kExample);
const { files: theirs } = await byCommand(example);
const report = JSON.parse(theirs.get('report.json'));
const same = (a, b) => JSON.stringify(a) === JSON.stringify(b);

// Findings.
const { value } = await swathe.open(example.text, { file: example.name });
check('the open job is told', same([value.number, value.units, value.bumpers], [report.job.number, report.job.units,
  report.bumpers.map(({ name }) => name)]), JSON.stringify(value));
const { findings } = await swathe.findings();
const reported = report.findings ?? report.checks;
const said = ['id', 'rule', 'subject', 'required', 'measured', 'verdict'];
const picked = (finding) => said.map((key) => finding[key]);
check('findings are those of the report', findings.length > 10 && same(findings.map(picked), reported.map(picked)),
  `${findings.length} ${reported.length}`);
const lines = exampleText().split('\n');
const astray = findings.flatMap(({ keys }) => keys).filter(({ key, line }) => {
  const name = key.split('.').pop(), table = key.split('.')[0];
  return !lines[line - 1].includes(name) && !lines[line - 1].includes(table) && line !== 1;
});
/** Of which of many tables a line is: "bumper.2". */
function tableAt(line) {
  const heads = lines.slice(0, line).filter((one) => one.startsWith('['));
  const head = heads.at(-1);
  return head?.startsWith('[[') ? `${/\w+/.exec(head)[0]}.${heads.filter((one) => one === head).length}` : null;
}
for (const { key, line } of findings.flatMap(({ keys }) => keys)) {
  const table = /^(bumper|bracket)\.\d+/.exec(key)?.[0];
  if (table && tableAt(line) !== table) astray.push({ key, line });
}
check('their keys stand where they are said to', astray.length === 0, JSON.stringify(astray));

const quick = await swathe.open(example.text, { file: example.name, advice: false });
check('without advice all else is the same', quick.ok && same((await swathe.findings()).findings.map(picked), findings.map(picked)));

const vain = jobOf(pathsIn('tests/golden/jobs', /^good-in-vain\.toml$/)[0]);
const opened = await swathe.open(vain.text, { file: vain.name });
const { err } = await command(['check', vain.name], layOut(vain));
check('keys in vain are told as the command tells them', opened.value.notices.length > 0
  && same(opened.value.notices.map(({ text }) => text), err.trimEnd().split('\n')), err);

// Pictures for a screen: an element each, of the size asked for, at most 60 kB.
await swathe.open(example.text, { file: example.name });
const size = { width: 480, height: 300 };
const pictures = [await swathe.plan(size), await swathe.cover('A', size), await swathe.cover('A', { ...size, as_printed: true }),
  await swathe.cutThrough(size), await swathe.view({ bearing: 30 }, size), await swathe.chart({ bearing: 30 }, size)];
check('pictures for a screen', pictures.every((svg) => svg.startsWith('<svg') && svg.includes('width="480"')
  && svg.includes('height="300"') && Buffer.byteLength(svg) <= 60000), pictures.map((svg) => svg.slice(0, 80)).join('\n'));
check('they differ', new Set(pictures).size === pictures.length);
check('a part of one is another', await swathe.plan({ ...size, window: [0, 0, 300, 200] }) !== pictures[0]);
const sides = await swathe.verdicts();
check('who can read it, from each side', same(sides.map(({ way }) => way), ['front', 'left', 'back', 'right'])
  && sides.every(({ words, reads }) => words !== '' && ['number', 'another', 'nothing'].includes(reads)), JSON.stringify(sides));
const { bearing, distance, eye_height } = sides[0];
check('and from a place', same((await swathe.verdict({ bearing, distance, eye_height })).words, sides[0].words));
const two = await Promise.all(['front', 'left'].map((key, k) => swathe.view({ bearing: 90 * k }, { ...size, key })));
check('two views side by side are told apart by their key', two[0] !== two[1] && two.every((svg) => svg.startsWith('<svg')));

// Sheets and ways to print.
await swathe.open(example.text, { file: example.name });
const pdfs = [...theirs.keys()].filter((name) => name.endsWith('.pdf')).sort();
check('each sheet is listed', same((await swathe.sheets()).map(({ stem }) => `${stem}.pdf`).sort(), pdfs));
const ways = await swathe.ways();
const printed = [...ways.first, ...ways.numerals, ...ways.book, ...ways.ways.flatMap((way) => way.files)];
check('ways to print name files that there are, with their pages', ways.ways.length > 1
  && printed.every(({ name, pages }) => theirs.has(name) && pages > 0), JSON.stringify(ways));

// Changes of the text.
const text = exampleText();
for (const [key, anew] of [['frame.width', '27 1/2 in'], ['job.number', '254'], ['cloth.flap', '50 mm'], ['numerals.places', '3']]) {
  const ours = await swathe.set(text, key, anew);
  const where = layOut(example);
  const by = await command(['set', example.name, key, anew], where);
  if (by.status === 0) check(`set ${key} as the command sets it`, ours.ok && ours.value.text === readFileSync(join(where, example.name), 'utf8'));
  else check(`set ${key} refuses as the command does`, !ours.ok && by.err.includes(ours.faults[0].sentence), by.err);
}
const width = await swathe.set(text, 'frame.width', '27 in');
const back = await swathe.set(width.value.text, 'frame.width', width.value.before);
check('a value set back gives the text as it was', back.value.text === text && width.value.text !== text);
const without = await swathe.remove(text, 'job.number');
check('a key taken out is gone', without.ok && !/^number =/m.test(without.value.text));
for (const subject of ['side.front', 'bracket.1', 'bumper.A.start', 'numerals']) {
  const keys = await swathe.keysOf(text, subject);
  check(`${subject}: keys that the text has, or that can be set`, keys.length > 0 && keys.every(({ key, line }) => key.includes('.') && line >= 1));
}
check('no keys of what is no subject', same(await swathe.keysOf(text, 'nonsense'), []));
check('files that a job names', same(await swathe.namedFiles(text.replace('"Anton"', '"./own.ttf"')), ['./own.ttf']));
const faults = await swathe.read(text.replace('width', 'widht'), { file: 'job.toml' });
check('faults of the text alone', faults.length > 0 && faults[0].line > 1 && faults[0].text.startsWith('job.toml:'), JSON.stringify(faults));

// For a form: keys as they stand, what is typed, and handles that are moved.
const stands = (await swathe.fields(text)).value;
const given = stands.filter((field) => field.given);
check('the keys that stand in the text, each at its place', given.length > 20 && given.every(({ value, line, column }) =>
  Buffer.from(text.split('\n').slice(line - 1).join('\n')).subarray(column - 1).toString().startsWith(value)), JSON.stringify(given[0]));
check('others with their default', stands.find(({ key }) => key === 'cloth.flap').value === '"2 in"');
check('no fields of what cannot be read', !(await swathe.fields('[job')).ok);
const read = await swathe.typed(text, 'frame.width', '28 1/2');
check('a length as it was read', same(read.value, { value: '"28 1/2 in"', reads: '28 1/2 in = 723.9 mm' }), JSON.stringify(read));
check('a step further', (await swathe.typed(text, 'frame.width', '28 in', { steps: -1 })).value.value === '"27 15/16 in"');
const misread = await swathe.typed(text, 'frame.width', 'wide');
check('what cannot be read is refused', !misread.ok && misread.faults[0].sentence.includes('width'), JSON.stringify(misread));
const gap = /class="handle gap" data-subject="([^"]*)"[^>]*data-mm="([^"]*)"/.exec(await swathe.plan(size));
const apart = await swathe.moved(gap[1], Number(gap[2]) + 26);
check('a gap moved moves both ends', apart.ok && apart.value.changes.length === 2 && apart.value.mm === Number(gap[2]) + 25.4,
  JSON.stringify(apart));
check('in small steps too', (await swathe.moved(gap[1], Number(gap[2]) + 26, { snap: false })).value.mm > Number(gap[2]) + 25.4 - 1e-6);
check('the new text opens', (await swathe.open(apart.value.text)).ok);
await swathe.open(text.replace('28 in', '1 in'));
const still = await swathe.moved(gap[1], Number(gap[2]), { text });
check('and its pictures', (await swathe.plan(size)).includes('handle gap'));
check('handles of the job before, where one is refused', still.ok && still.value.changes.length === 2, JSON.stringify(still));
await swathe.open(text);
const cornered = await swathe.fromCorner(text, 'bumper.1.to');
check('a share is said from a corner, at both ends of a gap', cornered.ok && cornered.value.changes.length === 2 &&
  cornered.value.changes.every((one) => one.value === '["back", "14 in", "left"]'), JSON.stringify(cornered));
check('what places nothing is refused', !(await swathe.fromCorner(text, 'frame.width')).ok);
check('what cannot be moved is refused', !(await swathe.moved('cloth', 10, { text })).ok);

// Words.
const { keys, checks, tables } = await swathe.words();
check('every key has a label and a form', keys.every(({ label, form }) => label !== '' && form.kind !== ''));
check('tables that may be there many times', same(tables.map(({ path }) => path).sort(),
  ['bracket', 'bumper', 'numerals.place', 'opening', 'sight.blind']), JSON.stringify(tables));
check('every key and check is explained', keys.length > 50 && checks.length > 10, `${keys.length} ${checks.length}`);
for (const { key, meaning } of [keys[3], keys.at(-1)]) {
  const { out } = await command(['explain', key], kTop);
  check(`${key} as the command explains it`, out.replaceAll(/\s+/g, ' ').includes(meaning), out);
}
const { fonts, papers, seasons, version } = await swathe.choices();
check('fonts, papers, seasons and the version', fonts[0].name === 'Anton' && papers.some(({ name }) => name === 'letter')
  && seasons.length > 0 && (await command(['--version'], kTop)).out.includes(version));
check('the label font', Buffer.from(await swathe.labelFont()).equals(readFileSync(join(kTop, 'fonts-open/cantarell/Cantarell-Regular.otf'))));

// New jobs.
const where = folder();
const asked = await swathe.questions();
check('a new job is asked for', asked.length === 7 && asked.every(({ asks, usual }) => asks !== '' && typeof usual === 'string'));
const usual = await swathe.newJob([]);
check('the usual answers give a job that opens', usual.ok && (await swathe.open(usual.value.text)).ok);
const wrong = await swathe.newJob(['nonsense']);
check('an answer that is not understood is refused at its question', !wrong.ok && wrong.faults[0].line === 1, JSON.stringify(wrong));
const kinds = await swathe.kinds();
check('a kind for each example', same([...kinds].sort(), examples().slice(1).map((path) => path.split('/').pop().replace('.toml', '')).sort()));
for (const kind of kinds) {
  await command(['new', '--like', kind, `${kind}.toml`], where);
  const ours = await swathe.jobOfKind(kind);
  if (!ours.ok || ours.value.text !== readFileSync(join(where, `${kind}.toml`), 'utf8')) check(`${kind} as the command begins it`, false);
}
check('each kind as the command begins it', kinds.length > 5);

// Fonts.
const font = (name) => readFileSync(pathsIn('tests/fuzz/corpus/font', name)[0]);
await swathe.give('own.woff2', font(/^osp-din\.woff2$/));
const looked = await swathe.lookAtFont('own.woff2');
check('a WOFF2 font is looked at', looked.ok && /OSP/i.test(looked.value.name), JSON.stringify(looked));
await swathe.give('broken.woff2', font(/^osp-din\.woff2$/).subarray(0, 900));
check('a broken one is refused', !(await swathe.lookAtFont('broken.woff2')).ok);
await swathe.give('no-font', new TextEncoder().encode('this is no font'));
check('what is no font is refused', !(await swathe.lookAtFont('no-font')).ok);
check('nothing of it took an instance', swathe.ended === 0, swathe.ended);
swathe.close();
done();
