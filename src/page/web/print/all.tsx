// All sheets at once, in one archive.
import { useLayoutEffect, useRef } from 'preact/hooks';
import { say } from '../words/en';
import type { Making } from './make';

/** The button to stop it has the keyboard from the one that begins it, and back. */
export function All({ making, off, zip }: { making: Making | null; off: boolean; zip: () => void }) {
  const at = useRef<HTMLElement>(null);
  const hadKeyboard = at.current?.contains(document.activeElement);
  useLayoutEffect(() => {
    if (hadKeyboard && !at.current?.contains(document.activeElement)) at.current?.querySelector('button')?.focus();
  }, [making === null]);
  return (
    <section class="all" ref={at}>
      {making
        ? <div class="making">
          <progress aria-label={say.print.making(making.name)}
            {...(making.of > 0 ? { value: making.done, max: making.of } : {})} />
          <span>{making.of === 0 ? say.print.making(making.name)
            : making.done < making.of ? say.print.makingCount(making.done, making.of) : say.print.packing}</span>
          <button type="button" onClick={making.stop}>{say.print.stop}</button>
        </div>
        : <button type="button" class="main" disabled={off} onClick={zip}>{say.print.all}</button>}
      <p class="small">{say.print.allWhy}</p>
    </section>
  );
}
