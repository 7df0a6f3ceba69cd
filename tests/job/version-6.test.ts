import { describe, expect, it } from 'vitest';
import type { Document } from '../../server/job/check-value.ts';
import { newJob } from '../../server/job/default-job.ts';
import { JOB_VERSION, type Job } from '../../server/job/job.ts';
import { parseKept } from '../../server/job/kept.ts';
import type { OwnValue } from '../../server/job/rates.ts';
import { upgradeJob, type UpgradeStep } from '../../server/job/upgrade.ts';
import { withDies } from '../../server/job/version-2.ts';
import { withReadings } from '../../server/job/version-3.ts';
import { withWelds } from '../../server/job/version-4.ts';
import { withSite } from '../../server/job/version-5.ts';
import { withQuote } from '../../server/job/version-6.ts';
import { jobBeforeQuotes } from './job-before-quotes.ts';
import { problemsIn, upgraded } from './upgraded.ts';
import { versionOneJob } from './version-1-job.ts';

const OLD = versionOneJob.rates;
const SINCE = '2026-11-02';
const OLD_OPERATIONS = ['bend', 'cut', 'fit', 'purge', 'weld', 'finish'] as const;

const fifth = (more: Document = {}): Document => ({ ...jobBeforeQuotes('hoop'), version: 5, ...more });
const withRates = (rates: Document): Document => fifth({ rates: { ...OLD, ...rates } });
const typed = (value: number | null): OwnValue => ({ value, since: SINCE, example: false });

/** Every value of the shop's own in some part of the rates. */
const ownValues = (part: unknown): OwnValue[] => {
  if (typeof part !== 'object' || part === null) return [];
  return 'example' in part ? [part as OwnValue] : Object.values(part).flatMap(ownValues);
};

describe('a job of version 5', () => {
  const job = upgraded(fifth());
  const { rates } = job;

  it('keeps every rate with the date of the whole, and what stood open stays open', () => {
    expect(rates.from).toBe(SINCE);
    expect([rates.currency, rates.minorDigits]).toEqual(['EUR', 2]);
    expect(rates.tubes).toHaveLength(1);
    expect(rates.tubes[0]).toMatchObject({ size: null, by: 'metre', perMetre: typed(1450) });
    expect(rates.gas).toMatchObject({
      by: 'used',
      perCubicMetre: typed(1100),
      restOfBottle: typed(0),
      rentPerDay: null,
    });
    expect(OLD.fillerPerKilogram).toBeNull();
    expect(rates.fillerPerKilogram).toEqual(typed(null));
  });

  it.each(OLD_OPERATIONS)('keeps the hour and the times of %s', (operation) => {
    expect(rates.labour[operation]).toEqual({
      hour: typed(OLD.labourPerHour[operation]),
      machine: null,
      setUp: typed(OLD.times[operation].setUp),
      each: typed(OLD.times[operation].each),
      perMetre: typed(0),
    });
  });

  it('is charged nothing on top that nobody typed', () => {
    const { waste, remnantCredit, overhead, margin, tax, abrasivesPerWeld } = rates;
    for (const added of [waste, remnantCredit, overhead, margin, tax, abrasivesPerWeld])
      expect(added).toEqual(typed(0));
    expect(rates.roundTo).toBe(1);
    expect(job.quote).toMatchObject({ bending: 'own', bendersOffer: null, quantities: [1], travel: { trips: 0 } });
  });

  it('has no example in it, whatever a new job starts with', () => {
    expect(ownValues(newJob('hoop').rates).filter(({ example }) => example).length).toBeGreaterThan(30);
    expect(ownValues(rates).length).toBeGreaterThan(30);
    expect(ownValues(rates).filter(({ example }) => example)).toEqual([]);
    const open = { value: null, since: '', example: false };
    for (const one of [rates.tubes[0]!.perBar, rates.gas.perBottle, ...ownValues(rates.outside)])
      expect(one).toEqual(open);
    expect(rates.labour.bottle).toMatchObject({ hour: typed(null), setUp: typed(null), each: typed(null) });
  });

  it('starts stock, quote and times taken as a new job does, and changes nothing else', () => {
    const { stock, quote, log } = newJob('straight');
    expect({ stock: job.stock, quote: job.quote, log: job.log }).toEqual({ stock, quote, log });
    for (const [name, value] of Object.entries(fifth()))
      if (!['version', 'rates'].includes(name)) expect(job[name as keyof Job], name).toEqual(value);
  });

  it('moves every text to where its field is now', () => {
    const asTyped = {
      '/rates/tubePerMetre': '14,50',
      '/rates/gasPerCubicMetre': '11.00',
      '/rates/fillerPerKilogram': 'dear',
      '/rates/labourPerHour/weld': '56',
      '/rates/times/finish/each': 'twelve',
      '/rates/date': '2 Nov',
      '/tube/wall': '1.65 mm',
      '/rates/currency': 'EUR',
    };
    expect(upgraded(fifth({ asTyped })).asTyped).toEqual({
      '/rates/tubes/0/perMetre/value': '14,50',
      '/rates/gas/perCubicMetre/value': '11.00',
      '/rates/fillerPerKilogram/value': 'dear',
      '/rates/labour/weld/hour/value': '56',
      '/rates/labour/finish/each/value': 'twelve',
      '/rates/from': '2 Nov',
      '/tube/wall': '1.65 mm',
      '/rates/currency': 'EUR',
    });
  });

  it.each(['Nov 2026', '2026-02-31', '2026-13-01'])('whose date is %j keeps that text, and no day', (date) => {
    const { rates: undated, asTyped } = upgraded(withRates({ date }));
    expect(undated.from).toBe('');
    expect(undated.tubes[0]!.perMetre).toEqual({ value: 1450, since: '', example: false });
    expect(asTyped).toEqual({ '/rates/from': date });
  });

  it('without a date has none', () => {
    const undated = upgraded(withRates({ date: '' }));
    expect([undated.rates.from, undated.asTyped]).toEqual(['', {}]);
  });

  it('is the same again when it is read as it is written now', () => {
    expect(job.version).toBe(JOB_VERSION);
    const written: unknown = JSON.parse(JSON.stringify(job));
    expect(upgradeJob(written)).toEqual({ ok: true, document: written });
    expect(upgraded(written)).toEqual(job);
  });
});

