// Up by gravity and what levels show must not know about headings, and must come back from what levels showed.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LevelReading } from '../../server/job/level.ts';
import {
  angleBetween,
  cross,
  dot,
  rotate,
  scale,
  squareTo,
  subtract as less,
  unit,
  type Vector3,
} from '../../server/solver/geometry/vector.ts';
import { EXACT } from '../../server/solver/site/laid-site.ts';
import { directionOf } from '../../server/solver/site/level/directions.ts';
import { levelRows } from '../../server/solver/site/level/level-rows.ts';
import { solveLevels } from '../../server/solver/site/level/solve-levels.ts';
import { contextOf, degrees, height, incline, levelOf, levelStudy, X, Y, Z } from '../solver/site/level-study.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Up in a structure that leans up to 20 degrees any way. */
const ups = fc
  .tuple(between(0, 20), between(0, 360))
  .map(([lean, way]) => rotate(rotate(Z, Y, lean / degrees(1)), Z, way / degrees(1)));

/** Lines of the structure up to 20 degrees off its deck. */
const lines = fc
  .tuple(between(0, 360), between(-20, 20))
  .map(([way, slope]) => rotate(rotate(X, Y, slope / degrees(1)), Z, way / degrees(1)));

const marks = fc
  .tuple(between(-5000, 5000), between(-3000, 3000), between(-800, 800))
  .map(([x, y, z]) => ({ x, y, z }));

/** Two lines that cross at 20 degrees or more, as seen from above. */
const cross2 = (one: Vector3, other: Vector3) =>
  Math.abs(one.x * other.y - one.y * other.x) >
  Math.sin(20 / degrees(1)) * Math.hypot(one.x, one.y) * Math.hypot(other.x, other.y);

const wide = ({ x, y, z }: Vector3) => Math.hypot(x, y) > 500 && Math.abs(z) < 0.3 * Math.hypot(x, y);

const reads = (up: Vector3) => (along: Vector3) => incline(along, degrees(Math.asin(dot(unit(along)!, up))));
const stands = (up: Vector3) => (at: Vector3) => height(at, 345 + dot(at, up));

/** Sets of readings that tell, with the up that they were taken under. */
const told: Record<string, fc.Arbitrary<{ up: Vector3; readings: LevelReading[] }>> = {
  'two inclines': fc
    .tuple(ups, lines, lines)
    .filter(([, one, other]) => cross2(one, other))
    .map(([up, one, other]) => ({ up, readings: [one, other].map(reads(up)) })),
  'three heights': fc
    .tuple(ups, marks, marks, marks)
    .filter(([, a, b, c]) => [less(b, a), less(c, a), less(c, b)].every(wide) && cross2(less(b, a), less(c, a)))
    .map(([up, ...at]) => ({ up, readings: at.map(stands(up)) })),
  'two heights and an incline': fc
    .tuple(ups, marks, marks, lines)
    .filter(([, a, b, line]) => wide(less(b, a)) && cross2(less(b, a), line))
    .map(([up, a, b, line]) => ({ up, readings: [stands(up)(a), reads(up)(line), stands(up)(b)] })),
  'more than enough': fc
    .tuple(ups, fc.array(marks, { maxLength: 6 }), fc.array(lines, { minLength: 3, maxLength: 8 }))
    .filter(([, , along]) => cross2(along[0]!, along[1]!))
    .map(([up, at, along]) => ({ up, readings: [...at.map(stands(up)), ...along.map(reads(up))] })),
};

const same = (one: Vector3, other: Vector3) => {
  for (const axis of ['x', 'y', 'z'] as const) expect(Math.abs(one[axis] - other[axis])).toBeLessThan(1e-12);
};

describe('up comes back from what was read under it', () => {
  it.each(Object.entries(told))('%s', (_, sets) => {
    fc.assert(
      fc.property(sets, ({ up, readings }) => {
        const { levels, findings } = solveLevels(levelOf(readings), EXACT);
        expect(findings).toEqual([]);
        same(levels[0]!.up, up);
      }),
      { numRuns: 150 },
    );
  });
});

/** Rows of a rotation that sets the structure upright, at any heading. */
const upright = (up: Vector3, heading: number): readonly [Vector3, Vector3, Vector3] => {
  const ahead = rotate(squareTo(up, X), up, heading);
  return [ahead, cross(up, ahead), up];
};

const steep = fc
  .tuple(between(-1, 1), between(-1, 1), between(-1, 1))
  .filter(([x, y, z]) => Math.min(Math.hypot(x, z), Math.hypot(y, z)) > 0.1)
  .map(([x, y, z]) => unit({ x, y, z })!);

const levelUnder = (up: Vector3) => levelOf([reads(up)(X), reads(up)(Y)]);

const rowOf = (up: Vector3, vector: Vector3) =>
  levelRows(
    levelStudy({
      level: levelUnder(up),
      directions: [{ name: 'it', direction: { by: 'axes', vector: { ...vector } } }],
    }),
  )[0]!;

