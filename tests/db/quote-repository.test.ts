import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openDatabase, type Database } from '../../db/database.ts';
import { jobRepository, type JobRepository } from '../../db/job-repository.ts';
import { quoteRepository, type QuoteRepository } from '../../db/quote-repository.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import type { QuotePlan } from '../../server/plan/quote.ts';
import { at } from './kept-things.ts';

let database: Database;
let jobs: JobRepository;
let quotes: QuoteRepository;

const JOB: Job = { ...newJob('hoop'), title: 'Rail' };
const jobWith = (reference: string): Job => ({ ...JOB, quote: { ...JOB.quote, reference } });

/** A quote as the first form writes it. A form that quotes went out in is never edited: they are read for years. */
const FORM_1 = JSON.parse(readFileSync(new URL('quote-form-1.json', import.meta.url), 'utf8')) as QuotePlan;

/** A quote of two ways, of which the second is shown; one of its lines stands open. */
function quoteOf(total: number): QuotePlan {
  const [first] = FORM_1.options;
  if (first === undefined) throw new Error('The first form has no option.');
  return {
    ...FORM_1,
    scope: 'rebend',
    currency: 'BHD',
    minorDigits: 3,
    date: '2026-11-26',
    validUntil: '2026-12-26',
    options: [
      { ...first, scope: 'leave', total: 1, open: [], examples: 0 },
      { ...first, scope: 'rebend', total, open: [4], examples: 2 },
    ],
  };
}

const issue = (jobRevision: number, total: number, minute: number, job = JOB) =>
  quotes.issue({ jobId: 'a', jobRevision, job, quote: quoteOf(total) }, at(minute));

beforeEach(async () => {
  database = await openDatabase(':memory:');
  jobs = jobRepository(database);
  quotes = quoteRepository(database);
  await jobs.create('a', JOB, at(1));
});
afterEach(() => database.destroy());

describe('a quote that goes out', () => {
  it('is numbered from 1 for each job, and says what its shown option comes to', async () => {
    expect(await quotes.list('a')).toEqual([]);
    const job = jobWith('Q-7');
    expect(await issue(1, 12_345, 2, job)).toEqual({
      kind: 'issued',
      issued: {
        number: 1,
        jobRevision: 1,
        issuedAt: at(2),
        reference: 'Q-7',
        date: '2026-11-26',
        validUntil: '2026-12-26',
        scope: 'rebend',
        total: 12_345,
        currency: 'BHD',
        minorDigits: 3,
        open: 1,
        examples: 2,
      },
    });
    await jobs.save('a', jobWith('Q-8'), 1, at(3));
    expect(await issue(2, 500, 4)).toMatchObject({ issued: { number: 2, jobRevision: 2 } });
    await jobs.create('b', JOB, at(5));
    const other = { jobId: 'b', jobRevision: 1, job: JOB, quote: quoteOf(7) };
    expect(await quotes.issue(other, at(6))).toMatchObject({ issued: { number: 1 } });
    expect((await quotes.list('a')).map(({ number, total }) => [number, total])).toEqual([
      [2, 500],
      [1, 12_345],
    ]);
  });

  it('of the same save with the same amounts is the quote that it already is', async () => {
    const first = await issue(1, 100, 2);
    expect(await issue(1, 100, 3)).toEqual(first);
    const both = await Promise.all([issue(1, 200, 4), issue(1, 200, 5)]);
    expect(both.map((outcome) => (outcome.kind === 'issued' ? outcome.issued.number : 0))).toEqual([2, 2]);
    expect(await quotes.list('a')).toHaveLength(2);
  });

  it('is not written from an older save, nor for a job that is not there', async () => {
    await jobs.save('a', jobWith('Q-8'), 1, at(2));
    expect(await issue(1, 100, 3)).toEqual({ kind: 'stale', revision: 2 });
    await jobs.remove('a', at(4));
    expect(await issue(2, 100, 5)).toEqual({ kind: 'deleted' });
    expect(await quotes.issue({ jobId: 'x', jobRevision: 1, job: JOB, quote: quoteOf(1) }, at(6))).toEqual({
      kind: 'unknown',
    });
    expect(await quotes.list('a')).toEqual([]);
  });
});

describe('a quote that went out', () => {
  it('stays word for word what it was, whatever becomes of the job', async () => {
    await issue(1, 100, 2);
    const before = await quotes.find('a', 1);
    expect(before).toMatchObject({ issued: { number: 1 }, job: JOB, quote: quoteOf(100) });
    await jobs.save('a', { ...JOB, rates: { ...JOB.rates, currency: 'USD' } }, 1, at(3));
    await jobs.remove('a', at(4));
    expect(await quotes.find('a', 1)).toEqual(before);
    expect(await quotes.list('a')).toHaveLength(1);
    expect(await quotes.find('a', 2)).toBeNull();
    expect(await quotes.find('b', 1)).toBeNull();
  });

  it('is read as its form wrote it', async () => {
    await issue(1, 100, 2);
    await database
      .updateTable('quotes')
      .set({ quote: JSON.stringify(FORM_1) })
      .execute();
    expect((await quotes.find('a', 1))!.quote).toEqual(FORM_1);
  });

  it.each<[string, object, RegExp]>([
    ['a form that nobody knows', { quote_version: 9 }, /it was written in form 9, and this program reads form 1/],
    ['something missing', { quote: JSON.stringify({ ...FORM_1, options: undefined }) }, /options/],
    ['something else', { quote: JSON.stringify({ ...FORM_1, currency: 5 }) }, /\/currency must be string/],
  ])('with %s is a fault that says so', async (_what, wrong, message) => {
    await issue(1, 100, 2);
    await database.updateTable('quotes').set(wrong).execute();
    await expect(quotes.find('a', 1)).rejects.toThrow(/^Quote 1 of job a cannot be read: /);
    await expect(quotes.find('a', 1)).rejects.toThrow(message);
  });

  it('is named where it cannot be read', async () => {
    await issue(1, 100, 2);
    await database.updateTable('quotes').set({ job: '{}' }).execute();
    await expect(quotes.find('a', 1)).rejects.toThrow(/Quote 1 of job a cannot be read/);
  });
});
