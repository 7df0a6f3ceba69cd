import { moved } from '../../geometry/rigid-motion.ts';
import type { Centreline } from '../../geometry/centreline.ts';
import { pieceStations } from '../../geometry/slice.ts';
import { clearOf } from '../../geometry/solid.ts';
import { angleBetween, dot, length, scale, subtract } from '../../geometry/vector.ts';
import { HI_LO_LIMITS, VISIBLE_KINK } from '../weld-limits.ts';
import type { SolvedSplice } from './solve-splice.ts';
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
    const short =
      motion === undefined ? 0 : Math.max(0, post.keep - clearOf(post.solid, moved(motion, point)).distance);
    fixingMisfit = Math.max(fixingMisfit, short);
    if (short > NO_ROOM) outOfTolerance = Math.max(outOfTolerance, 1 + short);
  }
  let [largestKink, largestHiLo, welds, possible] = [0, 0, 0, true];
  const { kerf, gap, shrinkage, outsideDiameter, tape } = problem.sizes;
  for (const { joint, middle, sides } of joints) {
    const { a, b, half, letIn, along } = sides;
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
    const { from, to } = joint.place.movable ? joint.place.stretch : pieceRange(joint.line, middle);
    if (middle - half < from - 1e-6 || middle + half > to + 1e-6) possible = false;
  }
  if (largestHiLo > HI_LO_LIMITS.standard * wall || largestKink > MOST_KINK || overlaps(splice)) possible = false;
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

/** A joint that turns by more is a corner and no splice [rad]: 30 degrees; our own choice. */
const MOST_KINK = Math.PI / 6;

/** Where the piece begins and ends on which a station stands. */
function pieceRange(line: Centreline, station: number): { from: number; to: number } {
  const stations = pieceStations(line);
  const next = stations.findIndex((at) => at > station);
  return { from: stations[next - 1] ?? 0, to: stations[next] ?? line.length };
}

/** Faces of two joints nearer than this on one member, in tube diameters, leave a piece that nobody can hold: common practice. */
const BETWEEN_JOINTS = 1;

/** Whether a joint takes tube that its neighbour needs as well, to be held by or for a bend that is turned. */
function overlaps({ joints, problem, turns }: SolvedSplice): boolean {
  const room = BETWEEN_JOINTS * problem.sizes.outsideDiameter;
  const taken = [
    ...joints.map(({ joint, middle, sides }) => ({
      member: joint.place.stretch.member,
      from: middle - Math.max(sides.half, 0),
      to: middle + Math.max(sides.half, 0),
      room,
    })),
    ...problem.hinges.map(({ hinge }, index) => {
      const drawn = hinge.arc.radius * (turns[index] ?? 0);
      const [from, to] = [hinge.station + Math.min(drawn, 0), hinge.station + Math.max(drawn, 0)];
      return { member: hinge.member, from, to, room: 0 };
    }),
  ].sort((one, other) => one.member - other.member || one.from - other.from);
  return taken.some((one, index) => {
    const next = taken[index + 1];
    if (next === undefined || next.member !== one.member) return false;
    return next.from < one.to + Math.min(one.room, next.room) - 1e-6;
  });
}

/** Kinks that do not show are alike [rad], and so are misfits that the tape cannot tell; our own choice. */
const SAME_KINK = Math.PI / 1800;

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
const kinkOf = ({ largestKink }: Candidate): number =>
  largestKink <= VISIBLE_KINK ? 0 : Math.round(largestKink / SAME_KINK);
const lessKink: Order = (a, b) => kinkOf(a) - kinkOf(b);
const worst = (one: Candidate): number => Math.max(one.fixingMisfit, one.cornerMisfit);
const steps = (one: Candidate): number => Math.round(worst(one) / Math.max(one.splice.problem.sizes.tape, LEAST_STEP));
const closer: Order = (a, b) => steps(a) - steps(b);

/** A step of misfit where the tape is said to be perfect [mm]; our own choice. */
const LEAST_STEP = 0.1;

/** Fewest welds, least kink, least misfit: each among those that come out right, where any does. */
export const ORDERS = {
  'splice-fewest': by(rightFirst, fewerWelds, lowerScore),
  'splice-fairest': by((a, b) => Number(a.outOfTolerance > 1) - Number(b.outOfTolerance > 1), lessKink, lowerScore),
  'splice-closest': by(closer, lessKink, lowerScore),
} as const;

/** What a splice must be better in than the one with the fewest welds to be shown for it. */
export const BETTER_IN = { 'splice-fewest': () => 0, 'splice-fairest': kinkOf, 'splice-closest': steps } as const;

/** Whether a candidate is worth its welds: it comes nearer than the uncut frame by what a tape can tell, or comes right. */
export function gains(one: Candidate, uncut: { readonly worst: number; readonly outOfTolerance: number }): boolean {
  const tape = Math.max(one.splice.problem.sizes.tape, LEAST_STEP);
  if (one.outOfTolerance <= 1 && uncut.outOfTolerance > 1) return true;
  return worst(one) < uncut.worst - Math.max(tape / 2, LEAST_GAIN * uncut.worst);
}

/** A tenth of the misfit is the least that is worth a weld; our own choice. */
const LEAST_GAIN = 0.1;

export const byScore: Order = by(rightFirst, lowerScore);

/** The best that can be made, by an order. */
export const top = (all: readonly Candidate[], order: Order, count: number): Candidate[] =>
  [...all]
    .filter(({ possible }) => possible)
    .sort(order)
    .slice(0, count);

/** Candidates whose joints stand in the same places are one [mm]; our own choice. */
const SAME_PLACE = 5;

/** Candidates without those whose joints stand where another's do already. */
export function distinct(all: readonly Candidate[]): Candidate[] {
  const seen = new Set<string>();
  return all.filter(({ splice }) => {
    const key = splice.joints
      .map(({ joint, middle }) => `${String(joint.place.stretch.member)}:${String(Math.round(middle / SAME_PLACE))}`)
      .sort()
      .join();
    const fresh = !seen.has(key);
    seen.add(key);
    return fresh;
  });
}
