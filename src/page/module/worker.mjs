// Runs beside the page and holds the core. One request at a time comes in, and one answer goes out:
// {id, came, said, bytes, memory}, or {id, ended: words}, after which this worker is of no more use.
// Between the files of a job it looks whether it was told to stop.
import { Came, Core, Ended } from './core.mjs';
import { decoded } from './woff2.mjs';

/** Serves requests that come in at `port`, which posts and listens as a worker's does. */
export function serve(port, startCore = Core.start) {
  let core;
  const stopped = new Set();

  const step = () => new Promise((done) => setTimeout(done, 0));

  async function files(id, request) {
    let answer = core.ask({ ...request, ask: 'begin_files' });
    const made = [];
    while (answer.came === Came.Done) {
      await step();
      if (stopped.delete(id)) return { came: Came.Failed, said: 'it was stopped', bytes: new Uint8Array() };
      answer = core.ask({ ask: 'next_file' });
      if (answer.came === Came.Done && answer.said === null) break;
      if (answer.came !== Came.Done) return answer;
      port.postMessage({ id, file: answer.said });
      if (!request.archive) made.push({ ...answer.said, bytes: answer.bytes });
    }
    if (answer.came !== Came.Done) return answer;
    if (request.archive) return core.ask({ ask: 'archive', add: request.add ?? [] });
    return { came: Came.Done, said: made, bytes: new Uint8Array() };
  }

  const calls = {
    start: async ({ module, mostMemory }) => {
      core = await startCore(module, mostMemory);
      return { came: Came.Done, said: null, bytes: new Uint8Array() };
    },
    give: async ({ name, bytes }) => core.give(name, await decoded(bytes)),
    open: ({ text, request }) => core.open(text, request),
    ask: ({ request }) => core.ask(request),
    files: ({ id, request }) => files(id, request),
  };

  port.onmessage = async ({ data }) => {
    if (data.stop !== undefined) {
      stopped.add(data.stop);
      return;
    }
    try {
      const answer = await calls[data.call](data);
      stopped.delete(data.id);
      port.postMessage({ id: data.id, ...answer, memory: core.memory });
    } catch (error) {
      const words = error instanceof Ended ? error.message : String(error?.message ?? error);
      port.postMessage({ id: data.id, ended: words });
    }
  };
}
