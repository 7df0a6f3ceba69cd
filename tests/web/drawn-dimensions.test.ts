import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { daysWords } from '../../web/state/days-words.ts';
import { drawnDimensions, type DrawnDimension } from '../../web/state/screen.ts';
import type { ViewDimension } from '../../server/plan/view.ts';

/** A drawing at one pixel a millimetre, its origin at the top left. */
const SCREEN = { scale: 1, left: 0, top: 0 };

/** An upright size at x, from the ground to `high`; `field` where it can be typed. */
const upright = (x: number, high: number, field: string): ViewDimension => ({
  key: `size ${String(x)}`,
  index: 0,
  layer: 'wanted',
  field,
  unit: 'mm',
  value: high,
  radius: false,
  from: [0, 0],
  to: [0, high],
  line: [
    [x, 0],
    [x, high],
  ],
});

/** How far two values stand apart [px], across their lines and along them. */
const apart = (one: DrawnDimension, other: DrawnDimension): [number, number] => [
  Math.abs(one.middle[0] - other.middle[0]),
  Math.abs(one.middle[1] - other.middle[1]),
];

describe('sizes on the screen', () => {
  it('stand in the middle of their lines where nothing is in the way', () => {
    const [one] = drawnDimensions([upright(0, 200, '/a')], SCREEN);
    expect(one!.middle).toEqual([0, -100]);
  });

  it('that can be typed are not touched for each other, though their lines lie close', () => {
    const [one, other] = drawnDimensions([upright(0, 200, '/a'), upright(21, 90, '/b')], SCREEN);
    expect(apart(one!, other!)[1]).toBeGreaterThanOrEqual(68);
  });

  it('stand beyond the end of a line that is too short for it', () => {
    const [one, other] = drawnDimensions([upright(0, 40, '/a'), upright(12, 40, '/b')], SCREEN);
    expect([one!.middle[1], other!.middle[1]].filter((y) => y < -40 || y > 0).length).toBe(1);
    expect(apart(one!, other!)[1]).toBeGreaterThanOrEqual(54);
  });

  it('keep their order, and no two lie on each other where one has room', () => {
    const high = fc.integer({ min: 150, max: 600 });
    fc.assert(
      fc.property(high, high, fc.integer({ min: 0, max: 60 }), fc.boolean(), (a, b, x, typed) => {
        const drawn = drawnDimensions([upright(0, a, '/a'), upright(x, b, typed ? '/b' : '')], SCREEN);
        expect(drawn.map(({ dimension }) => dimension.field)).toEqual(['/a', typed ? '/b' : '']);
        const [across, along] = apart(drawn[0]!, drawn[1]!);
        expect(across >= 17 || along >= 54).toBe(true);
      }),
    );
  });
});

describe('days', () => {
  it('are said to a tenth, and less than that as less', () => {
    expect([0, 0.046, 0.1, 9.25, 12].map(daysWords)).toEqual(['0', '< 0.1', '0.1', '9.3', '12']);
  });
});
