import type { TestBend } from '../../job/machine.ts';
import type { Tube } from '../../job/tube.ts';
import { isOfDiameter } from './set-up.ts';
import { fitStraightLine, type StraightLineFit } from './straight-line-fit.ts';

const RADIAN = Math.PI / 180;
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
  const ofTube = record.flatMap((bend, place) => (isMeasured(bend) && fits(bend) ? [place] : []));
  const heat = tube.heat.trim();
  const ofHeat = heat === '' ? [] : fitting.filter((bend) => bend.heat.trim() === heat);
  const angles = new Set(ofHeat.map((bend) => bend.commandedAngle));
  return angles.size >= 2 ? { bends: ofHeat, heat, ofTube } : { bends: fitting, heat: '', ofTube };
}

/** Springback s = c − m = a + b c [rad], a fixed and a proportional one, as US patent 3,821,525 (1974) corrects for. */
export const fitSpringback = (bends: readonly MeasuredBend[]): StraightLineFit | undefined =>
  fitStraightLine(
    bends.map(({ commandedAngle, measuredAngle }) => ({
      x: commandedAngle * RADIAN,
      y: (commandedAngle - measuredAngle) * RADIAN,
    })),
  );

/** Angle to command for a wanted one, in one unit: c = (w + a) / (1 − b). */
export const commandFor = (wanted: number, fit: { readonly fixed: number; readonly share: number }): number =>
  (wanted + fit.fixed) / (1 - fit.share);

/** Growth of the centreline e = a + b c over the commanded angle [mm, rad], from lines scribed before and after. */
export const fitStretch = (bends: readonly TestBend[]): StraightLineFit | undefined =>
  fitStraightLine(
    bends.flatMap(({ commandedAngle, scribedBefore, scribedAfter }) =>
      scribedBefore === null || scribedAfter === null
        ? []
        : [{ x: commandedAngle * RADIAN, y: scribedAfter - scribedBefore }],
    ),
  );
