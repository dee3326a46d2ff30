// A handle of the picture: a slider for pointer, finger and keyboard.
import type { Bench } from '../state/bench';
import type { Handle } from './adopt';
import { placeAt, type Hold } from './hold';
import { rounded, type Units } from './lengths';
import { listOf, point } from './links';
import type { Point } from './map';
import { nameOf, placeOf } from './parts';

export function Grip(props: {
  bench: Bench;
  handle: Handle;
  at: Point;
  hold: Hold | null;
  units: Units;
  tab: number;
  hint: string;
  onFocus: () => void;
}) {
  const { bench, handle, hold, units } = props;
  const mm = hold ? hold.moves.mm.value : handle.mm;
  const at = hold ? placeAt(hold, mm) : props.at;
  const isLevel = Math.abs(handle.way.x) >= Math.abs(handle.way.y);
  const turn = (Math.atan2(handle.way.y, handle.way.x) * 180) / Math.PI;
  const parts = listOf(handle.subject);
  const isLit = parts.some((one) => bench.pointed.value.includes(one));
  const isSelected = parts.some((one) => bench.selected.value.includes(one));
  return (
    <div
      class={`grip ${handle.kind}${hold ? ' held' : ''}${isLit ? ' lit' : ''}${isSelected ? ' selected' : ''}`}
      role="slider"
      tabIndex={props.tab}
      data-stop={handle.subject}
      data-subject={handle.subject}
      aria-label={nameOf(handle)}
      aria-orientation={isLevel ? 'horizontal' : 'vertical'}
      aria-valuemin={rounded(handle.least, units)}
      aria-valuemax={rounded(handle.most, units)}
      aria-valuenow={rounded(mm, units)}
      aria-valuetext={placeOf(handle, mm, units)}
      aria-describedby={props.hint}
      aria-disabled={bench.faults.value.length > 0}
      style={{ left: `${at.x}px`, top: `${at.y}px`, '--turn': `${turn}deg` }}
      onFocus={props.onFocus}
      onBlur={() => point(bench, '')}
    >
      <span class="knob" />
    </div>
  );
}
