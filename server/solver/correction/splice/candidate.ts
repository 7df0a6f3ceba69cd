import { moved } from '../../geometry/rigid-motion.ts';
import { angleBetween, dot, length, scale, subtract } from '../../geometry/vector.ts';
import { HI_LO_LIMITS, VISIBLE_KINK } from '../weld-limits.ts';
import type { SolvedSplice } from './solve-splice.ts';
import { acrossPost } from './splice-problem.ts';
import { leastLetIn } from './splice-problem.ts';

/** A solved layout with what tells it from others. */
export type Candidate = {
  readonly splice: SolvedSplice;
  /** Largest distance of a fixing point and of a corner from where it must be [mm]. */
  readonly fixingMisfit: number;
  readonly cornerMisfit: number;
  /** The worst of them, in tolerances. */
  readonly outOfTolerance: number;
  /** [rad, mm] */
  readonly largestKink: number;
  readonly largestHiLo: number;
  readonly welds: number;
  /** Whether every joint has the room and the metal that it needs. */
  readonly possible: boolean;
  /** One number of it all, small is good: what the search weighed against each other, and the welds. */
  readonly score: number;
};

/** What a weld weighs beside a kink of one degree or a misfit of one tape: our own choice. */
const WELD = 0.25;
/** Metal that is not there beyond this is a joint that cannot be made [mm]: our own choice. */
const MISSING_METAL = 0.2;

/** @param wall of the tube [mm] */
export function candidateOf(splice: SolvedSplice, wall: number): Candidate {
  const { problem, motions, joints } = splice;
  let [fixingMisfit, cornerMisfit, outOfTolerance] = [0, 0, 0];
  for (const { body, point, wanted, target } of problem.targets) {
    const motion = motions[body];
    if (motion === undefined || target.kind === 'guide') continue;
    const off = length(subtract(moved(motion, point), wanted));
    if (target.kind === 'fixing') fixingMisfit = Math.max(fixingMisfit, off);
    else cornerMisfit = Math.max(cornerMisfit, off);
    outOfTolerance = Math.max(outOfTolerance, off / target.tolerance);
  }
  for (const { body, point, post } of problem.keepAways) {
    const motion = motions[body];
    const short = motion === undefined ? 0 : Math.max(0, post.least - length(acrossPost(post, moved(motion, point))));
    fixingMisfit = Math.max(fixingMisfit, short);
    if (short > NO_ROOM) outOfTolerance = Math.max(outOfTolerance, 1 + short);
  }
  let [largestKink, largestHiLo, welds, possible] = [0, 0, 0, true];
  const { kerf, gap, shrinkage, outsideDiameter, tape } = problem.sizes;
  for (const { joint, middle, sides } of joints) {
    const { a, b, half, letIn, along } = sides;
    const { from, to } = joint.place.stretch;
    if (letIn === null) {
      const kink = angleBetween(a.tangent, b.tangent);
      const across = subtract(sides.gap, scale(along, dot(sides.gap, along)));
      largestKink = Math.max(largestKink, kink);
      largestHiLo = Math.max(largestHiLo, length(across));
      const needed = Math.max(kerf, outsideDiameter * Math.tan(kink / 2)) - gap + shrinkage;
      if (2 * half < needed - MISSING_METAL) possible = false;
      welds += 1;
    } else {
      const kinks = [angleBetween(a.tangent, letIn.atA), angleBetween(letIn.atB, b.tangent)];
      largestKink = Math.max(largestKink, ...kinks);
      // new tube that is shorter than two welds want, or would have to run backwards, is none
      if (dot(sides.gap, along) < leastLetIn(outsideDiameter) - tape) possible = false;
      welds += 2;
    }
    if (joint.place.movable && (middle - half < from - 1e-6 || middle + half > to + 1e-6)) possible = false;
  }
  if (largestHiLo > HI_LO_LIMITS.standard * wall) possible = false;
  return {
    splice,
    fixingMisfit,
    cornerMisfit,
    outOfTolerance,
    largestKink,
    largestHiLo,
    welds,
    possible,
    score: splice.cost + WELD * welds,
  };
}

/** Room that a post lacks and nobody could measure [mm]: our own choice. */
const NO_ROOM = 0.01;

/** How the three splices are picked. Kinks and steps below these are as good as none [rad, mm]; our own choice. */
const SAME_KINK = Math.PI / 1800;
const SAME_MISFIT = 0.1;

/** Whether a candidate brings everything within its tolerance and hides its kinks. */
const isRight = (one: Candidate): boolean => one.outOfTolerance <= 1 && one.largestKink <= VISIBLE_KINK;

type Order = (a: Candidate, b: Candidate) => number;
const by =
  (...orders: Order[]): Order =>
  (a, b) =>
    orders.reduce((found, order) => (found === 0 ? order(a, b) : found), 0);
const rightFirst: Order = (a, b) => Number(isRight(b)) - Number(isRight(a));
const fewerWelds: Order = (a, b) => a.welds - b.welds;
const lowerScore: Order = (a, b) => a.score - b.score;
const lessKink: Order = (a, b) => Math.round(a.largestKink / SAME_KINK) - Math.round(b.largestKink / SAME_KINK);
const worst = (one: Candidate): number => Math.max(one.fixingMisfit, one.cornerMisfit);
const closer: Order = (a, b) => Math.round(worst(a) / SAME_MISFIT) - Math.round(worst(b) / SAME_MISFIT);

/** Fewest welds, least kink, least misfit: each among those that come out right, where any does. */
export const ORDERS = {
  'splice-fewest': by(rightFirst, fewerWelds, lowerScore),
  'splice-fairest': by((a, b) => Number(a.outOfTolerance > 1) - Number(b.outOfTolerance > 1), lessKink, lowerScore),
  'splice-closest': by(closer, lessKink, lowerScore),
} as const;

export const byScore: Order = by(rightFirst, lowerScore);
