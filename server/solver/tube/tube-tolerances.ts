import type { SourceKey } from '../sources.ts';
import { INCH } from './section.ts';

/** A limit that is a share of the size but never less than a length [–, mm]; the larger of the two applies. */
export type ToleranceClass = { readonly share: number; readonly least: number };

/** ISO 1127, classes of the outside diameter. Ovality is contained in them. Two secondary copies agree. */
export const DIAMETER_CLASSES = {
  D1: { share: 0.015, least: 0.75 },
  D2: { share: 0.01, least: 0.5 },
  D3: { share: 0.0075, least: 0.3 },
  D4: { share: 0.005, least: 0.1 },
} as const satisfies Record<string, ToleranceClass>;

/** ISO 1127, classes of the wall. Eccentricity is contained in them. Two secondary copies agree. */
export const WALL_CLASSES = {
  T1: { share: 0.15, least: 0.6 },
  T2: { share: 0.125, least: 0.4 },
  T3: { share: 0.1, least: 0.2 },
  T4: { share: 0.075, least: 0.15 },
} as const satisfies Record<string, ToleranceClass>;

/**
 * Outside diameters [mm] that one row is for: those beyond the row before it, up to `limit`, which belongs to the
 * row itself (`included`) or to the next one. `plus` and `minus` are on the diameter [mm].
 */
export type DiameterRow = {
  readonly limit: number;
  readonly included: boolean;
  readonly plus: number;
  readonly minus: number;
  /** Share of the wall that it may be over, null where the standard gives no limit, and under [–]. */
  readonly wall: { readonly plus: number | null; readonly minus: number };
};

/** A table by outside diameter alone; `least` is the smallest diameter of its first row [mm]. */
export type DiameterTable = {
  readonly least: number;
  readonly rows: readonly DiameterRow[];
  readonly source: SourceKey;
};

const TEN_PERCENT = { plus: 0.1, minus: 0.1 } as const;
const under = (limit: number, plusMinus: number, wall: DiameterRow['wall'] = TEN_PERCENT): DiameterRow => ({
  limit,
  included: false,
  plus: plusMinus,
  minus: plusMinus,
  wall,
});
const upTo = (limit: number, plusMinus: number): DiameterRow => ({ ...under(limit, plusMinus), included: true });

/** ASTM A269, seamless and welded tube for general service; secondary copies. Every upper limit is the next row's. */
export const A269: DiameterTable = {
  least: 0,
  rows: [
    under(12.7, 0.13, { plus: 0.15, minus: 0.15 }),
    under(38.1, 0.13),
    under(88.9, 0.25),
    under(139.7, 0.38), // larger tube: not in the copies that were checked against each other
  ],
  source: 'astm-a269',
};

/** ASTM A249, welded tube for boilers and heat exchangers; secondary copies. 38.1 and 101.6 mm are included. */
export const A249: DiameterTable = {
  least: 0,
  rows: [under(25.4, 0.1), upTo(38.1, 0.15), under(50.8, 0.2), under(63.5, 0.25), under(76.2, 0.3), upTo(101.6, 0.38)],
  source: 'astm-a249',
};

/** ASTM A312, pipe; secondary copies. The wall may be 12.5 % under; nothing was seen that limits it upwards. */
const PIPE_WALL = { plus: null, minus: 0.125 } as const;
export const A312: DiameterTable = {
  least: 13.7,
  rows: [
    { limit: 48.3, included: true, plus: 0.4, minus: 0.79, wall: PIPE_WALL },
    { limit: 114.3, included: true, plus: 0.79, minus: 0.79, wall: PIPE_WALL },
  ],
  source: 'astm-a312',
};

/** One band of diameters of ASTM A554 [mm]: the least wall, then the largest wall of each ± on the diameter. */
export type WeldedRow = {
  readonly limit: number;
  readonly included: boolean;
  readonly leastWall: number;
  readonly walls: readonly { readonly upTo: number; readonly plusMinus: number }[];
  readonly source: SourceKey;
};

/** A row of ASTM A554 as it is printed, in inches. */
function inches(
  limit: number,
  included: boolean,
  leastWall: number,
  walls: readonly (readonly [upTo: number, plusMinus: number])[],
  source: SourceKey = 'astm-a554',
): WeldedRow {
  return {
    limit: limit * INCH,
    included,
    leastWall: leastWall * INCH,
    walls: walls.map(([wall, plusMinus]) => ({ upTo: wall * INCH, plusMinus: plusMinus * INCH })),
    source,
  };
}

/**
 * ASTM A554, round tube as welded or cold reduced, bead not removed [in]; wall ±10 %. Three secondary copies agree up
 * to 3-1/2 in, the last row is from memory.
 */
export const A554: readonly WeldedRow[] = [
  inches(0.5, false, 0.02, [[0.049, 0.004]]),
  inches(1, true, 0.02, [
    [0.065, 0.005],
    [0.134, 0.01],
  ]),
  inches(1.5, true, 0.025, [
    [0.065, 0.008],
    [0.134, 0.01],
  ]),
  inches(2, true, 0.025, [
    [0.049, 0.01],
    [0.083, 0.011],
    [0.149, 0.012],
  ]),
  inches(2.5, true, 0.032, [
    [0.065, 0.012],
    [0.109, 0.013],
    [0.165, 0.014],
  ]),
  inches(3.5, true, 0.032, [[0.165, 0.014]]),
  inches(5, true, 0.035, [[0.165, 0.02]], 'astm-a554-memory'),
];

/** ASTM A554: up to this share of the diameter a wall is thin, and the tube may be out of round [–]. */
export const A554_THIN_WALL = 0.03;
