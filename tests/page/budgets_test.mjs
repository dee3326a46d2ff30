// What the core may weigh and take. Times are of the processor, each held against the command's for all
// files of the example, which is measured right before it, round by round: a machine that is slow for
// a while is slow for both. The table tells the milliseconds, too.
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

const kRounds = 24;
const times = { command: [], begun: [], files: [], kept: [], anew: [] };
allFiles(core);
for (let k = 0; k < kRounds; k += 1) {
  times.command.push(byCommand());
  times.files.push(await taken(async () => allFiles(await Core.start(module, kMostMemory))));
  times.begun.push(await taken(begin));
  const widths = [1, 2, 3].map((sixteenths) => 28 - (3 * k + sixteenths) / 16);
  const kept = [];
  for (const width of widths) kept.push(await taken(() => live('width = "28 in"', `width = "${width} in"`)));
  times.kept.push(Math.min(...kept));
  times.anew.push(await taken(() => live('20486', '13579')));
}
const median = (values) => [...values].sort((a, b) => a - b)[values.length >> 1];

console.log(`    size                            ${(wasm.length / 1e6).toFixed(2)} MB, gzipped ${(zipped / 1e6).toFixed(2)} MB`);
console.log(`    all files by the command        ${Math.min(...times.command).toFixed(1)} ms`);
/** At most so many times what the command takes for all files, in half of the rounds. */
function holds(name, what, most) {
  const ratio = median(times[name].map((ms, k) => ms / times.command[k]));
  console.log(`    ${what.padEnd(31)} ${Math.min(...times[name]).toFixed(1)} ms, ratio ${ratio.toFixed(3)}`);
  check(`${what}: at most ${most} times the command's for all files`, ratio <= most, ratio);
}
holds('begun', 'compiled and begun', 0.15);
holds('files', 'all files', 1.7);
holds('kept', 'live with kept digits', 0.07);
holds('anew', 'live with new digits', 0.13);
done();
