import type { Units } from '../job/job.ts';
import type { Band, Figure, Unit } from '../plan/figure.ts';
import { unitWords } from './en/units.ts';
import { INCH, fixed, formatClosely, lengthParts, type Parts } from './length-format.ts';

/** Decimals that each unit is shown with (our own choice: one more than a shop can read off). */
const DECIMALS: Readonly<Record<Unit, number>> = {
  mm: 1,
  m: 3,
  mm2: 1,
  mm3: 0,
  mm4: 0,
  deg: 1,
  'mm/deg': 2,
  N: 0,
  kg: 2,
  g: 1,
  'kg/m': 3,
  'N/m': 0,
  'kg/m3': 0,
  'N.m': 1,
  MPa: 0,
  L: 2,
  'L/m': 3,
  'L/min': 1,
  'mL/min': 1,
  m3: 3,
  s: 0,
  min: 1,
  h: 2,
  d: 1,
  'mm/s': 1,
  Pa: 1,
  bar: 1,
  ppm: 0,
  percent: 1,
  ratio: 3,
  count: 0,
  degC: 0,
  minor: 0,
  km: 0,
  'min/m': 1,
  A: 0,
  'A/mm': 0,
  V: 1,
  K: 0,
  'kJ/mm': 3,
  'J/mm': 0,
  um: 2,
  'mm/K': 4,
  'm2/s': 7,
  'J/m3K': 0,
  'W/m2K': 0,
  '1/K': 7,
};

/** Small numbers get one or two decimals more, so that they keep a figure to read. */
function decimalsFor(value: number, unit: Unit): number {
  const usual = DECIMALS[unit];
  const size = Math.abs(value);
  if (unit === 'count' || unit === 'minor' || size === 0) return usual;
  if (unit === 'deg') return size < 10 && size >= 0.005 ? 2 : 1;
  if (unit === 'ratio' && size >= 10) return 1;
  if (size < 1) return Math.min(usual + 2, Math.max(usual, Math.ceil(-Math.log10(size)) + 1));
  return size < 10 && usual === 0 ? 1 : usual;
}

/** A time in the words of a wall clock: 45 s, 4 min 30 s, 1 h 5 min. Rounded up to a whole second or minute. */
export function durationParts(seconds: number): Parts {
  const whole = Math.ceil(seconds - 1e-9);
  if (whole < 60) return { number: String(whole), unit: 's' };
  if (whole < 3600) {
    const rest = whole % 60;
    return rest === 0
      ? { number: String(whole / 60), unit: 'min' }
      : { number: `${String(Math.floor(whole / 60))} min ${String(rest)}`, unit: 's' };
  }
  const minutes = Math.ceil(whole / 60);
  return { number: `${String(Math.floor(minutes / 60))} h ${String(minutes % 60)}`, unit: 'min' };
}

/** A value with its unit in words, in the job's unit of length. */
export function quantityParts(value: number, unit: Unit, units: Units): Parts {
  if (unit === 'mm' && Math.abs(value) < 0.0005) return { number: '0', unit: units.length === 'mm' ? 'mm' : 'in' };
  if (unit === 'mm') {
    // walls, gaps and steps are read with a caliper, not a tape
    const small = units.length === 'mm' && value !== 0 && Math.abs(value) < 10;
    return small
      ? { number: fixed(value, Math.max(2, decimalsFor(value, unit))), unit: 'mm' }
      : lengthParts(value, units);
  }
  if (unit === 's' && value >= 0) return durationParts(value);
  if (unit === 'mm/deg' && units.length === 'inch') return { number: fixed(value / INCH, 3), unit: 'in/°' };
  const number = fixed(value, decimalsFor(value, unit));
  return unit === 'deg' ? { number: `${number}°`, unit: '' } : { number, unit: unitWords[unit] };
}

export function formatQuantity(value: number, unit: Unit, units: Units): string {
  const { number, unit: words } = quantityParts(value, unit, units);
  return words === '' ? number : `${number} ${words}`;
}

