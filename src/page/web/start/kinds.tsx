// The kinds of jobs, each with its small picture from above.
import { useEffect, useRef } from 'preact/hooks';
import { adopted } from '../pictures/adopt';
import { say } from '../words/en';

/** As make.mjs has them drawn. */
const kWidth = 104;

/** The most usual first; one that is not known yet comes last. */
export function inOrder(kinds: readonly string[]): string[] {
  const known = Object.keys(say.kinds);
  const place = (kind: string) => (known.indexOf(kind) + known.length + 1) % (known.length + 1);
  return [...kinds].sort((a, b) => place(a) - place(b));
}

export function KindPicture({ svg }: { svg: string }) {
  const place = useRef<HTMLSpanElement>(null);
  useEffect(() => place.current?.replaceChildren(adopted(svg, kWidth).svg), [svg]);
  return <span class="kind-picture" aria-hidden="true" ref={place} />;
}
