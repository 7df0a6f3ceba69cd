import type { SourceKey } from '../sources.ts';
import { INCH, type TubeSize } from './section.ts';
import type { ToleranceStandard } from './tolerances.ts';

/** Tubes of one outside diameter [mm] with the walls [mm] that are stocked, and the family they belong to. */
export type StandardSize = {
  readonly family: 'metric' | 'press-fitting' | 'inch' | 'pipe';
  /** What the trade calls it: the diameter, or the nominal pipe size. */
  readonly name: string;
  readonly outsideDiameter: number;
  readonly walls: readonly number[];
  readonly source: SourceKey;
  /** What the family is usually bought to; null where nothing was seen that says it. */
  readonly tolerance: Exclude<ToleranceStandard, 'own'> | null;
};

/**
 * ISO 1127 / EN 10217-7 diameters from memory of the standard; decorative walls are common stock, no source. Diameters
 * of the standard without a wall here (6, 8, 10, 10.2, 13.5, 17.2, 19, 31.8, 51, 57, 73, 82.5) had none to be seen.
 */
const METRIC: readonly (readonly [number, ...number[]])[] = [
  [12, 1, 1.5],
  [14, 1, 1.5],
  [15, 1, 1.5],
  [16, 1, 1.5],
  [18, 1, 1.5],
  [20, 1, 1.5, 2],
  [21.3, 1.6, 2, 2.6],
  [22, 1, 1.2, 1.5],
  [25, 1.2, 1.5, 2],
  [26.9, 1.6, 2, 2.6],
  [28, 1.2, 1.5],
  [30, 1.5, 2],
  [32, 1.5, 2],
  [33.7, 1.6, 2, 2.6, 3.2],
  [35, 1.5, 2],
  [38, 1.5, 2],
  [40, 1.5, 2],
  [42.4, 1.6, 2, 2.6, 3.2],
  [44.5, 1.5, 2],
  [48.3, 1.6, 2, 2.6, 3.2],
  [50, 1.5, 2, 3],
  [54, 1.5, 2],
  [60.3, 1.6, 2, 2.6, 3.2],
  [63.5, 1.5, 2],
  [70, 2],
  [76.1, 1.6, 2, 2.6, 3.2],
  [88.9, 2, 2.6, 3.2],
  [101.6, 2, 3],
  [114.3, 2, 2.6, 3.2, 3.6],
];

/** Diameters above that ISO 1127 does not have; common stock, no source. */
const OUTSIDE_ISO: readonly number[] = [15, 28, 50];

/** EN 10312, series 1 and 2; seen in an excerpt. */
const PRESS_FITTING: readonly (readonly [number, ...number[]])[] = [
  [15, 0.6, 1],
  [18, 0.7, 1],
  [22, 0.7, 1.2],
  [28, 0.8, 1.2],
  [35, 1, 1.5],
  [42, 1.1, 1.5],
  [54, 1.2, 1.5],
  [76.1, 1.5, 2],
  [108, 1.5],
];

/** ASTM A269 / A554 stock, BWG 18, 16, 14 and 11 [in]; common stock, no source. */
const INCH_WALLS = [0.049, 0.065, 0.083, 0.12];
const INCH_DIAMETERS: readonly (readonly [string, number])[] = [
  ['1/2', 0.5],
  ['5/8', 0.625],
  ['3/4', 0.75],
  ['7/8', 0.875],
  ['1', 1],
  ['1-1/4', 1.25],
  ['1-1/2', 1.5],
  ['1-5/8', 1.625],
  ['1-3/4', 1.75],
  ['1.900', 1.9],
  ['2', 2],
  ['2-1/2', 2.5],
  ['3', 3],
  ['3-1/2', 3.5],
  ['4', 4],
];

