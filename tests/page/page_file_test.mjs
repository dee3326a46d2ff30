// The page as a file: what it may weigh, and what its policy lets it do.
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { check, done, kTop } from './suite.mjs';

const kMostBytes = 3.5e6;

const bytes = readFileSync(resolve(process.env.SWATHE_PAGE ?? join(kTop, 'build-page/swathe.html')));
check('swathe.html: at most 3.5 MB', bytes.length <= kMostBytes, bytes.length);
console.log(`    size                            ${(bytes.length / 1e6).toFixed(2)} MB`);

const html = bytes.toString();
const metas = [...html.matchAll(/<meta http-equiv="Content-Security-Policy" content="([^"]*)">/g)];
check('one policy, before any script, style or picture', metas.length === 1 &&
  metas[0].index < html.search(/<(script|style|link|img|body)\b/), metas.length);
const policy = new Map((metas[0]?.[1] ?? '').split(';').map((one) => one.trim().split(/\s+/)).map(([name, ...sources]) => [name, sources]));
const is = (name, ...sources) => check(`${name}: ${sources.join(' ')}`, policy.get(name)?.join(' ') === sources.join(' '), policy.get(name)?.join(' '));
is('default-src', "'none'");
is('connect-src', "'none'");
is('form-action', "'none'");
is('base-uri', "'none'");
is('worker-src', 'blob:');
is('img-src', 'data:', 'blob:');
is('font-src', 'data:', 'blob:');
const loose = [...policy].flatMap(([name, sources]) => sources
  .filter((one) => ["'unsafe-inline'", "'unsafe-eval'", "'unsafe-hashes'", "'strict-dynamic'", '*'].includes(one) || /^(https?|wss?|file|filesystem):/.test(one))
  .map((one) => `${name} ${one}`));
check('nothing unsafe, and no address, in any of it', policy.size > 0 && loose.length === 0, loose.join('\n'));
const scripts = policy.get('script-src') ?? [];
check('scripts by their hash alone, and the core', scripts.length > 0 &&
  scripts.every((one) => one === "'wasm-unsafe-eval'" || /^'sha256-[\w+/]{43}='$/.test(one)), scripts.join('\n'));
const [style, ...more] = policy.get('style-src') ?? [];
check('styles by a nonce alone', /^'nonce-[\w-]{22}'$/.test(style) && more.length === 0, [style, ...more].join('\n'));
done();
