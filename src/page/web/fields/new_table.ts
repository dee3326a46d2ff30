// The keys of one more of a table that there may be many of, with sizes to be changed.
import type { KeyChange } from 'swathe';
import type { Bench } from '../state/bench';
import { readToml } from './toml_value';

/** A name that no bumper has: "A", "B", ... */
function freeName(taken: readonly string[]): string {
  for (let k = 0; k < 26; ++k) {
    const name = String.fromCharCode(65 + k);
    if (!taken.includes(name)) return name;
  }
  return `N${taken.length + 1}`;
}

export function addChanges(path: string, number: number, bench: Bench): KeyChange[] {
  const fields = bench.fields.peek();
  const metric = bench.opened.peek()?.job.units === 'mm';
  const size = (inches: string, millimeters: string) => `"${metric ? millimeters : inches}"`;
  const shown = (key: string) => fields.find((one) => one.key === key)?.value;
  const read = readToml(shown('frame.sides') ?? '');
  const sides = Array.isArray(read) ? read.map(String) : ['front', 'left', 'back', 'right'];
  const [first = 'front', second = 'left'] = sides;
  const give = (keys: Record<string, string>): KeyChange[] =>
    Object.entries(keys).map(([key, value]) => ({ key: `${path}.${number}.${key}`, value }));
  switch (path) {
    case 'bracket': {
      // Beside those that are there already.
      const before = fields.filter((one) => one.form === 'bracket.side' && one.shown === second).length;
      return give({
        side: `"${second}"`,
        at: `[${size(`${9 + 5 * before} in`, `${230 + 130 * before} mm`)}, "${first}"]`,
        width: size('3 in', '75 mm'), height: size('2 in', '50 mm'),
      });
    }
    case 'opening': {
      // Bumpers that end in the middle of that side now end at the opening.
      const ends = fields.filter((one) => one.form === 'bumper.from' || one.form === 'bumper.to');
      const sideOf = (value: string) => {
        const end = readToml(value);
        return Array.isArray(end) && end[1] !== 'corner' ? String(end[0]) : '';
      };
      const side = sides.find((one) => ends.some((end) => sideOf(end.value) === one)) ?? first;
      return [
        ...give({ side: `"${side}"`, width: size('14 in', '350 mm') }),
        ...ends.filter((end) => sideOf(end.value) === side)
          .map((end) => ({ key: end.key, value: `["${side}", "opening"]` })),
      ];
    }
    case 'bumper': {
      const names = fields.filter((one) => one.form === 'bumper.name').map((one) => one.shown);
      return give({
        name: `"${freeName(names)}"`,
        from: shown(`bumper.${number - 1}.to`) ?? `["${first}", "50%"]`,
        to: shown('bumper.1.from') ?? `["${first}", "50%"]`,
      });
    }
    case 'numerals.place':
      return give({ side: `"${second}"` });
    case 'sight.blind':
      return give({ box: metric ? '[[0, 0, 0], [100, 150, 250]]' : '[[0, 0, 0], [4, 6, 10]]' });
    default:
      return [];
  }
}
