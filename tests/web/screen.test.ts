import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arrowhead, fit, onScreen, pathOf, readingTurn } from '../../web/state/screen.ts';
import { placeOf, addressOf } from '../../web/state/route.svelte.ts';

describe('the drawing on the screen', () => {
  it('lies inside its margin, in the middle, y up', () => {
    const size = { width: 400, height: 300 };
    const number = fc.double({ min: -5000, max: 5000, noNaN: true });
    fc.assert(
      fc.property(number, number, fc.double({ min: 1, max: 3000, noNaN: true }), (left, bottom, wide) => {
        const screen = fit([left, bottom, left + wide, bottom + wide / 3], size, 20);
        const [x0, y0] = onScreen([left, bottom], screen);
        const [x1, y1] = onScreen([left + wide, bottom + wide / 3], screen);
        expect(x0).toBeGreaterThanOrEqual(20 - 1e-6);
        expect(x1).toBeLessThanOrEqual(380 + 1e-6);
        expect(y1).toBeGreaterThanOrEqual(20 - 1e-6);
        expect(y0).toBeLessThanOrEqual(280 + 1e-6);
        expect(x0 + x1).toBeCloseTo(400, 6);
        expect(y0 + y1).toBeCloseTo(300, 6);
      }),
    );
  });

  it('draws paths and arrowheads', () => {
    const screen = { scale: 0.5, left: 10, top: 90 };
    expect(pathOf([[0, 0], [100, 40]], screen)).toBe('M10.0 90.0L60.0 70.0'); // prettier-ignore
    expect(arrowhead([100, 0], [0, 0])).toBe('M100.0 0.0L90.0 2.0L90.0 -2.0Z');
    expect(arrowhead([5, 5], [5, 5])).toBe('');
  });

  it('turns texts so that they read from the bottom or the right', () => {
    expect(readingTurn([0, 0], [10, 0])).toBe(0);
    expect(readingTurn([10, 0], [0, 0])).toBe(0);
    expect(readingTurn([0, 0], [0, 10])).toBe(-90);
    expect(readingTurn([0, 10], [0, 0])).toBe(-90);
    expect(readingTurn([0, 0], [10, 10])).toBe(45);
  });
});

describe('addresses', () => {
  it('name a job, the list, or nothing', () => {
    expect(placeOf('')).toEqual({ kind: 'first' });
    expect(placeOf('#/jobs')).toEqual({ kind: 'jobs' });
    expect(placeOf(addressOf({ kind: 'job', id: 'a b/c' }))).toEqual({ kind: 'job', id: 'a b/c' });
  });
});
