// The core, out of the page itself: its WebAssembly stands there packed, its worker as a text.
import { decompress } from 'fzstd';
import { Swathe } from 'swathe';

function bytesOf(base64: string): Uint8Array {
  const signs = atob(base64.replace(/\s/g, ''));
  const bytes = new Uint8Array(signs.length);
  for (let k = 0; k < signs.length; ++k) bytes[k] = signs.charCodeAt(k);
  return bytes;
}

/**
 * What stands packed in an element of the page, as make.mjs does it: Zstandard, a fifth smaller than
 * what a browser unpacks by itself, as base64.
 */
export async function unpacked(id: string): Promise<Uint8Array<ArrayBuffer>> {
  await pageRead();
  return decompress(bytesOf(document.getElementById(id)?.textContent ?? '')) as Uint8Array<ArrayBuffer>;
}

let workerAddress: Promise<string> | null = null;
async function startWorker(): Promise<Worker> {
  workerAddress ??= unpacked('core-worker').then((text) =>
    URL.createObjectURL(new Blob([text], { type: 'text/javascript' })));
  return new Worker(await workerAddress);
}

/** Resolves when all of the page is there, and what it shows without the core has been drawn. */
function pageRead(): Promise<void> {
  if (document.readyState === 'complete') return Promise.resolve();
  return new Promise((done) => window.addEventListener('load', () => setTimeout(done), { once: true }));
}

/** The first of the page; others are given its `wasm`. */
export function startCore(): Swathe {
  const wasm = unpacked('core-wasm').then((bytes) => WebAssembly.compile(bytes));
  return new Swathe({ wasm, worker: startWorker });
}

export function startAnother(first: Swathe): Swathe {
  return new Swathe({ wasm: first.wasm, worker: startWorker });
}
