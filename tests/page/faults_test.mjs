// Every broken job, rule file and font of the corpora gives the command's words at the command's
// places; those that are whole give its files.
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { Swathe, byCommand, byCore, check, difference, done, exampleText, jobOf, pathsIn } from './suite.mjs';

const swathe = new Swathe();

/** Words about a file that is not there are those of who looked for it: here only its place counts. */
function comparable(lines) {
  return lines.map((line) => line.replace(/^((?:[^:]*:){3}) (.*?) cannot be read: .*$/, '$1 $2 cannot be read'))
    .map((line) => line.replace(/^((?:[^:]*:){3}) .*(?:is missing|was not given).*$/, '$1 missing'));
}

const counts = { refused: 0, made: 0, faults: 0 };
async function same(job) {
  const ours = await byCore(swathe, job), theirs = await byCommand(job);
  if (ours.faults && theirs.faults) {
    counts.refused += 1;
    counts.faults += theirs.faults.length;
    const a = comparable(ours.faults).join('\n'), b = comparable(theirs.faults).join('\n');
    return a === b ? '' : `the core: ${a}\nthe command: ${b}`;
  }
  counts.made += 1;
  if (ours.faults || theirs.faults) return `only one refuses: ${ours.faults ?? theirs.faults}`;
  return difference(ours.files, theirs.files);
}

async function all(what, jobs) {
  const differing = [];
  for (const job of jobs) {
    const told = await same(job);
    if (told !== '') differing.push(`${job.name}: ${told}`);
  }
  check(`${jobs.length} ${what}`, jobs.length > 0 && differing.length === 0, differing.join('\n'));
}

const named = (name, path) => new Map([[name, readFileSync(path)]]);
const withFont = (path) => ({ name: `${basename(path)}.toml`, files: named(`./fonts/${basename(path)}`, path),
  text: Buffer.from(exampleText().replace('font = "Anton"', `font = "./fonts/${basename(path)}"`)) });
const withRules = (path) => ({ name: `rules-${basename(path)}`, files: named('rules/own.toml', path),
  text: Buffer.from(exampleText().replace(/season = "[^"]*"/, 'season = "rules/own.toml"')) });

const golden = pathsIn('tests/golden/jobs', /\.toml$/).map((path) => jobOf(path));
const noFont = pathsIn('tests/golden/jobs', /^no-font\.ttf$/)[0];
for (const job of golden) if (job.name === 'wrong-no-font.toml') job.files = named('./no-font.ttf', noFont);

await all('jobs of the golden suite', golden);
await all('jobs of the fuzzers', pathsIn('tests/fuzz/corpus/job', /\.toml$/).map((path) => jobOf(path)));
await all('jobs that are refused', pathsIn('tests/manifest/jobs', /^refused-/).map((path) => jobOf(path)));
await all('rule files of the fuzzers', pathsIn('tests/fuzz/corpus/rules', /\.toml$/).map(withRules));
await all('fonts of the fuzzers', pathsIn('tests/fuzz/corpus/font', /./).map(withFont));
await all('fonts for strokes of the fuzzers', pathsIn('tests/fuzz/corpus/stroke', /./).map(withFont));

// Bytes that are cut short or changed, of a WOFF2 file and of a TrueType one.
const broken = [];
for (const path of pathsIn('tests/fuzz/corpus/font', /^(osp-din\.woff2|letters\.ttf)$/)) {
  const whole = readFileSync(path);
  for (const share of [0.01, 0.3, 0.9]) broken.push([`cut-${share}-${basename(path)}`, whole.subarray(0, whole.length * share)]);
  for (const at of [0.02, 0.2, 0.5]) {
    const bytes = Buffer.from(whole);
    bytes[Math.floor(at * bytes.length)] ^= 0xff;
    broken.push([`changed-${at}-${basename(path)}`, bytes]);
  }
}
await all('fonts cut short or changed', broken.map(([name, bytes]) => {
  const job = withFont(pathsIn('tests/fuzz/corpus/font', /^letters\.ttf$/)[0]);
  return { name: `${name}.toml`, files: new Map([[`./fonts/${name}`, bytes]]),
    text: Buffer.from(job.text.toString().replace('letters.ttf', name)) };
}));

check('some are refused and some are made', counts.refused > 50 && counts.made > 5, JSON.stringify(counts));
console.log(`    ${counts.refused} refused with ${counts.faults} faults, ${counts.made} made`);
check('no instance came to its end', swathe.ended === 0, swathe.ended);
swathe.close();
done();
