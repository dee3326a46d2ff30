// The frame's sides and the bumpers, by name.
import type { FieldValue } from 'swathe';
import { readToml } from './toml_value';

/** In their order round the frame. */
export function sidesOf(fields: readonly FieldValue[]): string[] {
  const sides = readToml(fields.find((one) => one.key === 'frame.sides')?.value ?? '');
  return Array.isArray(sides) && sides.every((one) => typeof one === 'string')
    ? (sides as string[]) : ['front', 'left', 'back', 'right'];
}

/** The two sides beside one. */
export function beside(side: string, sides: readonly string[]): string[] {
  const at = sides.indexOf(side);
  if (at < 0) return [...sides];
  const count = sides.length;
  return [...new Set([sides[(at + count - 1) % count]!, sides[(at + 1) % count]!])];
}

export function bumpersOf(fields: readonly FieldValue[]): string[] {
  return fields.filter((one) => one.form === 'bumper.name').map((one) => one.shown);
}
