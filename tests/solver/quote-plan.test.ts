import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Rates } from '../../server/job/rates.ts';
import { planQuote, type Quantities } from '../../server/solver/quote/plan-quote.ts';

const { rates: NOTHING_TYPED } = newJob('straight');
const OPERATIONS = ['bend', 'cut', 'fit', 'purge', 'weld', 'finish'] as const;

const each = <T>(value: T) => ({ bend: value, cut: value, fit: value, purge: value, weld: value, finish: value });

const SOME: Quantities = {
  tubeMetres: 2.5,
  gasCubicMetres: 0.064,
  fillerKilograms: 0.0033,
  counts: { bend: 2, cut: 4, fit: 2, purge: 1, weld: 2, finish: 0 },
  arcMinutes: 2.5,
  purgeMinutes: 4,
};

const TYPED: Rates = {
  ...NOTHING_TYPED,
  tubePerMetre: 1850,
  gasPerCubicMetre: 2200,
  fillerPerKilogram: 3400,
  labourPerHour: each(5400),
  times: each({ setUp: 10, each: 5 }),
};

const quoted = (rates: Rates, quantities: Quantities = SOME) => planQuote({ rates, scope: 'frame', quantities });
const amounts = (made: ReturnType<typeof quoted>) =>
  Object.fromEntries(made.quote.lines.map(({ key, amount }) => [key, amount]));

const rate = fc.option(fc.integer({ min: 0, max: 1_000_000 }), { nil: null });
const minutes = fc.option(fc.double({ min: 0, max: 1000, noNaN: true }), { nil: null });
const anyRates = fc.record({
  currency: fc.constant('EUR'),
  minorDigits: fc.constantFrom(0, 2, 3),
  date: fc.constant(''),
  tubePerMetre: rate,
  gasPerCubicMetre: rate,
  fillerPerKilogram: rate,
  labourPerHour: fc.record(each(rate)),
  times: fc.record(each(fc.record({ setUp: minutes, each: minutes }))),
});
const amount = fc.double({ min: 0, max: 1000, noNaN: true });
const anyQuantities = fc.record({
  tubeMetres: amount,
  gasCubicMetres: amount,
  fillerKilograms: amount,
  counts: fc.record(each(fc.nat({ max: 50 }))),
  arcMinutes: amount,
  purgeMinutes: amount,
});

describe('a first quote', () => {
  it('is quantity × rate, line by line, in whole minor units', () => {
    const made = quoted(TYPED);
    expect(amounts(made)).toEqual({
      tube: 4625, // 2.5 m
      gas: 141, // 0.064 m³: 140.8
      filler: 11, // 3.3 g: 11.22
      bend: 1800, // 10 + 2 · 5 = 20 min at 90 a minute
      cut: 2700, // 30 min
      fit: 1800,
      purge: 1710, // 10 + 5 + 4 min of waiting
      weld: 2025, // 20 + 2.5 min of arc
    });
    expect(made.quote.subtotal).toBe(14_812);
    expect(made.quote.open).toEqual([]);
    expect(made.minutes).toBe(20 + 30 + 20 + 19 + 22.5);
    expect(made.findings).toEqual([]);
  });

  it('stands open in every line that nobody typed a rate for, and says where to type it', () => {
    const made = quoted(NOTHING_TYPED);
    expect(made.quote.subtotal).toBe(0);
    expect(made.quote.open).toEqual(['tube', 'gas', 'filler', 'bend', 'cut', 'fit', 'purge', 'weld']);
    expect(made.minutes).toBeNull();
    const fields = made.findings.map(({ field }) => field);
    expect(fields).toContain('/rates/tubePerMetre');
    expect(fields).toContain('/rates/labourPerHour/weld');
    expect(fields).toContain('/rates/times/cut/each');
    expect(fields.some((field) => field.includes('finish'))).toBe(false);
  });

  it('keeps a rate of 0 as a price of 0, not as an open line', () => {
    const made = quoted({ ...TYPED, tubePerMetre: 0 });
    expect(made.quote.lines.find(({ key }) => key === 'tube')?.amount).toBe(0);
    expect(made.quote.open).toEqual([]);
  });

  it('knows the minutes without a rate for them', () => {
    const made = quoted({ ...TYPED, labourPerHour: each(null) });
    expect(made.minutes).toBe(111.5);
    expect(made.quote.open).toEqual(['bend', 'cut', 'fit', 'purge', 'weld']);
  });

  it('carries the currency, its digits and the date of the rates', () => {
    const made = quoted({ ...TYPED, currency: 'JPY', minorDigits: 0, date: '2026-11-25' });
    expect(made.quote).toMatchObject({ scope: 'frame', currency: 'JPY', minorDigits: 0, date: '2026-11-25' });
  });
});

