// What the digits are drawn in: a font that Swathe has, or a file of one's own.
import { useSignal } from '@preact/signals';
import { useContext, useRef } from 'preact/hooks';
import { isFont } from '../state/files';
import { takeFont } from '../state/take_font';
import { say } from '../words/en';
import { FieldsContext } from './context';
import type { EditorGiven } from './editors';
import { writeToml } from './toml_value';
import { typeInto } from './use_field';

const kMostFont = 20e6;

export function FontEditor({ id, value, describedBy, wrong }: EditorGiven) {
  const { bench, choices, files } = useContext(FieldsContext);
  const trouble = useSignal('');
  const chooser = useRef<HTMLInputElement>(null);
  files.version.value;
  const bundled = choices.fonts.map((one) => one.name);
  const options = [...new Set([...bundled, ...files.names.filter(isFont), value.shown])];
  const missing = !bundled.includes(value.shown) && isFont(value.shown) && !files.names.includes(value.shown);

  async function take(file: File | undefined): Promise<void> {
    if (!file) return;
    trouble.value = '';
    const bytes = file.size > kMostFont ? null : await file.arrayBuffer().catch(() => null); // a folder
    trouble.value = bytes ? await takeFont(bench.core, files, file.name, new Uint8Array(bytes)) : say.job.notAFont;
    if (trouble.value === '') await typeInto(bench, value.key, writeToml(file.name));
  }

  return (
    <div class="font"
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault();
        event.stopPropagation();
        void take(event.dataTransfer?.files[0]);
      }}>
      <select id={id} aria-describedby={describedBy} aria-invalid={wrong} value={value.shown}
        onChange={(event) => void typeInto(bench, value.key, writeToml(event.currentTarget.value))}>
        {options.map((one) => <option value={one} key={one}>{one}</option>)}
      </select>
      <button type="button" class="plain" title={say.job.ownFontWhy} onClick={() => chooser.current?.click()}>
        {say.job.ownFont}</button>
      <input ref={chooser} type="file" hidden aria-label={say.job.ownFont} accept=".ttf,.otf,.woff2"
        onChange={(event) => {
          void take(event.currentTarget.files?.[0]);
          event.currentTarget.value = '';
        }} />
      {missing && <p class="notice">{say.job.fontMissing(value.shown)}</p>}
      {trouble.value !== '' && <p class="fault" role="alert">{trouble.value}</p>}
    </div>
  );
}
