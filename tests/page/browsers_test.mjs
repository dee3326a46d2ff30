// In Chromium and Firefox the example's files have the bytes that the command writes. The module is
// served from this machine alone, and nothing else is asked for.
//
// SWATHE_PAGE_LONG: 300 drawn jobs in each.
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join } from 'node:path';
import { tmpdir } from 'node:os';
import { pathToFileURL } from 'node:url';
import { driver } from './browser.mjs';
import { byCommand, check, done, jobOf, kExample, kLong, kModule } from './suite.mjs';
import { drawnJobs } from './drawn_jobs.mjs';

const { default: puppeteer } = await import(pathToFileURL(driver.resolve('puppeteer-core')));

const kTypes = { '.mjs': 'text/javascript', '.wasm': 'application/wasm', '.html': 'text/html' };
const asked = new Set();
const server = createServer((request, response) => {
  const path = request.url.slice(1);
  asked.add(path);
  if (path === 'page.html') return response.setHeader('content-type', 'text/html').end('<!doctype html><title>page</title>');
  if (path.includes('..') || !existsSync(join(kModule, path))) return response.writeHead(404).end();
  response.setHeader('content-type', kTypes[extname(path)] ?? 'text/plain').end(readFileSync(join(kModule, path)));
});
await new Promise((ready) => server.listen(0, '127.0.0.1', ready));
const at = `http://127.0.0.1:${server.address().port}/`;

const sum = (bytes) => createHash('sha256').update(bytes).digest('hex');
const jobs = [jobOf(kExample), ...(kLong ? drawnJobs(300) : [])];
const theirs = [];
for (const job of jobs) {
  const { files } = await byCommand(job);
  theirs.push([...files].map(([name, bytes]) => [name, sum(bytes)]).sort().join('\n'));
}

const kBrowsers = [
  { name: 'Chromium', executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu', '--no-first-run'] },
  { name: 'Firefox', browser: 'firefox', executablePath: '/usr/bin/firefox-esr' },
];
for (const { name, ...more } of kBrowsers) {
  const profile = mkdtempSync(join(tmpdir(), 'swathe-browser-'));
  const browser = await puppeteer.launch({ headless: true, userDataDir: profile, protocolTimeout: 1e6, ...more });
  try {
    const page = await browser.newPage();
    await page.goto(`${at}page.html`);
    let unlike = 0;
    for (const [k, job] of jobs.entries()) {
      const ours = await page.evaluate(async (text, file) => {
        const { Swathe } = await import('/swathe.mjs');
        const swathe = (globalThis.swathe ??= new Swathe());
        await swathe.open(text, { file });
        const files = await swathe.files();
        const lines = await Promise.all(files.map(async ({ name, bytes }) => {
          const sum = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
          return [name, [...sum].map((byte) => byte.toString(16).padStart(2, '0')).join('')];
        }));
        return lines.sort().join('\n');
      }, job.text.toString(), job.name);
      if (ours !== theirs[k]) unlike += 1;
    }
    check(`${name} (${await browser.version()}): ${jobs.length === 1 ? 'the example has' : `${jobs.length} jobs have`} the command's bytes`,
      unlike === 0, unlike);
  } finally {
    await browser.close();
    rmSync(profile, { recursive: true, force: true });
  }
}
server.close();
check('asked for were the module\'s own files alone', [...asked].every((path) => path === 'page.html' || path === 'favicon.ico'
  || existsSync(join(kModule, path))), [...asked]);
done();
