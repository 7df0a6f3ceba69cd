import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { Job } from '../../server/job/job.ts';
import { KEPT_SCHEMAS } from '../../server/job/kept.ts';
import { problemsOf } from '../../server/job/validate.ts';
import { differingFields } from '../../web/state/kept.ts';
import {
  areInEffect,
  examplesIn,
  isExample,
  newestOf,
  ownOf,
  ownValues,
  withMarks,
  AMOUNTS,
  withMinorDigits,
  withOwnValue,
} from '../../web/state/rates.ts';
import { withChoice, withText } from '../../web/state/typed-text.ts';

const job = newJob('hoop');
type Plain = Readonly<Record<string, unknown>>;
const HOUR = '/rates/labour/bend/hour';
const form = { kind: 'money', mayBeEmpty: true } as const;
const typed = (before: Job, text: string, day: string) =>
  withMarks(before, withText(before, `${HOUR}/value`, text, form), `${HOUR}/value`, day);
const hourOf = ({ rates }: Job) => rates.labour.bend.hour;

describe('an example among the rates', () => {
  it('is one until somebody types his own over it, and is his own since that day', () => {
    expect(isExample(job, `${HOUR}/value`)).toBe(true);
    const mine = typed(job, '61.50', '2026-11-26');
    expect(hourOf(mine)).toEqual({ value: 6150, since: '2026-11-26', example: false });
    expect(isExample(mine, `${HOUR}/value`)).toBe(false);
    expect(mine.asTyped[`${HOUR}/value`]).toBe('61.50');
    expect(problemsOf(Job, mine)).toEqual([]);
  });

  it('becomes his own where he types just the same number', () => {
    expect(hourOf(typed(job, '50', '2026-11-26'))).toEqual({ value: 5000, since: '2026-11-26', example: false });
  });

  it('stands open, of no day, where it is emptied', () => {
    expect(hourOf(typed(job, '', '2026-11-26'))).toEqual({ value: null, since: '', example: false });
  });

  it('keeps its day where what is typed means the same', () => {
    const mine = typed(job, '61.50', '2025-01-02');
    expect(hourOf(typed(mine, '61.5', '2026-11-26')).since).toBe('2025-01-02');
    expect(hourOf(typed(mine, '62', '2026-11-26')).since).toBe('2026-11-26');
  });

  it('is no matter of fields that hold no value of the shop', () => {
    for (const pointer of ['/frame/width/value', '/rates/currency', `${HOUR}/since`, '/rates/roundTo'])
      expect([pointer, ownOf(pointer), isExample(job, pointer)]).toEqual([pointer, '', false]);
    const wider = withChoice(job, '/frame/width/value', 950);
    expect(withMarks(job, wider, '/frame/width/value', '2026-11-26')).toBe(wider);
  });

  it('is counted, and the latest day of all that is not one is told', () => {
    const all = ownValues(job.rates);
    // minutes for each metre and what is left in a bottle are nothing until somebody asks for them
    const examples = all.filter(
      ({ pointer }) =>
        pointer !== '/gas/restOfBottle' && (!pointer.endsWith('/perMetre') || pointer.startsWith('/tubes')),
    );
    expect(examplesIn(job.rates)).toBe(examples.length);
    expect([newestOf(job.rates), examples.every(({ own }) => own.example)]).toEqual(['', true]);
    const one = withOwnValue(job, '/rates/tax', 19, '2026-03-01');
    const two = withOwnValue(one, HOUR, 5200, '2026-02-01');
    expect([examplesIn(two.rates), newestOf(two.rates)]).toEqual([examples.length - 2, '2026-03-01']);
  });
});

describe('a list of rates', () => {
  it('is in effect from its first day to its last', () => {
    const list = { from: '2026-01-01', until: '2026-06-30' };
    expect(['2025-12-31', '2026-01-01', '2026-06-30', '2026-07-01', ''].map((day) => areInEffect(list, day))).toEqual([
      false,
      true,
      true,
      false,
      true,
    ]);
    expect(areInEffect({ from: '', until: '' }, '2026-01-01')).toBe(true);
  });

  it('is compared with what stands in the job, field by field, whatever it is called', () => {
    const mine = withOwnValue(job, HOUR, 5200, '2026-02-01');
    const kept = { ...job.rates, name: 'spring' };
    expect(problemsOf(KEPT_SCHEMAS.rates, kept)).toEqual([]);
    expect(differingFields('rates', kept, job.rates)).toEqual([]);
    expect(differingFields('rates', kept, mine.rates)).toEqual([`${HOUR}/value`, `${HOUR}/since`, `${HOUR}/example`]);
  });
});

