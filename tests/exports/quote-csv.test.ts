import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { quoteCsv } from '../../server/exports/quote-csv.ts';
import type { ExportInput } from '../../server/exports/export-file.ts';
import { wordsOf } from '../../server/language/words.ts';
import type { QuotePlan } from '../../server/plan/quote.ts';
import { makeJob, makePlan } from '../sheets/fixture.ts';
import { figure } from '../sheets/fixture-figure.ts';
import { line, option, quote, quotePlan } from '../sheets/fixture-work.ts';
import { inputOf } from './made-up-frames.ts';
import { readCsv } from './read-csv.ts';

const input = (priced: QuotePlan = quote()): ExportInput => ({
  plan: { ...makePlan(), quote: priced },
  job: makeJob(),
  member: null,
});
const allRows = (priced?: QuotePlan): Record<string, string>[] => readCsv(quoteCsv(input(priced)));
const isLine = ({ row }: Record<string, string>): boolean => row === 'line';
const rowsOf = (priced?: QuotePlan): Record<string, string>[] => allRows(priced).filter(isLine);

describe('the quote as a table', () => {
  it('has a row for each line of each option and number of frames, which add up to the totals of the plan', () => {
    const rows = rowsOf();
    const { options } = quote();
    expect(rows).toHaveLength(options.flatMap(({ breaks }) => breaks.flatMap(({ lines }) => lines)).length);
    for (const { scope, breaks } of options) {
      for (const { quantity, total, lines } of breaks) {
        const own = rows.filter((row) => row['option'] === wordsOf('way', scope) && row['frames'] === String(quantity));
        expect(own.map((row) => row['line'])).toEqual(lines.map(({ key }) => wordsOf('quote', key)));
        expect(own.reduce((sum, row) => sum + Number(row['amount in minor units']), 0)).toBe(total);
        expect(own.reduce((sum, row) => sum + Number(row['amount']), 0)).toBeCloseTo(total / 100, 6);
      }
    }
  });

  it('has what the lines come to after those of each option and number: cost, before tax, tax and total', () => {
    const rows = allRows();
    for (const { scope, cost, breaks } of quote().options) {
      for (const { quantity, net, tax, total, open } of breaks) {
        const own = rows.filter((row) => row['option'] === wordsOf('way', scope) && row['frames'] === String(quantity));
        const sums = own.slice(-4);
        expect(own.filter((row) => !isLine(row))).toEqual(sums);
        expect(sums.map((row) => [row['line'], Number(row['amount in minor units'])])).toEqual([
          // every line of the fixture is so many times as dear for so many frames
          ['cost: bought and done', cost * quantity],
          ['before tax', net],
          ['tax', tax],
          ['total', total],
        ]);
        for (const sum of sums) expect(sum['open']).toBe(open > 0 ? 'yes' : 'no');
      }
    }
    const made = inputOf(landingStage());
    const firsts = readCsv(quoteCsv(made)).filter((row) => row['line'] === 'cost: bought and done');
    expect(firsts.map((row) => Number(row['amount in minor units']))).toEqual(
      made.plan.quote!.options.map(({ cost }) => cost),
    );
  });

  it('has quantity, unit, rate and since when with the first number of frames', () => {
    const [tube] = rowsOf();
    expect(tube).toEqual({
      option: wordsOf('way', 'splice-fewest'),
      shown: 'yes',
      offered: 'yes',
      frames: '1',
      row: 'line',
      line: 'tube',
      of: '38.1 × 1.7 mm, 316L',
      quantity: '3.1',
      unit: 'm',
      rate: '14.50',
      'rate unit': 'EUR / m',
      'rate since': '2026-03-01',
      example: 'no',
      open: 'no',
      amount: '44.95',
      'amount in minor units': '4495',
      currency: 'EUR',
    });
    const later = rowsOf().find(({ frames, line: name }) => frames === '5' && name === 'tube')!;
    expect(later).toMatchObject({ quantity: '', rate: '', amount: '224.75', 'rate since': '2026-03-01' });
  });

  it('leaves an open line open, never nothing, and tells an example', () => {
    const priced = quotePlan([
      option('frame', [
        line('filler', figure(0.004, 'kg'), null),
        line('tube', figure(2, 'm'), 1450, { example: true }),
      ]),
    ]);
    const [filler, tube] = rowsOf(priced);
    expect(filler).toMatchObject({ open: 'yes', amount: '', 'amount in minor units': '', rate: '', quantity: '0.004' });
    expect(tube).toMatchObject({ open: 'no', example: 'yes', amount: '29.00' });
  });

  it.each([
    ['JPY', 0, '12345', '-500'],
    ['EUR', 2, '123.45', '-5.00'],
    ['BHD', 3, '12.345', '-0.500'],
  ] as const)('has all digits of %s, a credit as a number', (currency, minorDigits, amount, credit) => {
    const priced = quotePlan(
      [
        option('frame', [
          line('tube', figure(1, 'm'), 12_345),
          line('remnant-credit', figure(-500, 'minor'), null, { amount: -500, missing: [] }),
        ]),
      ],
      { currency, minorDigits },
    );
    const [tube, back] = rowsOf(priced);
    expect(tube).toMatchObject({ amount, rate: amount, 'rate unit': `${currency} / m` });
    expect(back).toMatchObject({ amount: credit, quantity: credit, unit: currency, 'amount in minor units': '-500' });
  });

  it('tells percentages as such, of what they are taken', () => {
    const tax = rowsOf().find(({ line: name }) => name === 'tax')!;
    expect(tax).toMatchObject({ rate: '20', 'rate unit': '%', quantity: '104.00', unit: 'EUR', amount: '20.80' });
  });

  it('does not let a grade of the shop run as a formula', () => {
    const priced = quotePlan([option('frame', [line('tube', figure(1, 'm'), 100, { of: '=1+1' })])]);
    expect(rowsOf(priced)[0]).toMatchObject({ of: "'=1+1" });
  });

  it('is of the plan of a job, and says why there is none', () => {
    const made = inputOf(landingStage());
    const rows = readCsv(quoteCsv(made)).filter(isLine);
    for (const { scope, breaks } of made.plan.quote!.options) {
      const own = rows.filter((row) => row['option'] === wordsOf('way', scope));
      expect(own.reduce((sum, row) => sum + Number(row['amount in minor units']), 0)).toBe(
        breaks.reduce((sum, { total }) => sum + total, 0),
      );
    }
    const stage = landingStage();
    expect(quoteCsv(inputOf({ ...stage, tube: { ...stage.tube, wall: 25 } }))).toMatchObject({
      ok: false,
      reason: 'frame-not-possible',
    });
    expect(quoteCsv(input(quotePlan([])))).toMatchObject({ ok: false, reason: 'no-quote' });
  });
});
