// Arrow keys as ways in a picture.
import type { Handle } from './adopt';
import type { Point } from './map';

export const kArrows: Record<string, Point | undefined> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
};

/** Whether it moves a handle, rather than goes on to the next. */
export function isAlong(handle: Handle, arrow: Point): boolean {
  const isLevel = Math.abs(handle.way.x) >= Math.abs(handle.way.y);
  return isLevel ? arrow.x !== 0 : arrow.y !== 0;
}
