import { expect, it } from 'vitest';
import { scrapLength } from '../../server/solver/correction/slug.ts';

it('the scrap is two kerfs shorter than what is taken out, and none is left of a cut narrower than that', () => {
  expect(scrapLength({ removed: 62, kerf: 1.6 })).toBeCloseTo(58.8, 12);
  expect(scrapLength({ removed: 3, kerf: 1.6 })).toBeUndefined();
});
