// The core, out of the page itself: its WebAssembly stands there packed, its worker as a text.
import { Swathe } from 'swathe';

function bytesOf(base64: string): Uint8Array<ArrayBuffer> {
  const signs = atob(base64.replace(/\s/g, ''));
  const bytes = new Uint8Array(signs.length);
  for (let k = 0; k < signs.length; ++k) bytes[k] = signs.charCodeAt(k);
  return bytes;
}

/**
 * What stands packed in an element of the page, as make.mjs does it: as base64, and in the way that a
 * browser unpacks by itself, which takes a fortieth of the time of a better one in script.
 */
export async function unpacked(id: string): Promise<ArrayBuffer> {
  await pageRead();
  const packed = new Blob([bytesOf(document.getElementById(id)?.textContent ?? '')]);
  return new Response(packed.stream().pipeThrough(new DecompressionStream('deflate-raw'))).arrayBuffer();
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
