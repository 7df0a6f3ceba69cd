import { describe, expect, it } from 'vitest';
import {
  angleToBendTo,
  bendingMoment,
  radiusAfterRelease,
  springbackShare,
} from '../../server/solver/bending/springback.ts';
import { commandFor, fitTestBends } from '../../server/solver/bending/test-bends.ts';
import { CATALOGUE_GRADES } from '../../server/solver/tube/grades.ts';

// Handbook 1, 5.3: grade, D, t, R/D, M N·m, λ, bend to for 90°, R_f
const ROWS = [
  ['304', 25.4, 1.65, 2, 611.2, 0.01845, 91.691, 51.755],
  ['304', 25.4, 1.65, 3, 511.4, 0.02315, 92.133, 78.006],
  ['304', 25.4, 1.65, 4, 450.6, 0.02719, 92.516, 104.44],
  ['304', 38.1, 1.65, 2, 1452.0, 0.01823, 91.671, 77.615],
  ['304', 38.1, 1.65, 3, 1214.7, 0.02288, 92.107, 116.976],
  ['304', 38.1, 1.65, 4, 1070.3, 0.02688, 92.486, 156.609],
  ['304', 48.3, 2, 2, 2841.9, 0.01821, 91.67, 98.392],
  ['304', 48.3, 2, 3, 2377.5, 0.02286, 92.105, 148.289],
  ['304', 48.3, 2, 4, 2094.8, 0.02685, 92.483, 198.531],
  ['316L', 25.4, 1.65, 2, 605.5, 0.01827, 91.675, 51.745],
  ['316L', 25.4, 1.65, 3, 525.3, 0.02378, 92.192, 78.056],
  ['316L', 25.4, 1.65, 4, 475.0, 0.02867, 92.656, 104.599],
  ['316L', 38.1, 1.65, 2, 1435.5, 0.01802, 91.652, 77.599],
  ['316L', 38.1, 1.65, 3, 1245.5, 0.02346, 92.162, 117.046],
  ['316L', 38.1, 1.65, 4, 1126.2, 0.02828, 92.62, 156.836],
  ['316L', 48.3, 2, 2, 2809.1, 0.018, 91.65, 98.371],
  ['316L', 48.3, 2, 3, 2437.4, 0.02343, 92.159, 148.377],
  ['316L', 48.3, 2, 4, 2203.9, 0.02825, 92.616, 198.816],
] as const;

describe('springback of a bend', () => {
  it.each(ROWS)('%s %d × %d at %d D', (grade, outsideDiameter, wall, ratio, moment, lambda, bendTo, released) => {
    const radius = ratio * outsideDiameter;
    const bend = { ...CATALOGUE_GRADES[grade], outsideDiameter, wall, radius };
    const share = springbackShare(bend);
    expect(Math.abs(bendingMoment(bend) / 1000 - moment)).toBeLessThan(0.06);
    expect(Math.abs(share - lambda)).toBeLessThan(1e-5);
    expect(Math.abs(angleToBendTo({ angle: 90, share }) - bendTo)).toBeLessThan(1e-3);
    expect(Math.abs(radiusAfterRelease({ radius, share }) - released)).toBeLessThan(1e-3);
  });
});

describe('two-coefficient calibration', () => {
  it('gives the example of handbook 1, 5.7', () => {
    const fit = fitTestBends([
      { commanded: 20, measured: 17.9 },
      { commanded: 120, measured: 113.6 },
    ])!;
    expect(fit.share).toBeCloseTo(0.043, 4);
    expect(fit.fixed).toBeCloseTo(1.24, 4);
    expect(commandFor(90, fit)).toBeCloseTo(95.3396, 4);
  });
  it('needs two different angles', () => {
    expect(fitTestBends([])).toBeUndefined();
    expect(fitTestBends([{ commanded: 90, measured: 87 }])).toBeUndefined();
  });
});