/** Lengths below this are read with a caliper, not a tape [mm]; ones below that get a decimal more. */
const CALIPER = 10;
const FINE = 0.1;
/** Half of the last decimal of an inch that is ever shown [mm]. */
const NOTHING = 0.00005 * INCH;

/** A value in a sentence that weighs it against another: small inches to 0.001, where a fraction would say nothing. */
export function formatMeasured(value: number, unit: Unit, units: Units): string {
  const size = Math.abs(value);
  if (unit !== 'mm' || units.length === 'mm' || size >= CALIPER || size < NOTHING)
    return formatQuantity(size < NOTHING && unit === 'mm' && units.length === 'inch' ? 0 : value, unit, units);
  return size < FINE ? `${fixed(value / INCH, 4)} in` : formatClosely(value, units);
}

export const figureParts = (figure: Figure, units: Units): Parts => quantityParts(figure.value, figure.unit, units);

export const formatFigure = (figure: Figure, units: Units): string => formatQuantity(figure.value, figure.unit, units);

/** '± 1.2 mm'. A band in inches keeps three decimals: rounding it to a fraction would make most bands nothing. */
export function formatBand(band: Band, unit: Unit, units: Units): string {
  if (unit === 'mm' && units.length === 'inch') return `± ${fixed(band.plusMinus / INCH, 3)} in`;
  if (unit === 's') return `± ${fixed(band.plusMinus, band.plusMinus < 10 ? 1 : 0)} s`;
  return `± ${formatQuantity(band.plusMinus, unit, units)}`;
}

/** A band below this part of the last digit of its value says nothing; our own choice. */
const WORTH_SAYING = 0.05;

/** '± 1.2 mm' beside a value; empty where it has none, or one so small that the digits shown do not know it. */
export function shownBand({ value, unit, band }: Figure, units: Units): string {
  if (band === null) return '';
  const said = formatBand(band, unit, units);
  const scale = unit === 'mm' || unit === 'mm/deg' ? (units.length === 'inch' ? INCH : 1) : 1;
  const decimals = /\.(\d+)/.exec(quantityParts(value, unit, units).number)?.[1]?.length;
  const isNothing = !/[1-9]/.test(said);
  // a fraction of an inch or a whole number has no last digit to go by
  const isBelow = decimals !== undefined && band.plusMinus / scale < WORTH_SAYING * 10 ** -decimals;
  return isNothing || isBelow ? '' : said;
}

/** The size of a ± alone, to stand in a sentence: '1.20 mm', '0.047 in', never a fraction. */
export const formatPlusMinus = (plusMinus: number, unit: Unit, units: Units): string =>
  formatBand({ plusMinus, from: [] }, unit, units).replace('± ', '');

/** The same as number and unit apart. */
export function plusMinusParts({ value, unit }: Figure, units: Units): Parts {
  const inInches = unit === 'mm' && units.length === 'inch';
  return inInches ? { number: fixed(value / INCH, 3), unit: 'in' } : quantityParts(value, unit, units);
}

/** A true minus, as sheets and page alike write one before an amount. */
const signed = (text: string): string => text.replace('-', '\u2212');

/** Money from minor units, with the currency's code so that no two dollars are confused: 'EUR 1,234.50'. */
export function formatMoney(minor: number, currency: string, minorDigits: number): string {
  return signed(
    new Intl.NumberFormat('en', {
      style: 'currency',
      currency,
      currencyDisplay: 'code',
      minimumFractionDigits: minorDigits,
      maximumFractionDigits: minorDigits,
    }).format(minor / 10 ** minorDigits),
  );
}

/** The same where something above it says the currency: '1,234.50'. */
export const amountText = (minor: number, minorDigits: number): string =>
  signed(
    new Intl.NumberFormat('en', { minimumFractionDigits: minorDigits, maximumFractionDigits: minorDigits }).format(
      minor / 10 ** minorDigits,
    ),
  );
