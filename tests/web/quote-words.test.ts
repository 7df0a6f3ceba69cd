import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { Job, type Units } from '../../server/job/job.ts';
import { Quote } from '../../server/job/quote.ts';
import { Rates, type OwnValue } from '../../server/job/rates.ts';
import type { QuoteOption } from '../../server/plan/quote.ts';
import { lineName } from '../../server/language/quote-names.ts';
import { plan } from '../../server/solver/plan.ts';
import {
  LONGEST_RATES_NAME,
  LONGEST_REFERENCE,
  LONGEST_TERMS,
  MOST_QUANTITIES,
  MOST_TIMES_TAKEN,
  MOST_TUBE_RATES,
} from '../../web/state/limits.ts';
import { amountText } from '../../server/language/quantity-format.ts';
import { jobQuantity } from '../../web/state/money.ts';
import {
  breakOf,
  cheapestOf,
  firstExample,
  firstMissing,
  lineId,
  lineRows,
  partText,
  rateText,
  shownOption,
  sumText,
  withOffered,
} from '../../web/state/quote.ts';
import { valueAt } from '../../web/state/pointer.ts';
import { ownOf, withOwnValue } from '../../web/state/rates.ts';
import { withChoice } from '../../web/state/typed-text.ts';

const job = newJob('hoop');
const quoteOf = (of: Job) => plan(of).quote!;
const quote = quoteOf(job);
const option = shownOption(quote)!;
const lineOf = (key: string) => option.lines.find((line) => line.key === key)!;
const made = (scope: QuoteOption['scope'], given: Partial<QuoteOption>): QuoteOption => ({
  ...option,
  scope,
  ...given,
});

describe('amounts', () => {
  it('have as many decimals as the currency', () => {
    expect([0, 2, 3].map((digits) => amountText(1_234_567, digits))).toEqual(['1,234,567', '12,345.67', '1,234.567']);
    expect(amountText(-42, 2)).toBe('−0.42');
  });

  it('stand in the money of the job, other values in their unit', () => {
    expect(jobQuantity(5000, 'minor', job).replace(/\s/g, ' ')).toBe('EUR 50.00');
    expect(jobQuantity(0.5, 'h', job)).toBe('0.50 h');
  });
});

describe('lines of a quote', () => {
  it('are named, told apart, and say their rate', () => {
    const names = (units: Units) => ['tube', 'bend', 'machine'].map((key) => lineName(lineOf(key), units));
    expect(names({ length: 'mm', fraction: 16 })).toEqual([
      'tube: 38.1 × 1.65 mm, 316L',
      'bending',
      'machine: bending',
    ]);
    // a size is told in the unit of the job
    expect(names({ length: 'inch', fraction: 16 })[0]).toBe('tube: 1 1/2 × 0.065 in, 316L');
    expect(rateText(lineOf('bend'), quote).replace(/\s/g, ' ')).toBe('EUR 50.00 each h');
    expect(rateText(lineOf('margin'), quote)).toBe('10 %');
    expect(partText({ key: 'set-up', name: '', value: 20, unit: 'min' }, job)).toBe('set-up: 20.0 min');
    expect(partText({ key: 'piece', name: 'hoop', value: 1.5, unit: 'm' }, job)).toBe('hoop: 1.500 m');
    expect(partText({ key: 'no-words-yet', name: 'A', value: 1, unit: 'm' }, job)).toBe('no words yet A: 1.000 m');
  });

  it('say that they are open, and where the first of them is mended', () => {
    const opened = quoteOf(withChoice(job, '/rates/labour/bend/hour/value', null));
    const shown = shownOption(opened)!;
    const bend = shown.lines.find(({ key }) => key === 'bend')!;
    expect([bend.amount, rateText(bend, opened)]).toEqual([null, 'open']);
    expect(firstMissing(shown)).toBe('/rates/labour/bend/hour/value');
    expect(firstMissing(option)).toBe('');
    expect(sumText(1250, shown.open.length, 2)).toBe('≥ 12.50');
    expect(sumText(1250, 0, 2)).toBe('12.50');
  });

  it('lead to the examples that they rest on, one after the other, until none is left', () => {
    const been: string[] = [];
    let next = job;
    for (let at = firstExample(next, option); at !== ''; at = firstExample(next, shownOption(quoteOf(next))!)) {
      been.push(at.replace(/^\/rates|\/value$/g, ''));
      const own = ownOf(at);
      next = withOwnValue(next, own, (valueAt(next, own) as OwnValue).value, '2026-11-26');
    }
    expect(been).toEqual(expect.arrayContaining(['/tubes/0/perMetre', '/waste', '/labour/bend/setUp', '/tax']));
    expect(new Set(been).size).toBe(been.length);
    expect(shownOption(quoteOf(next))!.examples).toBe(0);
  });

  it('of several options stand once each, where they follow in their own option', () => {
    const of = (...keys: string[]) => ({ lines: keys.map((key) => ({ ...lineOf('bend'), key, of: '' })) });
    const options = [of('tube', 'weld', 'tax'), of('tube', 'gas', 'bend', 'tax'), of('travel', 'tax')];
    expect(lineRows(options as unknown as QuoteOption[]).map(({ key }) => key)).toEqual([
      'travel',
      'tube',
      'gas',
      'bend',
      'weld',
      'tax',
    ]);
    expect(lineRows([option]).map(lineId)).toEqual(option.lines.map(lineId));
  });
});