it.each([1, 2, 3, 4, 5])('rates of a document of version %d come to the same', (version) => {
  const fields = version === 1 ? versionOneJob : upgradedTo(version);
  expect(fields).toMatchObject({ version, rates: OLD });
  expect(upgraded(fields).rates).toEqual(upgraded(fifth()).rates);
});

const STEPS_BEFORE: readonly UpgradeStep[] = [
  { from: 1, upgrade: withDies },
  { from: 2, upgrade: withReadings },
  { from: 3, upgrade: withWelds },
  { from: 4, upgrade: withSite },
];

/** The job of version 1 brought up to an older version than this. */
function upgradedTo(version: number): Document {
  const steps = STEPS_BEFORE.filter(({ from }) => from < version);
  const result = upgradeJob(versionOneJob, steps, version);
  if (!result.ok) throw new Error(result.problem.message);
  return result.document;
}

describe('a damaged document of version 5', () => {
  it.each<[Document, string[]]>([
    [{ tubePerMetre: -1 }, ['below-range /rates/tubes/0/perMetre/value']],
    [{ tubePerMetre: 12.5 }, ['not-whole /rates/tubes/0/perMetre/value']],
    [{ tubePerMetre: 'much' }, ['wrong-type /rates/tubes/0/perMetre/value']],
    [{ gasPerCubicMetre: {} }, ['wrong-type /rates/gas/perCubicMetre/value']],
    [{ fillerPerKilogram: 2e9 }, ['above-range /rates/fillerPerKilogram/value']],
    [{ labourPerHour: 'x' }, ['wrong-type /rates/labour']],
    [{ times: null }, ['wrong-type /rates/labour']],
    [{ times: { ...OLD.times, bend: 5 } }, ['wrong-type /rates/labour/bend']],
    [{ times: { ...OLD.times, bend: { setUp: 20 } } }, ['missing-field /rates/labour/bend/each/value']],
    [{ times: { ...OLD.times, bend: { ...OLD.times.bend, pause: 3 } } }, ['unknown-field /rates/labour/bend/pause']],
    [{ labourPerHour: { ...OLD.labourPerHour, weld: '5' } }, ['wrong-type /rates/labour/weld/hour/value']],
    [{ times: { ...OLD.times, paint: { setUp: 1, each: 1 } } }, ['unknown-field /rates/labour/paint']],
    [{ date: 5 }, ['wrong-type /rates/from']],
    [{ date: 'the second of November' }, ['too-long /rates/from']],
    [{ currency: 'euro' }, ['wrong-form /rates/currency']],
    [{ colour: 'red' }, ['unknown-field /rates/colour']],
  ])('with %j is refused where that stands now', (damage, problems) => {
    expect(problemsIn(withRates(damage))).toEqual(problems);
  });

  it.each(['tubePerMetre', 'fillerPerKilogram', 'labourPerHour', 'times', 'date', 'currency'] as const)(
    'without its %s is refused, never taken for one where it stands open',
    (name) => {
      const { [name]: _gone, ...rest } = OLD;
      const problems = problemsIn(fifth({ rates: rest }));
      expect(problems.length).toBeGreaterThan(0);
      for (const problem of problems) expect(problem).toMatch(/^missing-field \/rates\//);
    },
  );

  it.each([{ rates: 'x' }, { rates: null }, { asTyped: 3 }, { rates: {} }])(
    'is never taken, and never throws: %j',
    (damage) => {
      expect(problemsIn(fifth(damage)).length).toBeGreaterThan(0);
      expect(() => withQuote({ version: 5, ...damage })).not.toThrow();
    },
  );
});

describe('rates that the shop keeps', () => {
  const list = { ...newJob('hoop').rates, name: 'This year', from: '2026-01-01', until: '2026-12-31' };

  it('have been since version 6', () => {
    expect(parseKept('rates', list)).toEqual({ ok: true, document: list });
    expect(parseKept('rates', list, 6)).toEqual({ ok: true, document: list });
    const older = parseKept('rates', OLD, 5);
    expect(older).toMatchObject({ ok: false, problems: [{ code: 'below-range', field: '/version', value: 5 }] });
  });

  it('are refused field by field', () => {
    const wrong = { ...list, until: '2026-02-31', tubes: [{ ...list.tubes[0]!, barLength: 0 }] };
    const parsed = parseKept('rates', wrong);
    expect(parsed.ok ? [] : parsed.problems.map(({ code, field }) => `${code} ${field}`)).toEqual([
      'wrong-form /until',
      'below-range /tubes/0/barLength',
    ]);
  });
});
