// What a key's value is changed with, by its kind.
import type { FieldValue, KeyWords } from 'swathe';
import { useContext } from 'preact/hooks';
import { say } from '../words/en';
import { FieldsContext } from './context';
import { ColorEditor, ColorsEditor } from './colors';
import { FontEditor } from './font';
import { ListEditor } from './lists';
import { EndEditor, PlaceEditor } from './places';
import { moveOpening } from './move_opening';
import { bumpersOf, sidesOf } from './sides';
import { readToml, writeToml } from './toml_value';
import { typeInto, useDraft, wholeKey } from './use_field';
import { shownAs, typedAs } from './value_words';

export interface EditorGiven {
  id: string;
  words: KeyWords;
  value: FieldValue;
  describedBy: string;
  wrong: boolean;
}

export function Editor(given: EditorGiven) {
  const { words, value } = given;
  const all = useContext(FieldsContext);
  const { bench, choices } = all;
  const sides = sidesOf(bench.fields.value), bumpers = bumpersOf(bench.fields.value);
  if (words.key === 'numerals.font') return <FontEditor {...given} />;
  switch (words.form.kind) {
    case 'flag':
      return <Flag {...given} />;
    case 'choice':
      if (words.key === 'job.season' || !words.form.words.includes(value.shown))
        return <Choice {...given} options={[...new Set([...words.form.words, ...(words.key === 'job.season' ? choices.seasons : []), value.shown])]} />;
      return <Choice {...given} options={words.form.words} />;
    case 'side':
      return <Choice {...given} options={sides}
        choose={words.key === 'opening.side' ? (side) => moveOpening(value.key, side, all) : undefined} />;
    case 'bumper':
      return <Choice {...given} options={bumpers} />;
    case 'paper':
      return <PaperEditor {...given} />;
    case 'sides':
      return <SidesEditor {...given} sides={sides} />;
    case 'end':
      return <EndEditor {...given} sides={sides} />;
    case 'side-place':
      return <PlaceEditor {...given} sides={sides} />;
    case 'color':
      return <ColorEditor {...given} />;
    case 'colors':
      return <ColorsEditor {...given} />;
    case 'lengths':
    case 'points':
    case 'names':
    case 'axes':
      return <ListEditor {...given} />;
    default:
      return <Line {...given} />;
  }
}

/** A line that the core reads: a length, a number, a text. */
function Line({ id, words, value, describedBy, wrong }: EditorGiven) {
  const { bench } = useContext(FieldsContext);
  const read = wholeKey(bench, value.key);
  const { draft, reads, type, leave, takeBack } =
    useDraft(bench, value.key, (typed, steps) => read(typedAs(typed, words.form), steps));
  const shown = shownAs(value.shown, words.form);
  const steps = ['length', 'angle', 'number', 'count'].includes(words.form.kind);
  const empty = !value.given && words.given === 'optional';
  return (
    <>
      <input id={id} type="text" autocomplete="off" spellcheck={false}
        value={draft.value ?? (empty ? '' : shown)}
        placeholder={empty ? shown || say.job.none : undefined}
        inputMode={words.form.kind === 'digits' || words.form.kind === 'count' ? 'numeric' : undefined}
        aria-describedby={describedBy} aria-invalid={wrong}
        onInput={(event) => {
          void type(event.currentTarget.value);
        }}
        onBlur={leave}
        onKeyDown={(event) => {
          if (event.key === 'Escape') takeBack();
          if (event.key === 'Enter') bench.pause.over();
          const step = { ArrowUp: 1, ArrowDown: -1 }[event.key];
          if (!steps || !step || event.altKey || event.ctrlKey || event.metaKey) return;
          event.preventDefault();
          void type(draft.value ?? shown, event.shiftKey ? 4 * step : step);
        }} />
      <output class="reads" for={id}>{reads.value}</output>
    </>
  );
}

function Flag({ id, value, describedBy }: EditorGiven) {
  const { bench } = useContext(FieldsContext);
  return (
    <input id={id} type="checkbox" checked={value.value === 'true'} aria-describedby={describedBy}
      onChange={(event) => void typeInto(bench, value.key, String(event.currentTarget.checked))} />
  );
}

/** `choose`: what is done with another choice, where it is more than the key's value. */
function Choice({ id, words, value, describedBy, wrong, options, choose }: EditorGiven & {
  options: string[]; choose?: ((chosen: string) => Promise<void>) | undefined;
}) {
  const { bench } = useContext(FieldsContext);
  const unsaid = !value.given && words.given === 'optional';
  return (
    <select id={id} aria-describedby={describedBy} aria-invalid={wrong} value={unsaid ? '' : value.shown}
      onChange={(event) => {
        const chosen = event.currentTarget.value;
        if (choose) void choose(chosen);
        else void typeInto(bench, value.key, chosen === '' ? '' : writeToml(chosen));
      }}>
      {words.given === 'optional' && <option value="">{say.job.auto}</option>}
      {options.filter((one) => one !== '').map((one) => <option value={one} key={one}>{shownAs(one, words.form)}</option>)}
    </select>
  );
}

function PaperEditor(given: EditorGiven) {
  const { choices } = useContext(FieldsContext);
  const { value } = given;
  const own = value.value.trim().startsWith('[');
  if (own) return <ListEditor {...given} />;
  return <Choice {...given} options={[...new Set([...choices.papers.map((one) => one.name), 'roll', value.shown])]} />;
}

function SidesEditor({ id, words, value, describedBy, sides }: EditorGiven & { sides: string[] }) {
  const { bench } = useContext(FieldsContext);
  const read = readToml(value.value);
  const chosen = Array.isArray(read) ? read : read === 'all' ? sides : [];
  const word = typeof read === 'string' && (value.given || words.given !== 'optional');
  const free = words.form.words.filter((one) => one !== '');
  return (
    <div class="several" id={id} aria-describedby={describedBy}>
      {free.map((one) => (
        <label key={one}><input type="radio" name={id} checked={word && read === one}
          onChange={() => void typeInto(bench, value.key, writeToml(one))} />{shownAs(one, words.form)}</label>
      ))}
      {sides.map((side) => (
        <label key={side}><input type="checkbox" checked={chosen.includes(side)}
          onChange={(event) => {
            const on = event.currentTarget.checked;
            const next = sides.filter((one) => (one === side ? on : chosen.includes(one)));
            void typeInto(bench, value.key, writeToml(next));
          }} />{side}</label>
      ))}
    </div>
  );
}
