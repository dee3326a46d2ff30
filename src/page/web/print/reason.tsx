// Why nothing can be printed just now, with the way to where it is put right.
import type { Fault, Words } from 'swathe';
import type { WorkBench } from '../state/make_bench';
import { say } from '../words/en';
import { inLabels } from '../words/labels';
import { unbroken } from '../words/lengths';

export interface ReasonGiven {
  bench: WorkBench;
  words: Words;
  seeRules: () => void;
  /** A field, by its key. */
  seeField: (key: string) => void;
}

export function Reason({ bench, words, seeRules, seeField }: ReasonGiven) {
  const [fault] = bench.told.value;
  if (fault) return <Said words={words} fault={fault} way={say.print.seeRules} go={seeRules} />;
  for (const [key, [half]] of bench.toldHalf.value)
    if (half) return <Said words={words} fault={half} way={say.print.seeField} go={() => seeField(key)} />;
  return null;
}

function Said({ words, fault, way, go }: { words: Words; fault: Fault; way: string; go: () => void }) {
  return (
    <div class="reason" role="status">
      <p>{say.print.notYet}</p>
      <p class="fault">{unbroken(inLabels(fault.sentence, words, fault.key))}</p>
      <button type="button" onClick={go}>{way}</button>
    </div>
  );
}