it('inclinations are those of the line set upright, at any heading', () => {
  fc.assert(
    fc.property(ups, steep, between(0, 6), (up, line, heading) => {
      const [x, y, z] = upright(up, heading);
      const stood = { x: dot(x, line), y: dot(y, line), z: dot(z, line) };
      const { along } = rowOf(up, line);
      // as a person would read it off the upright line, without up in it
      const angle = degrees(Math.atan2(Math.abs(stood.z), Math.hypot(stood.x, stood.y)));
      expect(Math.abs(along.value - angle)).toBeLessThan(1e-12 * 90);
    }),
    { numRuns: 150 },
  );
});

it.each([
  ['fore-and-aft', Y],
  ['athwart', X],
] as const)('what a level shows %s is the angle to the level line of its plane, at any heading', (plane, square) => {
  fc.assert(
    fc.property(ups, steep, between(0, 6), (up, line, heading) => {
      const inPlane = unit(less(line, scale(square, dot(line, square))));
      const reading = rowOf(up, line).planes.find((one) => one.plane === plane);
      if (inPlane === undefined || reading === undefined) throw new Error('a line that is seen end on');
      const [x, y, z] = upright(up, heading);
      const stood = (of: Vector3): Vector3 => ({ x: dot(x, of), y: dot(y, of), z: dot(z, of) });
      const flat = cross(stood(square), Z);
      const angle = degrees(angleBetween(stood(inPlane), flat));
      expect(Math.abs(reading.shows.value - Math.min(angle, 180 - angle))).toBeLessThan(1e-11);
    }),
    { numRuns: 100 },
  );
});

it('a line comes back from what levels showed in both planes', () => {
  fc.assert(
    fc.property(ups, between(-60, 60), between(-60, 60), (up, ahead, port) => {
      const level = levelUnder(up);
      const context = contextOf(level);
      const lean = directionOf({ by: 'lean', ahead, port }, '', context);
      const line = 'direction' in lean ? lean.direction : Z;
      const [foreAndAft, athwart] = rowOf(up, line).planes;
      // what leans by less than rounding has no side
      fc.pre(foreAndAft!.leans !== null && athwart!.leans !== null);
      const off = (reading: typeof foreAndAft, plus: string) =>
        reading!.offPlumb.value * (reading!.leans === plus ? 1 : -1);
      const read = { ahead: off(foreAndAft, 'ahead'), port: off(athwart, 'port') };
      const back = directionOf({ by: 'plumb', ...read, set: 1 }, '', context);
      same('direction' in back ? back.direction : X, line);
    }),
    { numRuns: 150 },
  );
});

/** Anything that a job may hold. */
const anything = fc.oneof(
  fc
    .tuple(fc.tuple(between(-5e4, 5e4), between(-5e4, 5e4), between(-5e4, 5e4)), between(-180, 180))
    .map(([[x, y, z], angle]) => incline({ x, y, z }, angle / 4)),
  fc
    .tuple(fc.constantFrom(0, 1e-12, 1, 5e4), fc.constantFrom(0, 1, 5e4), between(-5e4, 5e4))
    .map(([x, y, value]) => height({ x, y, z: -x }, value, 500)),
  fc.constantFrom(incline({ x: 0, y: 0, z: 0 }, 0), incline(Z, 1), incline(X, 45, 0.001), incline(Y, -45, 10)),
);

it('whatever is read, up is a direction that is up, or a finding says why not', () => {
  fc.assert(
    fc.property(fc.array(anything, { maxLength: 8 }), (readings) => {
      const { levels, findings } = solveLevels(levelOf(readings), EXACT);
      const [level] = levels;
      expect(findings.some(({ grade }) => grade === 'stop')).toBe(!level);
      if (!level) return;
      expect(Math.abs(Math.hypot(level.up.x, level.up.y, level.up.z) - 1)).toBeLessThan(1e-12);
      expect(level.up.z).toBeGreaterThan(0);
      expect(level.residuals.every(Number.isFinite)).toBe(true);
      expect(level.residuals).toHaveLength(readings.length);
    }),
    { numRuns: 200 },
  );
});

it('what a post is off plumb spreads no further than its ±, however little that is', () => {
  const accuracy = 0.2;
  const post = { name: 'post', direction: { by: 'axes' as const, vector: { ...Z } } };
  let seed = 11;
  const random = () => (seed = (seed * 16_807) % 2_147_483_647) / 2_147_483_647;
  const normal = () => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
  for (const [trim, list] of [
    [0, 0],
    [0.1, 0],
    [-0.15, 0.1],
    [0.5, -0.4],
    [5, 3],
  ] as const) {
    const level = { ...levelOf([incline(X, trim), incline(Y, list)]), angleAccuracy: accuracy };
    const { offPlumb } = levelRows(levelStudy({ level, directions: [post] }))[0]!;
    const band = offPlumb.band!.plusMinus;
    const drawn = Array.from({ length: 3000 }, () => {
      const read = [incline(X, trim + accuracy * normal()), incline(Y, list + accuracy * normal())];
      return degrees(angleBetween(solveLevels(levelOf(read), EXACT).levels[0]!.up, Z));
    });
    const mean = drawn.reduce((sum, angle) => sum + angle, 0) / drawn.length;
    const spread = Math.sqrt(drawn.reduce((sum, angle) => sum + (angle - mean) ** 2, 0) / drawn.length);
    expect(spread / band).toBeLessThan(1.05);
    // far from plumb the two are one
    expect(spread / band).toBeGreaterThan(Math.hypot(trim, list) > 2 * accuracy ? 0.9 : 0.5);
  }
});
