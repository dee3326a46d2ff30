// Where one stops when going through a picture by keyboard.
import type { Handle, Said } from './adopt';
import { listOf } from './links';
import { laid, type Lie } from './map';

/** One place to stop at by keyboard. */
export type Stop = { key: string; subject: string; handle: Handle } | { key: string; subject: string; said: Said };

/** Handles, then the names of what has none, each part once. */
export function stopsOf(handles: readonly Handle[], said: readonly Said[]): Stop[] {
  const stops: Stop[] = handles.map((handle) => ({ key: handle.subject, subject: handle.subject, handle }));
  const seen = new Set(stops.map((stop) => stop.key));
  for (const one of said) {
    if (listOf(one.subject).length === 0 || seen.has(one.subject)) continue;
    seen.add(one.subject);
    stops.push({ key: one.subject, subject: one.subject, said: one });
  }
  return stops;
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
