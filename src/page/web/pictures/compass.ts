// Where somebody stands round the machine: bearings in degrees, 0 straight ahead of it, growing to
// its left, and distances on the round chart.
import type { Rings } from './adopt';
import type { Point } from './map';
import { say } from '../words/en';

const words = say.pictures;

/** From -180 to 180: to the machine's right and to its left. */
export function turned(bearing: number): number {
  const turn = ((bearing % 360) + 360) % 360;
  return turn > 180 ? turn - 360 : turn;
}

export function roundWords(bearing: number): string {
  const turn = Math.round(turned(bearing));
  if (turn === 0) return words.ahead;
  if (Math.abs(turn) === 180) return words.behind;
  return turn > 0 ? words.toLeft(turn) : words.toRight(-turn);
}

/** On the chart the machine's front is up. */
export function placeOn(rings: Rings, bearing: number, mm: number): Point {
  const angle = (bearing * Math.PI) / 180;
  const px = pxOf(rings, mm);
  return { x: rings.center.x - px * Math.sin(angle), y: rings.center.y - px * Math.cos(angle) };
}

export function standAt(rings: Rings, at: Point): { bearing: number; mm: number } {
  const x = at.x - rings.center.x;
  const y = at.y - rings.center.y;
  const bearing = (Math.atan2(-x, -y) * 180) / Math.PI;
  return { bearing: (bearing + 360) % 360, mm: mmOf(rings, Math.hypot(x, y)) };
}

function between(pairs: readonly (readonly [number, number])[], x: number): number {
  const [first] = pairs;
  const last = pairs[pairs.length - 1];
  if (!first || !last) return 0;
  if (x <= first[0]) return first[1];
  for (let k = 1; k < pairs.length; ++k) {
    const a = pairs[k - 1];
    const b = pairs[k];
    if (a && b && x <= b[0]) return a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0] || 1);
  }
  return last[1];
}

/** Straight between the chart's own distances; past the last, the last. */
function pxOf(rings: Rings, mm: number): number {
  return between(rings.radii.map((one) => [one.mm, one.px] as const), mm);
}
function mmOf(rings: Rings, px: number): number {
  return between(rings.radii.map((one) => [one.px, one.mm] as const), px);
}
