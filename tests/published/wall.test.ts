import { describe, expect, it } from 'vitest';
import {
  neutralRadius,
  outerElongation,
  wallInside,
  wallOutside,
  wallShared,
} from '../../server/solver/bending/wall.ts';

// Computed beforehand, printed to 0.1 % and 1e-4: R/D, elongation %, t_o/t plane strain and how much thinner %, t_o/t
// stretch shared and how much thinner %, t_i/t
const ROWS = [
  [1, 50.0, 0.6667, 33.3, 0.8165, 18.4, 2.0],
  [1.5, 33.3, 0.75, 25.0, 0.866, 13.4, 1.5],
  [2, 25.0, 0.8, 20.0, 0.8944, 10.6, 1.3333],
  [2.5, 20.0, 0.8333, 16.7, 0.9129, 8.7, 1.25],
  [3, 16.7, 0.8571, 14.3, 0.9258, 7.4, 1.2],
  [4, 12.5, 0.8889, 11.1, 0.9428, 5.7, 1.1429],
  [5, 10.0, 0.9091, 9.1, 0.9535, 4.7, 1.1111],
  [6, 8.3, 0.9231, 7.7, 0.9608, 3.9, 1.0909],
] as const;

describe('wall of a bend', () => {
  it.each(ROWS)('at %d D', (ratio, elongation, outside, thinner, shared, thinnerShared, inside) => {
    const bent = { outsideDiameter: 40, wall: 1, radius: 40 * ratio };
    expect((outerElongation(bent) * 100).toFixed(1)).toBe(elongation.toFixed(1));
    expect(wallOutside(bent).toFixed(4)).toBe(outside.toFixed(4));
    expect((100 * (1 - wallOutside(bent))).toFixed(1)).toBe(thinner.toFixed(1));
    expect(wallShared(bent, 'outside').toFixed(4)).toBe(shared.toFixed(4));
    expect((100 * (1 - wallShared(bent, 'outside'))).toFixed(1)).toBe(thinnerShared.toFixed(1));
    expect(wallInside(bent).toFixed(4)).toBe(inside.toFixed(4));
  });
});

// Stretch of the centreline without axial force, R/r_n − 1 with r = D/2, printed to 0.01 %, and how far the neutral axis
// lies towards the inside as a share of r: R/D, %, e/r
it.each([
  [2, '3.28', '0.127'],
  [3, '1.42', '0.084'],
  [4, '0.79', '0.063'],
  [5, '0.50', '0.050'],
  [6, '0.35', '0.042'],
])('neutral axis at %d D', (ratio, stretch, shift) => {
  const neutral = neutralRadius({ radius: ratio, tubeRadius: 0.5 });
  expect((100 * (ratio / neutral - 1)).toFixed(2)).toBe(stretch);
  expect(((ratio - neutral) / 0.5).toFixed(3)).toBe(shift);
});

// The other rules for the wall, computed beforehand: 4R/(4R + D), the least wall of ASTM A688 U-bends (from memory), lies
// between stretch that is all in the wall and stretch that is shared: R/D, left, thinner %
it.each([
  [1, '0.8000', '20.0'],
  [1.5, '0.8571', '14.3'],
  [2, '0.8889', '11.1'],
  [2.5, '0.9091', '9.1'],
  [3, '0.9231', '7.7'],
  [4, '0.9412', '5.9'],
  [5, '0.9524', '4.8'],
  [6, '0.9600', '4.0'],
])('U-bend rule at %d D', (ratio, left, thinner) => {
  const bent = { outsideDiameter: 1, wall: 1, radius: ratio };
  const rule = (4 * ratio) / (4 * ratio + 1);
  expect(rule.toFixed(4)).toBe(left);
  expect((100 * (1 - rule)).toFixed(1)).toBe(thinner);
  expect(wallOutside(bent)).toBeLessThan(rule);
  expect(wallShared(bent, 'outside')).toBeGreaterThan(rule);
});
