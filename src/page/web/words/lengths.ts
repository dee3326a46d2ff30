// Lengths and masses in words, for lists: as a tape measure has them.

const kInch = 25.4;

/** "9 3/16 in" to the nearest sixteenth, or "233 mm". */
export function lengthWords(mm: number, units: 'in' | 'mm'): string {
  if (units === 'mm') return `${Math.round(mm)} mm`;
  const parts = Math.round((Math.abs(mm) / kInch) * 16);
  const whole = Math.floor(parts / 16);
  let over = parts % 16;
  let under = 16;
  while (over > 0 && over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  const sign = mm < 0 && parts > 0 ? '-' : '';
  const words = over === 0 ? `${whole}` : whole === 0 ? `${over}/${under}` : `${whole} ${over}/${under}`;
  return `${sign}${words} in`;
}

const kUnits: Record<string, number> = { in: kInch, '"': kInch, ft: 12 * kInch, mm: 1, cm: 10, m: 1000 };

/** A length as a job has it, "48 in" or "4 ft", in the units of the job; one that is written in another
 * way stays as it is. */
export function lengthIn(units: 'in' | 'mm', written: string | number): string {
  const [, whole = '', above = '0', below = '1', unit = ''] =
    /^\s*(\d+(?:\.\d+)?)(?:\s+(\d+)\/(\d+))?\s*([a-z"]*)\s*$/.exec(String(written)) ?? [];
  const each = kUnits[unit === '' ? units : unit];
  if (whole === '' || each === undefined) return String(written);
  return lengthWords((Number(whole) + Number(above) / Number(below)) * each, units);
}

/** Words whose numbers are not broken where a line ends: "at most 1" and "1/4 in" below it misread. */
export function unbroken(words: string): string {
  return words.replace(/(\d) (?=\d+\/\d|(?:in|ft|yd|mm|cm|m|lb|kg|g)\b|[%°])/g, '$1\u00a0');
}

/** Cloth is sold by the yard: "90 in (2 1/2 yd)". */
export function clothWords(mm: number, units: 'in' | 'mm'): string {
  const quarters = mm / (9 * kInch);
  if (units === 'mm' || Math.abs(quarters - Math.round(quarters)) > 0.01) return lengthWords(mm, units);
  const yards = Math.floor(Math.round(quarters) / 4), rest = ['', '1/4', '1/2', '3/4'][Math.round(quarters) % 4];
  return `${lengthWords(mm, units)} (${[yards || '', rest].filter((one) => one !== '').join(' ')} yd)`;
}

const kGramsOfPound = 453.59237;

export function massWords(grams: number, units: 'in' | 'mm'): string {
  const kilograms = `${(grams / 1000).toFixed(1)} kg`;
  return units === 'mm' ? kilograms : `${(grams / kGramsOfPound).toFixed(1)} lb (${kilograms})`;
}
