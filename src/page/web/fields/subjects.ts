// Which parts of the model a field says, as marks in pictures carry them.
import type { FieldValue } from 'swathe';

/** A name as a subject has it: signs of ASCII but letters, digits, "-" and "_" are escaped. */
function name(text: string): string {
  return text.replace(/[\u0000-\u007f]/g, (sign) => /[\w-]/.test(sign) ? sign
    : `%${sign.charCodeAt(0).toString(16).toUpperCase().padStart(2, '0')}`);
}

function shownOf(fields: readonly FieldValue[], key: string): string {
  return fields.find((one) => one.key === key)?.shown ?? '';
}

export function subjectsOf(key: string, fields: readonly FieldValue[]): string[] {
  const [table, second = '', third = ''] = key.split('.');
  switch (table) {
    case 'frame':
      if (second === 'width') return ['side.front', 'side.back'];
      if (second === 'depth') return ['side.left', 'side.right'];
      return ['frame'];
    case 'boards':
    case 'padding':
    case 'cloth':
      return [table];
    case 'bumper': {
      const bumper = `bumper.${name(shownOf(fields, `bumper.${second}.name`))}`;
      if (third === 'from') return [`${bumper}.start`];
      if (third === 'to') return [`${bumper}.end`];
      return [bumper];
    }
    case 'bracket':
      return [`bracket.${second}`];
    case 'opening':
      return [`side.${name(shownOf(fields, `opening.${second}.side`))}`];
    case 'numerals':
      return second === 'place' ? [`numeral.${third}`] : ['numerals'];
    case 'sight':
      return second === 'blind' ? [`blind.${third}`] : [];
    default:
      return key === 'job.number' ? ['numerals'] : [];
  }
}
