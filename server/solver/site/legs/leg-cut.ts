import type { FootEnd } from '../../../job/leg.ts';
import { cross, dot, squareTo, type Vector3 } from '../../geometry/vector.ts';
import type { LaidFrame, LaidLeg } from '../laid-site.ts';
import { AHEAD, UPRIGHT } from '../structure-axes.ts';
import { footCut, type FootCut } from './foot-cut.ts';
import { headCut, headTakes, takesAt, type HeadCut, type HeadSetting } from './head-cut.ts';
import { legWay } from './leg-way.ts';

/** How a leg is cut, whatever was measured: its ends, gap and shrinkage of a weld, the tube that it sits on [mm]. */
export type CutSetting = HeadSetting & {
  readonly foot: FootEnd;
  readonly shrinkage: number;
  /** What an adjustment adds in its middle. */
  readonly adds: number;
  /** What generator 0 points to, as near as it can. */
  readonly zeroTo: Vector3;
};

/**
 * One leg with its two cuts. Along it, stations count from the foot point [mm]; generators from `zero`, right-handed about
 * the leg seen from its foot [rad].
 */
export type LegCut = {
  /** From the foot point to the head. */
  readonly length: number;
  readonly along: Vector3;
  readonly zero: Vector3;
  readonly foot: FootCut;
  readonly head: HeadCut;
  /** The long side of the mitre, from generator 0; undefined where the leg stands square on its surface. */
  readonly longSide: number | undefined;
  /** Cut longer at each end for what its weld pulls in. */
  readonly footDraws: number;
  readonly headDraws: number;
  readonly adds: number;
};

/** Legs that stand straighter than this have no upper side: 5°, our own choice. */
const STRAIGHT_UP = Math.cos((5 * Math.PI) / 180);

/** Generator 0 of a leg looks up, as the structure has it; that of an upright leg looks ahead. */
export const zeroToward = ({ foot, head }: Pick<LaidLeg, 'foot' | 'head'>): Vector3 => {
  const along = legWay({ foot, head })?.along;
  return along === undefined || Math.abs(along.z) > STRAIGHT_UP ? AHEAD : UPRIGHT;
};

/**
 * The cuts of a leg, light enough to be made for every doubtful value.
 *
 * Each weld pulls the leg in, so a welded end is cut longer by that: a saddle, a mitred or square foot, on a plate or
 * without one; neither a socket nor a fitting.
 *
 * @returns undefined where the leg has no length or runs along the tube that it is to sit on
 */
export function legCut(leg: LaidLeg, frame: LaidFrame, setting: CutSetting): LegCut | undefined {
  const way = legWay(leg);
  if (way === undefined) return undefined;
  const { along } = way;
  const zero = squareTo(along, setting.zeroTo);
  const head = headCut(leg, { ...way, zero }, frame, setting);
  if (head === undefined) return undefined;
  const foot = footCut(leg, along, setting.foot, setting.gap);
  return {
    length: way.length,
    along,
    zero,
    foot,
    head,
    longSide: foot.longSide && Math.atan2(dot(foot.longSide, cross(along, zero)), dot(foot.longSide, zero)),
    footDraws: foot.welded ? setting.shrinkage : 0,
    headDraws: head.end === 'saddle' ? setting.shrinkage : 0,
    adds: setting.adds,
  };
}

/** Where the foot's cut crosses a generator; without one, the middle of the tube [mm from the foot point]. */
export const footStation = ({ foot, longSide, footDraws }: LegCut, generator?: number): number =>
  foot.takes -
  footDraws -
  (generator === undefined || longSide === undefined ? 0 : foot.reach * Math.cos(generator - longSide));

/** Where the longest side of the foot ends: what a tape is hooked on [mm from the foot point]. */
export const footTip = ({ foot, footDraws }: LegCut): number => foot.takes - footDraws - foot.reach;

/** Where the head's cut crosses a generator, the middle of an adjustment taken off [mm from the foot point]. */
export const headStation = (cut: LegCut, generator: number): number | undefined =>
  stationOf(cut, headTakes(cut.head, generator));

/** The same where it is longest, `tip` from the saddle's acute side [rad, as in `takesAt`]. */
export const headTip = (cut: LegCut, tip: number): number | undefined => stationOf(cut, takesAt(cut.head, tip));

const stationOf = ({ length: centre, headDraws, adds }: LegCut, takes: number | undefined): number | undefined =>
  takes === undefined ? undefined : centre - takes + headDraws - adds;

/** What is sawn off the bar, longest point to longest point [mm]; `tip` as in `headTip`. */
export function cutLength(cut: LegCut, tip: number): number | undefined {
  const head = headTip(cut, tip);
  return head === undefined ? undefined : head - footTip(cut);
}

/** Length of one generator between the two cuts [mm]. */
export function lengthAlong(cut: LegCut, generator: number): number | undefined {
  const head = headStation(cut, generator);
  return head === undefined ? undefined : head - footStation(cut, generator);
}
