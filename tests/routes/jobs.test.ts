import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import { serverUnderTest, type UnderTest } from './server-under-test.ts';

let server: UnderTest;
beforeEach(async () => void (server = await serverUnderTest()));
afterEach(() => server.close());

type Method = 'GET' | 'POST' | 'PUT' | 'DELETE';

async function ask(method: Method, url: string, payload?: object, headers: Record<string, string> = {}) {
  const response = await server.app.inject({ method, url, headers, ...(payload === undefined ? {} : { payload }) });
  const body: unknown = response.body === '' ? null : response.json();
  return { status: response.statusCode, body, headers: response.headers };
}

const titled = (title: string): Job => ({ ...newJob('hoop'), title });
const create = (title: string) => ask('POST', '/api/jobs', { job: titled(title) });

describe('a job', () => {
  it('is stored, opened and listed', async () => {
    const made = await create('Rail');
    expect(made.status).toBe(201);
    expect(made.body).toEqual({ id: 'job-1', revision: 1, savedAt: '2026-01-01T00:00:01.000Z', job: titled('Rail') });
    const opened = await ask('GET', '/api/jobs/job-1');
    expect(opened).toMatchObject({ status: 200, body: made.body });
    expect(opened.headers.etag).toBe('"1"');
    expect((await ask('GET', '/api/jobs')).body).toEqual([
      {
        id: 'job-1',
        title: 'Rail',
        customer: '',
        drawingNumber: '',
        invented: false,
        revision: 1,
        createdAt: '2026-01-01T00:00:01.000Z',
        savedAt: '2026-01-01T00:00:01.000Z',
      },
    ]);
  });

  it('is found by a search', async () => {
    await create('Rail');
    await create('Step');
    expect((await ask('GET', '/api/jobs?q=STEP')).body).toMatchObject([{ title: 'Step' }]);
    expect((await ask('GET', '/api/jobs?q=%25')).body).toEqual([]);
  });

  it('becomes its next revision when it is saved, told by the body or by If-Match', async () => {
    await create('One');
    expect(await ask('PUT', '/api/jobs/job-1', { job: titled('Two'), basedOn: 1 })).toMatchObject({
      status: 200,
      body: { revision: 2, job: { title: 'Two' } },
    });
    const third = await ask('PUT', '/api/jobs/job-1', { job: titled('Three') }, { 'if-match': '"2"' });
    expect(third).toMatchObject({ status: 200, body: { revision: 3 } });
    expect(third.headers.etag).toBe('"3"');
    expect((await ask('GET', '/api/jobs/job-1/revisions')).body).toMatchObject([
      { revision: 3, title: 'Three' },
      { revision: 2, title: 'Two' },
      { revision: 1, title: 'One' },
    ]);
    expect((await ask('GET', '/api/jobs/job-1/revisions/2')).body).toMatchObject({ revision: 2, job: titled('Two') });
  });

  it('is not overwritten by a stale save, which gets both and what they began from', async () => {
    await create('One');
    await ask('PUT', '/api/jobs/job-1', { job: titled('Theirs'), basedOn: 1 });
    const stale = await ask('PUT', '/api/jobs/job-1', { job: titled('Yours'), basedOn: 1 });
    expect(stale.status).toBe(409);
    expect(stale.body).toMatchObject({
      error: { code: 'stale-save' },
      yours: { title: 'Yours' },
      theirs: { id: 'job-1', revision: 2, job: { title: 'Theirs' } },
      base: { revision: 1, job: { title: 'One' } },
    });
    expect((await ask('GET', '/api/jobs/job-1')).body).toMatchObject({ revision: 2, job: { title: 'Theirs' } });
  });

  it.each([[{}], [{ 'if-match': 'latest' }]])('is not saved without the revision before it: %j', async (headers) => {
    await create('One');
    expect(await ask('PUT', '/api/jobs/job-1', { job: titled('Two') }, headers)).toMatchObject({
      status: 428,
      body: { error: { code: 'based-on-missing' } },
    });
  });

  it('is deleted, refused, and restored with everything', async () => {
    await create('Rail');
    expect(await ask('DELETE', '/api/jobs/job-1')).toMatchObject({ status: 204, body: null });
    expect((await ask('GET', '/api/jobs')).body).toEqual([]);
    const gone = { status: 410, body: { error: { code: 'job-deleted' } } };
    expect(await ask('GET', '/api/jobs/job-1')).toMatchObject(gone);
    expect(await ask('PUT', '/api/jobs/job-1', { job: titled('x'), basedOn: 1 })).toMatchObject(gone);
    expect(await ask('POST', '/api/jobs/job-1/duplicate')).toMatchObject(gone);
    expect(await ask('POST', '/api/jobs/job-1/restore')).toMatchObject({
      status: 200,
      body: { job: { title: 'Rail' } },
    });
    expect((await ask('GET', '/api/jobs')).body).toMatchObject([{ id: 'job-1' }]);
  });

  it('is duplicated under a title that still fits', async () => {
    await create('x'.repeat(120));
    const copy = await ask('POST', '/api/jobs/job-1/duplicate', {});
    expect(copy).toMatchObject({ status: 201, body: { id: 'job-2', revision: 1 } });
    const { job } = copy.body as { job: Job };
    expect(job).toEqual(titled(`${'x'.repeat(113)} (copy)`));
  });

  it.each<[Method, string, object | undefined, string]>([
    ['GET', '/api/jobs/none', undefined, 'job-unknown'],
    ['PUT', '/api/jobs/none', { job: newJob('ring'), basedOn: 1 }, 'job-unknown'],
    ['DELETE', '/api/jobs/none', undefined, 'job-unknown'],
    ['POST', '/api/jobs/none/restore', undefined, 'job-unknown'],
    ['POST', '/api/jobs/none/duplicate', undefined, 'job-unknown'],
    ['GET', '/api/jobs/none/revisions', undefined, 'job-unknown'],
    ['GET', '/api/jobs/none/revisions/1', undefined, 'revision-unknown'],
    ['GET', '/api/jobs/none/sheets/bend.pdf', undefined, 'job-unknown'],
  ])('that never was: %s %s', async (method, url, payload, code) => {
    expect(await ask(method, url, payload)).toMatchObject({ status: 404, body: { error: { code } } });
  });
});
