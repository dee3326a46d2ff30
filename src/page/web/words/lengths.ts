// Lengths and masses in words, for lists: as a tape measure has them.

const kInch = 25.4;

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}

/** "28 1/2 in", to the nearest 1/16; "724 mm". */
export function lengthWords(mm: number, units: 'in' | 'mm'): string {
  if (units === 'mm') return `${Math.round(mm)} mm`;
  const parts = Math.round((mm / kInch) * 16);
  const whole = Math.floor(parts / 16), rest = parts % 16;
  if (rest === 0) return `${whole} in`;
  const by = gcd(rest, 16);
  const fraction = `${rest / by}/${16 / by}`;
  return whole === 0 ? `${fraction} in` : `${whole} ${fraction} in`;
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
