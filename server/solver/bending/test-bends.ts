import type { TestBend } from '../../job/machine.ts';
import type { Tube } from '../../job/tube.ts';
import { RADIANS } from '../geometry/angle.ts';
import { isOfDiameter } from './set-up.ts';
import { fitStraightLine, type StraightLineFit } from './straight-line-fit.ts';

/** A wall, or a die's radius, that is the same within what a caliper or a tape shows [–]; common practice, no source. */
const SAME_WALL = 0.03;
const SAME_RADIUS = 0.005;

/** A test bend whose angle was measured. */
export type MeasuredBend = TestBend & { readonly measuredAngle: number };

/** The test bends that speak for one tube on one die. */
export type BendsOfTube = {
  readonly bends: readonly MeasuredBend[];
  /** Heat that they are all of; empty where they are of any. */
  readonly heat: string;
  /** Places in the record of the bends of this tube and die, of whatever heat. */
  readonly ofTube: readonly number[];
  /** How many of the record are on another tube, wall or die. */
  readonly others: number;
};

const isMeasured = (bend: TestBend): bend is MeasuredBend => bend.measuredAngle !== null;

/**
 * Picks the test bends of this tube and die. Those of the job's own heat are enough where they hold two different
 * angles; else all heats count.
 */
export function bendsOfTube(record: readonly TestBend[], tube: Tube, dieRadius: number): BendsOfTube {
  const fits = (bend: TestBend): boolean =>
    isOfDiameter(bend.tubeDiameter, tube.outsideDiameter) &&
    Math.abs(bend.wall / tube.wall - 1) <= SAME_WALL &&
    Math.abs(bend.dieRadius / dieRadius - 1) <= SAME_RADIUS;
  const fitting = record.filter(isMeasured).filter(fits);
  const others = record.filter((bend) => !fits(bend)).length;
  const ofTube = record.flatMap((bend, place) => (isMeasured(bend) && fits(bend) ? [place] : []));
  const heat = tube.heat.trim();
  const ofHeat = heat === '' ? [] : fitting.filter((bend) => bend.heat.trim() === heat);
  const angles = new Set(ofHeat.map((bend) => bend.commandedAngle));
  return angles.size >= 2 ? { bends: ofHeat, heat, ofTube, others } : { bends: fitting, heat: '', ofTube, others };
}

/** Springback s = c − m = a + b c [rad], a fixed and a proportional one, as US patent 3,821,525 (1974) corrects for. */
export const fitSpringback = (bends: readonly MeasuredBend[]): StraightLineFit | undefined =>
  fitStraightLine(
    bends.map(({ commandedAngle, measuredAngle }) => ({
      x: commandedAngle * RADIANS,
      y: (commandedAngle - measuredAngle) * RADIANS,
    })),
  );

/** Angle to command for a wanted one, in one unit: c = (w + a) / (1 − b). */
export const commandFor = (wanted: number, fit: { readonly fixed: number; readonly share: number }): number =>
  (wanted + fit.fixed) / (1 - fit.share);

/** A radius gauge or a template reads a radius to this share of it; common practice, no source. */
export const RADIUS_READING = 0.005;
/** No bend opens its radius by more than this share; far beyond what any grade gives; our own choice. */
const MOST_OPENING = 0.3;
/** Two scribed lines are read to this between them [mm]; common practice, no source. */
const SCRIBED = 1;

/** What a measured radius can be [mm]: release only opens a bend. */
export const possibleRadius = ({ dieRadius }: TestBend): { low: number; high: number } => ({
  low: dieRadius * (1 - RADIUS_READING),
  high: dieRadius * (1 + MOST_OPENING),
});

/** What a bend can grow by [mm]: nothing, or at the most what its outer fibre stretches, D/2 times the angle. */
export const possibleGrowth = ({ commandedAngle, tubeDiameter }: TestBend): { low: number; high: number } => ({
  low: -SCRIBED,
  high: (tubeDiameter / 2) * commandedAngle * RADIANS + SCRIBED,
});

const isWithin = (value: number, { low, high }: { low: number; high: number }): boolean =>
  value >= low && value <= high;

/** The measured radius of a bend where it can be one. */
export const radiusOf = (bend: TestBend): number | null =>
  bend.measuredRadius !== null && isWithin(bend.measuredRadius, possibleRadius(bend)) ? bend.measuredRadius : null;

/** What a bend grew by between its scribed lines, where that can be. */
export function growthOf(bend: TestBend): number | null {
  const { scribedBefore, scribedAfter } = bend;
  if (scribedBefore === null || scribedAfter === null) return null;
  const growth = scribedAfter - scribedBefore;
  return isWithin(growth, possibleGrowth(bend)) ? growth : null;
}

/** Growth of the centreline in a bend of a commanded angle, and its ± [mm]; from lines scribed before and after. */
export type Stretch = { readonly at: (command: number) => number; readonly plusMinus: (command: number) => number };

/**
 * Growth over the commanded angle: a line e = a + b c where two angles were scribed, in proportion to the angle where
 * only one was; undefined where nobody scribed.
 *
 * @param tape accuracy of one reading ± [mm]; a growth is the difference of two
 */
export function fitStretch(bends: readonly TestBend[], tape: number): Stretch | undefined {
  const points = bends.flatMap((bend) => {
    const growth = growthOf(bend);
    return growth === null ? [] : [{ x: bend.commandedAngle * RADIANS, y: growth }];
  });
  if (points.length === 0) return undefined;
  const reading = Math.SQRT2 * tape;
  const line = fitStraightLine(points);
  if (line !== undefined)
    return {
      at: (command) => line.at0 + line.slope * command,
      plusMinus: (command) => line.confidence(command) ?? reading * line.standing(command),
    };
  const squares = points.reduce((sum, { x }) => sum + x * x, 0);
  const share = points.reduce((sum, { x, y }) => sum + x * y, 0) / squares;
  return { at: (command) => share * command, plusMinus: (command) => (reading * command) / Math.sqrt(squares) };
}
