// How far along a side: what is typed of a place, a length or a part of the side in %.
import { useContext } from 'preact/hooks';
import { FieldsContext } from './context';
import { readLength } from './read_length';
import { useDraft, wholeKey } from './use_field';
import type { Reader } from './use_field';

/** "50" or "50%" with steps of 1 % added; nothing where it is no number. */
function stepped(share: string, steps: number): string | null {
  const number = /^\s*(\d+(?:[.,]\d+)?)\s*%?\s*$/.exec(share)?.[1];
  return number === undefined ? null : `${Number(number.replace(',', '.')) + steps}%`;
}

/** `toml`: the value of the key `name` that has it. */
export function PlacePart({ name, label, value, wrong, isLength, toml }: {
  name: string; label: string; value: string; wrong: boolean; isLength: boolean;
  toml: (part: string) => string;
}) {
  const { bench } = useContext(FieldsContext);
  const whole = wholeKey(bench, name);
  const reader: Reader = async (typed, steps) => {
    const length = isLength ? await readLength(bench, typed, steps) : null;
    if (length && !length.ok && steps !== 0) return length;
    const { length: part, reads } = length?.ok ? length.value
      : { length: (isLength ? null : stepped(typed, steps)) ?? typed.trim(), reads: '' };
    const outcome = await whole(toml(part), 0);
    return outcome.ok ? { ok: true, value: { value: outcome.value.value, reads, stepped: part } } : outcome;
  };
  const { draft, reads, type, leave, takeBack } = useDraft(bench, name, reader);
  return (
    <>
      <label class="part"><span>{label}</span>
        <input type="text" autocomplete="off" spellcheck={false} aria-label={label} aria-invalid={wrong}
          value={draft.value ?? value}
          onInput={(event) => void type(event.currentTarget.value)}
          onBlur={leave}
          onKeyDown={(event) => {
            if (event.key === 'Escape') takeBack();
            if (event.key === 'Enter') bench.pause.over();
            const step = { ArrowUp: 1, ArrowDown: -1 }[event.key];
            if (!step || event.altKey || event.ctrlKey || event.metaKey) return;
            event.preventDefault();
            void type(draft.value ?? value, event.shiftKey ? 4 * step : step);
          }} />
      </label>
      <output class="reads">{reads.value}</output>
    </>
  );
}
