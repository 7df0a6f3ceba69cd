import { describe, expect, it } from 'vitest';
import { holdsUpTo } from '../../../server/solver/quote/holds-up-to.ts';

describe('the search', () => {
  const range = { least: 0, most: 100_000, growth: 32 };

  it('finds every place by whole numbers, straight or bent', () => {
    for (const at of [0, 1, 2, 31, 32, 33, 99, 1023, 77_777, 99_999]) {
      expect(holdsUpTo(range, (one) => at + 0.5 - one)).toBe(at);
      expect(holdsUpTo(range, (one) => (at + 0.5) ** 3 - one ** 3)).toBe(at);
      expect(holdsUpTo({ ...range, growth: 2 }, (one) => Math.sqrt(at + 0.5) - Math.sqrt(one))).toBe(at);
    }
  });

  it('says where it never ends, and where it cannot be told', () => {
    expect(holdsUpTo(range, () => 0)).toBe('always');
    expect(holdsUpTo(range, (one) => (one > 50 ? null : 1))).toBe('open');
    expect(holdsUpTo(range, () => null)).toBe('open');
    // it ends at the very last
    expect(holdsUpTo(range, (one) => (one === 100_000 ? -1 : 1))).toBe(99_999);
  });

  it('takes few looks', () => {
    let looks = 0;
    holdsUpTo({ least: 0, most: 1_000_000_000, growth: 32 }, (one) => {
      looks += 1;
      return 123_456_789 - 3 * one;
    });
    expect(looks).toBeLessThan(20);
  });
});
