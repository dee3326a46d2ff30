// One more bumper: where there is none yet, else a part of one that is there. An opening, where bumpers
// end or one is parted.
import type { FieldValue } from 'swathe';
import { keysOf } from './addition';
import type { Addition, Report } from './addition';
import { freeStretches } from './free_stretch';
import { bumpersOf, sidesOf } from './sides';
import { countOf } from './tables';
import { readToml, writeToml } from './toml_value';

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

export function newOpenings(number: number, fields: readonly FieldValue[], metric: boolean, report: Report | null): Addition[] {
  const taken = fields.filter((one) => one.form === 'opening.side').map((one) => one.shown);
  const ends = fields.filter((one) => one.form === 'bumper.from' || one.form === 'bumper.to').map(({ key, value }) => {
    const end = readToml(value);
    return { key, side: Array.isArray(end) && end[1] !== 'corner' ? String(end[0]) : '' };
  });
  const free = sidesOf(fields).filter((side) => !taken.includes(side));
  const endsOn = (side: string) => ends.filter((end) => end.side === side);
  const next = countOf('bumper', fields) + 1;
  return (metric ? ['"350 mm"', '"200 mm"'] : ['"14 in"', '"8 in"']).flatMap((width) => {
    const on = (side: string) => keysOf('opening', number, { side: writeToml(side), width });
    // Bumpers that end in the middle of the side now end at the opening.
    const between = free.filter((side) => endsOn(side).length > 0).map((side): Addition => ({
      number,
      changes: [...on(side), ...endsOn(side).map(({ key }) => ({ key, value: writeToml([side, 'opening']) }))],
    }));
    const within = free.filter((side) => endsOn(side).length === 0).flatMap((side) => bumpers(fields, report)
      .filter((bumper) => bumper.sides.includes(side))
      .map((bumper): Addition =>
        ({ number, changes: [...on(side), ...parted(bumper, next, writeToml([side, 'opening']), fields)] })));
    return [...between, ...within];
  });
}
