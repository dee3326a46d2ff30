import { useSignal } from '@preact/signals';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { placeAt, type Hold } from './hold';
import { within, type Units } from './lengths';
import { nameOf, placeOf } from './parts';
import { say } from '../words/en';

const words = say.pictures;

/** From the pointer to the figure beside it, and from that to the edge. */
const kBeside = 14;
const kEdge = 4;
/** A picture so wide has no room for the name of what is moved. */
const kNarrow = 440;

/** What is moved and where it is, beside the pointer; and that it cannot be there. */
export function Figure(props: { hold: Hold; units: Units; width: number; isWrong: boolean }) {
  const { hold, units, width, isWrong } = props;
  const { handle } = hold.moves;
  const mm = hold.moves.mm.value;
  const at = hold.pointer.value ?? placeAt(hold, mm);
  const place = placeOf(handle, mm, units);
  const text = width < kNarrow ? place : words.moving(nameOf(handle), place);
  const element = useRef<HTMLDivElement>(null);
  const box = useSignal({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const { offsetWidth = 0, offsetHeight = 0 } = element.current ?? {};
    if (box.peek().width !== offsetWidth || box.peek().height !== offsetHeight)
      box.value = { width: offsetWidth, height: offsetHeight };
  }, [text, isWrong]);
  const { width: own, height } = box.value;
  const beside = at.x > width / 2 ? at.x - own - kBeside : at.x + kBeside;
  const above = at.y - height - 2 * kBeside;
  return (
    <div
      aria-hidden="true"
      class="figure"
      ref={element}
      style={{
        left: `${within(beside, kEdge, Math.max(kEdge, width - own - kEdge))}px`,
        top: `${above > 0 ? above : at.y + kBeside}px`,
      }}
    >
      {text}
      {isWrong && <span class="cannot">{words.cannot}</span>}
    </div>
  );
}
