import { useSignal } from '@preact/signals';
import { useLayoutEffect } from 'preact/hooks';
import type { Bench } from '../state/bench';
import { laid, type Point } from './map';
import type { Picture } from './picture';
import { faultsOf } from './subjects';
import { say } from '../words/en';

const words = say.pictures;

/** From a part to its sign, in pixels. */
const kSign = 11;

/** A sign at each part of which a rule is not met: color alone says nothing. */
export function FaultSigns({ bench, picture }: { bench: Bench; picture: Picture }) {
  const drawn = picture.drawn.value;
  const lie = picture.lie.value;
  const faults = faultsOf(bench.findings.value);
  const places = useSignal<{ subject: string; at: Point }[]>([]);
  useLayoutEffect(() => {
    const found: { subject: string; at: Point }[] = [];
    for (const marks of drawn?.marks.values() ?? []) {
      const subject = marks.subjects.find((one) => faults.has(one));
      const [element] = marks.elements;
      if (!subject || !element || found.some((one) => one.subject === subject)) continue;
      const box = (element as SVGGraphicsElement).getBBox();
      const scale = (drawn?.size.width ?? 1) / Number(drawn?.svg.getAttribute('viewBox')?.split(' ')[2]);
      // At its far end, where it hides the least of it.
      const isLevel = box.width >= box.height;
      const x = box.x + box.width + (isLevel ? kSign : 0);
      const y = isLevel ? box.y + box.height / 2 : box.y - kSign;
      found.push({ subject, at: { x: scale * x, y: scale * y } });
    }
    if (found.length > 0 || places.peek().length > 0) places.value = found;
  }, [drawn, bench.findings.value]);
  return (
    <>
      {places.value.map(({ subject, at }) => {
        const place = laid(lie, at);
        return (
          <span
            key={subject}
            class="fault-sign"
            role="img"
            aria-label={words.atFault(faults.get(subject) ?? '')}
            title={words.atFault(faults.get(subject) ?? '')}
            style={{ left: `${place.x}px`, top: `${place.y}px` }}
          >
            !
          </span>
        );
      })}
    </>
  );
}
