// Lengths of things that are moved, and the steps in which they are.

export type Units = 'in' | 'mm';

const kInch = 25.4;

/** What an arrow key moves by, and what a drag is snapped to. */
export const stepOf = (units: Units): number => (units === 'in' ? kInch / 16 : 1);
export const snapOf = (units: Units): number => (units === 'in' ? kInch / 4 : 5);

/** "20 ft" or "6.1 m": how far away somebody stands. */
export function walked(mm: number, units: Units): string {
  const value = units === 'in' ? mm / (12 * kInch) : mm / 1000;
  return `${Math.round(value * 10) / 10} ${units === 'in' ? 'ft' : 'm'}`;
}

export function within(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), most);
}

/** The nearest place that is a whole number of steps, within the limits. */
export function snapped(mm: number, units: Units, least: number, most: number): number {
  const step = snapOf(units);
  return within(step * Math.round(mm / step), least, most);
}

/** A length in the job's own unit, for a slider's number. */
export function rounded(mm: number, units: Units): number {
  return Math.round((units === 'in' ? mm / kInch : mm) * 1000) / 1000;
}