/** ASME B36.19, schedules 5S, 10S, 40S [mm], below 1/2 in only 10S; to 2 in seen in excerpts. */
const PIPE: readonly (readonly [string, number, ...number[]])[] = [
  ['1/8', 10.29, 1.24],
  ['1/4', 13.72, 1.65],
  ['3/8', 17.14, 1.65],
  ['1/2', 21.34, 1.65, 2.11, 2.77],
  ['3/4', 26.67, 1.65, 2.11, 2.87],
  ['1', 33.4, 1.65, 2.77, 3.38],
  ['1-1/4', 42.16, 1.65, 2.77, 3.56],
  ['1-1/2', 48.26, 1.65, 2.77, 3.68],
  ['2', 60.33, 1.65, 2.77, 3.91],
];
/** The same above 2 in, from memory. */
const LARGE_PIPE: typeof PIPE = [
  ['2-1/2', 73.03, 2.11, 3.05, 5.16],
  ['3', 88.9, 2.11, 3.05, 5.49],
];

const pipe = (table: typeof PIPE, source: SourceKey): StandardSize[] =>
  table.map(([name, outsideDiameter, ...walls]) => ({
    family: 'pipe',
    name,
    outsideDiameter,
    walls,
    source,
    tolerance: 'astm-a312',
  }));

/**
 * Standard sizes. NPS 1-1/2 and 48.3 are the same tube; NPS 1-1/4 and 42.4, NPS 1 and 33.7 are not. Metric tube is
 * bought to D3/T3, as EN 10217-7 and EN 10296-2 have it up to 168.3 mm. Inch tube for frames is mechanical tube, so to
 * A554; A269 is for tube that carries a fluid, and mostly narrower. Nothing was seen on the tolerances of EN 10312.
 */
export const STANDARD_SIZES: readonly StandardSize[] = [
  ...METRIC.map(([outsideDiameter, ...walls]): StandardSize => ({
    family: 'metric',
    name: String(outsideDiameter),
    outsideDiameter,
    walls,
    source: OUTSIDE_ISO.includes(outsideDiameter) ? 'tube-stock' : 'iso-1127-sizes',
    tolerance: 'iso-1127-d3-t3',
  })),
  ...PRESS_FITTING.map(([outsideDiameter, ...walls]): StandardSize => ({
    family: 'press-fitting',
    name: String(outsideDiameter),
    outsideDiameter,
    walls,
    source: 'en-10312',
    tolerance: null,
  })),
  ...INCH_DIAMETERS.map(([name, inches]): StandardSize => ({
    family: 'inch',
    name,
    outsideDiameter: inches * INCH,
    walls: INCH_WALLS.map((wall) => wall * INCH),
    source: 'tube-stock',
    tolerance: 'astm-a554',
  })),
  ...pipe(PIPE, 'asme-b36-19'),
  ...pipe(LARGE_PIPE, 'asme-b36-19-memory'),
];

const WALL_FACTORS = STANDARD_SIZES.flatMap((size) => size.walls.map((wall) => size.outsideDiameter / wall));

/** Least and largest D/t of all standard sizes: outside it a wall is unusual. */
export const USUAL_WALL_FACTOR = { low: Math.min(...WALL_FACTORS), high: Math.max(...WALL_FACTORS) } as const;

/**
 * The wall that a typed one may have been meant for: a stocked wall of this diameter that is a tenth of it (a lost
 * decimal point), else the nearest stocked one; undefined for a diameter that nobody stocks.
 */
export function likelyWall({ outsideDiameter, wall }: TubeSize): number | undefined {
  // 0.1 mm apart is one diameter printed in two units, for instance 48.26 and 48.3
  const walls = STANDARD_SIZES.filter((size) => Math.abs(size.outsideDiameter - outsideDiameter) <= 0.1)
    .flatMap((size) => size.walls)
    .filter((candidate) => candidate < outsideDiameter / 2);
  const tenth = walls.find((candidate) => Math.abs(candidate - wall / 10) < 0.01);
  if (tenth !== undefined) return tenth;
  return [...walls].sort((a, b) => Math.abs(a - wall) - Math.abs(b - wall))[0];
}
