// Points of a leg as its plan says it is cut, from its wraps alone.
import { getOC, cast, makeLine, measureDistanceBetween, type AnyShape } from 'replicad';
import type { LegPlan } from '../../server/plan/leg.ts';
import type { WrapTemplate } from '../../server/plan/frame.ts';
import { add, cross, scale, squareTo, subtract, unit, type Vector3 } from '../../server/solver/geometry/vector.ts';

const triple = ({ x, y, z }: Vector3): [number, number, number] => [x, y, z];

/** Where the bar is sawn off at the foot, from the foot point [mm]: what the foot takes less half of its rise. */
const sawnAt = ({ foot }: LegPlan): number => foot.takes.value - (foot.rise?.value ?? 0) / 2;

/** A wrap laid round a leg that stands: its points in the structure's axes. */
export type LaidWrap = {
  /** Unit direction of the leg. */
  readonly along: Vector3;
  /** A point on a generator [rad], at an ordinate and so far from the axis [mm]. */
  readonly point: (turn: number, ordinate: number, radius: number) => Vector3;
  /** An ordinate from the bar's sawn end [mm]. */
  readonly fromSawn: (ordinate: number) => number;
};

/** Generator 0 looks up, or ahead on an upright leg; a quarter turn on is right-handed about the leg from its foot. */
export function laidWrap(leg: LegPlan, { ringStation }: WrapTemplate): LaidWrap {
  const along = unit(subtract(leg.headPoint, leg.footPoint))!;
  const upright = Math.abs(along.z) > Math.cos((5 * Math.PI) / 180);
  const zero = squareTo(along, upright ? { x: 1, y: 0, z: 0 } : { x: 0, y: 0, z: 1 });
  const side = cross(along, zero);
  return {
    along,
    point: (turn, ordinate, radius) => {
      const axis = add(leg.footPoint, scale(along, sawnAt(leg) + ringStation + ordinate));
      return add(axis, add(scale(zero, radius * Math.cos(turn)), scale(side, radius * Math.sin(turn))));
    },
    fromSawn: (ordinate) => ringStation + ordinate,
  };
}

/** How far a point is from a shape [mm]; 0 inside of a solid. */
export function pointFrom(point: Vector3, shape: AnyShape): number {
  const oc = getOC();
  return measureDistanceBetween(
    cast(new oc.BRepBuilderAPI_MakeVertex(new oc.gp_Pnt(...triple(point))).Vertex()),
    shape,
  );
}

/** How far a straight line through the wall is from the nearest of several bodies [mm]; 0 where it runs into one. */
export const lineFrom = (from: Vector3, to: Vector3, bodies: readonly AnyShape[]): number => {
  const line = makeLine(triple(from), triple(to));
  return Math.min(...bodies.map((body) => measureDistanceBetween(line, body)));
};
