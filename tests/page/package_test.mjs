// `npm pack` gives a tarball that installs and runs offline, by itself.
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { check, done, folder, jobOf, kExample, kModule, byCommand } from './suite.mjs';

const where = folder();
const npm = (words, cwd) => execFileSync('npm', words, { cwd, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'],
  env: { PATH: process.env.PATH, HOME: where, npm_config_offline: 'true', npm_config_update_notifier: 'false' } });
const [{ filename, files }] = JSON.parse(npm(['pack', '--json', '--pack-destination', where], kModule));
check('it packs', filename.endsWith('.tgz'));
const packed = files.map(({ path }) => path).sort();
check('with its code, types, the core and licenses', ['LICENSES.txt', 'instance.mjs', 'package.json', 'queue.mjs', 'start-worker.mjs', 'swathe-core.wasm', 'swathe.d.ts', 'swathe.mjs',
  'woff2-decoder.mjs']
  .every((name) => packed.includes(name)), packed);
writeFileSync(join(where, 'package.json'), '{"private": true, "type": "module"}');
npm(['install', `./${filename}`], where);
writeFileSync(join(where, 'try.mjs'), `
import { readFileSync } from 'node:fs';
import { Swathe } from 'swathe-core';
const swathe = new Swathe();
const opened = await swathe.open(readFileSync(process.argv[2]), { file: 'tin-heron.toml' });
process.stdout.write(await swathe.file('book.pdf'));
`);
const book = execFileSync('node', ['try.mjs', kExample], { cwd: where, maxBuffer: 1 << 26 });
const { files: theirs } = await byCommand(jobOf(kExample));
check('installed from it, offline, it makes the command\'s bytes, and the program ends by itself', book.equals(theirs.get('book.pdf')));
const lock = readFileSync(new URL('../../src/page/module/package-lock.json', import.meta.url), 'utf8');
check('the lock file has hashes and no addresses', /"integrity": "sha512-/.test(lock) && !/"resolved"/.test(lock));
done();
