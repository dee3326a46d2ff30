// Between places of the model, in millimeters with y up, and pixels of the element that shows them,
// with y down from its upper left corner.

export interface Point {
  x: number;
  y: number;
}
export interface Size {
  width: number;
  height: number;
}

/** As the core's pictures say it, in pixels of the element. */
export interface PictureMap {
  mmPerPx: number;
  /** Where the model's 0, 0 lies. */
  origin: Point;
  /** The model's x runs to the left. */
  mirrored: boolean;
}

function toPx(map: PictureMap, mm: Point): Point {
  const x = mm.x / map.mmPerPx;
  return { x: map.origin.x + (map.mirrored ? -x : x), y: map.origin.y - mm.y / map.mmPerPx };
}

function toMm(map: PictureMap, px: Point): Point {
  const x = map.mmPerPx * (px.x - map.origin.x);
  return { x: map.mirrored ? -x : x, y: map.mmPerPx * (map.origin.y - px.y) };
}

/** What an element of that size shows, as the core takes it: two corners. */
export function windowOf(map: PictureMap, size: Size): [number, number, number, number] {
  const a = toMm(map, { x: 0, y: size.height });
  const b = toMm(map, { x: size.width, y: 0 });
  return [a.x, a.y, b.x, b.y];
}

/** How a picture lies on the element: each of its places times `scale`, then moved. */
export interface Lie {
  scale: number;
  x: number;
  y: number;
}
export const asDrawn: Lie = { scale: 1, x: 0, y: 0 };

/** How a picture that was drawn by one map lies where another is wanted. */
export function lieOf(drawn: PictureMap, wanted: PictureMap): Lie {
  if (drawn.mirrored !== wanted.mirrored) return asDrawn;
  const scale = drawn.mmPerPx / wanted.mmPerPx;
  return {
    scale,
    x: wanted.origin.x - scale * drawn.origin.x,
    y: wanted.origin.y - scale * drawn.origin.y,
  };
}

export function laid(lie: Lie, p: Point): Point {
  return { x: lie.scale * p.x + lie.x, y: lie.scale * p.y + lie.y };
}

/** So many times as large, with the place under `at` where it was. */
export function zoomed(map: PictureMap, times: number, at: Point): PictureMap {
  return {
    ...map,
    mmPerPx: map.mmPerPx / times,
    origin: {
      x: at.x + times * (map.origin.x - at.x),
      y: at.y + times * (map.origin.y - at.y),
    },
  };
}

export function moved(map: PictureMap, by: Point): PictureMap {
  return { ...map, origin: { x: map.origin.x + by.x, y: map.origin.y + by.y } };
}

/** The same, moved so that its middle shows a place that `whole` has, too. */
export function kept(map: PictureMap, whole: PictureMap, size: Size): PictureMap {
  const middle = { x: size.width / 2, y: size.height / 2 };
  const at = toPx(whole, toMm(map, middle));
  const inside = {
    x: Math.min(Math.max(at.x, 0), size.width),
    y: Math.min(Math.max(at.y, 0), size.height),
  };
  const scale = whole.mmPerPx / map.mmPerPx;
  return moved(map, { x: scale * (at.x - inside.x), y: scale * (at.y - inside.y) });
}

export function isWithin({ x, y }: Point, size: Size): boolean {
  return x >= 0 && y >= 0 && x <= size.width && y <= size.height;
}

export function dot(a: Point, b: Point): number {
  return a.x * b.x + a.y * b.y;
}

export function minus(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y };
}
