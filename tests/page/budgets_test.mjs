// What the core may weigh and take, each against what it comes to here. Times are of the processor,
// the least of several runs, so that a busy machine changes them little; the table tells them.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { check, done, exampleText, kModule, kTool, layOut, jobOf, kExample } from './suite.mjs';

const { Core } = await import(pathToFileURL(join(kModule, 'core.mjs')));
const kMostMemory = 2 ** 30;

const wasm = readFileSync(join(kModule, 'swathe-core.wasm'));
const zipped = gzipSync(wasm, { level: 9 }).length;
check('the core with its fonts: at most 2.1 MB, gzipped', zipped <= 2.1e6, zipped);

/** Milliseconds of the processor, all threads of this program, the least of so many runs. */
async function least(runs, action) {
  let best = Infinity;
  for (let k = 0; k < runs; k += 1) {
    const before = process.cpuUsage();
    await action(k);
    const { user, system } = process.cpuUsage(before);
    best = Math.min(best, (user + system) / 1000);
  }
  return best;
}

const module = await WebAssembly.compile(wasm);
const start = await least(5, () => Core.start(module, kMostMemory));
const compileAndStart = await least(5, async () => Core.start(await WebAssembly.compile(wasm), kMostMemory));

const text = (change = 0) => new TextEncoder().encode(
  exampleText().replace('width = "28 in"', `width = "${28 - change / 16} in"`));
const request = { file: 'tin-heron.toml' };

function allFiles(core) {
  core.open(text(), request);
  core.ask({ ask: 'begin_files' });
  while (core.ask({ ask: 'next_file' }).said !== null);
}
// The command's own, its start and its writing of files with it.
const where = layOut(jobOf(kExample));
function byCommand() {
  const { stderr } = spawnSync('bash', ['-c', 'TIMEFORMAT="%U %S"; time "$0" make tin-heron.toml -o out >out.log', kTool],
    { cwd: where, encoding: 'utf8', env: { PATH: process.env.PATH, LC_ALL: 'C' } });
  const [user, system] = stderr.trimEnd().split('\n').at(-1).split(' ').map(Number);
  return 1000 * (user + system);
}
// In turn: a machine that is slow for a while is slow for both.
let whole = Infinity, native = Infinity;
for (let k = 0; k < 16; k += 1) {
  whole = Math.min(whole, await least(1, async () => allFiles(await Core.start(module, kMostMemory))));
  native = Math.min(native, byCommand());
}

// As somebody edits: each time another width; then another number, whose digits are measured anew.
const core = await Core.start(module, kMostMemory);
const live = (job) => {
  core.open(job, { ...request, advice: false });
  core.ask({ ask: 'findings' });
  for (const picture of ['plan', 'cover', 'cut_through', 'view']) core.ask({ ask: picture, bumper: 'A' });
};
allFiles(core);
const kept = await least(40, (k) => live(text(k % 16)));
const anew = await least(20, (k) => live(new TextEncoder().encode(exampleText().replace('20486', k % 2 ? '20486' : '13579'))));

const ms = (value) => `${value.toFixed(1)} ms`;
console.log(`    size                            ${(wasm.length / 1e6).toFixed(2)} MB, gzipped ${(zipped / 1e6).toFixed(2)} MB`);
console.log(`    an instance begun               ${ms(start)}, compiled and begun ${ms(compileAndStart)}`);
console.log(`    all files of the example        ${ms(whole)}, the command ${ms(native)}, ratio ${(whole / native).toFixed(2)}`);
console.log(`    findings and four pictures      ${ms(kept)} with kept digits, ${ms(anew)} with new ones`);

check('compiled and begun in less than 60 ms', compileAndStart < 60, compileAndStart);
check('all files: at most 1.7 times the command', whole / native <= 1.7, whole / native);
check('live with kept digits: at most 20 ms', kept <= 20, kept);
check('live with new digits: at most 50 ms', anew <= 50, anew);
done();
