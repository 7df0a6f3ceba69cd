// ASTM tolerances of tube and pipe, from secondary copies: every row at both of its ends.
import { describe, expect, it } from 'vitest';
import { INCH } from '../../server/solver/tube/section.ts';
import { tubeTolerance, type ToleranceStandard } from '../../server/solver/tube/tolerances.ts';

const diameter = (standard: ToleranceStandard, outsideDiameter: number, wall = 1.65) => {
  const allowed = tubeTolerance(standard, { outsideDiameter, wall });
  return allowed === undefined ? undefined : [allowed.outsideDiameter.plus, allowed.outsideDiameter.minus];
};
const both = (plusMinus: number) => [plusMinus, plusMinus];

describe('A554, round as welded', () => {
  // smallest and largest OD in, least and largest wall in, ± in and as printed in mm
  it.each([
    [0.3, 0.49, 0.02, 0.049, 0.004, '0.10'],
    [0.5, 1, 0.02, 0.065, 0.005, '0.13'],
    [0.5, 1, 0.066, 0.134, 0.01, '0.25'],
    [1.01, 1.5, 0.025, 0.065, 0.008, '0.20'],
    [1.01, 1.5, 0.066, 0.134, 0.01, '0.25'],
    [1.51, 2, 0.025, 0.049, 0.01, '0.25'],
    [1.51, 2, 0.05, 0.083, 0.011, '0.28'],
    [1.51, 2, 0.084, 0.149, 0.012, '0.30'],
    [2.01, 2.5, 0.032, 0.065, 0.012, '0.30'],
    [2.01, 2.5, 0.066, 0.109, 0.013, '0.33'],
    [2.01, 2.5, 0.11, 0.165, 0.014, '0.36'],
    [2.51, 3.5, 0.032, 0.165, 0.014, '0.36'],
    [3.51, 5, 0.035, 0.165, 0.02, '0.51'], // from memory
  ])('%d to %d in, wall %d to %d in: ± %d in', (from, to, thin, thick, inches, metric) => {
    for (const outside of [from, to])
      for (const wall of [thin, thick]) {
        const allowed = tubeTolerance('astm-a554', { outsideDiameter: outside * INCH, wall: wall * INCH })!;
        expect(allowed.outsideDiameter.plus).toBeCloseTo(inches * INCH, 12);
        expect(allowed.outsideDiameter.minus).toBeCloseTo(inches * INCH, 12);
        expect(Math.abs(allowed.outsideDiameter.plus - Number(metric))).toBeLessThan(0.0051); // 0.305 is printed 0.30
        expect(allowed.wall.plus).toBeCloseTo(0.1 * wall * INCH, 12);
        expect(allowed.wall.minus).toBeCloseTo(0.1 * wall * INCH, 12);
        expect(allowed.source).toBe(from > 3.5 ? 'astm-a554-memory' : 'astm-a554');
      }
  });

  // out of round: no more than the spread of the diameter, or twice that where the wall is 3 % of it or less
  it.each([
    [2, 0.065, 2 * 0.011],
    [2, 0.06, 4 * 0.011],
    [2, 0.061, 2 * 0.011],
    [4, 0.12, 4 * 0.02],
    [4, 0.121, 2 * 0.02],
    [1.5, 0.065, 2 * 0.008],
  ])('%d × %d in may be %d in out of round', (outside, wall, ovality) => {
    const allowed = tubeTolerance('astm-a554', { outsideDiameter: outside * INCH, wall: wall * INCH })!;
    expect(allowed.ovality! / INCH).toBeCloseTo(ovality, 12);
  });
});

describe('A269', () => {
  it.each([
    [6, 12.69, 0.13, 0.15],
    [12.7, 38.09, 0.13, 0.1],
    [38.1, 88.89, 0.25, 0.1],
    [88.9, 139.69, 0.38, 0.1],
  ])('%d to %d mm: ± %d mm', (from, to, plusMinus, wallShare) => {
    for (const outside of [from, to]) {
      expect(diameter('astm-a269', outside)).toEqual(both(plusMinus));
      const { wall } = tubeTolerance('astm-a269', { outsideDiameter: outside, wall: 2 })!;
      expect(wall).toEqual({ plus: 2 * wallShare, minus: 2 * wallShare });
    }
  });
});

describe('A249', () => {
  it.each([
    [6, 25.39, 0.1],
    [25.4, 38.1, 0.15],
    [38.11, 50.79, 0.2],
    [50.8, 63.49, 0.25],
    [63.5, 76.19, 0.3],
    [76.2, 101.6, 0.38],
  ])('%d to %d mm: ± %d mm', (from, to, plusMinus) => {
    for (const outside of [from, to]) {
      expect(diameter('astm-a249', outside)).toEqual(both(plusMinus));
      expect(tubeTolerance('astm-a249', { outsideDiameter: outside, wall: 2 })!.wall).toEqual({
        plus: 0.2,
        minus: 0.2,
      });
    }
  });
});

describe('A312', () => {
  it.each([
    [13.7, 48.3, 0.4, 0.79],
    [48.32, 114.3, 0.79, 0.79],
  ])('%d to %d mm: + %d − %d mm', (from, to, plus, minus) => {
    for (const outside of [from, to]) {
      expect(diameter('astm-a312', outside)).toEqual([plus, minus]);
      expect(tubeTolerance('astm-a312', { outsideDiameter: outside, wall: 2 })!.wall).toEqual({
        plus: null,
        minus: 0.25,
      });
    }
  });
});