describe('the decimals of the money', () => {
  it('leave every amount as it reads, and nothing else changes', () => {
    const priced = withChoice(withText(job, `${HOUR}/value`, '61.50', form), '/quote/bendersOffer', 12_345);
    const dinar = withMinorDigits(priced, 3);
    expect(dinar.rates).toMatchObject({ minorDigits: 3, roundTo: 1, fillerPerKilogram: { value: 25_000 } });
    expect([hourOf(dinar).value, dinar.quote.bendersOffer]).toEqual([61_500, 123_450]);
    expect(dinar.asTyped).toEqual({});
    expect(dinar.rates.labour.bend.setUp).toEqual(priced.rates.labour.bend.setUp);
    expect(dinar.rates.tax).toEqual(priced.rates.tax);
    const yen = withMinorDigits(priced, 0);
    expect([hourOf(yen).value, yen.quote.bendersOffer, yen.rates.gas.rentPerDay?.value]).toEqual([62, 123, 1]);
    expect(examplesIn(yen.rates)).toBe(examplesIn(job.rates));
  });

  /** Pointers of all numbers in a schema whose unit is of the minor unit, # for the rows of a list. */
  const minorIn = (schema: Plain, at = ''): string[] => {
    if (String(schema['unit']).startsWith('minor')) return [at];
    const inner = Object.entries((schema['properties'] ?? {}) as Record<string, Plain>);
    const rows = schema['items'] === undefined ? [] : minorIn(schema['items'] as Plain, `${at}/#`);
    const either = ((schema['anyOf'] ?? []) as Plain[]).flatMap((one) => minorIn(one, at));
    return [...inner.flatMap(([key, one]) => minorIn(one, `${at}/${key}`)), ...rows, ...either];
  };

  it('are every number of a job that counts in minor units', () => {
    expect([...AMOUNTS].sort()).toEqual([...new Set(minorIn(Job as unknown as Plain))].sort());
  });

  it('take the bars along that are kept in the same money, and leave those that are not', () => {
    const bar = { stock: '', name: '', remnant: false, outsideDiameter: 40, wall: 2, grade: '316L', length: 6000 };
    const layout = {
      found: 'proven' as const,
      date: '',
      saw: job.stock.saw,
      currency: job.rates.currency,
      minorDigits: 2,
      bars: [{ ...bar, price: 9050, heat: '', times: 1, pieces: [{ name: 'hoop', length: 2000, job: '' }] }],
      taken: null,
    };
    const kept = { ...job, stock: { ...job.stock, layout } };
    expect(withMinorDigits(kept, 3).stock.layout).toMatchObject({ minorDigits: 3, bars: [{ price: 90_500 }] });
    expect(problemsOf(Job, withMinorDigits(kept, 0))).toEqual([]);
    const other = { ...job, stock: { ...job.stock, layout: { ...layout, currency: 'USD' } } };
    expect(withMinorDigits(other, 3).stock.layout).toEqual(other.stock.layout);
  });

  it('round to the same step', () => {
    const steps = withChoice(job, '/rates/roundTo', 500);
    expect([3, 0].map((digits) => withMinorDigits(steps, digits).rates.roundTo)).toEqual([5000, 5]);
  });

  it('come back to the same amounts by way of more of them, and the job stays one', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), fc.integer({ min: 0, max: 2 }), (minor, digits) => {
        const of = withMinorDigits(withChoice(job, '/rates/travel/hour/value', minor), digits);
        expect(problemsOf(Job, of)).toEqual([]);
        const there = withMinorDigits(of, 3);
        expect(withMinorDigits(there, digits)).toEqual(of);
      }),
      { numRuns: 60 },
    );
  });
});
