import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OPERATIONS, type OperationRate, type OwnValue, type Rates } from '../../server/job/rates.ts';
import type { QuoteOption } from '../../server/plan/quote.ts';
import { amountsOf, priceOf, rulesFor } from '../../server/solver/quote/price-of.ts';
import type { Quantities } from '../../server/solver/quote/quantities.ts';
import { quoteOption } from '../../server/solver/quote/quote-option.ts';
import { workCost } from '../../server/solver/quote/work-cost.ts';
import { jobWith, operation, own, piece, SOME, TYPED } from '../solver/quote/made-up-order.ts';

const ownOf = (value: fc.Arbitrary<number>): fc.Arbitrary<OwnValue> =>
  fc.record({ value: fc.option(value, { freq: 6, nil: null }), since: fc.constant(''), example: fc.boolean() });
const money = ownOf(fc.nat({ max: 1_000_000_000 }));
const minutes = ownOf(fc.double({ min: 0, max: 10_000, noNaN: true }));
const percent = (max: number) => ownOf(fc.double({ min: 0, max, noNaN: true }));

const anyOperation: fc.Arbitrary<OperationRate> = fc.record({
  hour: money,
  machine: fc.option(money, { nil: null }),
  setUp: minutes,
  each: minutes,
  perMetre: minutes,
});
const each = <T>(value: fc.Arbitrary<T>) =>
  fc.record({ bend: value, cut: value, fit: value, purge: value, bottle: value, weld: value, finish: value });

const anyRates: fc.Arbitrary<Partial<Rates>> = fc.record({
  minorDigits: fc.constantFrom(0, 2, 3),
  tubes: fc.array(
    fc.record({
      size: fc.constantFrom(null, { outsideDiameter: 40, wall: 2 }),
      by: fc.constantFrom('metre' as const, 'bar' as const),
      perMetre: money,
      barLength: fc.integer({ min: 500, max: 20_000 }),
      perBar: money,
    }),
    { maxLength: 2 },
  ),
  waste: percent(100),
  remnantCredit: percent(100),
  gas: fc.record({
    by: fc.constantFrom('used' as const, 'bottles' as const),
    perCubicMetre: money,
    perBottle: money,
    restOfBottle: percent(100),
    rentPerDay: fc.option(money, { nil: null }),
  }),
  fillerPerKilogram: money,
  abrasivesPerWeld: money,
  labour: each(anyOperation),
  outside: fc.record({ setUp: money, perBend: money, least: money }),
  travel: fc.record({ perKilometre: money, hour: money }),
  overhead: percent(500),
  margin: percent(90),
  marginOn: fc.constantFrom('price' as const, 'cost' as const),
  tax: percent(100),
  roundTo: fc.constantFrom(1, 5, 100, 10_000_000),
});

const amount = fc.double({ min: 0, max: 1000, noNaN: true });
const anyQuantities: fc.Arbitrary<Quantities> = fc.record({
  pieces: fc.array(
    fc.integer({ min: 1, max: 20_000 }).map((length) => piece(`piece of ${String(length)}`, length)),
    { maxLength: 4 },
  ),
  counts: each(fc.nat({ max: 50 })),
  metres: each(amount),
  process: each(amount),
  purgeGas: fc.oneof(amount, fc.constant(0)),
  torchGas: fc.oneof(amount, fc.constant(1e5)),
  filler: amount,
  welds: fc.nat({ max: 50 }),
  anew: fc.boolean(),
  parts: fc.constant({}),
});
const anyQuote = fc.record({
  quantities: fc.array(fc.integer({ min: 1, max: 1000 }), { minLength: 1, maxLength: 4 }),
  bending: fc.constantFrom('own' as const, 'outside' as const),
  bendersOffer: fc.option(fc.nat({ max: 1_000_000_000 }), { nil: null }),
  travel: fc.record({
    trips: fc.nat({ max: 200 }),
    kilometres: amount,
    hours: fc.double({ min: 0, max: 200, noNaN: true }),
  }),
});

type Sums = Pick<QuoteOption, 'net' | 'tax' | 'total'> & {
  readonly lines: readonly { readonly key: string; readonly amount: number | null }[];
};

/** Sums of an option or a break by whole numbers of any size. */
function expectSums({ lines, net, tax, total }: Sums): void {
  const sum = (picked: Sums['lines']): bigint => picked.reduce((all, one) => all + BigInt(one.amount ?? 0), 0n);
  const isTax = ({ key }: { key: string }): boolean => key === 'tax';
  expect(BigInt(total)).toBe(sum(lines));
  expect(BigInt(tax)).toBe(sum(lines.filter(isTax)));
  expect(BigInt(net)).toBe(sum(lines.filter((line) => !isTax(line))));
  for (const value of [net, tax, total]) expect(Number.isSafeInteger(value)).toBe(true);
}

