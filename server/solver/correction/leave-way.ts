import type { Way } from '../../plan/correction.ts';
import { planPieces } from '../geometry/plan-pieces.ts';
import { moved, turned, UNMOVED, type RigidMotion } from '../geometry/rigid-motion.ts';
import { add, dot, scale, subtract } from '../geometry/vector.ts';
import { movedLine } from '../geometry/moved-centreline.ts';
import type { CorrectedFrame, CorrectionTarget } from './corrected.ts';
import { judgeAll, type CorrectionWork } from './correction-work.ts';
import { countFigure, layOn, largest, outwardAt, type JudgeContext, type WayDraft } from './outcome.ts';
import { outcomeFigures } from './outcome-figures.ts';
import { betweenFeet, packingOf, trimsOf, type FootExcess } from './trims.ts';
import { trimSteps, workSteps } from './work-steps.ts';

/** What a way without joints has of them. */
export const unjoined = {
  largestKink: largest([], (joint) => joint.kink, 'deg'),
  largestHiLo: largest([], (joint) => joint.hiLo, 'mm'),
  joints: [],
};

/** A frame that is left as it is, its feet cut back. */
const asItIs = ({ actual }: JudgeContext): CorrectedFrame => ({
  motionAt: () => UNMOVED,
  members: actual.members.map((member) => ({
    name: member.name,
    parts: [betweenFeet(actual, member, member.centreline)],
  })),
});

/** The tubes of a corrected frame as they lie on the wanted one, for drawing. */
export const drawnMembers = ({ members }: CorrectedFrame, lay: RigidMotion): WayDraft['members'] =>
  members.map(({ name, parts }) => ({ name, pieces: parts.flatMap((part) => planPieces(movedLine(lay, part))) }));

/**
 * Leave the frame as it is: laid on the wanted one, a foot that stands out beyond its landing is cut back, and something
 * stands under one that does not reach it.
 */
export function leaveWay(source: CorrectionWork): WayDraft {
  const whole = source.cutBackBy([]);
  const short = shortfalls(whole);
  const work = source.cutBackBy(
    whole.targets.flatMap(({ spot }, index): FootExcess[] => {
      const beyond = -(short[index] ?? 0);
      return beyond > 0 ? [{ foot: spot, atFinish: isAtFinish(whole, spot), excess: beyond }] : [];
    }),
  );
  const least = Math.max(work.tape, LEAST_HEIGHT);
  const heights = short.map((height) => (height > least ? height : 0));
  const packed = packing(work, heights);
  // what stands under a foot lands for it, on every variation of the frame by as much
  const footed = (context: JudgeContext): JudgeContext => ({
    ...context,
    targets: context.targets.map((target, index) => {
      const height = heights[index] ?? 0;
      return height === 0 ? target : longer(context, target, height);
    }),
  });
  const all = { ...work, ...footed(work), variations: work.variations.map(footed) };
  const { base, variations } = judgeAll(all, asItIs);
  const trims = trimsOf(work.excesses, work.tape);
  return {
    key: 'leave',
    possible: true,
    reasons: [],
    ...outcomeFigures(base, variations),
    ...unjoined,
    welds: countFigure(0, 'joints'),
    rebends: [],
    trims,
    packing: packed,
    steps: workSteps([
      ...trimSteps(trims),
      ...packed.map(({ member, end, height }) => ({ key: 'pack-foot', data: { member, end, value: height.value } })),
      { key: 'check-sizes' },
    ]),
    members: drawnMembers(asItIs(work), base.lay),
    effort: { welds: 0, cuts: trims.length, bends: 0, pieces: [], bentTube: 0, joints: [] },
  };
}

const longer = ({ actual }: JudgeContext, target: CorrectionTarget, height: number): CorrectionTarget => ({
  ...target,
  off: add(target.off, scale(outwardAt(actual, target.spot), height)),
});

/** Rounds in which the frame is stood where its feet do not decide how high it stands; a few dozen are enough. */
const ROUNDS = 100;
/** Packing thinner than this is none where the tape is said to be perfect [mm]: our own choice. */
const LEAST_HEIGHT = 0.05;
/** Heights that change by less than this are settled [mm]. */
const SETTLED = 1e-6;

/**
 * How far each target is short of its landing along its leg [mm], negative where it stands out beyond it, in the order
 * of the targets: nothing for corners, pads and holes. The frame is laid so that its corners are right and its feet are
 * right sideways.
 */
function shortfalls(work: CorrectionWork): number[] {
  const { wanted, actual, targets } = work;
  const outward = targets.map((target) => (isFoot(work, target) ? outwardAt(actual, target.spot) : null));
  const heights = targets.map(() => 0);
  for (let round = 0, change = Infinity; round < ROUNDS && change > SETTLED; round += 1) {
    change = 0;
    const reached = targets.map((target, index) => longer(work, target, heights[index] ?? 0));
    const lay = layOn(wanted, actual, reached, asItIs(work));
    for (const [index, target] of targets.entries()) {
      const out = outward[index];
      if (out === null || out === undefined) continue;
      const at = moved(lay, add(target.spot.point, target.off));
      const height = dot(subtract(target.wanted, at), turned(lay, out));
      change = Math.max(change, Math.abs(height - (heights[index] ?? 0)));
      heights[index] = height;
    }
  }
  return heights;
}

const isFoot = ({ actual }: JudgeContext, { kind, fixing, spot }: CorrectionTarget): boolean =>
  kind === 'fixing' &&
  fixing === 'foot' &&
  actual.feet.some((foot) => foot.member === spot.member && foot.station === spot.station);

const isAtFinish = ({ actual }: JudgeContext, { member, station }: CorrectionTarget['spot']): boolean =>
  station > (actual.members.find(({ name }) => name === member)?.centreline.length ?? 0) / 2;

const packing = (work: CorrectionWork, heights: readonly number[]): Way['packing'] =>
  work.targets.flatMap(({ spot }, index) => {
    const height = heights[index] ?? 0;
    return height === 0 ? [] : [packingOf(spot, isAtFinish(work, spot), height, work.tape)];
  });
