import { RADIANS } from './angle.ts';
import { add, angleBetween, cross, dot, length, rotate, scale, subtract, unit, type Vector3 } from './vector.ts';

/** A corner of a run: where the straights beside the bend would meet, and the bend's centreline radius [mm]. */
export type Apex = { readonly point: Vector3; readonly radius: number };

/**
 * One bend of a table: straight before it [mm], turn of the tube about the feed direction since the bend before
 * [rad, right-handed, in (−π, π]], change of direction [rad], centreline radius [mm].
 */
export type BendStep = {
  readonly feed: number;
  readonly rotation: number;
  readonly angle: number;
  readonly radius: number;
};
export type BendTable = { readonly steps: readonly BendStep[]; readonly lastStraight: number };

/** Where a table starts when it is bent back into space. `normal` is the axis of the first bend. */
export type StartFrame = { readonly point: Vector3; readonly direction: Vector3; readonly normal: Vector3 };

export type TableFailure = { readonly failure: 'points-coincide' | 'bend-angle-straight-back'; readonly at: number };

/** Below this change of direction there is no bend and the two straights are one [rad]: 0.01°, common practice. */
export const LEAST_BEND = 0.01 * RADIANS;

/** Tangent length T = R tan(θ/2) [mm]. FAA AC 43.13-1B Table 4-7 prints tan(θ/2) as K. */
export const tangentLength = (bend: { radius: number; angle: number }): number =>
  bend.radius * Math.tan(bend.angle / 2);

/** From this angle on the corner of a bend is too far off to be held or to say where the bend is [rad]: 170°, common practice. */
export const FAR_CORNER = 170 * RADIANS;

/** A half turn has no corner at all; what rounding leaves short of it has none either [rad]. */
const HALF_TURN = Math.PI - 1e-6;

type Bend = { readonly radius: number; readonly angle: number; readonly made: 'die' | 'rolled' };

/** Whether the straights beside a bend meet somewhere: a crown's do not count as a corner. */
export const hasCorner = ({ made, angle }: Bend): boolean => made === 'die' && angle < HALF_TURN;

/** Tangent length of an arc that has a corner, else 0 [mm]. */
export const cornerTangent = (bend: Bend | undefined): number =>
  bend !== undefined && hasCorner(bend) ? tangentLength(bend) : 0;

/** Arc length R θ [mm]. */
export const arcLength = (bend: { radius: number; angle: number }): number => bend.radius * bend.angle;

/**
 * The feed / rotation / bend table of a run through apex points. Straights may come out negative: the run then
 * cannot be made as drawn, and the caller says so. Derived; checked there and back on random runs.
 *
 * @param start first point [mm]
 * @param apexes corners in between
 * @param finish last point [mm]
 */
export function bendTable(run: { start: Vector3; apexes: readonly Apex[]; finish: Vector3 }): BendTable | TableFailure {
  const points = [run.start, ...run.apexes.map((apex) => apex.point), run.finish];
  const steps: BendStep[] = [];
  let straight = 0;
  let setback = 0;
  let direction: Vector3 | undefined;
  let normal: Vector3 | undefined;
  for (const [index, point] of points.entries()) {
    const before = points[index - 1];
    if (before === undefined) continue;
    const leg = subtract(point, before);
    const next = unit(leg);
    if (next === undefined) return { failure: 'points-coincide', at: index };
    const apex = run.apexes[index - 2];
    if (direction !== undefined && apex !== undefined) {
      const angle = angleBetween(direction, next);
      if (Math.PI - angle < LEAST_BEND) return { failure: 'bend-angle-straight-back', at: index - 1 };
      const axis = angle < LEAST_BEND ? undefined : unit(cross(direction, next));
      if (axis !== undefined) {
        const turn = normal === undefined ? 0 : Math.atan2(dot(cross(normal, axis), direction), dot(normal, axis));
        const tangent = tangentLength({ radius: apex.radius, angle });
        const rotation = turn <= -Math.PI + 1e-12 ? Math.PI : turn;
        steps.push({ feed: straight - setback - tangent, rotation, angle, radius: apex.radius });
        straight = 0;
        setback = tangent;
        normal = axis;
      }
    }
    straight += length(leg);
    direction = next;
  }
  return { steps, lastStraight: straight - setback };
}

/** Developed length: straights and arcs [mm]. */
export const developedLength = (table: BendTable): number =>
  table.steps.reduce((sum, step) => sum + step.feed + arcLength(step), table.lastStraight);

/**
 * Bends a table back into space.
 *
 * @returns the tangent points in order: start and end of each bend, then the far end [mm]
 */
export function tangentPoints(table: BendTable, start: StartFrame): Vector3[] {
  let { point, direction, normal } = start;
  const points: Vector3[] = [];
  for (const step of table.steps) {
    normal = rotate(normal, direction, step.rotation);
    point = add(point, scale(direction, step.feed));
    points.push(point);
    const centre = add(point, scale(cross(normal, direction), step.radius));
    point = add(centre, rotate(subtract(point, centre), normal, step.angle));
    direction = rotate(direction, normal, step.angle);
    points.push(point);
  }
  points.push(add(point, scale(direction, table.lastStraight)));
  return points;
}

/**
 * The same part bent from the other end. Rotations keep their sign (axis and feed direction both flip) but move
 * one bend on, because the first is always 0.
 */
export function reversed(table: BendTable): BendTable {
  const steps = [...table.steps].reverse().map((step, index, all) => ({
    ...step,
    feed: index === 0 ? table.lastStraight : (table.steps[all.length - index]?.feed ?? 0),
    rotation: index === 0 ? 0 : (table.steps[all.length - index]?.rotation ?? 0),
  }));
  return { steps, lastStraight: table.steps[0]?.feed ?? table.lastStraight };
}

/** The mirrored part: every rotation changes sign, half turns stay. */
export const mirrored = (table: BendTable): BendTable => ({
  steps: table.steps.map((step) => ({
    ...step,
    rotation: step.rotation === Math.PI ? Math.PI : step.rotation === 0 ? 0 : -step.rotation,
  })),
  lastStraight: table.lastStraight,
});
