import { expect, it } from 'vitest';
import { alongGenerator, GENERATORS, scrapLength } from '../../server/solver/correction/slug.ts';

it('a generator outside the curve is longer, inside shorter, at the side as long as the centreline', () => {
  const arc = { radius: 2400, distance: 500 };
  const at = (angle: number) => alongGenerator(arc, { outsideDiameter: 38.1 }, (angle * Math.PI) / 180);
  const [outside, top, inside, bottom] = GENERATORS.map((generator) => at(generator.angle));
  // 500 mm of a 2400 mm arc is 0.208333 rad; the surface runs at 2419.05 and 2380.95
  expect(outside).toBeCloseTo(2419.05 * 0.2083333333, 6);
  expect(inside).toBeCloseTo(2380.95 * 0.2083333333, 6);
  expect(top).toBeCloseTo(500, 9);
  expect(bottom).toBeCloseTo(500, 9);
});

it('the scrap is two kerfs shorter than what is taken out, and none is left of a cut narrower than that', () => {
  expect(scrapLength({ removed: 62, kerf: 1.6 })).toBeCloseTo(58.8, 12);
  expect(scrapLength({ removed: 3, kerf: 1.6 })).toBeUndefined();
});
