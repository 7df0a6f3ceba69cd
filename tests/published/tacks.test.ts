/** Tacks round a tube: number and order by common practice, length by EN 1011-1 as a filler maker reprints it. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tackAngles, tacksOf, tacksRound } from '../../server/solver/welding/tacks.ts';

describe('number', () => {
  it.each([
    [12, 3],
    [40, 3],
    [40.1, 4],
    [100, 4],
    [114.3, 5],
  ])('a tube of %d mm gets %d tacks', (diameter, tacks) => {
    expect(tacksRound(diameter)).toBe(tacks);
  });
  it('one for every 60 to 80 mm over 100 mm', () => {
    fc.assert(
      fc.property(fc.double({ min: 100.1, max: 400, noNaN: true }), (diameter) => {
        const apart = (Math.PI * diameter) / tacksRound(diameter);
        expect(apart).toBeGreaterThan(60);
        expect(apart).toBeLessThanOrEqual(80);
      }),
    );
  });
});

it('a long flat saddle gets one for every 80 mm of its weld', () => {
  const count = (length: number) => tacksOf({ outsideDiameter: 38.1, length, thicker: 1.65, process: '141' });
  expect([119, 240, 240.1, 412].map((length) => count(length).count.value)).toEqual([3, 3, 4, 6]);
  expect(count(412).angles).toHaveLength(6);
});

describe('order', () => {
  it('three at 120°, four at 90° in opposite pairs, six in opposite pairs', () => {
    expect(tackAngles(3)).toEqual([0, 120, 240]);
    expect(tackAngles(4)).toEqual([0, 180, 90, 270]);
    expect(tackAngles(6)).toEqual([0, 180, 60, 240, 120, 300]);
  });
  it('sets every place once, and an even number in opposite pairs at first', () => {
    for (let count = 3; count <= 20; count += 1) {
      const angles = tackAngles(count);
      expect([...angles].sort((a, b) => a - b)).toEqual(
        Array.from({ length: count }, (_, index) => (360 * index) / count),
      );
      if (count % 2 === 0) expect(angles[1]).toBe(180);
    }
  });
});

describe('length', () => {
  const tube = { outsideDiameter: 38.1, length: 114.5 };
  it('four times the thicker part, 5 mm at least', () => {
    expect(tacksOf({ ...tube, thicker: 1.65, process: '141' }).length.value).toBeCloseTo(6.6, 12);
    expect(tacksOf({ ...tube, thicker: 1, process: '141' }).length.value).toBe(5);
    expect(tacksOf({ ...tube, thicker: 3, process: '141' }).length.value).toBe(12);
  });
  it('dots of 3 to 5 mm without filler', () => {
    const { value } = tacksOf({ ...tube, thicker: 1.65, process: '142' }).length;
    expect(value).toBeGreaterThanOrEqual(3);
    expect(value).toBeLessThanOrEqual(5);
  });
  it('never more than half of the weld in all', () => {
    const { count, length } = tacksOf({ ...tube, thicker: 20, process: '141' });
    expect(count.value * length.value).toBeCloseTo(114.5 / 2, 10);
  });
});
