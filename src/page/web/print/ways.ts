// The ways to print, counted once for each version of the job.
import type { Swathe, Ways } from 'swathe';

const counted = new WeakMap<Swathe, { version: number; ways: Promise<Ways> }>();

/** Of the version of the job that a core has open. */
export function waysOf(core: Swathe, version: number): Promise<Ways> {
  const known = counted.get(core);
  if (known?.version === version) return known.ways;
  const now = { version, ways: count(core) };
  counted.set(core, now);
  now.ways.catch(() => {
    if (counted.get(core) === now) counted.delete(core);
  });
  return now.ways;
}

/** The core's, and the start sheet before all else. */
async function count(core: Swathe): Promise<Ways> {
  const ways = await core.ways();
  const start = (await core.sheets()).find((sheet) => sheet.kind === 'start');
  if (!start) return ways;
  const { length } = await core.pages(start.stem);
  const file = { name: `${start.stem}.pdf`, pages: length, paper: start.paper, bumper: null };
  return { ...ways, first: [file, ...ways.first] };
}
