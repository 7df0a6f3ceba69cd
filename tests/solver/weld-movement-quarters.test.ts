import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { add, rotate, scale, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { choicesOf, pullOf, quartersOf } from '../../server/solver/welding/movement/quarters.ts';

const FIRSTS = [1, 2, 3, 4] as const;
const OPPOSED = ['opposed', 'opposed-back'] as const;
const ROUND = ['round', 'round-back'] as const;
const UP: Vector3 = { x: 0, y: 0, z: 1 };

describe('the quarters of a weld', () => {
  it('follow each other as their way says', () => {
    expect(quartersOf({ first: 1, way: 'opposed' })).toEqual([1, 3, 2, 4]);
    expect(quartersOf({ first: 1, way: 'opposed-back' })).toEqual([1, 3, 4, 2]);
    expect(quartersOf({ first: 3, way: 'round' })).toEqual([3, 4, 1, 2]);
    expect(quartersOf({ first: 3, way: 'round-back' })).toEqual([3, 2, 1, 4]);
  });

  it('pull by one along a generator once round, and by half where they are opposed', () => {
    for (const first of FIRSTS) {
      for (const [ways, size] of [
        [ROUND, 1],
        [OPPOSED, 1 / 2],
      ] as const) {
        for (const way of ways) {
          const { outside, top } = pullOf(quartersOf({ first, way }));
          expect([Math.abs(outside), Math.abs(top)].sort()).toEqual([0, size]);
        }
      }
    }
    // 3 and 4 come last, on either side of the bottom
    expect(pullOf([1, 2, 3, 4])).toEqual({ outside: 0, top: -1 });
    expect(pullOf([1, 3, 4, 2]).outside).toBe(-1 / 2);
  });

  it('pull the other way round where they are welded the other way round', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray([1, 2, 3, 4], { minLength: 4 }), (quarters) => {
        const [there, back] = [pullOf(quarters), pullOf([...quarters].reverse())];
        expect(there.outside + back.outside).toBe(0);
        expect(there.top + back.top).toBe(0);
      }),
    );
  });

  it('can pull along each of four generators, each by the sequence that begins lower', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 359 }), (turn) => {
        const generators = {
          outside: rotate({ x: 0, y: 1, z: 0 }, { x: 1, y: 0, z: 0 }, (turn * Math.PI) / 180),
          top: rotate({ x: 0, y: 0, z: 1 }, { x: 1, y: 0, z: 0 }, (turn * Math.PI) / 180),
        };
        const height = (quarter: number) => {
          const outside = quarter === 1 || quarter === 4 ? 1 : -1;
          return add(scale(generators.outside, outside), scale(generators.top, quarter <= 2 ? 1 : -1)).z;
        };
        for (const kind of ['opposed', 'round'] as const) {
          const choices = choicesOf(kind, generators, UP);
          expect(new Set(choices.map(({ outside, top }) => `${String(outside)} ${String(top)}`)).size).toBe(4);
          for (const { sequence, outside, top } of choices) {
            const pull = pullOf(quartersOf(sequence));
            expect([pull.outside, pull.top]).toEqual([outside, top]);
            const same = FIRSTS.flatMap((first) =>
              (kind === 'opposed' ? OPPOSED : ROUND).map((way) => ({ first, way })),
            ).filter((one) => pullOf(quartersOf(one)).outside === outside && pullOf(quartersOf(one)).top === top);
            expect(same).toHaveLength(2);
            expect(height(sequence.first)).toBeLessThanOrEqual(
              Math.min(...same.map(({ first }) => height(first))) + 1e-8,
            );
          }
        }
      }),
    );
  });
});
