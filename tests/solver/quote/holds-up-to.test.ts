import { describe, expect, it } from 'vitest';
import { holdsUpTo } from '../../../server/solver/quote/holds-up-to.ts';

describe('the search', () => {
  const range = { least: 0, closely: 0, most: 100_000, growth: 32 };
  const once = (at: number) => ({ at, wavers: false });

  it('finds every place by whole numbers, straight or bent', () => {
    for (const at of [0, 1, 2, 31, 32, 33, 99, 1023, 77_777, 99_999]) {
      expect(holdsUpTo(range, (one) => at + 0.5 - one)).toEqual(once(at));
      expect(holdsUpTo(range, (one) => (at + 0.5) ** 3 - one ** 3)).toEqual(once(at));
      expect(holdsUpTo({ ...range, growth: 1.4 }, (one) => Math.sqrt(at + 0.5) - Math.sqrt(one))).toEqual(once(at));
    }
  });

  it('says where it never ends, and where it cannot be told', () => {
    expect(holdsUpTo(range, () => 0)).toEqual({ at: null, wavers: false });
    expect(holdsUpTo(range, (one) => (one > 50 ? null : 1))).toBeNull();
    expect(holdsUpTo(range, () => null)).toBeNull();
    // it ends at the very last
    expect(holdsUpTo(range, (one) => (one === 100_000 ? -1 : 1))).toEqual(once(99_999));
  });

  it('sees every number that it is to look at closely: lost for one alone, and won back', () => {
    const close = { least: 1, closely: 60, most: 1000, growth: 1.4 };
    for (let only = 2; only < 60; only += 1)
      expect(holdsUpTo(close, (one) => (one === only ? -1 : 1))).toEqual({ at: only - 1, wavers: true });
    expect(holdsUpTo(close, (one) => (one > 40 ? -1 : 1))).toEqual(once(40));
    expect(holdsUpTo(close, (one) => (one > 333 ? -1 : 1))).toEqual(once(333));
  });

  it('takes few looks', () => {
    let looks = 0;
    holdsUpTo({ least: 0, closely: 0, most: 1_000_000_000, growth: 32 }, (one) => {
      looks += 1;
      return 123_456_789 - 3 * one;
    });
    expect(looks).toBeLessThan(20);
  });
});
