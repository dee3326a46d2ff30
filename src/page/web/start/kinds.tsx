// The kinds of jobs, each with its small picture from above.
import { useSignal } from '@preact/signals';
import type { Signal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Swathe } from 'swathe';
import { adopted } from '../pictures/adopt';
import { say } from '../words/en';

const kWidth = 104, kHeight = 92;

/** The most usual first; one that is not known yet comes last. */
export function inOrder(kinds: readonly string[]): string[] {
  const known = Object.keys(say.kinds);
  const place = (kind: string) => (known.indexOf(kind) + known.length + 1) % (known.length + 1);
  return [...kinds].sort((a, b) => place(a) - place(b));
}

/** Drawn once in the life of the page. */
const drawn = new Map<string, string>();

export function useKindPictures(start: () => Swathe, kinds: readonly string[]): Signal<ReadonlyMap<string, string>> {
  const pictures = useSignal<ReadonlyMap<string, string>>(new Map(drawn));
  useEffect(() => {
    if (kinds.every((kind) => drawn.has(kind))) return;
    const core = start();
    let shown = true;
    void (async () => {
      for (const kind of inOrder(kinds)) {
        if (!shown) return;
        if (drawn.has(kind)) continue;
        const job = await core.jobOfKind(kind);
        if (!job.ok || !(await core.open(job.value.text, { advice: false })).ok) continue;
        drawn.set(kind, await core.plan({ width: kWidth, height: kHeight, text: 1 }));
        if (shown) pictures.value = new Map(drawn);
      }
      core.close();
    })().catch(() => {});
    return () => {
      shown = false;
      core.close();
    };
  }, []);
  return pictures;
}

export function KindPicture({ svg }: { svg: string | undefined }) {
  const place = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    if (svg === undefined) return;
    try {
      place.current?.replaceChildren(adopted(svg, kWidth).svg);
    } catch {
      // Its name is enough.
    }
  }, [svg]);
  return <span class="kind-picture" aria-hidden="true" ref={place} />;
}
