// What the parts of a picture are called, and where they are.
import type { Handle } from './adopt';
import { lengthWords } from '../words/lengths';
import type { Units } from './lengths';
import { namesIn } from './subjects';
import { say } from '../words/en';

const words = say.pictures;

/** "bracket 2", "gap between A and B". */
export function nameOf(handle: Handle): string {
  const [first = '', second = ''] = handle.subject.split(' ').map((one) => namesIn(one)[1] ?? '');
  switch (handle.kind) {
    case 'bracket':
      return words.bracket(first);
    case 'gap':
      return words.gap(first, second);
    case 'end':
      return words.end(first, handle.side);
    case 'opening':
      return words.opening(handle.side);
    default:
      return words.numeral(handle.side);
  }
}

/** "9 in from the corner with front". */
export function placeOf(handle: Handle, mm: number, units: Units): string {
  const isMiddle = handle.kind === 'opening' || handle.kind === 'numeral';
  const said = isMiddle ? words.middleFromCorner : words.fromCorner;
  return said(lengthWords(mm, units), handle.corner);
}
