// The core, out of the page itself: its WebAssembly stands there packed, its worker as a text.
import { Swathe } from 'swathe';

function bytesOf(base64: string): Uint8Array {
  const signs = atob(base64.replace(/\s/g, ''));
  const bytes = new Uint8Array(signs.length);
  for (let k = 0; k < signs.length; ++k) bytes[k] = signs.charCodeAt(k);
  return bytes;
}

/** What stands packed (gzip, base64) in an element of the page. */
export function unpacked(id: string): Response {
  const packed = bytesOf(document.getElementById(id)?.textContent ?? '');
  return new Response(
    new Blob([packed as BlobPart]).stream().pipeThrough(new DecompressionStream('gzip')),
    { headers: { 'Content-Type': 'application/wasm' } });
}

let workerAddress: Promise<string> | null = null;
async function startWorker(): Promise<Worker> {
  workerAddress ??= pageRead().then(() => unpacked('core-worker').text()).then((text) =>
    URL.createObjectURL(new Blob([text], { type: 'text/javascript' })));
  return new Worker(await workerAddress);
}

/** Resolves when all of the page is there. */
function pageRead(): Promise<void> {
  if (document.readyState !== 'loading') return Promise.resolve();
  return new Promise((done) => document.addEventListener('DOMContentLoaded', () => done(), { once: true }));
}

/** The first of the page; others are given its `wasm`. */
export function startCore(): Swathe {
  const wasm = pageRead().then(() => WebAssembly.compileStreaming(unpacked('core-wasm')));
  return new Swathe({ wasm, worker: startWorker });
}

export function startAnother(first: Swathe): Swathe {
  return new Swathe({ wasm: first.wasm, worker: startWorker });
}
