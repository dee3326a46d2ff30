import { useSignal } from '@preact/signals';
import { useLayoutEffect } from 'preact/hooks';
import type { Bench } from '../state/bench';
import { laid } from './map';
import type { Picture } from './picture';
import { signsOf, type Sign } from './signs';
import { wrongsOf } from './wrongs';

/** A sign at each part that is wrong: color alone says nothing. */
export function FaultSigns({ bench, picture }: { bench: Bench; picture: Picture }) {
  const drawn = picture.drawn.value;
  const lie = picture.lie.value;
  const wrongs = wrongsOf(bench);
  const signs = useSignal<readonly Sign[]>([]);
  useLayoutEffect(() => {
    const found = drawn ? signsOf(drawn, wrongs) : [];
    if (found.length > 0 || signs.peek().length > 0) signs.value = found;
  }, [drawn, bench.findings.value, bench.told.value, bench.toldHalf.value, bench.fields.value]);
  return (
    <>
      {signs.value.map(({ at, words }, k) => {
        const place = laid(lie, at);
        return (
          <span
            key={k}
            class="fault-sign"
            role="img"
            aria-label={words.join(' ')}
            title={words.join('\n')}
            style={{ left: `${place.x}px`, top: `${place.y}px` }}
          >
            !
          </span>
        );
      })}
    </>
  );
}
