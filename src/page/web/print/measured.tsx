// What the test page's scales measure: kept in the job, as paper.measured.
import { useSignal, useSignalEffect } from '@preact/signals';
import type { Words } from 'swathe';
import { readToml, writeToml } from '../fields/toml_value';
import type { WorkBench } from '../state/make_bench';
import { say } from '../words/en';
import { inLabels } from '../words/labels';

const kKey = 'paper.measured';
type Both<T> = readonly [across: T, down: T];
/** Nothing typed: what the job has is shown. */
const kNone: Both<null> = [null, null];

/** A ruler of millimeters lies beside it, and people write a comma where a point is meant. */
function inMillimeters(typed: string): string {
  const bare = /^\s*\d+([.,]\d+)?\s*$/.test(typed);
  return bare ? `${typed.trim().replace(',', '.')} mm` : typed.trim();
}

export function Measured({ bench, words }: { bench: WorkBench; words: Words }) {
  const value = bench.fields.value.find((one) => one.key === kKey);
  const read = value?.given ? readToml(value.value) : undefined;
  const [across = '', down = ''] = Array.isArray(read) ? read.map(String) : [];
  const typed = useSignal<Both<string | null>>(kNone);
  const trouble = useSignal('');
  const shown: Both<string> = [typed.value[0] ?? across, typed.value[1] ?? down];
  useSignalEffect(() => {
    if (!bench.half.ended.value(kKey)) return;
    typed.value = kNone;
    trouble.value = '';
  });

  async function send(next: Both<string>): Promise<void> {
    typed.value = next;
    trouble.value = '';
    const [one, other] = next;
    if ((one === '') !== (other === '')) return; // it takes both
    if (one === '' && !value?.given) return;
    const faults = await bench.set([{ key: kKey, value: one === '' ? '' : writeToml([...next]) }]);
    trouble.value = faults.map((fault) => inLabels(fault.sentence, words, fault.key)).join(' ');
  }
  const faults = bench.told.value.filter((fault) => fault.key?.startsWith(kKey));
  const half = (shown[0] === '') !== (shown[1] === '');
  return (
    <div class="measured">
      {([say.print.across, say.print.down] as const).map((label, at) => (
        <label key={label}>{label}
          <input type="text" inputMode="decimal" autocomplete="off" placeholder="100 mm" value={shown[at]}
            onChange={(event) => {
              const answer = inMillimeters(event.currentTarget.value);
              void send(at === 0 ? [answer, shown[1]] : [shown[0], answer]);
            }} /></label>
      ))}
      {trouble.value !== '' && <p class="fault" role="alert">{trouble.value}</p>}
      {faults.map((fault, k) => <p class="fault" role="alert" key={k}>{inLabels(fault.sentence, words, fault.key)}</p>)}
      {half && <p class="small" role="status">{say.print.measuredBoth}</p>}
      {value?.given && !half && faults.length === 0 && <p class="small">{say.print.measuredKept}</p>}
    </div>
  );
}