describe('whatever is typed', () => {
  it('totals are the sums of their lines in whole units, here, in each break and over the groups', () => {
    fc.assert(
      fc.property(anyRates, anyQuantities, anyQuote, (rates, quantities, quote) => {
        const option = quoteOption({ scope: 'frame', quantities }, jobWith({ rates, quote }));
        expectSums(option);
        for (const one of option.breaks) expectSums(one);
        for (const [place, line] of option.lines.entries()) {
          const isOpen = line.amount === null;
          expect(option.open.includes(place)).toBe(isOpen);
          if (!isOpen) expect(line.missing).toEqual([]);
          if (line.amount === null || line.quantity === null) continue;
          expect(Number.isSafeInteger(line.amount)).toBe(true);
          const price = line.rateUnit === 'percent' ? (line.rate ?? 0) / 100 : (line.rate ?? 1);
          const exact = line.quantity.value * price;
          expect(Math.abs(line.amount - exact)).toBeLessThanOrEqual(0.5 + 1e-14 * Math.abs(exact));
        }
        expect(option.groups.reduce((sum, one) => sum + one.amount, 0)).toBe(option.groups.length > 0 ? option.net : 0);
        const first = option.breaks[0]!;
        expect([first.net, first.tax, first.total]).toEqual([option.net, option.tax, option.total]);
        if (rates.roundTo !== undefined) expect(Math.abs(option.net % rates.roundTo)).toBe(0);
        expect(JSON.stringify(option)).not.toMatch(/:null,"unit"|NaN|Infinity/u);
      }),
      { numRuns: 200 },
    );
  });

  it('the light numbers are those of the lines', () => {
    fc.assert(
      fc.property(anyRates, anyQuantities, anyQuote, (rates, quantities, quote) => {
        const job = jobWith({ rates, quote });
        for (const quantity of quote.quantities) {
          const order = { quantities, job, quantity };
          const { lines, minutes, ...sums } = priceOf(order);
          const light = lines.map(({ key, of, amount }) => ({ key, of, amount }));
          expect(amountsOf(order)).toEqual({ ...sums, lines: light });
          const bought = lines.filter(({ key }) => !['overhead', 'margin', 'rounding', 'tax'].includes(key));
          const exact = workCost(quantities, job).at(quantity);
          expect(exact === null).toBe(bought.some(({ amount }) => amount === null));
          if (exact !== null)
            expect(Math.abs(exact - sums.cost)).toBeLessThanOrEqual(bought.length + 1e-12 * sums.cost);
          expect(rulesFor({ quantities, job }).labour.minutes(quantity)).toBe(minutes);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('a line that stands open is in no sum: without it the price is the same', () => {
    fc.assert(
      fc.property(anyQuantities, fc.constantFrom(...OPERATIONS), (quantities, of) => {
        const without = { ...TYPED.labour, [of]: { ...TYPED.labour[of], hour: own(null) } };
        const free = { ...TYPED.labour, [of]: { ...TYPED.labour[of], hour: own(0) } };
        const price = (labour: Rates['labour']) =>
          priceOf({ quantities, job: jobWith({ rates: { labour } }), quantity: 1 });
        const open = price(without);
        expect(open.total).toBe(price(free).total);
        const line = open.lines.find(({ key }) => key === of);
        if (line !== undefined) expect(line.amount).toBeNull();
      }),
      { numRuns: 60 },
    );
  });
});

describe('more frames', () => {
  /**
   * Tube by the metre, gas by what is used, no rent and no bottles changed: then each line is what is paid once for an order
   * and so much a frame. Whole bars, whole bottles and whole days come in steps, so that one more frame may begin a new one.
   */
  it('never cost more each, where nothing comes in steps, beyond what rounding each line can do', () => {
    const job = jobWith({
      rates: { gas: { ...TYPED.gas, rentPerDay: null }, labour: { ...TYPED.labour, bottle: operation({}) } },
    });
    fc.assert(
      fc.property(anyQuantities, fc.integer({ min: 1, max: 999 }), (quantities, few) => {
        const many = few + 1;
        const [less, more] = [few, many].map((quantity) => priceOf({ quantities, job, quantity }));
        const slack = 0.5 * less!.lines.length * (1 / few + 1 / many);
        expect(more!.cost / many).toBeLessThanOrEqual(less!.cost / few + slack);
      }),
      { numRuns: 100 },
    );
  });

  it('take the set-up once', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1000 }), fc.integer({ min: 0, max: 500 }), (quantity, setUp) => {
        const labour = { ...TYPED.labour, cut: operation({ setUp, each: 5 }) };
        const { lines } = priceOf({ quantities: SOME, job: jobWith({ rates: { labour } }), quantity });
        const cut = lines.find(({ key }) => key === 'cut')!;
        expect(60 * cut.quantity!).toBeCloseTo(setUp + 20 * quantity, 6);
      }),
      { numRuns: 50 },
    );
  });
});
