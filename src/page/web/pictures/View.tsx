import { useEffect, useRef } from 'preact/hooks';
import type { Bench } from '../state/bench';
import { light } from './links';
import type { Picture } from './picture';
import { useNow } from './use_now';
import { watchSize } from './watch_size';

/** A picture without handles. */
export function View({ bench, picture }: { bench: Bench; picture: Picture }) {
  const host = useRef<HTMLSpanElement>(null);
  useEffect(() => (host.current ? watchSize(host.current, picture) : undefined), [picture]);
  useNow(() => {
    const svg = picture.drawn.value?.svg;
    host.current?.replaceChildren(...(svg ? [svg] : []));
  });
  useNow(() => {
    const drawn = picture.drawn.value;
    if (drawn) light(bench, drawn);
  });
  return <span class="view" ref={host} />;
}
