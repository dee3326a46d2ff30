// One more bumper: where there is none yet, else a part of one that is there. An opening, where bumpers
// end or one is parted.
import type { FieldValue, KeyChange } from 'swathe';
import { keysOf } from './addition';
import type { Addition, Report } from './addition';
import { freeStretches } from './free_stretch';
import { endsOf } from './opening_ends';
import { bumpersOf, sidesOf } from './sides';
import { countOf } from './tables';
import { writeToml } from './toml_value';

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
}

/** The longest first. */
function bumpers(fields: readonly FieldValue[], report: Report | null): Bumper[] {
  const found = bumpersOf(fields).map((name, k) => {
    const made = report?.bumpers.find((one) => one.name === name);
    const sides = made?.sides ?? sidesOf(fields), middle = (sides.length - 1) / 2;
    const order = sides.map((_, at) => at).sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle));
    return { number: k + 1, sides: order.map((at) => sides[at]!), length: made?.length_mm ?? 0 };
  });
  return found.sort((a, b) => b.length - a.length);
}

/** A bumper parted at a place: the new one has what lies behind it. */
function parted(bumper: Bumper, next: number, at: string, fields: readonly FieldValue[]) {
  const to = fields.find((one) => one.key === `bumper.${bumper.number}.to`)?.value ?? at;
  return [
    ...keysOf('bumper', next, { name: writeToml(freeName(bumpersOf(fields))), from: at, to }),
    { key: `bumper.${bumper.number}.to`, value: at },
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
  const parts = bumpers(fields, report).flatMap((bumper) => [['50%'], ['35%', '65%']].flatMap((shares) =>
    bumper.sides.flatMap((side) => shares.map((share): Addition =>
      ({ number, changes: parted(bumper, number, writeToml([side, share]), fields) })))));
  return [...fillings(number, fields), ...parts];
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
