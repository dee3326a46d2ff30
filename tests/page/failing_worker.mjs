// The core's worker, and on a request or a job with the word FAULT in it what must not happen.
import { parentPort, workerData } from 'node:worker_threads';
import { pathToFileURL } from 'node:url';

const beside = (name) => import(pathToFileURL(`${workerData}/${name}`));
const { serve } = await beside('worker.mjs');
const { Core } = await beside('core.mjs');

const wait = (ms) => {
  const end = Date.now() + ms;
  while (Date.now() < end);
};
const kFaults = {
  trap: (c, session) => c.swathe_ask(session, -(2 ** 20), 64), // a place past the end of memory
  assert: (c) => c.swathe_ask(0, 0, 0), // no session
  deep: (c, session) => {
    const down = (n) => 1 + down(n + 1);
    return down(session);
  },
  slow: () => wait(60000),
  short: () => wait(1000),
};

/** The core's functions with the faults in front of them. */
function faulty(c, memory) {
  const words = (place, size) => new TextDecoder().decode(new Uint8Array(memory.buffer).slice(place, place + size));
  const before = (call) => (session, place, size, ...more) => {
    const fault = /FAULT (\w+)/.exec(words(place, size))?.[1];
    if (fault) kFaults[fault](c, session);
    return call(session, place, size, ...more);
  };
  return { ...c, swathe_ask: before(c.swathe_ask), swathe_open: before(c.swathe_open) };
}

const port = { postMessage: (message) => parentPort.postMessage(message), onmessage: null };
parentPort.on('message', (data) => port.onmessage({ data }));
serve(port, (module, mostMemory) => Core.start(module, mostMemory, faulty));
