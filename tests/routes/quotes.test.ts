import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import { describeFinding } from '../../server/language/finding-words.ts';
import { plan } from '../../server/solver/plan.ts';
import { serverOfEachTest } from './server-under-test.ts';

const server = serverOfEachTest();
const { ask } = server;

const fresh = newJob('straight');
const JOB: Job = {
  ...fresh,
  title: 'Rail',
  customer: 'a harbour',
  quote: { ...fresh.quote, reference: 'Q-7', date: '2026-11-26', quantities: [2, 10] },
};
/** The same at other rates. */
const DEARER: Job = {
  ...JOB,
  rates: {
    ...JOB.rates,
    tubes: JOB.rates.tubes.map((tube) => ({ ...tube, perMetre: { value: 9999, since: '', example: false } })),
  },
};
const store = (job: Job = JOB) => ask('POST', '/api/jobs', { job });
const issue = (basedOn = 1) => ask('POST', '/api/jobs/job-1/quotes', { basedOn });
const file = (name: string) => server.app.inject(`/api/jobs/job-1/quotes/${name}`);

describe('issuing a quote', () => {
  it('is numbered, says what it comes to, and stands in the list', async () => {
    await store();
    const { quote } = plan(JOB);
    const [option] = quote!.options;
    const issued = {
      number: 1,
      jobRevision: 1,
      issuedAt: '2026-01-01T00:00:02.000Z',
      reference: 'Q-7',
      date: '2026-11-26',
      validUntil: '2026-12-26',
      scope: 'frame',
      total: option!.total,
      currency: 'EUR',
      minorDigits: 2,
      open: option!.open.length,
      examples: option!.examples,
    };
    expect(option!.total).toBeGreaterThan(0);
    expect(await issue()).toEqual({ status: 201, body: issued });
    await ask('PUT', '/api/jobs/job-1', { job: DEARER, basedOn: 1 });
    expect(await issue(2)).toMatchObject({ status: 201, body: { number: 2, jobRevision: 2 } });
    expect(await ask('GET', '/api/jobs/job-1/quotes')).toMatchObject({ status: 200, body: [{ number: 2 }, issued] });
  });

  it('is refused from an older save than the latest', async () => {
    await store();
    await ask('PUT', '/api/jobs/job-1', { job: DEARER, basedOn: 1 });
    expect(await issue(1)).toMatchObject({
      status: 409,
      body: { error: { code: 'stale-quote', message: expect.stringContaining('Revision 2') as string } },
    });
    expect((await ask('GET', '/api/jobs/job-1/quotes')).body).toEqual([]);
  });

  it('is refused where something stops the plan, and says what', async () => {
    await store({ ...fresh, tube: { ...fresh.tube, wall: 30 } });
    const answer = await issue();
    expect(answer).toMatchObject({ status: 422, body: { error: { code: 'quote-not-possible' } } });
    const stop = plan({ ...fresh, tube: { ...fresh.tube, wall: 30 } }).findings.find(({ grade }) => grade === 'stop')!;
    expect((answer.body as { error: { message: string } }).error.message).toContain(describeFinding(stop, fresh.units));
  });

  it('is refused for a job that is deleted or never was; what went out stays', async () => {
    await store();
    await issue();
    await ask('DELETE', '/api/jobs/job-1');
    expect(await issue()).toMatchObject({ status: 410, body: { error: { code: 'job-deleted' } } });
    expect(await ask('GET', '/api/jobs/job-1/quotes')).toMatchObject({ status: 200, body: [{ number: 1 }] });
    expect((await file('1/quote.csv')).statusCode).toBe(200);
    expect(await ask('POST', '/api/jobs/none/quotes', { basedOn: 1 })).toMatchObject({ status: 404 });
    expect(await ask('GET', '/api/jobs/none/quotes')).toMatchObject({ status: 404 });
    expect(await ask('POST', '/api/jobs/job-1/quotes', {})).toMatchObject({ status: 400 });
  });
});

describe('the files of a quote', () => {
  it('stay as they were issued, whatever becomes of the rates', async () => {
    await store();
    await issue();
    const before = await file('1/quote.csv');
    expect(before.statusCode).toBe(200);
    expect(before.headers['content-type']).toContain('text/csv');
    expect(before.headers['content-disposition']).toContain('attachment; filename="rail-quote-1.csv"');
    await ask('PUT', '/api/jobs/job-1', { job: DEARER, basedOn: 1 });
    expect((await file('1/quote.csv')).body).toBe(before.body);
    await issue(2);
    expect((await file('2/quote.csv')).body).not.toBe(before.body);
  });

  it('carry the amounts that were stored, even if the plan came to others now', async () => {
    await store();
    await issue();
    const before = (await file('1/quote.csv')).body;
    const { quote } = await server.database.selectFrom('quotes').select('quote').executeTakeFirstOrThrow();
    const amount = plan(JOB).quote!.options[0]!.lines.find(({ key }) => key === 'tube')!.amount!;
    const other = quote.replaceAll(`"amount":${String(amount)}`, '"amount":7654321');
    expect(other).not.toBe(quote);
    await server.database.updateTable('quotes').set({ quote: other }).execute();
    expect(before).not.toContain('76543.21');
    expect((await file('1/quote.csv')).body).toContain('76543.21');
  });

  it.each([
    ['quote.pdf', 'rail-quote-1.pdf'],
    ['quote-working.pdf', 'rail-quote-1-working.pdf'],
  ])('%s is a sheet, to be looked at, named by its job and its number', async (name, named) => {
    await store();
    await issue();
    const sheet = await file(`1/${name}`);
    expect(sheet.headers['content-disposition']).toBe(`inline; filename="${named}"`);
    expect(sheet.statusCode).toBe(200);
    expect(sheet.headers['content-type']).toBe('application/pdf');
    expect(sheet.rawPayload.subarray(0, 5).toString()).toBe('%PDF-');
  });

  it.each([
    ['2/quote.pdf', 404, 'quote-unknown'],
    ['1/quote.txt', 400, 'request-not-valid'],
    ['last/quote.pdf', 400, 'request-not-valid'],
  ])('%s is refused', async (name, status, code) => {
    await store();
    await issue();
    const refused = await file(name);
    expect([refused.statusCode, refused.json<{ error: { code: string } }>().error.code]).toEqual([status, code]);
  });
});

describe('times taken', () => {
  it('of all jobs come to a mean with its spread, operation by operation', async () => {
    const entry = { operation: 'weld', date: '2026-11-26', count: 2, setUp: 10, minutes: 30, planned: 40, process: 10 };
    const logged = (minutes: number): Job => ({ ...JOB, log: [{ ...entry, operation: 'weld', minutes }] });
    expect(await ask('GET', '/api/shop/times')).toEqual({ status: 200, body: [] });
    await store(logged(30));
    await store(logged(50));
    await store({ ...logged(5000), invented: true });
    await store(logged(9000));
    await ask('DELETE', '/api/jobs/job-4');
    expect(await ask('GET', '/api/shop/times')).toMatchObject({
      status: 200,
      // (30 − 10)/2 and (50 − 10)/2 each, 10 to get ready
      body: [{ operation: 'weld', entries: 2, setUp: { value: 10 }, each: { value: 15 } }],
    });
  });
});
