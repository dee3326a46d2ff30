// What is told of what was asked for, where it can always be seen.
import type { WorkBench } from '../state/make_bench';
import { say } from '../words/en';
import type { Maker } from './make';

export function Foot({ bench, maker, counts = false }: { bench: WorkBench; maker: Maker; counts?: boolean }) {
  const one = maker.oneIsLate.value ? maker.one.value : null;
  const { job, words } = maker.told.value;
  const told = one ? say.print.making(one.name) : job === bench.jobs && words !== '' ? words
    : counts ? say.print.counting : '';
  return (
    <div class={told === '' ? 'foot' : 'foot says'}>
      <p class="told" role="status">{told}</p>
      {one && <button type="button" onClick={one.stop}>{say.print.stop}</button>}
    </div>
  );
}
