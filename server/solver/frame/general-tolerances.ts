import { RADIANS } from '../geometry/angle.ts';
import type { SourceKey } from '../sources.ts';

/** A general tolerance: ± in the unit of what it is for, and where it is from. */
export type GeneralTolerance = { readonly plusMinus: number; readonly source: SourceKey };

/** One class: a value for each range of nominal sizes, null where the standard gives none. */
type Row = { readonly values: readonly (number | null)[]; readonly source: SourceKey };

/** Least nominal size and the largest of each range [mm]; a limit belongs to the range below it. */
type Ranges = { readonly least: number; readonly upTo: readonly number[] };

const ISO_13920_LENGTHS: Ranges = {
  least: 2,
  upTo: [30, 120, 400, 1000, 2000, 4000, 8000, 12_000, 16_000, 20_000, Infinity],
};
const ISO_2768_LENGTHS: Ranges = { least: 0.5, upTo: [3, 6, 30, 120, 400, 1000, 2000, 4000] };

/**
 * Lengths, ± [mm]. ISO 13920 table 1 (welded work), seen in a secondary copy. ISO 2768-1:1989 table 1; f, m and v seen
 * in secondary copies, c from memory, because some copies print the small sizes of an older national standard.
 */
const LENGTHS = {
  'iso-13920-a': { values: [1, 1, 1, 2, 3, 4, 5, 6, 7, 8, 9], source: 'iso-13920' },
  'iso-13920-b': { values: [1, 2, 2, 3, 4, 6, 8, 10, 12, 14, 16], source: 'iso-13920' },
  'iso-13920-c': { values: [1, 3, 4, 6, 8, 11, 14, 18, 21, 24, 27], source: 'iso-13920' },
  'iso-13920-d': { values: [1, 4, 7, 9, 12, 16, 21, 27, 32, 36, 40], source: 'iso-13920' },
  'iso-2768-f': { values: [0.05, 0.05, 0.1, 0.15, 0.2, 0.3, 0.5, null], source: 'iso-2768-1' },
  'iso-2768-m': { values: [0.1, 0.1, 0.2, 0.3, 0.5, 0.8, 1.2, 2], source: 'iso-2768-1' },
  'iso-2768-c': { values: [0.2, 0.3, 0.5, 0.8, 1.2, 2, 3, 4], source: 'iso-2768-1-memory' },
  'iso-2768-v': { values: [null, 0.5, 1, 1.5, 2.5, 4, 6, 8], source: 'iso-2768-1' },
} as const satisfies Record<string, Row>;

/** Classes that have a table of lengths and one of angles. */
export type GeneralClass = keyof typeof LENGTHS;

const lengthsOf = (general: GeneralClass): Ranges =>
  general.startsWith('iso-13920') ? ISO_13920_LENGTHS : ISO_2768_LENGTHS;

/** Length of the shorter leg [mm]. */
const ISO_13920_LEGS: Ranges = { least: 0, upTo: [400, 1000, Infinity] };
const ISO_2768_LEGS: Ranges = { least: 0, upTo: [10, 50, 120, 400, Infinity] };

/**
 * Angles by the shorter leg, ± [minutes of arc]. ISO 13920 table 2, seen in a secondary copy. ISO 2768-1 table 3, from
 * memory, because copies differ.
 */
const ANGLES: Readonly<Record<GeneralClass, Row>> = {
  'iso-13920-a': { values: [20, 15, 10], source: 'iso-13920' },
  'iso-13920-b': { values: [45, 30, 20], source: 'iso-13920' },
  'iso-13920-c': { values: [60, 45, 30], source: 'iso-13920' },
  'iso-13920-d': { values: [90, 75, 60], source: 'iso-13920' },
  'iso-2768-f': { values: [60, 30, 20, 10, 5], source: 'iso-2768-1-memory' },
  'iso-2768-m': { values: [60, 30, 20, 10, 5], source: 'iso-2768-1-memory' },
  'iso-2768-c': { values: [90, 60, 30, 15, 10], source: 'iso-2768-1-memory' },
  'iso-2768-v': { values: [180, 120, 60, 30, 20], source: 'iso-2768-1-memory' },
};

const ISO_13920_FORM: Ranges = {
  least: 30,
  upTo: [120, 400, 1000, 2000, 4000, 8000, 12_000, 16_000, 20_000, Infinity],
};

/**
 * Straightness, flatness and parallelism, whole width of the zone [mm]. ISO 13920 table 3; E and F seen in a secondary
 * copy, G and H from memory.
 */
const FORM = {
  'iso-13920-e': { values: [0.5, 1, 1.5, 2, 3, 4, 5, 6, 7, 8], source: 'iso-13920' },
  'iso-13920-f': { values: [1, 1.5, 3, 4.5, 6, 8, 10, 12, 14, 16], source: 'iso-13920' },
  'iso-13920-g': { values: [1.5, 3, 5.5, 9, 11, 16, 20, 22, 25, 25], source: 'iso-13920-memory' },
  'iso-13920-h': { values: [2.5, 5, 9, 14, 18, 26, 32, 36, 40, 40], source: 'iso-13920-memory' },
} as const satisfies Record<string, Row>;

/** Classes of straightness, flatness and parallelism. */
export type FormClass = keyof typeof FORM;

/** A computed size this near to a limit lies on it [mm]. */
const ROUNDING = 1e-6;

/** The value of the range that a nominal size lies in, or undefined below the first range and where none is given. */
function inRange(row: Row, ranges: Ranges, nominal: number): number | undefined {
  if (!(nominal >= ranges.least - ROUNDING)) return undefined;
  const index = ranges.upTo.findIndex((limit) => nominal <= limit + ROUNDING);
  return row.values[index] ?? undefined;
}

/** ± on a length [mm]; undefined where the class has no value for this nominal size [mm], for instance below 2 mm. */
export function linearTolerance(general: GeneralClass, nominal: number): GeneralTolerance | undefined {
  const row = LENGTHS[general];
  const plusMinus = inRange(row, lengthsOf(general), nominal);
  return plusMinus === undefined ? undefined : { plusMinus, source: row.source };
}

/** ± on an angle [rad], by the length of its shorter leg [mm]; undefined for a leg that has no length. */
export function angleTolerance(general: GeneralClass, shorterLeg: number): GeneralTolerance | undefined {
  if (shorterLeg <= 0) return undefined;
  const row = ANGLES[general];
  const minutes = inRange(row, general.startsWith('iso-13920') ? ISO_13920_LEGS : ISO_2768_LEGS, shorterLeg);
  return minutes === undefined ? undefined : { plusMinus: (minutes / 60) * RADIANS, source: row.source };
}

/** What a line or a face may be out of straight, flat or parallel [mm], by its nominal length [mm]; undefined below 30. */
export function formTolerance(form: FormClass, nominal: number): { zone: number; source: SourceKey } | undefined {
  const row = FORM[form];
  const zone = inRange(row, ISO_13920_FORM, nominal);
  return zone === undefined ? undefined : { zone, source: row.source };
}
