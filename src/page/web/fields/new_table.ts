// What one more of a table that there may be many of could be, the likeliest first.
import type { FieldValue } from 'swathe';
import { keysOf } from './addition';
import type { Addition } from './addition';
import { newBumpers, newOpenings } from './new_bumper';
import { beside, bumpersOf, sidesOf } from './sides';
import { countOf } from './tables';
import { writeToml } from './toml_value';
import type { Report } from './trial';

const kInches = [9, 14, 19, 24, 29, 34, 4, 1];
const kMillimeters = [230, 360, 490, 620, 750, 880, 100, 25];
/** Between brackets, for a hand with a tool. */
const kBetween = 20;

function isClear(report: Report, subject: string): boolean {
  return report.bumpers.every(({ brackets }) => {
    const one = brackets.find((other) => other.subject === subject);
    return !one || brackets.every((other) => other === one || other.side !== one.side ||
      other.s_mm >= one.s_mm + one.width_mm + kBetween || one.s_mm >= other.s_mm + other.width_mm + kBetween);
  });
}

function newBrackets(number: number, fields: readonly FieldValue[], metric: boolean): Addition[] {
  const all = sidesOf(fields);
  const first = all[0] ?? 'front';
  // In pairs, on a side and across from it; the front last.
  const sides = [...all.filter((_, k) => k % 2 === 1), ...all.filter((_, k) => k % 2 === 0).reverse()];
  const corner = (side: string) => {
    const two = beside(side, all);
    return two.includes(first) ? first : two[0] ?? first;
  };
  const places = metric ? kMillimeters.map((one) => `${one} mm`) : kInches.map((one) => `${one} in`);
  return places.flatMap((place) => sides.map((side): Addition => ({
    number,
    changes: keysOf('bracket', number, {
      side: writeToml(side), at: writeToml([place, corner(side)]),
      width: metric ? '"75 mm"' : '"3 in"', height: metric ? '"50 mm"' : '"2 in"',
    }),
    fits: (report) => isClear(report, `bracket.${number}`),
  })));
}

/** Where numbers stand by themselves their places are said as they are, and one more on a side that has
 * none. */
function newPlaces(number: number, fields: readonly FieldValue[], report: Report | null): Addition[] {
  const sides = sidesOf(fields);
  const chosen = fields.find((one) => one.key === 'numerals.sides');
  const out = chosen?.given ? [{ key: chosen.key, value: '' }] : [];
  const byHand = fields.filter((one) => one.form === 'numerals.place.side').map((one) => one.shown);
  const there = byHand.length > 0 ? [] : (report?.bumpers ?? []).flatMap(({ name, numerals }) => numerals
    .filter((one) => one.from === 0).map((one) => ({ ...one, name })))
    .sort((a, b) => Number(a.subject.split('.')[1]) - Number(b.subject.split('.')[1]));
  const before = there.flatMap(({ side, name, whole, text }, k) => keysOf('numerals.place', number + k, {
    side: writeToml(side), bumper: writeToml(name), ...(whole ? {} : { split: String(text.length) }),
  }));
  const next = number + there.length;
  const taken = [...byHand, ...there.map((one) => one.side)];
  const one = (keys: Record<string, string>): Addition =>
    ({ number: next, changes: [...out, ...before, ...keysOf('numerals.place', next, keys)] });
  const free = sides.filter((side) => !taken.includes(side)).map((side) => one({ side: writeToml(side) }));
  if (there.length > 0) return [...free, { number: next - 1, changes: [...out, ...before] }];
  const second = sides.flatMap((side) => bumpersOf(fields).map((bumper) =>
    one({ side: writeToml(side), bumper: writeToml(bumper) })));
  return [...free, ...second];
}

export function additions(path: string, fields: readonly FieldValue[], report: Report | null): Addition[] {
  const metric = fields.find((one) => one.key === 'job.units')?.shown === 'mm';
  const number = countOf(path, fields) + 1;
  switch (path) {
    case 'bracket':
      return newBrackets(number, fields, metric);
    case 'opening':
      return newOpenings(number, fields, metric, report);
    case 'bumper':
      return newBumpers(number, fields, report);
    case 'numerals.place':
      return newPlaces(number, fields, report);
    case 'sight.blind': {
      const box = metric ? '[[0, 0, 0], [100, 150, 250]]' : '[[0, 0, 0], [4, 6, 10]]';
      return [{ number, changes: keysOf(path, number, { box }) }];
    }
    default:
      return [];
  }
}
