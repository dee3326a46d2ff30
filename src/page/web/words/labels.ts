// What the core says of keys, with each by its label, as the fields have it.
import type { KeyChange, Words } from 'swathe';
import { listShown, readToml, valueWords } from '../fields/toml_value';
import { shownAs } from '../fields/value_words';
import { say } from './en';

/** "bracket.at" of "bracket.2.at". */
function pathOf(key: string): string {
  return key.replace(/\.\d+(?=\.|$)/g, '');
}

/** A key's label, with its table's name where another key has the same. */
export function labelOf(key: string, words: Words): string {
  const path = pathOf(key);
  const label = words.keys.find((one) => one.key === path)?.label;
  if (label === undefined) { // of a table that is one key's value: "cloth.colors.red"
    const parent = key.slice(0, key.lastIndexOf('.'));
    return words.keys.some((one) => one.key === pathOf(parent)) ? `${labelOf(parent, words)}, ${key.slice(parent.length + 1)}` : key;
  }
  if (words.keys.filter((one) => one.label === label).length < 2) return label;
  const table = path.slice(0, path.lastIndexOf('.')), number = /\.(\d+)\./.exec(key)?.[1];
  return `${number ? `${say.one[table] ?? table} ${number}` : say.groups[table] ?? table}, ${label.toLowerCase()}`;
}

/** ["9 in", "front"] as the fields say it. */
function valueShown(value: string): string {
  const read = readToml(value);
  if (!Array.isArray(read) || typeof read[1] !== 'string') return read === undefined ? value : listShown(read);
  const [distance, corner] = read.length === 3 ? read.slice(1).map(String) : read.map(String);
  const place = read.length === 3 || /\d/.test(distance!) ? say.job.from(distance!, corner!) : listShown(read.slice(1));
  return read.length === 3 || !/\d/.test(distance!) ? `${read[0]}, ${place}` : place;
}

/** What a mend does: at the field of the one key that it changes its value will do. */
export function mendWords(mend: readonly KeyChange[], words: Words, at = ''): string {
  return mend.length === 1 && mend[0]!.key === at ? say.job.use(valueWords(mend[0]!.value))
    : mend.map(({ key, value }) => say.job.change(labelOf(key, words), valueWords(value))).join('; ');
}

/** `at`: the key that it is said of; `isThere`: at its field, where its own label will do. What stands in
 * quotes is somebody's own, or a word of the key. */
export function inLabels(sentence: string, words: Words, at = '', isThere = false): string {
  const own = pathOf(at), table = own.slice(0, own.lastIndexOf('.'));
  const known = (name: string) => words.keys.find(({ key }) => key === `${table}.${name}` || key === `${own}.${name}`);
  const { form, label: ownLabel = own } = words.keys.find(({ key }) => key === own) ?? {};
  const quoted = (part: string) => (form ? `"${shownAs(part.slice(1, -1), form)}"` : part);
  const outside = (part: string) => part
    .replace(/\[\[([\w.]+)\]\]/g, (all, path: string) => (say.groups[path] ? `"${say.groups[path]}"` : all))
    .replace(/\b[a-z]\w*(\.\w+)+\b/g, (key) => {
      const label = isThere && key === own ? ownLabel : labelOf(key, words);
      return label === key ? key : `"${label}"`;
    });
  return sentence
    .replace(/(?<![\w.])([a-z_]+(?:\.\w+)*) = (\[[^\]]*\]|"[^"]*"|[\d.]+)/g, (all, name: string, value: string) => {
      const label = name.includes('.') ? labelOf(name, words) : known(name)?.label ?? name;
      return label === name ? all : `"${label}" ${valueShown(value)}`;
    })
    .replace(/: ([a-z_]+)(?= (?:is|has) )/, (all, name: string) => {
      const key = known(name);
      return key ? `: "${key.label}"` : all;
    })
    .split(/("[^"]*")/).map((part, k) => (k % 2 === 1 ? quoted(part) : outside(part))).join('');
}
