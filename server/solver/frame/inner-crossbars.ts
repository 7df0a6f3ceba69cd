import type { Hoop } from '../../job/frame.ts';
import { centrelineFromChain } from '../geometry/centreline.ts';
import type { Vector3 } from '../geometry/vector.ts';
import type { Check, MemberGeometry, Spot } from './frame-geometry.ts';
import { together, type HoopFailure } from './hoop-sizes.ts';
import { centreSize } from './reference.ts';

/** The inner crossbars: straights square to the axis of symmetry, from leg to leg. */
export function innerCrossbars(
  hoop: Hoop,
  context: { outsideDiameter: number },
  legs: {
    along: (distance: number) => Vector3;
    straights: { left: number; right: number };
    left: number;
    right: number;
    whole: number;
    lean: number;
  },
):
  | HoopFailure
  | {
      members: MemberGeometry[];
      checks: (foot: Spot, upTo: Pick<Check, 'outsideExtra' | 'insideExtra' | 'bothEnds'>, root: string) => Check[];
    } {
  const made: { member: MemberGeometry; distance: number; reference: Check['reference'] }[] = [];
  const failures: HoopFailure[] = [];
  for (const [index, crossbar] of hoop.innerCrossbars.entries()) {
    const distance = centreSize(crossbar.fromFoot, { outsideDiameter: context.outsideDiameter, overlap: 0.5 });
    const fromRightFoot = distance - legs.left + legs.right;
    const low = Math.max(0, legs.left - legs.right);
    const high = Math.min(legs.straights.left, legs.straights.right + legs.left - legs.right);
    if (distance < low || distance > high) {
      const field = `innerCrossbars/${index}/fromFoot/value`;
      failures.push({ failure: 'crossbar-outside-legs', field, value: distance, low, high });
      continue;
    }
    const start = legs.along(distance);
    const saddle = (station: number) => ({
      kind: 'saddle' as const,
      onto: 'hoop',
      station,
      axisAngle: Math.PI / 2 - Math.abs(legs.lean),
      offset: 0,
    });
    const centreline = centrelineFromChain(
      { point: start, direction: { x: 1, y: 0, z: 0 }, normal: { x: 0, y: 0, z: -1 } },
      [{ kind: 'straight', length: -2 * start.x }],
    );
    made.push({
      member: {
        name: `crossbar ${index + 1}`,
        centreline,
        closed: false,
        closing: null,
        start: saddle(distance),
        finish: saddle(legs.whole - fromRightFoot),
      },
      distance,
      reference: crossbar.fromFoot.reference,
    });
  }
  const failure = together(failures);
  if (failure !== undefined) return failure;
  return {
    members: made.map((one) => one.member),
    checks: (foot, upTo, root) =>
      made.map(({ member, distance, reference }, index) => ({
        ...upTo,
        key: 'crossbar-from-foot',
        index: index + 1,
        field: `${root}/innerCrossbars/${index}/fromFoot/value`,
        reference,
        from: foot,
        to: { member: member.name, station: 0, point: legs.along(distance) },
      })),
  };
}
