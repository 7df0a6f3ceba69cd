import { describe, expect, it } from 'vitest';
import {
  angleToBendTo,
  bendingMoment,
  radiusAfterRelease,
  springbackShare,
} from '../../server/solver/bending/springback.ts';
import { fitStraightLine } from '../../server/solver/bending/straight-line-fit.ts';
import { commandFor } from '../../server/solver/bending/test-bends.ts';
import { arcLength, tangentLength } from '../../server/solver/geometry/bend-table.ts';
import { CATALOGUE_GRADES } from '../../server/solver/tube/grades.ts';

// Integrated beforehand with an independent program (K 1400, n 0.44 from Callister 2005 for 304; K 1190, n 0.35 for
// 316L; E 193 GPa): grade, D, t, R/D, M N·m, λ, bend to for 90°, R_f mm, growth of the radius mm
const ROWS = [
  ['304', 25.4, 1.65, 2, 611.2, 0.01845, 91.691, 51.755, 0.955],
  ['304', 25.4, 1.65, 3, 511.4, 0.02315, 92.133, 78.006, 1.806],
  ['304', 25.4, 1.65, 4, 450.6, 0.02719, 92.516, 104.44, 2.84],
  ['304', 38.1, 1.65, 2, 1452.0, 0.01823, 91.671, 77.615, 1.415],
  ['304', 38.1, 1.65, 3, 1214.7, 0.02288, 92.107, 116.976, 2.676],
  ['304', 38.1, 1.65, 4, 1070.3, 0.02688, 92.486, 156.609, 4.209],
  ['304', 48.3, 2, 2, 2841.9, 0.01821, 91.67, 98.392, 1.792],
  ['304', 48.3, 2, 3, 2377.5, 0.02286, 92.105, 148.289, 3.389],
  ['304', 48.3, 2, 4, 2094.8, 0.02685, 92.483, 198.531, 5.331],
  ['316L', 25.4, 1.65, 2, 605.5, 0.01827, 91.675, 51.745, 0.945],
  ['316L', 25.4, 1.65, 3, 525.3, 0.02378, 92.192, 78.056, 1.856],
  ['316L', 25.4, 1.65, 4, 475.0, 0.02867, 92.656, 104.599, 2.999],
  ['316L', 38.1, 1.65, 2, 1435.5, 0.01802, 91.652, 77.599, 1.399],
  ['316L', 38.1, 1.65, 3, 1245.5, 0.02346, 92.162, 117.046, 2.746],
  ['316L', 38.1, 1.65, 4, 1126.2, 0.02828, 92.62, 156.836, 4.436],
  ['316L', 48.3, 2, 2, 2809.1, 0.018, 91.65, 98.371, 1.771],
  ['316L', 48.3, 2, 3, 2437.4, 0.02343, 92.159, 148.377, 3.477],
  ['316L', 48.3, 2, 4, 2203.9, 0.02825, 92.616, 198.816, 5.616],
] as const;

describe('springback of a bend', () => {
  it.each(ROWS)(
    '%s %d × %d at %d D',
    (grade, outsideDiameter, wall, ratio, moment, lambda, bendTo, released, growth) => {
      const radius = ratio * outsideDiameter;
      const bend = { ...CATALOGUE_GRADES[grade], outsideDiameter, wall, radius };
      const share = springbackShare(bend);
      const after = radiusAfterRelease({ radius, share });
      expect((bendingMoment(bend) / 1000).toFixed(1)).toBe(moment.toFixed(1));
      expect(share.toFixed(5)).toBe(lambda.toFixed(5));
      expect(angleToBendTo({ angle: 90, share }).toFixed(3)).toBe(bendTo.toFixed(3));
      expect(after.toFixed(3)).toBe(released.toFixed(3));
      expect((after - radius).toFixed(3)).toBe(growth.toFixed(3));
    },
  );
});

// What the grown radius does to a right angle, 38.1 × 1.65 on a die of 76.2 mm, printed to 0.01 mm; radius and tangent
// length are truncated there
it('a radius of 77.61 instead of 76.2 moves tangent points, arc and gain', () => {
  const bend = { ...CATALOGUE_GRADES['304'], outsideDiameter: 38.1, wall: 1.65, radius: 76.2 };
  const after = radiusAfterRelease({ radius: 76.2, share: springbackShare(bend) });
  const before = { radius: 76.2, angle: Math.PI / 2 };
  const now = { radius: after, angle: Math.PI / 2 };
  const tangent = tangentLength(now) - tangentLength(before);
  const arc = arcLength(now) - arcLength(before);
  expect(Math.floor(after * 100) / 100).toBe(77.61);
  expect(Math.floor(tangent * 100) / 100).toBe(1.41);
  expect(arc.toFixed(2)).toBe('2.22');
  expect((2 * tangent - arc).toFixed(2)).toBe('0.61');
});

