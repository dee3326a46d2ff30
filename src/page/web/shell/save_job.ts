// The job as a file.
import type { WorkBench } from '../state/make_bench';
import { saveFile } from '../state/save';
import { say } from '../words/en';
import type { Incoming } from './incoming';

/** With what was typed last. */
export async function saveJob(bench: WorkBench, incoming: Incoming): Promise<void> {
  await bench.quiet();
  const name = bench.file.peek();
  saveFile(name, bench.text.peek());
  const isHalf = bench.half.faults.peek().size > 0;
  incoming.told.value = isHalf ? `${say.tools.saved(name)}. ${say.tools.halfNotSaved}` : say.tools.saved(name);
}
