// Colors: one, or the cloth's, each with its name.
import { useContext } from 'preact/hooks';
import type { WorkBench } from '../state/make_bench';
import { say } from '../words/en';
import { FieldsContext } from './context';
import type { EditorGiven } from './editors';
import { readToml, writeToml } from './toml_value';
import { typeInto } from './use_field';

/** As a color field wants it. */
function sixDigits(color: string): string {
  const short = /^#([0-9a-f])([0-9a-f])([0-9a-f])$/i.exec(color);
  if (short) return `#${short[1]}${short[1]}${short[2]}${short[2]}${short[3]}${short[3]}`;
  return /^#[0-9a-f]{6}$/i.test(color) ? color : '#000000';
}

export function ColorEditor({ id, words, value, describedBy }: EditorGiven) {
  const { bench } = useContext(FieldsContext);
  return (
    <div class="color">
      <input type="color" id={id} aria-label={words.label} aria-describedby={describedBy} value={sixDigits(value.shown)}
        onChange={(event) => void typeInto(bench, value.key, writeToml(event.currentTarget.value))} />
      <code>{value.shown}</code>
    </div>
  );
}

const usual: Record<string, string> = {
  red: '#b5121b', blue: '#1b3a93', black: '#1a1a1a', white: '#f4f4f4', green: '#1f7a3d', gold: '#c9971c',
};

/** The name of one more; none where the season asks for certain colors and all of them are there, or while
 * it is not known what it asks. */
function nextColor(there: readonly string[], bench: WorkBench): string | undefined {
  if (!bench.opened.value) return undefined;
  // Of a cloth the rule says which it may be: "red or blue".
  const asked = bench.findings.value.find(({ id, keys }) =>
    id === 'cloth-color' && keys.some(({ key }) => key.startsWith('cloth.colors.')))?.required.split(' or ');
  const names = asked ?? [...Object.keys(usual), `color-${there.length + 1}`];
  return names.find((one) => !there.includes(one));
}

export function ColorsEditor({ value }: EditorGiven) {
  const { bench } = useContext(FieldsContext);
  const read = readToml(value.value);
  const colors: [string, string][] = read && typeof read === 'object' && !Array.isArray(read)
    ? Object.entries(read).map(([name, color]) => [name, String(color)]) : [];
  const send = (next: [string, string][]) => {
    const table: { [name: string]: string } = Object.create(null);
    for (const [name, color] of next) table[name] = color;
    void typeInto(bench, value.key, writeToml(table));
  };
  const free = nextColor(colors.map(([name]) => name), bench);
  const change = (at: number, name: string, color: string) =>
    send(colors.map((one, k) => (k === at ? [name, color] : one)));
  return (
    <div class="colors">
      {colors.map(([name, color], at) => (
        <div class="color" key={at}>
          <input type="color" value={sixDigits(color)} aria-label={`${say.job.color} ${name}`}
            onChange={(event) => change(at, name, event.currentTarget.value)} />
          <input type="text" value={name} aria-label={say.job.colorName} autocomplete="off"
            onChange={(event) => {
              const to = event.currentTarget.value.trim();
              if (to !== '' && !colors.some(([other], k) => k !== at && other === to)) change(at, to, color);
              else event.currentTarget.value = name;
            }} />
          {colors.length > 1 &&
            <button type="button" class="out" aria-label={say.job.removeColor(name)}
              onClick={() => send(colors.filter((_, k) => k !== at))}>×</button>}
        </div>
      ))}
      {free !== undefined &&
        <button type="button" class="plain" onClick={() => send([...colors, [free, usual[free] ?? '#777777']])}>
          {say.job.addColor}</button>}
    </div>
  );
}
