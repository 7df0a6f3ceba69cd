import { describe, expect, it } from 'vitest';
import type { Figure } from '../../server/plan/figure.ts';
import type { QuoteLine } from '../../server/plan/quote.ts';
import { figure } from './fixture-figure.ts';
import { line, option, quote, quotePlan } from './fixture-work.ts';
import { saidOn } from './laid-pages.ts';
import { bare, example, pages, printed, said } from './quote-pages.ts';

describe('what a quote came from', () => {
  it('has every line with quantity, rate, since when, example and amount', () => {
    const text = said('quote-working');
    expect(text).toContain('tube: 38.1 × 1.7 mm, 316L 3.100 m 14.50 / m 2026-03-01 44.95');
    expect(text).toContain('From: hoop 2080.0 mm; crossbar 1 910.0 mm.');
    expect(text).toContain('machine: welding');
    expect(text).toContain('filler 0.0040 kg open 2026-03-01 open');
    expect(text).toContain('Missing: cleaning beside grinding: each weld.');
    expect(said('quote-working', { quote: example() })).toContain('14.50 / m example 87.00');
  });

  it('names what goes into a formula as a shop does, and leaves out a formula that is one letter', () => {
    const bend = line(
      'bend',
      {
        ...figure(0.5, 'h'),
        working: {
          formula: 'h = (s + n e + ℓ m)/60',
          inputs: [
            { symbol: 's', name: 'set-up-time', value: 20, unit: 'min' },
            { symbol: 'n', name: 'count-bend', value: 2, unit: 'count' },
            { symbol: 'e', name: 'time-each', value: 5, unit: 'min' },
            { symbol: 'm', name: 'time-each-metre', value: 0, unit: 'min/m' },
          ],
          sources: [],
        },
      },
      5000,
    );
    const worked = (key: QuoteLine['key'], quantity: Figure, formula: string, name: string) =>
      line(
        key,
        {
          ...quantity,
          working: {
            formula,
            inputs: [{ symbol: 'n', name, value: quantity.value, unit: quantity.unit }],
            sources: [],
          },
        },
        250,
      );
    const text = said('quote-working', {
      quote: quotePlan([
        option('frame', [
          bend,
          { ...bend, key: 'machine', of: 'bend' },
          worked('abrasives', figure(6, 'count'), 'n', 'welds-finished'),
          worked('gas', figure(1, 'count'), 'n = ⌈V/V_u⌉', 'purge-and-torch-gas'),
        ]),
      ]),
    });
    expect(text).toContain(
      's = 20.0 min (set-up), n = 2 (bends), e = 5.0 min (time for each), m = 0.0 min/m (time for each metre)',
    );
    expect(text).toContain('As for bending.');
    expect(text).toContain('6 welds');
    expect(text).toContain('welds finished: 6');
    expect(text).toContain('1 bottle ');
    expect(text).toContain('n = V/V_u, rounded up to a whole number;');
    expect(text).not.toMatch(/roundup|rounddown|count \w|\bn; n/);
  });

  it('tells what a percentage is taken of with its currency', () => {
    const [first] = quote().options;
    const of = (key: string) => first!.lines.find((one) => one.key === key)!;
    const text = said('quote-working');
    for (const key of ['overhead', 'margin', 'tax']) {
      const { quantity, rate, amount } = of(key);
      expect(text).toContain(`${key} EUR ${bare(quantity!.value)} ${String(rate)} % 2026-03-01 ${bare(amount!)}`);
    }
  });

  it('keeps what is put on the cost on one page with the sums', () => {
    for (const count of [18, 20, 22, 24, 26, 28, 30]) {
      const many = Array.from({ length: count }, (_, at) =>
        line('travel', figure(at + 1, 'km'), 60, { of: `trip ${String(at)}` }),
      );
      const laid = pages('quote-working', { quote: quotePlan([option('frame', many)]) }).map(saidOn);
      const page = laid.find((text) => text.includes('overhead EUR'));
      for (const part of ['margin EUR', 'tax EUR', 'cost: bought and done']) expect(page).toContain(part);
    }
  });

  it('adds up: the sums that it prints are those of its lines', async () => {
    const [first] = quote().options;
    const text = await printed('quote-working');
    const of = (key: string): number => first!.lines.find((one) => one.key === key)!.amount!;
    const bought = first!.lines.slice(0, 6).reduce((sum, { amount }) => sum + (amount ?? 0), 0);
    expect(bought).toBe(first!.cost);
    expect(bought + of('overhead') + of('margin') + of('rounding')).toBe(first!.net);
    const order = ['overhead', 'margin', 'rounding'].map((key) => `${key} ${bare(of(key))}`);
    for (const part of [`bought and done ${bare(bought)}`, ...order, `before tax ${bare(first!.net)}`]) {
      expect(text).toContain(part);
    }
    expect(text).toContain(`total EUR ${bare(first!.total)}`);
    expect(text).toContain('The open lines are in none of these sums.');
  });

  it('has all options beside one another and each number of frames, line by line', () => {
    const text = said('quote-working');
    const [one, other] = quote().options;
    expect(text).toContain(
      `overhead ${[one, other].map((of) => bare(of!.lines.find((l) => l.key === 'overhead')!.amount!)).join(' ')}`,
    );
    const breaks = one!.breaks.map(({ lines }) => bare(lines.find(({ key }) => key === 'weld')!.amount!)).join(' ');
    expect(text).toContain(`welding ${breaks}`);
    expect(text).toContain('filler open open open');
    expect(text).toContain('for 1 for 5 for 20');
  });

  it('has gas one way and another, own times with their spread, and where two ways cost alike', () => {
    const text = said('quote-working');
    for (const part of [
      'whole frame, welds together (as planned) 1 42.0 min 0.310 m³ 1 0 61.20',
      'whole frame, weld by weld 4 88.5 min 0.740 m³ 1 0 open',
      'dams, welds together not possible:',
      'welding 4 14.0 min ± 3.2 min',
      'Splice, fewest welds: cheaper up to 6 joints; above that: new frame. The splice has 2.',
      'Splice, fewest welds: cheaper than new frame, however many frames. Now: 1.',
    ]) {
      expect(text).toContain(part);
    }
  });
});
