// One more of a table, as changes of the job.
import type { KeyChange } from 'swathe';
import type { Candidate } from './trial';

export interface Addition extends Candidate {
  /** Which one of its table it is, counted from 1. */
  number: number;
}

/** Keys of one table with their values. */
export function keysOf(path: string, number: number, keys: Record<string, string>): KeyChange[] {
  return Object.entries(keys).map(([key, value]) => ({ key: `${path}.${number}.${key}`, value }));
}
