// Where the frame has no bumper: from where one ends to where another begins, counter-clockwise. Which
// of them is the next one the core tells: any other lies in the way.
import type { FieldValue } from 'swathe';
import { readToml, writeToml } from './toml_value';

/** The ends of a bumper that would fill it, as a job has them. */
export interface Stretch {
  from: string;
  to: string;
}

export function freeStretches(fields: readonly FieldValue[], sides: readonly string[]): Stretch[] {
  const listed = (form: string) => fields.filter((one) => one.form === form)
    .map(({ value }) => readToml(value)).filter(Array.isArray);
  /** Of a corner, where a bumper begins at another side than where one ends. */
  const along = (end: unknown[], by: number): string => {
    const at = sides.indexOf(String(end[0]));
    const side = end[1] === 'corner' && at >= 0 ? sides[(at + by + sides.length) % sides.length]! : String(end[0]);
    return writeToml([side, ...end.slice(1).map(String)]);
  };
  const isOpening = (end: unknown[]) => end[1] === 'opening';
  // All of them as if a bumper began there.
  const from = listed('bumper.from'), to = listed('bumper.to');
  const begun = from.map((end) => along(end, 0)), ended = to.map((end) => along(end, 1));
  // Behind an end at an opening there is the opening.
  const openings = fields.filter((one) => one.form === 'opening.side').map((one) => writeToml([one.shown, 'opening']));
  const starts = [...ended.filter((_, k) => !isOpening(to[k]!)), ...openings].filter((one) => !begun.includes(one));
  const stops = [...begun.filter((_, k) => !isOpening(from[k]!)), ...openings].filter((one) => !ended.includes(one));
  return starts.flatMap((start) => stops.filter((stop) => stop !== start)
    .map((stop) => ({ from: start, to: along(readToml(stop) as unknown[], -1) })));
}
