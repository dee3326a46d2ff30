// Why nothing can be printed just now, with the way to where it is put right.
import type { Fault } from 'swathe';
import type { WorkBench } from '../state/make_bench';
import { say } from '../words/en';
import { unbroken } from '../words/lengths';

export interface ReasonGiven {
  bench: WorkBench;
  seeRules: () => void;
  /** A field, by its key. */
  seeField: (key: string) => void;
}

export function Reason({ bench, seeRules, seeField }: ReasonGiven) {
  const [fault] = bench.told.value;
  if (fault) return <Said fault={fault} way={say.print.seeRules} go={seeRules} />;
  for (const [key, [half]] of bench.toldHalf.value)
    if (half) return <Said fault={half} way={say.print.seeField} go={() => seeField(key)} />;
  return null;
}

function Said({ fault, way, go }: { fault: Fault; way: string; go: () => void }) {
  return (
    <div class="reason" role="status">
      <p>{say.print.notYet}</p>
      <p class="fault">{unbroken(fault.sentence)}</p>
      <button type="button" onClick={go}>{way}</button>
    </div>
  );
}
