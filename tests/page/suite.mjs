// What the suites of the page's core share: one line a check, "ok - what" or "not ok - what", as in
// tests/support/suite.py; the command, whose bytes and words are the measure; and the core itself.
import { execFile } from 'node:child_process';
import { mkdtempSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { promisify } from 'node:util';

export const kTop = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
export const kTool = resolve(process.env.SWATHE_TOOL ?? join(kTop, 'build-tests/swathe'));
export const kModule = resolve(process.env.SWATHE_PAGE_MODULE ?? join(kTop, 'build-page/module'));
/** Long runs are made on request. */
export const kLong = Boolean(process.env.SWATHE_PAGE_LONG);

export const { Swathe, Overtaken, Failed } = await import(pathToFileURL(join(kModule, 'swathe.mjs')));

let failed = 0;
export function check(what, holds, detail) {
  console.log(`${holds ? 'ok' : 'not ok'} - ${what}`);
  if (!holds) {
    failed += 1;
    if (detail !== undefined)
      console.log('    ' + String(detail).trimEnd().replaceAll('\n', '\n    '));
  }
  return holds;
}
export function done() {
  process.exitCode = failed ? 1 : 0;
}

const folders = [];
process.on('exit', () => folders.forEach((made) => rmSync(made, { recursive: true, force: true })));
/** A folder that is gone when the program is. */
export function folder() {
  folders.push(mkdtempSync(join(tmpdir(), 'swathe-page-')));
  return folders.at(-1);
}

const run = promisify(execFile);
/** {status, out, err} of the command. */
export async function command(words, where) {
  const options = { cwd: where, maxBuffer: 1 << 28, env: { PATH: process.env.PATH } };
  try {
    const { stdout, stderr } = await run(kTool, words, options);
    return { status: 0, out: stdout, err: stderr };
  } catch (error) {
    if (typeof error.code !== 'number') throw error;
    return { status: error.code, out: error.stdout, err: error.stderr };
  }
}

/** A job as both are given it: {name, text: bytes, files: Map of what it names}. */
export function jobOf(path, files = new Map()) {
  return { name: basename(path), text: readFileSync(path), files };
}

/** A folder with the job in it. */
export function layOut(job) {
  const where = folder();
  writeFileSync(join(where, job.name), job.text);
  for (const [name, bytes] of job.files) {
    mkdirSync(join(where, dirname(name)), { recursive: true });
    writeFileSync(join(where, name), bytes);
  }
  return where;
}

/** What the command makes of a job: {faults: lines} or {files: Map}. */
export async function byCommand(job) {
  const where = layOut(job);
  const { status, err } = await command(['make', job.name, '-o', 'out'], where);
  if (status === 2) return { faults: err.trimEnd().split('\n') };
  if (status !== 0) throw new Error(`swathe make: status ${status}\n${err}`);
  const files = new Map();
  for (const name of readdirSync(join(where, 'out')))
    if (!name.startsWith('.')) files.set(name, readFileSync(join(where, 'out', name)));
  rmSync(where, { recursive: true });
  return { files };
}

/** What the core makes of it, in the same form. */
export async function byCore(swathe, job) {
  for (const [name, bytes] of job.files) await swathe.give(name, bytes);
  const opened = await swathe.open(job.text, { file: job.name });
  if (!opened.ok) return { faults: opened.faults.map((fault) => fault.text) };
  const files = new Map();
  for (const file of await swathe.files()) files.set(file.name, Buffer.from(file.bytes));
  return { files };
}

/** How what the core makes of a job differs from what the command makes of it, in words; empty where
 * it does not. `comparable` takes from lines of faults what may differ. */
export async function unlike(swathe, job, comparable = (lines) => lines) {
  const ours = await byCore(swathe, job), theirs = await byCommand(job);
  if (ours.faults && theirs.faults) {
    const a = comparable(ours.faults).join('\n'), b = comparable(theirs.faults).join('\n');
    return { refused: theirs.faults.length, told: a === b ? '' : `the core: ${a}\nthe command: ${b}` };
  }
  if (ours.faults || theirs.faults) return { told: `only one refuses: ${ours.faults ?? theirs.faults}` };
  return { files: theirs.files.size, told: difference(ours.files, theirs.files) };
}

/** Where two sets of files differ, in words; empty where they are the same. */
export function difference(ours, theirs) {
  const told = [];
  for (const [name, bytes] of theirs)
    if (!ours.has(name)) told.push(`${name} is missing`);
    else if (!ours.get(name).equals(bytes)) told.push(`${name} differs at byte ${firstDifference(ours.get(name), bytes)}`);
  for (const name of ours.keys()) if (!theirs.has(name)) told.push(`${name} is too many`);
  return told.join('\n');
}
function firstDifference(a, b) {
  let k = 0;
  while (k < a.length && a[k] === b[k]) k += 1;
  return k;
}

export function pathsIn(where, like) {
  return readdirSync(join(kTop, where)).filter((name) => like.test(name)).sort()
    .map((name) => join(kTop, where, name));
}
export const kExample = join(kTop, 'examples/tin-heron.toml');
export const exampleText = () => readFileSync(kExample, 'utf8');
/** Every example that there is. */
export const examples = () => [kExample, ...pathsIn('examples/kinds', /\.toml$/)];
/** Kept jobs that were drawn; each `step`-th of them. */
export const drawn = (step) => pathsIn('tests/manifest/jobs', /^drawn-.*\.toml$/).filter((_, k) => k % step === 0);
