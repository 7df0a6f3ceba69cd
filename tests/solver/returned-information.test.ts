import { Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import type { Reading } from '../../server/job/came-back.ts';
import { solvedWithHold } from '../../server/solver/returned/information.ts';
import { came, drawn, fitted, ring } from '../properties/returned-frames.ts';

const rows = (...all: number[][]) => all.map((row) => Float64Array.from(row));

describe('unknowns held weakly', () => {
  it('are solved as (JᵀJ + 1) x = r', () => {
    const x = solvedWithHold(rows([2, 1], [0, 3]), new Matrix([[7], [19]]));
    // JᵀJ + 1 = [[5, 2], [2, 11]]
    expect(x.get(0, 0)).toBeCloseTo((7 * 11 - 2 * 19) / 51, 12);
    expect(x.get(1, 0)).toBeCloseTo((5 * 19 - 2 * 7) / 51, 12);
  });

  it('have an answer where slopes are so steep that rounding leaves nothing of the hold', () => {
    for (const steep of [1e7, 1e8, 1e12, 1e100]) {
      const slopes = rows([steep, steep, 0], [steep, steep, steep], [steep, steep, -steep]);
      const left = solvedWithHold(slopes, Matrix.eye(3));
      expect(left.to1DArray().every(Number.isFinite)).toBe(true);
      for (const index of [0, 1, 2]) expect(left.get(index, index)).toBeGreaterThan(0);
      // what all rows see is decided
      expect(left.get(2, 2)).toBeLessThan(1e-10);
    }
  });
});

describe('a closed tube with readings beyond all measure', () => {
  const piece = (number: number, value: number): Reading => ({
    reading: 'piece',
    what: number % 2 === 1 ? 'length' : 'radius',
    member: 'ring',
    piece: number,
    value,
    accuracy: 1e-9,
  });
  const size = (index: number, check: string, value: number): Reading => ({
    reading: 'size',
    check,
    index,
    reference: 'outside',
    value,
    accuracy: 1e-9,
  });
  const all = (long: number, radius: number): Reading[] => [
    ...[1, 2, 3, 4, 5, 6, 7, 8, 9].map((number) => piece(number, number % 2 === 1 ? long : radius)),
    size(0, 'width', long),
    size(0, 'height', 0.001),
  ];

  it.each([
    [50_000, 1_000_000],
    [50_000, 0.001],
    [0.001, 1_000_000],
    [0.001, 0.001],
  ])('has a fit: straights of %d mm, bends of %d mm', (long, radius) => {
    const { fit } = fitted(drawn(ring), came(all(long, radius)));
    expect(fit.readings.length).toBeGreaterThanOrEqual(10);
    expect(Number.isFinite(fit.misfit.value)).toBe(true);
    expect(fit.misfit.value).toBeGreaterThan(5);
  });
});
