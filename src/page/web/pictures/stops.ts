// Where one stops when going through a picture by keyboard.
import type { Handle, Said } from './adopt';
import { listOf } from './links';
import { isWithin, laid, lieOf, type Lie, type Point } from './map';
import type { Drawn } from './picture';

/** One place to stop at by keyboard. */
export type Stop = { key: string; subject: string; handle: Handle } | { key: string; subject: string; said: Said };

/** Handles, then the names of what has none, each part once. */
function stopsIn(handles: readonly Handle[], said: readonly Said[]): Stop[] {
  const stops: Stop[] = handles.map((handle) => ({ key: handle.subject, subject: handle.subject, handle }));
  const seen = new Set(stops.map((stop) => stop.key));
  for (const one of said) {
    if (listOf(one.subject).length === 0 || seen.has(one.subject)) continue;
    seen.add(one.subject);
    stops.push({ key: one.subject, subject: one.subject, said: one });
  }
  return stops;
}

/** Those of what was drawn; of a part of a picture those that lie beyond it, too, as they were when
 * `all` of it was drawn. In one order, whatever part is drawn. */
export function stopsOf(drawn: Drawn, all: Drawn | null): Stop[] {
  const stops = stopsIn(drawn.handles, drawn.said);
  if (drawn.whole || !all?.map || !drawn.map) return stops;
  const lie = lieOf(all.map, drawn.map);
  const moved = stopsIn(all.handles, all.said).map((stop) => laidStop(stop, lie));
  const rest = new Map(stops.map((stop) => [stop.key, stop]));
  const ordered = moved.flatMap((stop) => {
    const here = rest.get(stop.key);
    rest.delete(stop.key);
    return here ?? (isWithin(placeOf(stop), drawn.size) ? [] : stop);
  });
  return [...ordered, ...rest.values()];
}

export function placeOf(stop: Stop): Point {
  return 'handle' in stop ? stop.handle.at : stop.said.middle;
}

function laidStop(stop: Stop, lie: Lie): Stop {
  const at = laid(lie, placeOf(stop));
  return 'handle' in stop
    ? { ...stop, handle: { ...stop.handle, at, mmPerPx: stop.handle.mmPerPx / lie.scale } }
    : { ...stop, said: { ...stop.said, middle: at } };
}

/** Over the words. */
export function boxOf(said: Said, lie: Lie) {
  const at = laid(lie, said.middle);
  return {
    left: `${at.x}px`,
    top: `${at.y}px`,
    width: `${lie.scale * said.length + 8}px`,
    transform: `translate(-50%, -50%) rotate(${said.turn}deg)`,
  };
}
