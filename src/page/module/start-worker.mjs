// What a worker's thread begins with, in a browser as in node.
import { serve } from './worker.mjs';

if (typeof self === 'object' && typeof self.postMessage === 'function') {
  serve(self);
} else {
  const { parentPort } = await import('node:worker_threads');
  serve(portOf(parentPort));
}

/** A port of node's in the form of a browser's. */
function portOf(port) {
  const form = { postMessage: (message) => port.postMessage(message), onmessage: null };
  port.on('message', (data) => form.onmessage({ data }));
  return form;
}