// Degrees lost for a finished 90°, integrated likewise, printed to 0.01: D, t, R/D, 304, 316L
it.each([
  [25.4, 1.65, 2, 1.69, 1.67],
  [25.4, 1.65, 3, 2.13, 2.19],
  [25.4, 1.65, 4, 2.52, 2.66],
  [38.1, 1.65, 2, 1.67, 1.65],
  [38.1, 1.65, 3, 2.11, 2.16],
  [38.1, 1.65, 4, 2.49, 2.62],
  [48.3, 2, 2, 1.67, 1.65],
  [48.3, 2, 3, 2.11, 2.16],
  [48.3, 2, 4, 2.48, 2.62],
])('%d × %d at %d D loses', (outsideDiameter, wall, ratio, of304, of316L) => {
  for (const [grade, lost] of [
    ['304', of304],
    ['316L', of316L],
  ] as const) {
    const share = springbackShare({
      ...CATALOGUE_GRADES[grade],
      outsideDiameter,
      wall,
      radius: ratio * outsideDiameter,
    });
    expect((angleToBendTo({ angle: 90, share }) - 90).toFixed(2)).toBe(lost.toFixed(2));
  }
});

// Closed forms: with n = 0 and a stiff tube M = (4/3) σ (ro³ − ri³), 658 107.45 N·mm for 38.1 × 1.65 at 300 MPa
it('a rigid-plastic tube', () => {
  const rigid = { elasticModulus: 1e12, strengthCoefficient: 300, hardeningExponent: 0 };
  expect(bendingMoment({ ...rigid, outsideDiameter: 38.1, wall: 1.65, radius: 76.2 }).toFixed(2)).toBe('658107.45');
});

// Elastic–perfectly plastic at first yield: M = W σ, and λ is exactly 1 below it
it('an elastic tube springs straight again', () => {
  const stiff = { elasticModulus: 200_000, strengthCoefficient: 300, hardeningExponent: 0 };
  expect(springbackShare({ ...stiff, outsideDiameter: 38.1, wall: 1.65, radius: 20_000 })).toBeCloseTo(1, 9);
});

// Wall matters little: exact integration, printed to 1e-6, at 3D with K 1400, n 0.44, E 193 GPa
it.each([
  [25.4, 1.65, 0.023148],
  [48.3, 5, 0.023618],
  [101.6, 2, 0.022584],
])('share of %d × %d at 3 D', (outsideDiameter, wall, share) => {
  const bend = { ...CATALOGUE_GRADES['304'], outsideDiameter, wall, radius: 3 * outsideDiameter };
  expect(springbackShare(bend)).toBeCloseTo(share, 6);
});

// 2.1° lost of 20°, 6.4° lost of 120°, in degrees
describe('two-coefficient calibration', () => {
  const fit = fitStraightLine([
    { x: 20, y: 2.1 },
    { x: 120, y: 6.4 },
  ])!;
  it('on the commanded angle', () => {
    expect(fit.slope.toFixed(4)).toBe('0.0430');
    expect(fit.at0.toFixed(4)).toBe('1.2400');
    expect(commandFor(90, { fixed: fit.at0, share: fit.slope }).toFixed(4)).toBe('95.3396');
  });
  it('on the achieved angle: c = w + a + b w, and the same command', () => {
    const achieved = fitStraightLine([
      { x: 17.9, y: 2.1 },
      { x: 113.6, y: 6.4 },
    ])!;
    expect(achieved.at0.toFixed(5)).toBe('1.29572');
    expect(achieved.slope.toFixed(6)).toBe('0.044932');
    expect((90 + achieved.at0 + achieved.slope * 90).toFixed(4)).toBe('95.3396');
  });
  // ± of the line where each bend is measured to ± 0.2°: at, ±
  it.each([
    [20, '0.20'],
    [70, '0.14'],
    [90, '0.15'],
    [120, '0.20'],
    [180, '0.34'],
  ])('is as sure at %d° as ± %s°', (angle, printed) => {
    expect((0.2 * fit.standing(angle)).toFixed(2)).toBe(printed);
  });
  it('needs two different angles', () => {
    expect(fitStraightLine([])).toBeUndefined();
    expect(fitStraightLine([{ x: 90, y: 3 }])).toBeUndefined();
  });
});
