// Bumpers' ends at an opening, where it goes from its side.
import type { FieldValue, KeyChange } from 'swathe';
import { readToml, writeToml } from './toml_value';

interface End {
  key: string;
  parts: string[];
}

export function endsOf(fields: readonly FieldValue[]): End[] {
  return fields.filter((one) => one.form === 'bumper.from' || one.form === 'bumper.to').map(({ key, value }) => {
    const read = readToml(value);
    return { key, parts: Array.isArray(read) ? read.map(String) : [] };
  });
}

/** The keys of those at the opening of this number. */
export function endsAt(number: number, fields: readonly FieldValue[]): string[] {
  const side = fields.find((one) => one.key === `opening.${number}.side`)?.shown ?? '';
  return endsOf(fields).filter(({ parts }) => parts[0] === side && parts[1] === 'opening').map(({ key }) => key);
}

/** Ways to have them end on the side as it then is, where the opening had its middle before all. */
export function endsBack(number: number, fields: readonly FieldValue[]): KeyChange[][] {
  const keys = endsAt(number, fields);
  const side = fields.find((one) => one.key === `opening.${number}.side`)?.shown ?? '';
  const center = readToml(fields.find((one) => one.key === `opening.${number}.center`)?.value ?? '"50%"');
  const own = (Array.isArray(center) ? center : [center ?? '50%']).map(String);
  const ends = [own, ['50%'], ['35%'], ['65%']].map((parts) => writeToml([side, ...parts]));
  return keys.length === 0 ? [] : [...new Set(ends)].map((value) => keys.map((key) => ({ key, value })));
}
