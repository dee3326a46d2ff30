// Puts the page into one file: what esbuild makes of the scripts, the styles, the core packed.
//
// usage: node make.mjs FOLDER    FOLDER/module: the core as a module; FOLDER/web: this folder's
//                                copy with its packages; FOLDER/swathe.html: the page
import { createHash } from 'node:crypto';
import { readFile, readdir, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { deflateRawSync } from 'node:zlib';
import { withoutEval } from './without_eval.mjs';

const made = resolve(process.argv[2]);
const here = join(made, 'web'), module = join(made, 'module');
const { build } = await import(pathToFileURL(join(here, 'node_modules/esbuild/lib/main.js')));

/** Kinds that look like another one from above. */
const kSeenFromTheEnd = new Set(['block', 'hook-and-loop']);

/** What the core says of keys and kinds, so that the page can show it before the core is there. */
async function facts() {
  const { Swathe } = await import(pathToFileURL(join(module, 'swathe.mjs')));
  const core = new Swathe();
  const [words, choices] = await Promise.all([core.words(), core.choices()]);
  const kinds = {};
  for (const kind of await core.kinds()) {
    await core.open((await core.jobOfKind(kind)).value.text, { advice: false });
    const size = { width: 104, height: 92, text: 1 };
    kinds[kind] = await (kSeenFromTheEnd.has(kind) ? core.cutThrough(size) : core.plan(size));
  }
  core.close();
  const file = join(here, 'facts.json');
  await writeFile(file, JSON.stringify({ words, choices, kinds }));
  return file;
}

const decoderWithoutEval = {
  name: 'decoder without eval',
  setup(build) {
    build.onLoad({ filter: /woff2-decoder\.mjs$/ }, async ({ path }) =>
      ({ contents: withoutEval(await readFile(path, 'utf8')), loader: 'js' }));
  },
};

async function bundled(entry, format, alias) {
  const { outputFiles, metafile } = await build({
    entryPoints: [join(here, entry)], bundle: true, write: false, minify: true, metafile: true,
    format, alias, target: 'es2022', charset: 'utf8', legalComments: 'none', external: ['node:*'],
    jsx: 'automatic', jsxImportSource: 'preact', tsconfigRaw: '{}', logLevel: 'warning',
    define: { 'import.meta.url': '"page"' }, plugins: [decoderWithoutEval],
  });
  return { text: outputFiles[0].text, inputs: Object.keys(metafile.inputs) };
}

/** Text that is safe within a script element. */
function inScript(text) {
  return text.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');
}
const packed = (bytes) => deflateRawSync(bytes, { level: 9, memLevel: 9 }).toString('base64');
const hash = (text) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

/** The licenses of the core's parts, and of the packages that the bundle took something of. */
async function licenses(inputs) {
  let all = await readFile(join(module, 'LICENSES.txt'), 'utf8');
  const names = new Set();
  for (const input of inputs) {
    const found = /node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(input);
    if (found) names.add(found[1]);
  }
  for (const name of [...names].sort()) {
    const folder = join(here, 'node_modules', name);
    const file = (await readdir(folder)).find((one) => /^licen[sc]e/i.test(one));
    if (!file) throw new Error(`${name} has no license file`);
    all += `==== ${name}\n\n${await readFile(join(folder, file), 'utf8')}\n\n`;
  }
  return all;
}

const page = await bundled('page.tsx', 'esm', {
  swathe: join(module, 'swathe.mjs'), facts: await facts(),
});
const worker = await bundled('core_worker.ts', 'iife', { 'swathe-worker': join(module, 'worker.mjs') });

let styles = '';
for (const name of (await readdir(join(here, 'styles'))).sort())
  styles += (await readFile(join(here, 'styles', name), 'utf8')) + '\n';

const nonce = createHash('sha256').update(styles).digest('base64url').slice(0, 22);
const script = inScript(page.text);
const check = inScript(await readFile(join(here, 'too_old.js'), 'utf8'));
const policy = [
  "default-src 'none'",
  `script-src ${hash(script)} ${hash(check)} 'wasm-unsafe-eval'`,
  'worker-src blob:',
  `style-src 'nonce-${nonce}'`,
  'img-src data: blob:',
  'font-src data: blob:',
  "connect-src 'none'",
  "form-action 'none'",
  "base-uri 'none'",
].join('; ');

const parts = {
  policy, nonce, styles, check, page: script, worker: packed(worker.text),
  licenses: packed(await licenses([...page.inputs, ...worker.inputs])),
  wasm: packed(await readFile(join(module, 'swathe-core.wasm'))),
};
const html = (await readFile(join(here, 'index.html'), 'utf8'))
  .replace(/@(\w+)/g, (all, name) => parts[name] ?? all);
await writeFile(join(made, 'swathe.html'), html);
const mb = (text) => (text.length / 1e6).toFixed(2);
console.log(`page: ${join(made, 'swathe.html')}: ${mb(html)} MB (scripts ${mb(script)}, core ${mb(parts.wasm)})`);
