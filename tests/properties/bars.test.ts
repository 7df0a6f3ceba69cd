import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fewestBars } from '../../server/solver/stock/fewest-bars.ts';
import { firstFit } from '../../server/solver/stock/first-fit.ts';
import { barShares } from '../../server/solver/stock/bar-shares.ts';

const saws = fc.record({
  kerf: fc.integer({ min: 0, max: 100 }).map((tenths) => tenths / 10),
  endTrim: fc.integer({ min: 0, max: 500 }),
  leastRemnant: fc.integer({ min: 0, max: 3000 }),
});

/** Pieces that a bar of 6 m gives whatever is trimmed of it, from a thousandth of a millimetre on. */
const lengths = fc.array(
  fc.record({
    length: fc.oneof(fc.integer({ min: 1, max: 5500 }), fc.constantFrom(0.001, 2750, 2745, 1833.3)),
    count: fc.integer({ min: 0, max: 60 }),
  }),
  { maxLength: 12 },
);

const BAR = 6000;

const barsOf = (...asked: Parameters<typeof firstFit>): number =>
  firstFit(...asked)!.reduce((sum, { bars }) => sum + bars, 0);

describe('bars', () => {
  it('are end trim, pieces, kerfs and offcut, and nothing else; every piece is on one', () => {
    fc.assert(
      fc.property(lengths, saws, (asked, saw) => {
        const laid = firstFit(asked, BAR, saw)!;
        const found = asked.map(() => 0);
        for (const { bars, on, use } of laid) {
          let pieces = 0;
          for (const { index, count } of on) {
            pieces += count * asked[index]!.length;
            found[index]! += bars * count;
          }
          expect(saw.endTrim + pieces + use.kerfs + use.offcut).toBeCloseTo(BAR, 5);
          const number = on.reduce((sum, { count }) => sum + count, 0);
          expect(use.kerfs).toBeGreaterThanOrEqual((number - 1) * saw.kerf - 1e-9);
          expect(use.kerfs).toBeLessThanOrEqual(number * saw.kerf + 1e-9);
          expect(use.kept).toBe(use.offcut > 0 && use.offcut >= saw.leastRemnant);
        }
        expect(found).toEqual(asked.map(({ count }) => count));
      }),
      { numRuns: 200 },
    );
  });

  it('are never fewer than the least, nor more than first fit can go beyond it', () => {
    fc.assert(
      fc.property(lengths, saws, fc.integer({ min: 1, max: 80 }), (asked, saw, wider) => {
        const wide = { ...saw, kerf: saw.kerf + wider / 10 };
        expect(barsOf(asked, BAR, saw)).toBeGreaterThanOrEqual(fewestBars(asked, BAR, saw));
        // a wider kerf never makes the least less; first fit itself may come out better by chance, but not by much
        expect(fewestBars(asked, BAR, wide)).toBeGreaterThanOrEqual(fewestBars(asked, BAR, saw));
        expect(barsOf(asked, BAR, saw)).toBeLessThanOrEqual((11 / 9) * barsOf(asked, BAR, wide) + 6 / 9);
      }),
      { numRuns: 200 },
    );
  });

  it('are as many by bars cut alike as one after the other', () => {
    fc.assert(
      fc.property(lengths, saws, (asked, saw) => {
        const pieces = asked.flatMap(({ length, count }) => Array.from({ length: count }, () => length));
        const left: number[] = [];
        for (const piece of pieces.sort((a, b) => b - a)) {
          const at = left.findIndex((room) => room + 1e-6 >= piece + saw.kerf);
          if (at < 0) left.push(BAR - saw.endTrim - piece);
          else left[at]! -= piece + saw.kerf;
        }
        expect(barsOf(asked, BAR, saw)).toBe(left.length);
      }),
      { numRuns: 200 },
    );
  });

  it('are shared out to the last minor unit', () => {
    const pieces = fc.array(
      fc.record({
        name: fc.constant('a'),
        length: fc.integer({ min: 1, max: 700 }),
        job: fc.constantFrom('', 'gate', 'davit', 'arch'),
      }),
      { minLength: 1, maxLength: 8 },
    );
    fc.assert(
      fc.property(
        pieces,
        fc.integer({ min: 0, max: 1_000_000_000 }),
        fc.integer({ min: 0, max: 100 }),
        (on, price, credit) => {
          const saw = { kerf: 3, endTrim: 10, leastRemnant: 300 };
          const bar = { length: BAR, price, pieces: on };
          const sumOf = (of: ReturnType<typeof barShares>) => [...of!.values()].reduce((sum, one) => sum + one, 0);
          expect(sumOf(barShares(bar, saw, 0))).toBe(price);
          const credited = barShares(bar, saw, credit)!;
          expect(sumOf(credited)).toBeGreaterThanOrEqual(0);
          expect(sumOf(credited)).toBeLessThanOrEqual(price);
          for (const one of credited.values()) expect(Number.isInteger(one)).toBe(true);
          // looked at from another job, every share is the same
          const seen = on.map((piece) => ({
            ...piece,
            job: piece.job === '' ? 'own' : piece.job === 'gate' ? '' : piece.job,
          }));
          const from = barShares({ ...bar, pieces: seen }, saw, credit)!;
          expect([from.get('own'), from.get('')]).toEqual([credited.get(''), credited.get('gate')]);
        },
      ),
      { numRuns: 200 },
    );
  });
});
