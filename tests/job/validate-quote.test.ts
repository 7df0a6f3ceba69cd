import fc from 'fast-check';
import { Compile } from 'typebox/compile';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { Job } from '../../server/job/job.ts';
import { parseStockBar } from '../../server/job/stock-row.ts';
import { parseJob } from '../../server/job/validate.ts';
import { bar } from '../db/kept-things.ts';
import { problemsIn, shown, withValue } from './refused.ts';

/** A job with every list of its stock, its rates, its quote and its times filled. */
function filled(): Job {
  const job = newJob('hoop');
  const [tube] = job.rates.tubes;
  const { name, remnant, outsideDiameter, wall, grade, length, price, heat } = bar('rack');
  const laid = { stock: 'a', name, remnant, outsideDiameter, wall, grade, length, price, heat, times: 1 };
  const entry = { operation: 'weld' as const, date: '2026-11-26', count: 2, setUp: 5, minutes: 30 };
  return {
    ...job,
    stock: {
      saw: job.stock.saw,
      joints: [{ member: 'hoop', station: 400 }],
      layout: {
        found: 'proven',
        date: '2026-11-26',
        saw: { ...job.stock.saw },
        currency: 'EUR',
        minorDigits: 2,
        bars: [{ ...laid, pieces: [{ name: 'hoop', length: 2500, job: '' }] }],
        taken: null,
      },
    },
    rates: { ...job.rates, tubes: [tube!, { ...tube!, size: { outsideDiameter: 38.1, wall: 1.65 } }] },
    quote: { ...job.quote, quantities: [1, 5], offered: ['rebend'] },
    log: [{ ...entry, planned: 28, process: 12 }],
  };
}

const refused = (field: string, value: unknown) => shown(withValue(field, value, filled()));

describe('stock, rates, quote and times', () => {
  it('as filled are right', () => expect(problemsIn(filled())).toEqual([]));

  it.each<[string, unknown, string]>([
    ['/rates/currency', 'eur', 'wrong-form'],
    ['/rates/currency', 'EURO', 'wrong-form'],
    ['/rates/minorDigits', 4, 'above-range'],
    ['/rates/from', '2026-02-31', 'wrong-form'],
    ['/rates/from', '2026-13-01', 'wrong-form'],
    ['/rates/until', '26.11.2026', 'wrong-form'],
    ['/rates/tubes/1/barLength', 0, 'below-range'],
    ['/rates/tubes/1/size/wall', -1, 'below-range'],
    ['/rates/tubes/0/by', 'kilogram', 'not-one-of'],
    ['/rates/tax/value', 101, 'above-range'],
    ['/rates/margin/value', 100, 'above-range'],
    ['/rates/waste/value', -1, 'below-range'],
    ['/rates/labour/weld/hour/value', 12.5, 'not-whole'],
    ['/rates/labour/weld/hour/since', '2026-04-31', 'wrong-form'],
    ['/rates/labour/weld/setUp/value', 'long', 'wrong-type'],
    ['/rates/labour/weld/each/example', 'yes', 'wrong-type'],
    ['/rates/labour/weld/machine', 0, 'wrong-type'],
    ['/rates/gas/by', 'litre', 'not-one-of'],
    ['/rates/roundTo', 0, 'below-range'],
    ['/stock/saw/kerf', -0.1, 'below-range'],
    ['/stock/joints/0/station', -1, 'below-range'],
    ['/stock/layout/found', 'guessed', 'not-one-of'],
    ['/stock/layout/bars/0/length', 0, 'below-range'],
    ['/stock/layout/bars/0/price', -1, 'below-range'],
    ['/stock/layout/bars/0/pieces', [], 'too-short'],
    ['/stock/layout/bars/0/pieces/0/length', 60_000, 'above-range'],
    ['/stock/layout/taken', 0, 'below-range'],
    ['/quote/date', '2026-06-31', 'wrong-form'],
    ['/quote/validDays', 731, 'above-range'],
    ['/quote/quantities', [], 'too-short'],
    ['/quote/quantities/1', 0, 'below-range'],
    ['/quote/quantities', [1, 2, 3, 4, 5, 6, 7], 'too-long'],
    ['/quote/bending', 'both', 'not-one-of'],
    ['/quote/bendersOffer', -5, 'below-range'],
    ['/quote/travel/trips', 1.5, 'not-whole'],
    ['/quote/offered/0', 'patch', 'not-one-of'],
    ['/log/0/operation', 'paint', 'not-one-of'],
    ['/log/0/count', 0, 'below-range'],
    ['/log/0/minutes', -3, 'below-range'],
    ['/log/0/date', '2026-02-30', 'wrong-form'],
  ])('%s = %j is %s', (field, value, code) => {
    expect(refused(field, value)).toEqual([`${code} ${field}`]);
  });

  it.each<[string, unknown, string]>([
    ['/rates/tax/value', 101, 'Tax is 101; allowed is at least 0 percent, at most 100 percent. Give a smaller value.'],
    ['/quote/quantities/1', 0, 'How many frames is 0; allowed is at least 1, at most 1000. Give a larger value.'],
    ['/log/0/count', 0, 'How many is 0; allowed is at least 1, at most 100000. Give a larger value.'],
    ['/stock/saw/kerf', 11, 'Kerf of the saw is 11; allowed is at least 0 mm, at most 10 mm. Give a smaller value.'],
  ])('%s = %j says field, value, range and way out', (field, value, message) => {
    expect(problemsIn(withValue(field, value, filled())).map((problem) => problem.message)).toEqual([message]);
  });

  it.each(['', '2026-02-28', '2024-02-29', '2026-12-31'])('a day may be %j', (day) => {
    expect(refused('/rates/from', day)).toEqual([]);
  });
});

describe('any value at all', () => {
  const published = Compile(Job);
  const pointers = (value: unknown, at = ''): string[] =>
    typeof value === 'object' && value !== null
      ? Object.entries(value).flatMap(([name, inner]) => [`${at}/${name}`, ...pointers(inner, `${at}/${name}`)])
      : [];
  const places = pointers(filled()).filter((pointer) => /^\/(stock|rates|quote|log)/.test(pointer));

  it('in their place is judged as the published schema judges it', () => {
    const odd = fc.oneof(
      fc.constantFrom<unknown>(null, 0, 1, -1, 0.5, 1e300, '', 'EUR', '2026-02-31', true, [], {}, [{}]),
      fc.double(),
      fc.jsonValue({ maxDepth: 2 }),
    );
    expect(places.length).toBeGreaterThan(200);
    fc.assert(
      fc.property(fc.constantFrom(...places), odd, (pointer, value) => {
        const document = withValue(pointer, value, filled());
        return parseJob(document).ok === published.Check(document);
      }),
      { numRuns: 200 },
    );
  });

  it('is a bar in stock, or is refused; a tube always has a bore', () => {
    fc.assert(
      fc.property(fc.anything(), (value) => !parseStockBar(value).ok),
      { numRuns: 100 },
    );
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 100, noNaN: true }),
        fc.double({ min: 0.001, max: 50, noNaN: true }),
        (outsideDiameter, wall) => {
          const parsed = parseStockBar(bar('rack', { outsideDiameter, wall }));
          return parsed.ok === wall < outsideDiameter / 2;
        },
      ),
      { numRuns: 200 },
    );
  });
});
