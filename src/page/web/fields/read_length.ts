// A length that is only a part of a key's value: the core reads lengths where they are a whole one.
import type { Outcome } from 'swathe';
import type { WorkBench } from '../state/make_bench';

const kKey = 'bracket.1.down'; // from 0 to longer than any side
const jobOf = (units: string) => `[job]\nunits = "${units}"\n[[bracket]]\n`;

/** What was typed as a length, with steps added: "9 1/2 in", and "9 1/2 in = 241.3 mm". */
export async function readLength(bench: WorkBench, typed: string, steps = 0):
  Promise<Outcome<{ length: string; reads: string }>> {
  const units = bench.fields.peek().find((one) => one.key === 'job.units')?.shown === 'mm' ? 'mm' : 'in';
  const outcome = await bench.core.typed(jobOf(units), kKey, typed, { steps });
  if (!outcome.ok) return outcome;
  const { value, reads } = outcome.value;
  return { ok: true, value: { length: value.replace(/^"(.*)"$/, '$1'), reads } };
}
