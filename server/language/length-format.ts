import type { Units } from '../job/job.ts';

/** Millimetres in an inch, by definition (international yard, 1959). */
export const INCH = 25.4;

/** A number as text with its unit apart, so that the two can be set in different sizes. */
export type Parts = { readonly number: string; readonly unit: string };

/** A number with a fixed count of decimals and a true minus; nothing is never shown as minus nothing. */
export function fixed(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `\u2212${text}` : text;
}

/** Inches to the nearest 1/fraction: '1 1/2', '−3/8', '0'. */
function inchFraction(mm: number, fraction: number): string {
  const steps = Math.round((Math.abs(mm) / INCH) * fraction);
  if (steps === 0) return '0';
  const whole = Math.floor(steps / fraction);
  let above = steps % fraction;
  let below = fraction;
  while (above > 0 && above % 2 === 0) {
    above /= 2;
    below /= 2;
  }
  const text = [whole > 0 ? String(whole) : '', above > 0 ? `${String(above)}/${String(below)}` : ''];
  return (mm < 0 ? '\u2212' : '') + text.filter((part) => part !== '').join(' ');
}

/** A length in the job's unit: millimetres to 0.1, or inches to the finest fraction of the job. */
export function lengthParts(mm: number, units: Units): Parts {
  return units.length === 'mm'
    ? { number: fixed(mm, 1), unit: 'mm' }
    : { number: inchFraction(mm, units.fraction), unit: 'in' };
}

export function formatLength(mm: number, units: Units): string {
  const { number, unit } = lengthParts(mm, units);
  return `${number} ${unit}`;
}

/** Decimals without closing zeros. */
const trimmed = (value: number, decimals: number): string =>
  fixed(value, decimals)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '');

/**
 * The same length in the unit that the job does not use, to show beside a field what was understood: millimetres to
 * 0.001, inches as a fraction where it is one to the last 1/64, else to 0.001.
 */
export const formatInOtherUnit = (mm: number, units: Units): string =>
  formatClosely(mm, { ...units, length: units.length === 'mm' ? 'inch' : 'mm' });

/** A length as a caliper reads it: what is typed stays what it is, a wall does not become 1/16 in. */
export function formatClosely(mm: number, units: Units): string {
  const { number, unit } = closeParts(mm, units);
  return `${number} ${unit}`;
}

export function closeParts(mm: number, units: Units): Parts {
  if (units.length === 'mm') return { number: trimmed(mm, 3), unit: 'mm' };
  const steps = (mm / INCH) * 64;
  const isFraction = Math.abs(steps - Math.round(steps)) < 1e-6;
  return { number: isFraction ? inchFraction(mm, 64) : fixed(mm / INCH, 3), unit: 'in' };
}

/**
 * The text that stands in a field nobody has typed in: short, and read back as the same length to 0.0005 mm.
 * Inches are a fraction where the length is one, and a decimal where it is not.
 */
export function lengthForField(mm: number, units: Units): string {
  if (units.length === 'mm') return trimmed(mm, 3);
  const steps = (mm / INCH) * units.fraction;
  const exact = Math.abs(steps - Math.round(steps)) < 1e-9 * Math.max(1, Math.abs(steps));
  return exact ? inchFraction(mm, units.fraction) : trimmed(mm / INCH, 5);
}

/** A plain number for a field: at most six decimals, no closing zeros. */
export const numberForField = (value: number): string => trimmed(value, 6);
