import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bendTable, tangentLength, tangentPoints, type BendTable } from '../../server/solver/geometry/bend-table.ts';
import {
  add,
  angleBetween,
  cross,
  length,
  scale,
  subtract,
  unit,
  type Vector3,
} from '../../server/solver/geometry/vector.ts';
import { between } from './plans-compared.ts';
import { planned, runOf, turns, walked } from './walked-runs.ts';

const NEAR = 1e-9;
const DEGREE = Math.PI / 180;

/** A run of two to nine corners anywhere in two metres each way, each with a radius of its own. */
const runs = fc
  .array(fc.record({ x: between(-2000, 2000), y: between(-2000, 2000), z: between(-2000, 2000) }), {
    minLength: 4,
    maxLength: 11,
  })
  .chain((points) =>
    fc.record({ points: fc.constant(points), radii: fc.array(between(20, 200), { minLength: 9, maxLength: 9 }) }),
  )
  // corners that a bender would call corners; the straights may come out negative, the geometry is the same
  .filter(({ points }) =>
    points.every((point, index) => {
      const [before, next] = [points[index - 1], points[index + 1]];
      if (before === undefined) return true;
      if (length(subtract(point, before)) < 50) return false;
      if (next === undefined) return true;
      const angle = angleBetween(subtract(point, before), subtract(next, point));
      return angle > 1 * DEGREE && angle < 170 * DEGREE;
    }),
  );

const apart = (one: Vector3, other: Vector3) => length(subtract(one, other));

/** Both tangent points of each corner and the far end, from the points alone: T along either leg. */
function byCorners(points: readonly Vector3[], radii: readonly number[]): Vector3[] {
  const found = points.slice(1, -1).flatMap((corner, index) => {
    const towards = (other: Vector3) => unit(subtract(other, corner))!;
    const [back, on] = [towards(points[index]!), towards(points[index + 2]!)];
    const setback = tangentLength({ radius: radii[index]!, angle: Math.PI - angleBetween(back, on) });
    return [add(corner, scale(back, setback)), add(corner, scale(on, setback))];
  });
  return [...found, points.at(-1)!];
}

describe('a thousand runs in space', () => {
  it('from points to feed, rotation and bend and back lie where they lay, to 1e-9 mm', () => {
    let worst = 0;
    fc.assert(
      fc.property(runs, ({ points, radii }) => {
        const apexes = points.slice(1, -1).map((point, index) => ({ point, radius: radii[index]! }));
        const made = bendTable({ start: points[0]!, apexes, finish: points.at(-1)! });
        if ('failure' in made) throw new Error(made.failure);
        expect(made.steps).toHaveLength(apexes.length);
        const direction = unit(subtract(points[1]!, points[0]!))!;
        const normal = unit(cross(direction, subtract(points[2]!, points[1]!)))!;
        const bent = tangentPoints(made, { point: points[0]!, direction, normal });
        const wanted = byCorners(points, radii);
        expect(bent).toHaveLength(wanted.length);
        for (const [index, point] of bent.entries()) worst = Math.max(worst, apart(point, wanted[index]!));
        expect(worst).toBeLessThan(NEAR);
      }),
      { numRuns: 1000 },
    );
    expect(worst).toBeGreaterThan(0);
  });

  it('as the plan prints them, in degrees, bend back to the end of the tube', () => {
    fc.assert(
      fc.property(turns, (of) => {
        const { points, normal } = walked(of);
        const member = planned(runOf(points));
        const printed: BendTable = {
          steps: member.bends.map(({ feed, rotation, angle, radiusAfterRelease }) => ({
            feed: feed.value,
            rotation: rotation.value * DEGREE,
            angle: angle.value * DEGREE,
            radius: radiusAfterRelease.value,
          })),
          lastStraight: member.lastStraight.value,
        };
        const bent = tangentPoints(printed, { point: points[0]!, direction: { x: 1, y: 0, z: 0 }, normal });
        // a rotation under 1e-9 rad is printed as none
        expect(apart(bent.at(-1)!, points.at(-1)!)).toBeLessThan(10 * NEAR);
        expect(apart(bent.at(-1)!, member.finish.point)).toBeLessThan(10 * NEAR);
      }),
      { numRuns: 100 },
    );
  });
});