describe('options', () => {
  it('are compared where they come near enough, and none that is open could be cheaper', () => {
    const near = (...keys: string[]) =>
      (['leave', 'rebend', 'splice-fewest', 'new-frame'] as const).map((key) => ({ key, within: keys.includes(key) }));
    const options = [
      made('leave', { total: 50, open: [] }),
      made('rebend', { total: 250, open: [0] }),
      made('splice-fewest', { total: 300, open: [] }),
      made('new-frame', { total: 200, open: [] }),
    ];
    const all = near('rebend', 'splice-fewest', 'new-frame');
    expect(cheapestOf(options, all)?.scope).toBe('new-frame');
    expect(cheapestOf(options, near('leave', 'rebend', 'new-frame'))?.scope).toBe('leave');
    // what is open may come to less than the next
    expect(cheapestOf(options, near('rebend', 'splice-fewest'))).toBeUndefined();
    expect(cheapestOf(options, near('new-frame'))).toBeUndefined();
  });

  it('that the plan offers by itself stay ticked when another is', () => {
    const options = [
      made('leave', { offered: false }),
      made('rebend', { offered: true }),
      made('new-frame', { offered: true }),
    ];
    expect(withOffered(options, 'leave', true)).toEqual(['leave', 'rebend', 'new-frame']);
    expect(withOffered(options, 'new-frame', false)).toEqual(['rebend']);
  });

  it('have a price for each number of frames that the plan knows', () => {
    expect(breakOf(option, 1)?.total).toBe(option.total);
    expect(breakOf(option, 7)).toBeUndefined();
  });
});

describe('what the page knows of a quote', () => {
  it('is how much of each the job takes', () => {
    const most = (list: unknown): unknown => (list as { maxItems?: number }).maxItems;
    const longest = (text: unknown): unknown => (text as { maxLength?: number }).maxLength;
    expect([most(Rates.properties.tubes), most(Quote.properties.quantities), most(Job.properties.log)]).toEqual([
      MOST_TUBE_RATES,
      MOST_QUANTITIES,
      MOST_TIMES_TAKEN,
    ]);
    expect(
      [Rates.properties.name, Quote.properties.reference, Quote.properties.terms].map((text) => longest(text)),
    ).toEqual([LONGEST_RATES_NAME, LONGEST_REFERENCE, LONGEST_TERMS]);
  });
});
