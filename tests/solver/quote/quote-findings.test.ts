import { describe, expect, it } from 'vitest';
import { newJob } from '../../../server/job/default-job.ts';
import { describeFinding } from '../../../server/language/finding-words.ts';
import type { Job } from '../../../server/job/job.ts';
import type { LogEntry, Rates } from '../../../server/job/rates.ts';
import type { QuoteOption } from '../../../server/plan/quote.ts';
import { ownTimes } from '../../../server/solver/quote/own-times.ts';
import { quoteFindings } from '../../../server/solver/quote/quote-findings.ts';

const JOB = newJob('straight');
const found = ({ rates, quote, log }: { rates?: Partial<Rates>; quote?: Partial<Job['quote']>; log?: LogEntry[] }) => {
  const job = {
    rates: { ...JOB.rates, ...rates },
    quote: { ...JOB.quote, ...quote },
    log: log ?? [],
  };
  return quoteFindings(job, { lines: [], net: 0 }, ownTimes(job.log));
};
const codes = (given: Parameters<typeof found>[0]) => found(given).map(({ code }) => code);

describe('dates of the rates', () => {
  const on = (date: string, from: string, until: string) => codes({ quote: { date }, rates: { from, until } });

  it('are held against the day of the quote, first and last day within', () => {
    expect(on('2026-03-01', '2026-03-01', '2026-03-31')).toEqual([]);
    expect(on('2026-03-31', '2026-03-01', '2026-03-31')).toEqual([]);
    expect(on('2026-02-28', '2026-03-01', '')).toEqual(['rates-not-in-effect']);
    expect(on('2026-04-01', '', '2026-03-31')).toEqual(['rates-not-in-effect']);
  });

  it('that nobody typed are no limit', () => {
    expect(on('', '2026-03-01', '2026-03-31')).toEqual([]);
    expect(on('2026-04-01', '', '')).toEqual([]);
    const [late] = found({ quote: { date: '2026-04-01' }, rates: { until: '2026-03-31' } });
    expect(late?.data).toEqual({ date: '2026-04-01', until: '2026-03-31' });
    expect(describeFinding(late!, JOB.units)).toContain('in effect: 1 Apr 2026, in effect until 31 Mar 2026.');
  });
});

describe('rounding', () => {
  const rounded = (rounding: number, margin: number, price: number) => {
    const line = (key: 'margin' | 'rounding', amount: number) => ({ key, amount }) as QuoteOption['lines'][number];
    const lines = [line('margin', margin), line('rounding', rounding)].filter(({ amount }) => amount !== 0);
    return quoteFindings({ rates: JOB.rates, quote: JOB.quote, log: [] }, { lines, net: price + rounding }, []);
  };

  it('that takes more than the margin, or more than a twentieth either way, is told', () => {
    expect(rounded(-100, 100, 10_000)).toEqual([]);
    expect(rounded(-101, 100, 10_000)).toMatchObject([
      { code: 'rounding-large', grade: 'caution', field: '/rates/roundTo', data: { value: 1, margin: 1 } },
    ]);
    expect(rounded(101, 100, 10_000)).toEqual([]);
    expect([rounded(-500, 2000, 10_000), rounded(500, 0, 10_000), rounded(0, 0, 0)]).toEqual([[], [], []]);
    for (const much of [-560, 560]) expect(rounded(much, 2000, 10_000)).toMatchObject([{ data: { value: 5.6 } }]);
    const [told] = rounded(-101, 100, 10_000);
    expect(describeFinding(told!, JOB.units)).toBe(
      'Price rounded to: Rounding changes the price by much: it takes off more than the margin, which is 1 % of the price. Of the price before it is rounded: 1.0 %. Round to a smaller amount.',
    );
  });
});

describe('decimals of a currency', () => {
  const typed = (currency: string, minorDigits: number) => found({ rates: { currency, minorDigits } });

  it('are two, but for those that have none or three', () => {
    expect([typed('EUR', 2), typed('JPY', 0), typed('KWD', 3)].flat()).toEqual([]);
    expect(typed('JPY', 2)[0]).toMatchObject({
      code: 'minor-digits-unlike',
      grade: 'note',
      data: { currency: 'JPY', usual: 0, value: 2 },
      wayOut: { field: '/rates/minorDigits', value: 0 },
    });
    expect(typed('EUR', 0)[0]?.data['usual']).toBe(2);
    expect(typed('OMR', 2)[0]?.data['usual']).toBe(3);
  });
});

it('a quantity that stands there again is told at the later place', () => {
  const again = found({ quote: { quantities: [1, 5, 1, 10, 5] } });
  expect(again.map(({ field, data }) => [field, data['value']])).toEqual([
    ['/quote/quantities/2', 1],
    ['/quote/quantities/4', 5],
  ]);
});

describe('times taken', () => {
  const took = (...minutes: number[]): LogEntry[] =>
    minutes.map((each) => ({
      operation: 'fit',
      date: '',
      count: 1,
      setUp: 0,
      minutes: each,
      planned: 100,
      process: 0,
    }));

  it('that are off by more than a fifth and more than chance are told', () => {
    expect(found({ log: took(125, 130, 135) })[0]).toMatchObject({
      code: 'own-times-differ',
      field: '/log',
      data: { line: 'fit', value: 1.3 },
    });
    const [slower] = found({ log: took(125, 130, 135) });
    expect(describeFinding(slower!, JOB.units)).toContain('than planned: fitting and tacking. Taken over planned: 1.3');
    expect(codes({ log: took(65, 70, 75) })).toEqual(['own-times-differ']);
  });

  it('that are few, near or scattered are not', () => {
    expect(codes({ log: took(130, 130) })).toEqual([]);
    expect(codes({ log: took(119, 119, 119) })).toEqual([]);
    // mean 1.3, spread 0.3: two standard errors are 0.346
    expect(codes({ log: took(100, 130, 160) })).toEqual([]);
    // the same spread over more entries is no chance any more: 0.3 > 2 × 0.2683/√6
    expect(codes({ log: took(100, 130, 160, 100, 130, 160) })).toEqual(['own-times-differ']);
  });
});
