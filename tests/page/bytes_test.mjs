// All files of all examples and of drawn jobs have the bytes that the command writes; so has each of
// them asked for alone, and the archive. A job that differs gives other bytes.
//
// SWATHE_PAGE_LONG: all kept jobs, and 300 drawn anew.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Swathe, byCommand, byCore, check, command, difference, done, drawn, examples, exampleText, jobOf, kExample, kLong, layOut, unlike }
  from './suite.mjs';
import { drawnJobs } from './drawn_jobs.mjs';

const swathe = new Swathe();
let files = 0;

let refused = 0;
async function same(job) {
  const compared = await unlike(swathe, job);
  files += compared.files ?? 0;
  refused += compared.refused ? 1 : 0;
  return compared.told;
}

for (const path of examples()) {
  const told = await same(jobOf(path));
  check(`${path.split('/').pop()}: every file as the command writes it`, told === '', told);
}

const jobs = drawn(kLong ? 1 : 5).map((path) => jobOf(path)).concat(kLong ? drawnJobs(300) : []);
const differing = [];
for (const job of jobs) {
  const told = await same(job);
  if (told !== '') differing.push(`${job.name}: ${told}`);
}
check(`${jobs.length} drawn jobs: every file as the command writes it`, differing.length === 0 && jobs.length >= 30,
  differing.join('\n'));
console.log(`    ${files} files compared, ${refused} jobs refused by both`);
check('few of them are refused', refused < jobs.length / 5, refused);

// Each file alone, and what is asked of sheets.
const example = jobOf(kExample);
const { files: theirs } = await byCommand(example);
await swathe.open(example.text, { file: example.name });
const alone = new Map();
for (const name of theirs.keys()) alone.set(name, Buffer.from(await swathe.file(name)));
check('each file of the example asked for alone', difference(alone, theirs) === '', difference(alone, theirs));
const sheets = await swathe.sheets();
const pdfs = new Map(), svgs = new Map();
for (const { stem } of sheets) {
  pdfs.set(`${stem}.pdf`, Buffer.from(await swathe.sheetPdf(stem)));
  const pages = await swathe.pages(stem);
  for (let k = 0; k < pages.length; k += 1) {
    const name = pages.length === 1 ? `${stem}.svg` : `${stem}-${k + 1}.svg`;
    if (theirs.has(name)) svgs.set(name, Buffer.from(await swathe.pageSvg(stem, k)));
  }
}
const ending = (name) => new Map([...theirs].filter(([key]) => key.endsWith(name)));
check('each sheet as PDF', difference(pdfs, ending('.pdf')) === '', difference(pdfs, ending('.pdf')));
check('each page that is pictured as SVG', svgs.size > 0 && difference(svgs, ending('.svg')) === '',
  difference(svgs, ending('.svg')));
check('the report', theirs.get('report.json').equals(Buffer.from(await swathe.report())));

const where = layOut(example);
await command(['make', example.name, '--zip', 'all.zip'], where);
const told = [];
const zip = Buffer.from(await swathe.zip({ onFile: (file) => told.push(file.name) }));
check('the archive', zip.equals(readFileSync(join(where, 'all.zip'))));
check('each file is told of as it is made', told.join() === [...new Set(told)].join() && told.length === theirs.size,
  told.join());
const kinds = await swathe.files({ kinds: ['views'] });
check('some kinds alone', kinds.length > 0 && kinds.every(({ name, bytes }) => theirs.get(name).equals(bytes)));

// The negative control: what should differ does.
const wider = { ...example, text: Buffer.from(exampleText().replace('width = "28 in"', 'width = "28 1/8 in"')) };
const ours = await byCore(swathe, wider);
const differs = [...theirs].filter(([name, bytes]) => !ours.files.get(name)?.equals(bytes)).length;
check('another width gives other bytes', differs > 10, differs);
swathe.close();
done();
