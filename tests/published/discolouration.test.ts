/** AWS D18.2:2009, samples of discolouration by oxygen in the backing gas: read in the source's own text. */
import { describe, expect, it } from 'vitest';
import { tintSample } from '../../server/solver/purge/tint.ts';

const SAMPLES = [
  [1, 10],
  [2, 25],
  [3, 50],
  [4, 100],
  [5, 200],
  [6, 500],
  [7, 1000],
  [8, 5000],
  [9, 12_500],
  [10, 25_000],
] as const;

describe('tint', () => {
  it.each(SAMPLES)('sample %d was made with %d ppm', (number, oxygen) => {
    expect(tintSample(oxygen)).toBe(number);
  });

  it.each(SAMPLES.slice(0, -1))('a little more than sample %d is the next one: never a paler one', (number, oxygen) => {
    expect(tintSample(oxygen + 0.01)).toBe(number + 1);
  });

  it('less than the first is the first, and more than the last the last', () => {
    expect(tintSample(1)).toBe(1);
    expect(tintSample(100_000)).toBe(10);
  });
});
