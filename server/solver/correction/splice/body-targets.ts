import { bestMotion, moved, type PointPair, type RigidMotion } from '../../geometry/rigid-motion.ts';
import { add, length, subtract, type Vector3 } from '../../geometry/vector.ts';
import type { CorrectionTarget } from '../corrected.ts';
import { LEAST_TAPE } from '../correction-targets.ts';
import type { Layout } from './layouts.ts';

/** A target of one body: where it is before its body moves, where it must be, and what it weighs [1/mm]. */
export type BodyTarget = {
  readonly body: number;
  readonly point: Vector3;
  readonly wanted: Vector3;
  readonly weight: number;
  readonly target: CorrectionTarget;
};

/** What a target weighs: feet and corners as well as the tape is, or as their own tolerance asks; guides as they say. */
const weightOf = ({ kind, tolerance }: CorrectionTarget, tape: number): number =>
  1 / (kind === 'guide' ? tolerance : Math.min(Math.max(tape, LEAST_TAPE), Math.max(tolerance / 3, LEAST_TAPE)));

/** Every target by the body that it moves with. */
export function targetsOfBodies(
  layout: Layout,
  memberIndex: ReadonlyMap<string, number>,
  targets: readonly CorrectionTarget[],
  tape: number,
): BodyTarget[] {
  return targets.flatMap((target) => {
    const member = memberIndex.get(target.spot.member);
    if (member === undefined) return [];
    return [
      {
        body: layout.bodies.at(member, target.spot.station),
        point: add(target.spot.point, target.off),
        wanted: target.wanted,
        weight: weightOf(target, tape),
        target,
      },
    ];
  });
}

/** How each body would move for its own targets alone, and what of the misfit that leaves [in tolerances, squared]. */
export function freeMotions(
  count: number,
  targets: readonly BodyTarget[],
  planeNormal: Vector3 | null,
): { motions: RigidMotion[]; cost: number } {
  const pairs: PointPair[][] = Array.from({ length: count }, () => []);
  for (const { body, point, wanted, weight } of targets)
    pairs[body]?.push({ from: point, to: wanted, weight: weight * weight });
  const motions = pairs.map((own) => bestMotion(own, planeNormal));
  let cost = 0;
  for (const [body, own] of pairs.entries()) {
    const motion = motions[body];
    if (motion === undefined) continue;
    for (const { from, to, weight } of own) cost += weight * length(subtract(moved(motion, from), to)) ** 2;
  }
  return { motions, cost };
}

/** Where bodies stand: the largest distance of a target from its place [mm], and in tolerances; guides left out. */
export function worstOf(
  targets: readonly BodyTarget[],
  motions: readonly RigidMotion[],
): { worst: number; outOfTolerance: number } {
  let [worst, outOfTolerance] = [0, 0];
  for (const { body, point, wanted, target } of targets) {
    const motion = motions[body];
    if (motion === undefined || target.kind === 'guide') continue;
    const off = length(subtract(moved(motion, point), wanted));
    [worst, outOfTolerance] = [Math.max(worst, off), Math.max(outOfTolerance, off / target.tolerance)];
  }
  return { worst, outOfTolerance };
}
