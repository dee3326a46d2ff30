// An opening goes to another side, in one step: bumpers' ends beside it go with it, or end on the side
// where it was, and others make room for it.
import type { FieldValue, KeyChange } from 'swathe';
import type { FieldsGiven } from './context';
import { roomsFor } from './new_bumper';
import { endsAt, endsBack } from './opening_ends';
import { writeToml } from './toml_value';
import { best } from './trial';
import type { Report } from './trial';
import { inTurn } from './turns';
import { typeInto } from './use_field';

function waysTo(side: string, number: number, fields: readonly FieldValue[], report: Report | null): KeyChange[][] {
  const moved = { key: `opening.${number}.side`, value: writeToml(side) };
  const along = endsAt(number, fields).map((key) => ({ key, value: writeToml([side, 'opening']) }));
  const anew = endsBack(number, fields).flatMap((back) => {
    const then = fields.map((one) => ({ ...one, value: back.find(({ key }) => key === one.key)?.value ?? one.value }));
    return roomsFor(side, then, report).map((room) => [moved, ...back, ...room]);
  });
  const ways = [[moved, ...along], ...anew];
  // Its distance from a corner of the side where it was may be none from one of this side.
  const middle = { key: `opening.${number}.center`, value: '' };
  const isPlaced = fields.some(({ key, given }) => key === middle.key && given);
  return isPlaced ? [...ways, ...ways.map((way) => [...way, middle])] : ways;
}

/** `key`: its side's, "opening.1.side". Where no way to do it is found the side alone is changed. */
export async function moveOpening(key: string, side: string, { bench, apart }: FieldsGiven): Promise<void> {
  const number = Number(key.split('.')[1]);
  const job = bench.jobs;
  const tried = endsAt(number, bench.fields.peek()).length === 0 ? [] : await bench.during(inTurn(() => apart((core) =>
    best(core, bench.text.peek(), bench.file.peek(), (report) =>
      waysTo(side, number, bench.fields.peek(), report).map((changes) => ({ changes }))))).catch(() => []));
  if (job !== bench.jobs) return;
  if ('found' in tried) await bench.set(tried.found.changes);
  else await typeInto(bench, key, writeToml(side));
}
