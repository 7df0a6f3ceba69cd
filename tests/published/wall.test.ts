import { describe, expect, it } from 'vitest';
import { outerElongation, wallInside, wallOutside } from '../../server/solver/bending/wall.ts';

// Handbook 1, 6.1: R/D, elongation %, t_o/t plane strain, t_i/t
const ROWS = [
  [1, 50.0, 0.6667, 2.0],
  [1.5, 33.3, 0.75, 1.5],
  [2, 25.0, 0.8, 1.3333],
  [2.5, 20.0, 0.8333, 1.25],
  [3, 16.7, 0.8571, 1.2],
  [4, 12.5, 0.8889, 1.1429],
  [5, 10.0, 0.9091, 1.1111],
  [6, 8.3, 0.9231, 1.0909],
] as const;

describe('wall of a bend', () => {
  it.each(ROWS)('at %d D', (ratio, elongation, outside, inside) => {
    const bent = { outsideDiameter: 40, wall: 1, radius: 40 * ratio };
    expect(outerElongation(bent) * 100).toBeCloseTo(elongation, 1);
    expect(wallOutside(bent)).toBeCloseTo(outside, 4);
    expect(wallInside(bent)).toBeCloseTo(inside, 4);
  });
});
