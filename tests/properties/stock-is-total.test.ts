import fc from 'fast-check';
import { Compile } from 'typebox/compile';
import { describe, expect, it } from 'vitest';
import { newFrame } from '../../server/job/default-frame.ts';
import { Stock } from '../../server/job/stock.ts';
import { StockPlan } from '../../server/plan/stock.ts';
import { barsTogether } from '../../server/solver/stock/bars-alike.ts';
import { planStock } from '../../server/solver/stock/plan-stock.ts';
import { tubeNeeds } from '../../server/solver/stock/tube-needs.ts';
import { barOf, byBar, layoutOf, pieceOf, stockJob } from '../solver/stock/made-up-stock.ts';

const asStock = Compile(Stock);
const asPlan = Compile(StockPlan);

const NAMES = ['a', 'b', 'c', 'd'];

const lengths = fc.oneof(
  fc.constantFrom(0.001, 1, 1500, 19_999.999, 49_999),
  fc.double({ min: 0.01, max: 6000, noNaN: true }),
);

/** Up to 400 bars with this job's pieces and others on them; more on some than they are long. */
const bars = fc
  .array(
    fc.record({
      pieces: fc.array(fc.tuple(fc.constantFrom(...NAMES, 'gate:x'), lengths), { minLength: 1, maxLength: 5 }),
      length: fc.constantFrom(0.5, 600, 6000, 20_000),
      price: fc.constantFrom(null, 0, 9000, 1_000_000_000),
      stock: fc.constantFrom('', 'b-1'),
      times: fc.constantFrom(1, 1, 3, 100_000),
    }),
    { maxLength: 6 },
  )
  .chain((some) => fc.constantFrom(1, 60).map((times) => Array.from({ length: times }, () => some).flat()));

describe('the plan of the stock', () => {
  it('is made of whatever is typed: finite, as published, and every bar as long as what is on it', () => {
    fc.assert(
      fc.property(
        fc.array(lengths, { maxLength: 4 }),
        bars,
        fc.record({
          kerf: fc.constantFrom(0, 1.5, 10),
          endTrim: fc.constantFrom(0, 20, 500),
          leastRemnant: fc.constantFrom(0, 500, 10_000),
        }),
        fc.constantFrom(1, 7, 1000),
        fc.constantFrom(1, 6000, 20_000),
        fc.constantFrom(null, 0, 45.5, 100),
        (pieces, laid, saw, quantity, bar, credit) => {
          const layout = layoutOf(
            laid.map(({ pieces: on, ...given }) => barOf(Object.fromEntries(on), given)),
            { saw },
          );
          const job = stockJob((begun) => ({
            ...begun,
            stock: { saw, joints: [{ member: 'a', station: 700 }], layout },
            frame: newFrame('straight'),
            quote: { ...begun.quote, quantities: [quantity] },
            rates: {
              ...begun.rates,
              tubes: [byBar(9000, bar)],
              remnantCredit: { value: credit, since: '', example: false },
            },
          }));
          expect(asStock.Check(job.stock)).toBe(true);
          const list = pieces.map((length, index) => pieceOf(NAMES[index]!, length));
          const { stock, findings } = planStock({ job, pieces: list, tubes: new Map() });
          // a number that is none would come back as null
          expect(asPlan.Check(JSON.parse(JSON.stringify(stock)))).toBe(true);
          const whole = list.length === 0 || stock.sizes.every(({ from }) => from === 'kept');
          const own = laid.some(({ pieces: on }) => on.some(([name]) => !name.includes(':')));
          if (own && !whole) expect(findings.map(({ code }) => code)).toContain('layout-stale');
          for (const size of stock.sizes) {
            const counted = size.bars.reduce(
              (sum, { times, pieces: on }) => sum + times * on.filter((piece) => piece.job === '').length,
              0,
            );
            expect(counted).toBe(size.from === 'none' ? 0 : size.pieces.value);
            for (const one of size.bars) {
              expect(one.pieces.at(-1)!.to + one.offcut.value).toBeLessThanOrEqual(one.length + 1e-3);
              expect(one.pieces.at(-1)!.to + one.offcut.value).toBeGreaterThanOrEqual(one.length - saw.kerf - 1e-3);
            }
            if (size.least !== null) expect(barsTogether(size.bars)).toBeGreaterThanOrEqual(size.least.value);
          }
          const [need] = tubeNeeds({ pieces: list, quantity, rates: job.rates, saw, layout });
          const [size] = stock.sizes;
          // the quote goes by what the plan shows
          expect(need?.kept?.amount ?? null).toBe(size?.from === 'kept' ? (size.cost?.value ?? null) : null);
          if (size?.from === 'first-fit') expect(need!.bars!.count).toBe(barsTogether(size.bars));
        },
      ),
      { numRuns: 100 },
    );
  });
});
