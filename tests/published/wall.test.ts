import { describe, expect, it } from 'vitest';
import {
  neutralRadius,
  outerElongation,
  wallInside,
  wallOutside,
  wallShared,
} from '../../server/solver/bending/wall.ts';

// Computed beforehand, printed to 0.1 % and 1e-4: R/D, elongation %, t_o/t plane strain, t_o/t stretch shared, t_i/t
const ROWS = [
  [1, 50.0, 0.6667, 0.8165, 2.0],
  [1.5, 33.3, 0.75, 0.866, 1.5],
  [2, 25.0, 0.8, 0.8944, 1.3333],
  [2.5, 20.0, 0.8333, 0.9129, 1.25],
  [3, 16.7, 0.8571, 0.9258, 1.2],
  [4, 12.5, 0.8889, 0.9428, 1.1429],
  [5, 10.0, 0.9091, 0.9535, 1.1111],
  [6, 8.3, 0.9231, 0.9608, 1.0909],
] as const;

describe('wall of a bend', () => {
  it.each(ROWS)('at %d D', (ratio, elongation, outside, shared, inside) => {
    const bent = { outsideDiameter: 40, wall: 1, radius: 40 * ratio };
    expect(outerElongation(bent) * 100).toBeCloseTo(elongation, 1);
    expect(wallOutside(bent)).toBeCloseTo(outside, 4);
    expect(wallShared(bent, 'outside')).toBeCloseTo(shared, 4);
    expect(wallInside(bent)).toBeCloseTo(inside, 4);
  });
});

// Stretch of the centreline without axial force, R/r_n − 1 with r = D/2, printed to 0.01 %: R/D, %
it.each([
  [2, 3.28],
  [3, 1.42],
  [4, 0.79],
  [5, 0.5],
  [6, 0.35],
])('neutral axis at %d D', (ratio, stretch) => {
  expect(100 * (ratio / neutralRadius({ radius: ratio, tubeRadius: 0.5 }) - 1)).toBeCloseTo(stretch, 2);
});
