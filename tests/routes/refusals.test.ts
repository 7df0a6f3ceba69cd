import type { InjectOptions } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { newJob } from '../../server/job/default-job.ts';
import { JOB_VERSION } from '../../server/job/job.ts';
import { serverUnderTest, type UnderTest } from './server-under-test.ts';

let server: UnderTest;
beforeAll(async () => void (server = await serverUnderTest()));
afterAll(() => server.close());

const JSON_TYPE = { 'content-type': 'application/json' };

async function refusal(request: InjectOptions) {
  const response = await server.app.inject(request);
  const body = response.json<{ error: { code: string; message: string; problems?: { field: string }[] } }>();
  expect(Object.keys(body)).toEqual(['error']);
  expect(body.error.message).toMatch(/^[A-Z].+\.$/s);
  return { status: response.statusCode, code: body.error.code, fields: body.error.problems?.map(({ field }) => field) };
}

const post = (url: string, payload: string, headers: Record<string, string> = JSON_TYPE) =>
  refusal({ method: 'POST', url, payload, headers });

const ROUTES = ['/api/plan', '/api/jobs', '/api/sheets/bend.pdf'];

describe('a request that cannot be read', () => {
  it.each(ROUTES)('%s', async (url) => {
    expect(await post(url, '{"a":')).toMatchObject({ status: 400, code: 'not-json' });
    expect(await post(url, '')).toMatchObject({ status: 400, code: 'not-json' });
    expect(await post(url, '{"__proto__":{}}')).toMatchObject({ status: 400, code: 'not-json' });
    expect(await post(url, 'x=1', { 'content-type': 'text/plain' })).toMatchObject({ status: 415 });
    expect(await post(url, '<a/>', { 'content-type': 'application/xml' })).toMatchObject({ status: 415 });
  });

  it.each(ROUTES)('%s with 50 MB', async (url) => {
    const huge = JSON.stringify({ note: 'x'.repeat(50_000_000) });
    expect(await post(url, huge)).toEqual({ status: 413, code: 'body-too-large', fields: undefined });
  });

  it('with 100 000 lists in each other', async () => {
    const deep = '['.repeat(100_000) + ']'.repeat(100_000);
    expect(await post('/api/plan', deep)).toMatchObject({ status: 422, code: 'job-not-valid' });
    expect(
      await post('/api/plan', JSON.stringify({ ...newJob('run'), frame: 'here' }).replace('"here"', deep)),
    ).toMatchObject({ status: 422, fields: ['/frame'] });
  });
});

describe('a job that cannot be taken', () => {
  it.each(['null', '5', '"job"', '[]', '{}', 'true'])('%s is no job', async (payload) => {
    expect(await post('/api/plan', payload)).toEqual({ status: 422, code: 'job-not-valid', fields: [''] });
  });

  it('names each field', async () => {
    const job = { ...landingStage(), tube: { ...landingStage().tube, wall: 'thick' }, title: 7 };
    const refused = { status: 422, code: 'job-not-valid', fields: ['/title', '/tube/wall'] };
    expect(await post('/api/plan', JSON.stringify(job))).toEqual(refused);
    expect(await post('/api/jobs', JSON.stringify({ job }))).toEqual(refused);
    expect(await post('/api/sheets/bend.pdf', JSON.stringify(job))).toEqual(refused);
    const put = { method: 'PUT' as const, url: '/api/jobs/any', payload: { job, basedOn: 1 } };
    expect(await refusal(put)).toEqual(refused);
  });

  it('a number beyond every number is out of range', async () => {
    const job = JSON.stringify(landingStage()).replace('"wall":1.65', '"wall":1e999');
    expect(await post('/api/plan', job)).toEqual({ status: 422, code: 'job-not-valid', fields: ['/tube/wall'] });
  });

  it('a newer version', async () => {
    expect(await post('/api/plan', JSON.stringify({ ...landingStage(), version: JOB_VERSION + 1 }))).toMatchObject({
      status: 422,
      fields: ['/version'],
    });
  });
});

describe('an address that nothing stands at', () => {
  it.each(['/api', '/api/', '/api/nothing', '/nothing', '/favicon.ico', '/api/jobs/a/b/c', '/api/sheets/bend.png'])(
    '%s',
    async (url) => {
      expect(await refusal({ method: 'GET', url })).toMatchObject({ status: 404, code: 'address-unknown' });
    },
  );

  it.each(['/api/jobs/%E0%A4%A', '/%'])('%s cannot be read', async (url) => {
    expect(await refusal({ method: 'GET', url })).toMatchObject({ status: 400, code: 'address-not-valid' });
  });

  it.each([
    ['/api/jobs/a/sheets/poster.pdf', '/name'],
    ['/api/jobs/a/revisions/last', '/revision'],
    ['/api/jobs?q=a&q=b', '/q'],
    [`/api/jobs?q=${'x'.repeat(201)}`, '/q'],
    [`/api/jobs/${'x'.repeat(65)}`, '/id'],
  ])('%s has a wrong part', async (url, field) => {
    expect(await refusal({ method: 'GET', url })).toEqual({ status: 400, code: 'request-not-valid', fields: [field] });
  });
});

describe('what is not the request', () => {
  it('another site cannot change anything', async () => {
    const headers = { 'sec-fetch-site': 'cross-site' };
    expect(await refusal({ method: 'POST', url: '/api/jobs/a/restore', headers })).toMatchObject({ status: 403 });
  });

  it('a fault of the program is told without detail', async () => {
    await server.jobs.create('broken', newJob('ring'), '2026-01-01T00:00:00.000Z');
    await server.database.updateTable('revisions').set({ document: '{}' }).where('job_id', '=', 'broken').execute();
    const response = await server.app.inject('/api/jobs/broken');
    expect(response.statusCode).toBe(500);
    expect(response.json()).toEqual({ error: { code: 'fault', message: expect.stringContaining('fault') as string } });
    expect(response.body).not.toContain('broken');
  });
});
