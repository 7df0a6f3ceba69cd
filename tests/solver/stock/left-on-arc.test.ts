import { describe, expect, it } from 'vitest';
import { leftOnArc } from '../../../server/solver/bending/left-on.ts';

const machine = { gripLength: 76, leastStraight: 80, trimAllowance: 50 };

describe('what is left on a piece that is an arc from end to end', () => {
  it('is what the clamp holds and the straight after the bend, on a die', () => {
    expect(leftOnArc('die', machine)).toBe(76 + 80);
    expect(leftOnArc('die', { ...machine, trimAllowance: 150 })).toBe(76 + 150);
  });

  it('is what is trimmed, where it is rolled: no clamp holds it', () => {
    expect(leftOnArc('rolled', machine)).toBe(50);
  });
});
