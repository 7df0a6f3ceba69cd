import type { SourceKey } from '../sources.ts';
import type { TubeSize } from './section.ts';
import {
  A249,
  A269,
  A312,
  A554,
  A554_THIN_WALL,
  DIAMETER_CLASSES,
  WALL_CLASSES,
  type DiameterTable,
  type ToleranceClass,
} from './tube-tolerances.ts';

/** What a tube can be bought to; `own` stands for limits that the shop types itself. */
export type ToleranceStandard =
  | 'iso-1127-d2-t3'
  | 'iso-1127-d3-t3'
  | 'iso-1127-d4-t3'
  | 'iso-1127-d4-t4'
  | 'astm-a554'
  | 'astm-a269'
  | 'astm-a249'
  | 'astm-a312'
  | 'own';

/** How far a tube may be off its nominal size [mm]. */
export type AllowedSize = {
  readonly outsideDiameter: { readonly plus: number; readonly minus: number };
  /** `plus` is null where the standard does not limit the wall upwards. */
  readonly wall: { readonly plus: number | null; readonly minus: number };
  /** Largest less smallest diameter of one section; null where nothing was seen that says it. */
  readonly ovality: number | null;
  readonly source: SourceKey;
};

/** Half a hundredth of a millimetre: 1.65 is the wall of 0.065 in, 48.26 and 33.70 are what a table prints. */
const PRINTED = 0.005;
const within = (value: number, limit: number, included: boolean): boolean =>
  included ? value <= limit + PRINTED : value < limit - PRINTED;

const ISO = {
  'iso-1127-d2-t3': { diameter: 'D2', wall: 'T3', source: 'iso-1127-classes' },
  'iso-1127-d3-t3': { diameter: 'D3', wall: 'T3', source: 'iso-1127' },
  'iso-1127-d4-t3': { diameter: 'D4', wall: 'T3', source: 'iso-1127-classes' },
  'iso-1127-d4-t4': { diameter: 'D4', wall: 'T4', source: 'iso-1127-classes' },
} as const;

/** The standards that allow something for every size. */
type IsoStandard = keyof typeof ISO;

const ofClass = ({ share, least }: ToleranceClass, nominal: number): { plus: number; minus: number } => {
  const plusMinus = Math.max(share * nominal, least); // ISO 1127: the larger of the two
  return { plus: plusMinus, minus: plusMinus };
};

/** What ISO 1127 allows [mm]: for any size, because its classes are shares with a least value. */
export function isoTolerance(standard: IsoStandard, { outsideDiameter, wall }: TubeSize): AllowedSize {
  const classes = ISO[standard];
  const diameter = ofClass(DIAMETER_CLASSES[classes.diameter], outsideDiameter);
  return {
    outsideDiameter: diameter,
    wall: ofClass(WALL_CLASSES[classes.wall], wall),
    ovality: diameter.plus + diameter.minus, // contained in the tolerance of the diameter
    source: classes.source,
  };
}

function byDiameter(table: DiameterTable, { outsideDiameter, wall }: TubeSize): AllowedSize | undefined {
  if (outsideDiameter < table.least - PRINTED) return undefined;
  const row = table.rows.find(({ limit, included }) => within(outsideDiameter, limit, included));
  if (row === undefined) return undefined;
  return {
    outsideDiameter: { plus: row.plus, minus: row.minus },
    wall: { plus: row.wall.plus === null ? null : row.wall.plus * wall, minus: row.wall.minus * wall },
    ovality: null,
    source: table.source,
  };
}

function asWelded({ outsideDiameter, wall }: TubeSize): AllowedSize | undefined {
  const band = A554.find(({ limit, included }) => within(outsideDiameter, limit, included));
  if (band === undefined || wall < band.leastWall - PRINTED) return undefined;
  const row = band.walls.find(({ upTo }) => within(wall, upTo, true));
  if (row === undefined) return undefined;
  const spread = 2 * row.plusMinus;
  return {
    outsideDiameter: { plus: row.plusMinus, minus: row.plusMinus },
    wall: { plus: 0.1 * wall, minus: 0.1 * wall },
    // a thin wall: twice the spread, while the mean of largest and smallest stays inside the tolerance
    ovality: wall > A554_THIN_WALL * outsideDiameter ? spread : 2 * spread,
    source: band.source,
  };
}

/**
 * How far a tube of this size may be off, by what it was bought to.
 *
 * @param own the shop's own ± on diameter and wall [mm]; only read for `own`
 * @returns undefined where the standard has no row for the size (nothing is carried on beyond its table), or `own` is
 *   asked for without numbers
 */
export function tubeTolerance(
  standard: ToleranceStandard,
  size: TubeSize,
  own?: { readonly outsideDiameter: number; readonly wall: number },
): AllowedSize | undefined {
  switch (standard) {
    case 'astm-a554':
      return asWelded(size);
    case 'astm-a269':
      return byDiameter(A269, size);
    case 'astm-a249':
      return byDiameter(A249, size);
    case 'astm-a312':
      return byDiameter(A312, size);
    case 'own':
      if (own === undefined) return undefined;
      return {
        outsideDiameter: { plus: own.outsideDiameter, minus: own.outsideDiameter },
        wall: { plus: own.wall, minus: own.wall },
        ovality: null,
        source: 'typed',
      };
    default:
      return isoTolerance(standard, size);
  }
}