describe('whatever is typed', () => {
  it('the subtotal is the sum of the lines, each a whole number, and an open line has none', () => {
    fc.assert(
      fc.property(anyRates, anyQuantities, (rates, quantities) => {
        const { quote, minutes: taken } = quoted(rates, quantities);
        let sum = 0n;
        for (const line of quote.lines) {
          const isOpen = line.rate === null || line.quantity === null;
          expect(line.amount === null).toBe(isOpen);
          expect(quote.open.includes(line.key)).toBe(isOpen);
          if (line.amount === null || line.rate === null || line.quantity === null) continue;
          expect(Number.isInteger(line.amount)).toBe(true);
          expect(Math.abs(line.amount - line.quantity.value * line.rate)).toBeLessThanOrEqual(0.5);
          sum += BigInt(line.amount);
        }
        expect(BigInt(quote.subtotal)).toBe(sum);
        const needed = OPERATIONS.filter((operation) => quantities.counts[operation] > 0);
        const known = needed.every((key) => rates.times[key].setUp !== null && rates.times[key].each !== null);
        expect(taken !== null).toBe(known);
      }),
    );
  });

  it('there is a line for each thing that is needed, and no other', () => {
    fc.assert(
      fc.property(anyRates, anyQuantities, (rates, quantities) => {
        const needed = [
          ...(quantities.tubeMetres > 0 ? ['tube'] : []),
          ...(quantities.gasCubicMetres > 0 ? ['gas'] : []),
          ...(quantities.fillerKilograms > 0 ? ['filler'] : []),
          ...OPERATIONS.filter((operation) => quantities.counts[operation] > 0),
        ];
        expect(quoted(rates, quantities).quote.lines.map(({ key }) => key)).toEqual(needed);
      }),
    );
  });

  it('double the stuff costs double, to a whole unit', () => {
    fc.assert(
      fc.property(anyRates, anyQuantities, (rates, quantities) => {
        const double = {
          ...quantities,
          tubeMetres: 2 * quantities.tubeMetres,
          gasCubicMetres: 2 * quantities.gasCubicMetres,
          fillerKilograms: 2 * quantities.fillerKilograms,
        };
        const once = amounts(quoted(rates, quantities));
        const twice = amounts(quoted(rates, double));
        for (const key of ['tube', 'gas', 'filler'] as const) {
          const [one, two] = [once[key], twice[key]];
          if (typeof one !== 'number') expect(two).toBe(one);
          else expect(Math.abs((two ?? NaN) - 2 * one)).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  it('labour without a set-up doubles with its counts and its waiting', () => {
    fc.assert(
      fc.property(anyRates, anyQuantities, (typed, quantities) => {
        const rates = { ...typed, times: each({ setUp: 0, each: 7.5 }), labourPerHour: each(4800) };
        const counts = Object.fromEntries(OPERATIONS.map((key) => [key, 2 * quantities.counts[key]]));
        const double = {
          ...quantities,
          counts: { ...quantities.counts, ...counts },
          arcMinutes: 2 * quantities.arcMinutes,
          purgeMinutes: 2 * quantities.purgeMinutes,
        };
        const once = amounts(quoted(rates, quantities));
        const twice = amounts(quoted(rates, double));
        for (const key of OPERATIONS)
          if (once[key] !== undefined)
            expect(Math.abs((twice[key] ?? NaN) - 2 * (once[key] ?? NaN))).toBeLessThanOrEqual(1);
      }),
    );
  });
});
