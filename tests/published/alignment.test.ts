/** Alignment: ISO 5817 nos. 5072 and 508 (seen second-hand and from memory), ASME BPE-2012, practice for polished work. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gradeHiLo } from '../../server/solver/correction/joint-findings.ts';
import { hiLoLimit, KINK_LIMITS } from '../../server/solver/correction/weld-limits.ts';
import { figure } from '../../server/solver/figure.ts';
import { weldMisfit } from '../../server/solver/welding/weld-misfit.ts';

const hiLo = (value: number) => figure(value, 'mm', 'e', [], ['geometry']);
const kink = (value: number) => figure(value, 'deg', 'κ', [], ['geometry']);

describe('5072, round a tube', () => {
  it.each([
    ['D', 4],
    ['C', 3],
    ['B', 2],
  ] as const)('level %s: 0.5 t, at most %d mm', (level, most) => {
    expect(hiLoLimit(2, level)).toBe(1);
    expect(hiLoLimit(2 * most, level)).toBe(most);
    expect(hiLoLimit(2 * most + 1, level)).toBe(most);
  });
  it('0.83 mm on 1.65 mm at every level', () => {
    for (const level of ['B', 'C', 'D'] as const)
      expect(weldMisfit({ hiLo: hiLo(0), kink: kink(0) }, 1.65, level).standard.value.toFixed(3)).toBe('0.825');
  });
});

it('508: D 4°, C 2°, B 1°', () => {
  expect(KINK_LIMITS).toEqual({ D: 4, C: 2, B: 1 });
});

describe('grade of a step on 1.65 mm', () => {
  it.each([
    [0.165, 'good'],
    [0.166, 'practice'],
    [0.247, 'practice'],
    [0.248, 'standard'],
    [0.825, 'standard'],
    [0.826, 'over'],
  ])('%d mm: %s (a tenth for polish, 15 of 100 of ASME BPE, half of ISO 5817)', (step, grade) => {
    expect(weldMisfit({ hiLo: hiLo(step), kink: kink(0) }, 1.65, 'B').grade).toBe(grade);
    expect(gradeHiLo(step, 1.65, 'B')).toBe(grade);
  });
  it('polish wants a tenth of the wall', () => {
    expect(weldMisfit({ hiLo: hiLo(0), kink: kink(0) }, 1.65, 'B').polish.value).toBeCloseTo(0.165, 12);
  });
  it('a kink over the level’s is over, whatever the step', () => {
    expect(weldMisfit({ hiLo: hiLo(0), kink: kink(1.5) }, 1.65, 'B').grade).toBe('over');
    expect(weldMisfit({ hiLo: hiLo(0), kink: kink(1.5) }, 1.65, 'C').grade).toBe('good');
    expect(weldMisfit({ hiLo: hiLo(0), kink: kink(1) }, 1.65, 'B').grade).toBe('good');
  });
});

it('a larger step, a thinner wall or a stricter level never grades better', () => {
  const order = ['good', 'practice', 'standard', 'over'];
  const rank = (step: number, wall: number, level: 'B' | 'C' | 'D') => order.indexOf(gradeHiLo(step, wall, level));
  const size = fc.double({ min: 0.01, max: 20, noNaN: true });
  fc.assert(
    fc.property(size, size, fc.double({ min: 1, max: 2, noNaN: true }), (step, wall, more) => {
      expect(rank(step * more, wall, 'B')).toBeGreaterThanOrEqual(rank(step, wall, 'B'));
      expect(rank(step, wall / more, 'B')).toBeGreaterThanOrEqual(rank(step, wall, 'B'));
      expect(rank(step, wall, 'B')).toBeGreaterThanOrEqual(rank(step, wall, 'C'));
      expect(rank(step, wall, 'C')).toBeGreaterThanOrEqual(rank(step, wall, 'D'));
    }),
  );
});
