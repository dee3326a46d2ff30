// Where in a picture a sign stands for what is wrong.
import type { Point } from './map';
import type { Drawn } from './picture';
import { lightOf, litOf } from './subjects';
import type { Wrong } from './wrongs';

/** From a part to its sign, and from one sign to the next, in pixels. */
const kSign = 11;
const kApart = 18;

export interface Sign {
  /** Pixels of what was drawn. */
  at: Point;
  words: string[];
}

/** One sign for each, at the first part of it that is shown: eight boards are one trouble. What is
 * wrong with the same place has one sign. */
export function signsOf(drawn: Drawn, wrongs: readonly Wrong[]): Sign[] {
  const signs: Sign[] = [];
  for (const wrong of wrongs) {
    const places = elementsOf(drawn, wrong).flatMap((element) => placesAt(element, drawn));
    const at = places.find((place) => isFree(place, drawn)) ?? places.find((place) => isInside(place, drawn));
    if (!at) continue;
    const there = signs.find((sign) => Math.hypot(sign.at.x - at.x, sign.at.y - at.y) < kApart);
    if (!there) signs.push({ at, words: [wrong.words] });
    else if (!there.words.includes(wrong.words)) there.words.push(wrong.words);
  }
  return signs;
}

/** The first element of each mark, in the order of what is wrong. */
function elementsOf({ marks, kind }: Drawn, { subjects }: Wrong): SVGElement[] {
  return subjects.flatMap((subject) =>
    [...marks.values()].flatMap((one) => litOf(one, lightOf(one, [subject], kind)).slice(0, 1)));
}

/** At its ends, where it hides the least of it, then beside them, then on what of it is in sight. */
function placesAt(element: SVGElement, { svg, size }: Drawn): Point[] {
  const scale = size.width / Number(svg.getAttribute('viewBox')?.split(' ')[2]);
  const box = (element as SVGGraphicsElement).getBBox();
  const [left, top] = [scale * box.x, scale * box.y];
  const [right, bottom] = [left + scale * box.width, top + scale * box.height];
  const middle = { x: (left + right) / 2, y: (top + bottom) / 2 };
  const level = [{ x: right + kSign, y: middle.y }, { x: left - kSign, y: middle.y }];
  const upright = [{ x: right, y: top - kSign }, { x: left, y: top - kSign }, { x: right, y: bottom + kSign }];
  const within = (share: number, from: number, to: number, most: number) =>
    (1 - share) * Math.max(from, 0) + share * Math.min(to, most);
  return [
    ...(box.width > 2 * box.height ? [...level, ...upright] : [...level.slice(0, 1), ...upright, ...level.slice(1)]),
    ...(right < 0 || left > size.width || bottom < 0 || top > size.height ? []
      : [0.5, 0.25, 0.75].map((share) => ({
        x: within(box.width > box.height ? share : 0.5, left, right, size.width),
        y: within(box.width > box.height ? 0.5 : share, top, bottom, size.height),
      }))),
  ];
}

function isInside({ x, y }: Point, { size }: Drawn): boolean {
  return x >= kSign && y >= kSign && x <= size.width - kSign && y <= size.height - kSign;
}

/** In sight, and neither on words nor on a handle. */
function isFree(at: Point, drawn: Drawn): boolean {
  const isOnWords = drawn.said.some(({ middle, length, turn }) => {
    const isUpright = Math.abs(Math.sin((turn * Math.PI) / 180)) > 0.7;
    const [along, across] = isUpright ? [at.y - middle.y, at.x - middle.x] : [at.x - middle.x, at.y - middle.y];
    return Math.abs(along) < length / 2 + kSign && Math.abs(across) < kApart;
  });
  const isOnHandle = drawn.handles.some((one) => Math.hypot(one.at.x - at.x, one.at.y - at.y) < kApart);
  return isInside(at, drawn) && !isOnWords && !isOnHandle;
}
