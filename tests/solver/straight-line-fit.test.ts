import fc from 'fast-check';
import { linearRegression } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { fitStraightLine } from '../../server/solver/bending/straight-line-fit.ts';
import { commandFor, fitSpringback } from '../../server/solver/bending/test-bends.ts';
import { testBend } from './made-up-shop.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Points about a line that is not level, at x that are apart. */
const scattered = fc
  .record({
    at0: number(-5, 5),
    slope: number(0.1, 4),
    points: fc.array(fc.tuple(number(0, 10), number(-1, 1)), { minLength: 3, maxLength: 40 }),
  })
  .filter(({ points }) => {
    const at = points.map(([x]) => x);
    return Math.max(...at) - Math.min(...at) > 1;
  })
  .map(({ at0, slope, points }) => points.map(([x, off]) => ({ x, y: at0 + slope * x + off })));

describe('a line through points', () => {
  it('is the one that a library of statistics finds', () => {
    fc.assert(
      fc.property(scattered, (points) => {
        const ours = fitStraightLine(points)!;
        const theirs = linearRegression(points.map(({ x, y }) => [x, y]));
        // each relative to the size of what it is taken from: the slope may come out near nothing
        const size = Math.max(1, ...points.map(({ y }) => Math.abs(y)));
        expect(Math.abs(ours.slope - theirs.m)).toBeLessThan(1e-12 * Math.max(Math.abs(theirs.m), size));
        expect(Math.abs(ours.at0 - theirs.b)).toBeLessThan(1e-12 * Math.max(Math.abs(theirs.b), 10 * size));
      }),
      { numRuns: 500 },
    );
  });

  it('has the residual and the standing that the sums say', () => {
    fc.assert(
      fc.property(scattered, number(-5, 15), (points, x) => {
        const line = fitStraightLine(points)!;
        const off = points.map((point) => point.y - line.at0 - line.slope * point.x);
        const residual = Math.sqrt(off.reduce((sum, one) => sum + one ** 2, 0) / (points.length - 2));
        expect(line.residual!).toBeCloseTo(residual, 9);
        // as a matrix: x₀ᵀ (XᵀX)⁻¹ x₀, with (XᵀX)⁻¹ of two unknowns written out
        const n = points.length;
        const sum = points.reduce((total, point) => total + point.x, 0);
        const squares = points.reduce((total, point) => total + point.x ** 2, 0);
        const standing = Math.sqrt((squares - 2 * x * sum + n * x ** 2) / (n * squares - sum ** 2));
        expect(line.standing(x) / standing).toBeCloseTo(1, 9);
      }),
    );
  });

  /** Student's t, two sides of 95 %, as tables print it. */
  it.each([
    [1, '12.706'],
    [2, '4.303'],
    [3, '3.182'],
    [4, '2.776'],
    [5, '2.571'],
    [10, '2.228'],
    [30, '2.042'],
  ])('is as sure as Student’s t of %d degrees of freedom makes it: %s', (freedom, printed) => {
    const points = Array.from({ length: freedom + 2 }, (_, x) => ({ x, y: x + (x % 2) }));
    const line = fitStraightLine(points)!;
    const t = line.confidence(2.5)! / (line.residual! * line.standing(2.5));
    expect(t.toFixed(3)).toBe(printed);
  });

  it('through two points leaves nothing over, and says nothing of how sure it is', () => {
    const line = fitStraightLine([
      { x: 1, y: 3 },
      { x: 5, y: 11 },
    ])!;
    expect(line.at0).toBeCloseTo(1, 12);
    expect(line.slope).toBeCloseTo(2, 12);
    expect(line.residual).toBeUndefined();
    expect(line.confidence(3)).toBeUndefined();
    expect(line.standing(3)).toBeCloseTo(Math.SQRT1_2, 12);
    for (const x of [1, 5]) expect(line.standing(x)).toBeCloseTo(1, 12);
  });

  it('is none through one x, one point or nothing', () => {
    const at = (...ys: number[]) => ys.map((y) => ({ x: 7.3, y }));
    for (const points of [at(), at(1), at(1, 2, 3)]) expect(fitStraightLine(points)).toBeUndefined();
  });
});

it('20 that gives 17.9 and 120 that gives 113.6: 95.3396 for a finished 90', () => {
  const line = fitSpringback([testBend(20, 17.9), testBend(120, 113.6)])!;
  const fixed = (line.at0 * 180) / Math.PI;
  expect(fixed).toBeCloseTo(1.24, 9);
  expect(line.slope).toBeCloseTo(0.043, 12);
  expect(commandFor(90, { fixed, share: line.slope }).toFixed(4)).toBe('95.3396');
});
