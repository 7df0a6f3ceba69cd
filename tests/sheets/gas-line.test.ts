import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gasCrosses, gasDots, lengthOf, placesAlong } from '../../server/sheets/gas-line.ts';
import type { Spot } from '../../server/sheets/ink.ts';
import '../seed.ts';

const spot = fc.tuple(fc.double({ min: 0, max: 200, noNaN: true }), fc.double({ min: 0, max: 200, noNaN: true }));
const way = fc.array(spot, { minLength: 2, maxLength: 12 });

const offLine = ([x, y]: Spot, points: readonly Spot[]): number =>
  Math.min(
    ...points.slice(1).map(([x1, y1], index) => {
      const [x0, y0] = points[index]!;
      const size = (x1 - x0) ** 2 + (y1 - y0) ** 2;
      const share = size === 0 ? 0 : Math.max(0, Math.min(1, ((x - x0) * (x1 - x0) + (y - y0) * (y1 - y0)) / size));
      return Math.hypot(x - x0 - share * (x1 - x0), y - y0 - share * (y1 - y0));
    }),
  );

describe('the way of the gas', () => {
  it('has as many places as fit, all on the line, each with the unit vector along it', () => {
    fc.assert(
      fc.property(way, fc.double({ min: 0.5, max: 60, noNaN: true }), (points, pitch) => {
        const length = lengthOf(points);
        fc.pre(length > 0.01);
        const places = placesAlong(points, pitch);
        expect(places).toHaveLength(Math.max(1, Math.floor(length / pitch + 1e-9)));
        for (const { at, along } of places) {
          expect(offLine(at, points)).toBeLessThan(1e-6);
          expect(Math.hypot(...along)).toBeCloseTo(1, 9);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('is nothing where the line has no length', () => {
    expect(gasDots([])).toEqual([]);
    expect(gasDots([[3, 4]])).toEqual([]);
    expect(
      gasCrosses([
        [3, 4],
        [3, 4],
      ]),
    ).toEqual([]);
  });

  it('has arrows that point from its first place to its last', () => {
    const arrows = gasDots([
      [0, 0],
      [100, 0],
    ]).filter(({ points }) => points.length === 3);
    expect(arrows).toHaveLength(2);
    for (const {
      points: [tip, ...base],
    } of arrows)
      for (const one of base) expect(tip![0]).toBeGreaterThan(one[0]);
    const back = gasDots([
      [100, 0],
      [0, 0],
    ]).filter(({ points }) => points.length === 3);
    for (const {
      points: [tip, ...base],
    } of back)
      for (const one of base) expect(tip![0]).toBeLessThan(one[0]);
  });
});
