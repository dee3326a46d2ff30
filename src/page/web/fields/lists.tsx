// Lists on one line: "48 in, 96 in", or the value as the text has it where it is more than words.
import { useContext } from 'preact/hooks';
import { say } from '../words/en';
import { FieldsContext } from './context';
import type { EditorGiven } from './editors';
import { readLength } from './read_length';
import { listShown, readToml, writeToml } from './toml_value';
import type { TomlValue } from './toml_value';
import { useDraft, wholeKey } from './use_field';
import type { Reader } from './use_field';

/** Pairs are written as a person writes them, "3/4 in x 3/4 in". */
function pairs(typed: string): string {
  if (typed.trim() === '' || typed.trim().startsWith('[')) return typed;
  const item = (one: string): TomlValue => (/^-?\d+(\.\d+)?$/.test(one) ? Number(one) : one);
  const all = typed.split(/[,;]/).map((one) => one.trim()).filter((one) => one !== '');
  return writeToml(all.map((one) => one.split(/\s*[x×]\s*/).map(item)));
}

export function ListEditor({ id, words, value, describedBy, wrong }: EditorGiven) {
  const { bench } = useContext(FieldsContext);
  const { kind } = words.form;
  const whole = wholeKey(bench, value.key);
  const reader: Reader = async (typed) => {
    const outcome = await whole(kind === 'points' ? pairs(typed) : typed, 0);
    const list = outcome.ok && kind === 'lengths' ? readToml(outcome.value.value) : null;
    if (!outcome.ok || !Array.isArray(list)) return outcome;
    const lengths = await Promise.all(list.map((one) => readLength(bench, String(one))));
    return { ok: true, value: { ...outcome.value, reads: lengths.map((one) => (one.ok ? one.value.reads : '')).join('; ') } };
  };
  const { draft, reads, type, leave, takeBack } = useDraft(bench, value.key, reader);
  const read = readToml(value.value);
  const empty = value.value === '{}' || (!value.given && words.given === 'optional');
  const shown = kind === 'axes' ? value.value : Array.isArray(read) ? listShown(read) : value.shown;
  return (
    <>
      <input id={id} type="text" autocomplete="off" spellcheck={false} value={draft.value ?? (empty ? '' : shown)}
        placeholder={empty ? say.job.none : undefined}
        aria-describedby={describedBy} aria-invalid={wrong}
        onInput={(event) => void type(event.currentTarget.value)}
        onBlur={leave}
        onKeyDown={(event) => {
          if (event.key === 'Escape') takeBack();
          if (event.key === 'Enter') bench.pause.over();
        }} />
      <output class="reads several-read" for={id}>{reads.value}</output>
    </>
  );
}
