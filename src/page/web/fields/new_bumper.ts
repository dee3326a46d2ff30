// One more bumper: where there is none yet, else a part of one that is there. An opening, where bumpers
// end or one is parted.
import type { FieldValue, KeyChange } from 'swathe';
import { keysOf } from './addition';
import type { Addition } from './addition';
import { freeStretches } from './free_stretch';
import { endsOf } from './opening_ends';
import { bumpersOf, sidesOf } from './sides';
import { countOf } from './tables';
import { writeToml } from './toml_value';
import type { Report } from './trial';

/** Shorter than this is a gap, no place for a bumper, in millimeters. */
const kLeastLength = 150;

/** A name that no bumper has: "A", "B", ... */
function freeName(taken: readonly string[]): string {
  for (let k = 0; k < 26; ++k) {
    const name = String.fromCharCode(65 + k);
    if (!taken.includes(name)) return name;
  }
  return `N${taken.length + 1}`;
}

interface Bumper {
  /** Among the job's, counted from 1. */
  number: number;
  /** Those it runs along, from the middle of its way outwards; all where that is not known. */
  sides: string[];
  /** The corners that it goes round, in the same order: the sides before and behind each. */
  corners: [string, string][];
  length: number;
}

/** The middle one first. */
function outwards<T>(all: readonly T[]): T[] {
  const middle = (all.length - 1) / 2;
  const order = all.map((_, at) => at).sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle));
  return order.map((at) => all[at]!);
}

/** The longest first. */
function bumpers(fields: readonly FieldValue[], report: Report | null): Bumper[] {
  const found = bumpersOf(fields).map((name, k): Bumper => {
    const made = report?.bumpers.find((one) => one.name === name);
    const sides = made?.sides ?? sidesOf(fields);
    const corners = sides.slice(1).map((side, at): [string, string] => [sides[at]!, side]);
    return { number: k + 1, sides: outwards(sides), corners: outwards(corners), length: made?.length_mm ?? 0 };
  });
  return found.sort((a, b) => b.length - a.length);
}

/** A bumper parted at a place: the new one has what lies behind it. */
function parted(bumper: Bumper, next: number, at: string, fields: readonly FieldValue[], behind = at): KeyChange[] {
  const to = fields.find((one) => one.key === `bumper.${bumper.number}.to`)?.value ?? at;
  return [
    ...keysOf('bumper', next, { name: writeToml(freeName(bumpersOf(fields))), from: behind, to }),
    { key: `bumper.${bumper.number}.to`, value: at },
  ];
}

/** Ways to part one: at a corner where it ends at corners, in the middle of a side, beside it. */
function partings(bumper: Bumper, next: number, fields: readonly FieldValue[]): KeyChange[][] {
  const ends = endsOf(fields).filter(({ key }) => key.startsWith(`bumper.${bumper.number}.`));
  const corners = ends.every(({ parts }) => parts[1] === 'corner') ? bumper.corners : [];
  return [
    ...corners.map(([side, other]) =>
      parted(bumper, next, writeToml([side, 'corner']), fields, writeToml([other, 'corner']))),
    ...[['50%'], ['35%', '65%']].flatMap((shares) => bumper.sides.flatMap((side) =>
      shares.map((share) => parted(bumper, next, writeToml([side, share]), fields)))),
  ];
}

/** Between the ends of others. */
function fillings(number: number, fields: readonly FieldValue[]): Addition[] {
  const name = freeName(bumpersOf(fields));
  return freeStretches(fields, sidesOf(fields)).map(({ from, to }) => ({
    number,
    changes: keysOf('bumper', number, { name: writeToml(name), from, to }),
    fits: ({ bumpers }) => bumpers.some((one) => one.name === name && one.length_mm >= kLeastLength),
    despiteRules: true,
  }));
}

export function newBumpers(number: number, fields: readonly FieldValue[], report: Report | null): Addition[] {
  const parts = bumpers(fields, report).flatMap((bumper) => partings(bumper, number, fields));
  return [...fillings(number, fields), ...parts.map((changes): Addition => ({ number, changes }))];
}

const endsWithin = (side: string, fields: readonly FieldValue[]) =>
  endsOf(fields).filter(({ parts }) => parts[0] === side && parts[1] !== 'corner');

/** Ways to make room for an opening on a side: bumpers that end in the middle of the side then end at the
 * opening, else one is parted by it. */
export function roomsFor(side: string, fields: readonly FieldValue[], report: Report | null): KeyChange[][] {
  const at = writeToml([side, 'opening']);
  const ends = endsWithin(side, fields);
  if (ends.length > 0) return [ends.map(({ key }) => ({ key, value: at }))];
  const next = countOf('bumper', fields) + 1;
  return bumpers(fields, report).filter((bumper) => bumper.sides.includes(side))
    .map((bumper) => parted(bumper, next, at, fields));
}

export function newOpenings(number: number, fields: readonly FieldValue[], metric: boolean, report: Report | null): Addition[] {
  const taken = fields.filter((one) => one.form === 'opening.side').map((one) => one.shown);
  const free = sidesOf(fields).filter((side) => !taken.includes(side));
  const hasEnds = (side: string) => endsWithin(side, fields).length > 0;
  const sides = [...free.filter(hasEnds), ...free.filter((side) => !hasEnds(side))];
  return (metric ? ['"350 mm"', '"200 mm"'] : ['"14 in"', '"8 in"']).flatMap((width) => sides.flatMap((side) =>
    roomsFor(side, fields, report).map((room): Addition =>
      ({ number, changes: [...keysOf('opening', number, { side: writeToml(side), width }), ...room] }))));
}
