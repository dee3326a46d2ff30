// The four sides from which the machine is looked at square on, and their bearings in degrees.

export const kWays = ['front', 'left', 'back', 'right'] as const;
export type Way = (typeof kWays)[number];
export const bearingOf = (way: Way): number => 90 * kWays.indexOf(way);
