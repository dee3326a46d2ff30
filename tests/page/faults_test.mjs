// Every broken job, rule file and font of the corpora gives the command's words at the command's
// places; those that are whole give its files.
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { Swathe, check, done, exampleText, jobOf, pathsIn, unlike } from './suite.mjs';

const swathe = new Swathe();

/** About a file that is not there each says what it knows: the command why, the core that it was not
 * given. Here its name and its place count. */
function comparable(lines) {
  return lines.map((line) => line
    .replace(/^(.*?:\d+:\d+: )(.*) cannot be read: No such file.*$/, '$1$2 is not there')
    .replace(/^(.*?:\d+:\d+: )the file "(.*)" cannot be found, .*$/, '$1$2 is not there'));
}

const counts = { refused: 0, made: 0, faults: 0 };
async function same(job) {
  const compared = await unlike(swathe, job, comparable);
  counts.refused += compared.refused ? 1 : 0;
  counts.faults += compared.refused ?? 0;
  counts.made += compared.files ? 1 : 0;
  return compared.told;
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
