import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestMotion, moved } from '../../server/solver/geometry/rigid-motion.ts';
import { add, cross, scale, subtract, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { standingOff } from '../../server/solver/welding/movement/standing-off.ts';

const at = (x: number, y: number, z = 0): Vector3 => ({ x, y, z });

describe('points that have moved', () => {
  const spread = fc.integer({ min: -500, max: 500 });
  const points = fc.array(fc.record({ x: spread, y: spread, z: spread }), { minLength: 1, maxLength: 9 });
  const flat = (all: readonly Vector3[]) => all.flatMap(({ x, y, z }) => [x, y, z]);

  it('stand off as the best rigid motion leaves them', () => {
    fc.assert(
      fc.property(points, points, (where, way) => {
        const small = 1e-5;
        const moves = where.map((_, index) => scale(way[index % way.length]!, small));
        const off = standingOff(flat(where))(flat(moves));
        const pairs = where.map((to, index) => ({ from: add(to, moves[index]!), to, weight: 1 }));
        const back = bestMotion(pairs);
        const left = Math.hypot(...pairs.flatMap(({ from, to }) => flat([subtract(moved(back, from), to)])));
        expect(Math.hypot(...off)).toBeCloseTo(left, 6);
      }),
    );
  });

  it('by a rigid motion do not stand off at all, on one line and at one place as well', () => {
    for (const where of [
      [at(0, 0)],
      [at(1, 2), at(1, 2)],
      [at(0, 0), at(100, 0), at(250, 0)],
      [at(0, 0), at(9, 0), at(0, 5, 7)],
    ]) {
      const turn = at(0.3, -0.2, 0.5);
      const moves = where.map((point) => add(at(4, 5, 6), cross(turn, point)));
      expect(Math.hypot(...standingOff(flat(where))(flat(moves)))).toBeLessThan(1e-9);
    }
  });
});
