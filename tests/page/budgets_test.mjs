// What the core may weigh and take. Times are of the processor, the least of several runs, each held
// against the command's for all files of the example, which is measured in turn with it: a machine
// that is slow is slow for both. The table tells the milliseconds, too.
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

/** Milliseconds of the processor, all threads of this program. */
async function taken(action) {
  const before = process.cpuUsage();
  await action();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

const module = await WebAssembly.compile(wasm);
const bytesOf = (text) => new TextEncoder().encode(text);
const request = { file: 'tin-heron.toml' };

async function begin() {
  await Core.start(await WebAssembly.compile(wasm), kMostMemory);
}
function allFiles(core) {
  core.open(bytesOf(exampleText()), request);
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
// As somebody edits: each time another width; or another number, whose digits are measured anew.
const core = await Core.start(module, kMostMemory);
function live(before, after) {
  core.open(bytesOf(exampleText().replace(before, after)), { ...request, advice: false });
  core.ask({ ask: 'findings' });
  for (const picture of ['plan', 'cover', 'cut_through', 'view']) core.ask({ ask: picture, bumper: 'A' });
}

const kRounds = 16;
const best = { command: Infinity, begun: Infinity, files: Infinity, kept: Infinity, anew: Infinity };
const note = (name, ms) => { best[name] = Math.min(best[name], ms); };
allFiles(core);
for (let k = 0; k < kRounds; k += 1) {
  note('command', byCommand());
  note('begun', await taken(begin));
  note('files', await taken(async () => allFiles(await Core.start(module, kMostMemory))));
  for (const sixteenths of [1, 2, 3])
    note('kept', await taken(() => live('width = "28 in"', `width = "${28 - (3 * k + sixteenths) / 16} in"`)));
  note('anew', await taken(() => live('20486', '13579')));
}

console.log(`    size                            ${(wasm.length / 1e6).toFixed(2)} MB, gzipped ${(zipped / 1e6).toFixed(2)} MB`);
console.log(`    all files by the command        ${best.command.toFixed(1)} ms`);
/** At most so many times what the command takes for all files. */
function holds(name, what, most) {
  const ratio = best[name] / best.command;
  console.log(`    ${what.padEnd(31)} ${best[name].toFixed(1)} ms, ratio ${ratio.toFixed(3)}`);
  check(`${what}: at most ${most} times the command's for all files`, ratio <= most, ratio);
}
holds('begun', 'compiled and begun', 0.15);
holds('files', 'all files', 1.7);
holds('kept', 'live with kept digits', 0.07);
holds('anew', 'live with new digits', 0.13);
done();
