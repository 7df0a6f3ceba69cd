import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Machine } from '../../server/job/machine.ts';
import { serverUnderTest, type UnderTest } from './server-under-test.ts';

let server: UnderTest;
beforeEach(async () => void (server = await serverUnderTest()));
afterEach(() => server.close());

type Method = 'GET' | 'POST' | 'PUT' | 'DELETE';

async function ask(method: Method, url: string, payload?: object) {
  const response = await server.app.inject({ method, url, ...(payload === undefined ? {} : { payload }) });
  const body: unknown = response.body === '' ? null : response.json();
  return { status: response.statusCode, body, etag: response.headers.etag };
}

const machine = (name: string, leastStraight = 76.2): Machine => ({ ...newJob('hoop').machine, name, leastStraight });
const size = {
  name: 'rail',
  outsideDiameter: 42.4,
  wall: 2,
  tolerance: { by: 'standard', standard: 'iso-1127-d3-t3' },
};
const grade = {
  from: 'own',
  name: 'Coil 7',
  density: 7900,
  elasticModulus: 193_000,
  strengthCoefficient: 1300,
  hardeningExponent: 0.4,
  proofStress: 220,
  elongation: 42,
};
const settings = {
  name: 'rail butt',
  form: 'butt',
  outsideDiameter: 38.1,
  wall: 1.65,
  grade: '316L',
  settings: { ...newJob('hoop').welding.butt, provedOn: 'test piece 4', current: 55 },
};
const rates = { ...newJob('hoop').rates, name: 'This year', from: '2026-01-01', until: '2026-12-31' };
const keep = (name: string) => ask('POST', '/api/shop/machines', { document: machine(name) });

describe('the shop', () => {
  it('is empty at first, and holds each kind in its list', async () => {
    expect(await ask('GET', '/api/shop')).toMatchObject({
      body: { machines: [], sizes: [], grades: [], settings: [], rates: [] },
    });
    const made = await keep('Bender');
    expect(made).toEqual({
      status: 201,
      etag: '"1"',
      body: { id: 'job-1', revision: 1, savedAt: '2026-01-01T00:00:01.000Z', document: machine('Bender') },
    });
    expect((await ask('POST', '/api/shop/sizes', { document: size })).status).toBe(201);
    expect((await ask('POST', '/api/shop/grades', { document: grade })).status).toBe(201);
    expect((await ask('POST', '/api/shop/settings', { document: settings })).status).toBe(201);
    expect((await ask('POST', '/api/shop/rates', { document: rates })).status).toBe(201);
    expect((await ask('GET', '/api/shop')).body).toEqual({
      machines: [made.body],
      sizes: [{ id: 'job-2', revision: 1, savedAt: '2026-01-01T00:00:02.000Z', document: size }],
      grades: [{ id: 'job-3', revision: 1, savedAt: '2026-01-01T00:00:03.000Z', document: grade }],
      settings: [{ id: 'job-4', revision: 1, savedAt: '2026-01-01T00:00:04.000Z', document: settings }],
      rates: [{ id: 'job-5', revision: 1, savedAt: '2026-01-01T00:00:05.000Z', document: rates }],
    });
  });

  it('saves on top of what stands', async () => {
    await keep('Bender');
    const saved = await ask('PUT', '/api/shop/machines/job-1', { document: machine('Bender', 80), basedOn: 1 });
    expect(saved).toMatchObject({ status: 200, etag: '"2"', body: { revision: 2, document: { leastStraight: 80 } } });
  });

  it('gives a stale save both sides and changes nothing', async () => {
    await keep('Bender');
    await ask('PUT', '/api/shop/machines/job-1', { document: machine('Bender', 80), basedOn: 1 });
    expect(await ask('PUT', '/api/shop/machines/job-1', { document: machine('Bender', 90), basedOn: 1 })).toMatchObject(
      {
        status: 409,
        body: {
          error: { code: 'stale-save', message: expect.stringContaining('Revision 2 of this machine') as string },
          yours: { leastStraight: 90 },
          theirs: { id: 'job-1', revision: 2, document: { leastStraight: 80 } },
        },
      },
    );
    expect((await ask('GET', '/api/shop')).body).toMatchObject({ machines: [{ document: { leastStraight: 80 } }] });
  });

  it('refuses a name that another bears, and says which', async () => {
    await keep('Bender');
    expect(await keep('bender ')).toMatchObject({
      status: 409,
      body: {
        error: {
          code: 'name-taken',
          message: 'The shop already keeps a machine named "Bender". Choose another name, or save over that one.',
        },
        other: { id: 'job-1', document: { name: 'Bender' } },
      },
    });
  });

  it('takes out and puts back', async () => {
    await keep('Bender');
    expect(await ask('DELETE', '/api/shop/machines/job-1')).toMatchObject({ status: 204, body: null });
    expect((await ask('GET', '/api/shop')).body).toMatchObject({ machines: [] });
    expect(await ask('PUT', '/api/shop/machines/job-1', { document: machine('x'), basedOn: 1 })).toMatchObject({
      status: 410,
      body: { error: { code: 'kept-deleted' } },
    });
    expect(await ask('POST', '/api/shop/machines/job-1/restore')).toMatchObject({
      status: 200,
      body: { document: { name: 'Bender' } },
    });
    await ask('DELETE', '/api/shop/machines/job-1');
    await keep('Bender');
    expect(await ask('POST', '/api/shop/machines/job-1/restore')).toMatchObject({ status: 409 });
  });
});

describe('weld settings', () => {
  it('are saved, taken out and put back like everything else, and called what they are', async () => {
    await ask('POST', '/api/shop/settings', { document: settings });
    const at = '/api/shop/settings/job-1';
    const hotter = { ...settings, settings: { ...settings.settings, current: 60 } };
    expect(await ask('PUT', at, { document: hotter, basedOn: 1 })).toMatchObject({
      status: 200,
      body: { revision: 2, document: { form: 'butt', settings: { current: 60, provedOn: 'test piece 4' } } },
    });
    expect(await ask('POST', '/api/shop/settings', { document: { ...hotter, name: 'Rail Butt' } })).toMatchObject({
      status: 409,
      body: { error: { message: expect.stringContaining('a set of weld settings named "rail butt"') as string } },
    });
    expect(await ask('DELETE', at)).toMatchObject({ status: 204 });
    expect(await ask('POST', `${at}/restore`)).toMatchObject({ status: 200, body: { document: hotter } });
  });

  it('that no torch has are refused, with the field', async () => {
    const document = { ...settings, wall: 0, settings: { ...settings.settings, current: 900 } };
    expect(await ask('POST', '/api/shop/settings', { document })).toMatchObject({
      status: 422,
      body: {
        error: {
          message: expect.stringMatching(/^This set of weld settings has 2 values/) as string,
          problems: [{ field: '/wall' }, { field: '/settings/current', allowed: { high: 500, unit: 'A' } }],
        },
      },
    });
  });
});

describe('what cannot be kept', () => {
  it('says which fields, counted from the document', async () => {
    const [die] = newJob('hoop').machine.dies;
    const document = { ...machine('Bender'), die: 1.5, dies: [{ ...die, radius: -1 }] };
    expect(await ask('POST', '/api/shop/machines', { document })).toMatchObject({
      status: 422,
      body: {
        error: {
          code: 'kept-not-valid',
          message: expect.stringMatching(/^This machine has 2 values .+\. Die radius is -1/) as string,
          problems: [{ field: '/dies/0/radius' }, { field: '/die' }],
        },
      },
    });
  });

  it.each([
    ['/api/shop/machines', machine('  ')],
    ['/api/shop/sizes', { ...size, name: '' }],
    ['/api/shop/grades', { ...grade, name: '' }],
    ['/api/shop/settings', { ...settings, name: '\t' }],
    ['/api/shop/rates', { ...rates, name: '' }],
  ])('%s has no name', async (url, document) => {
    expect(await ask('POST', url, { document })).toMatchObject({
      status: 422,
      body: { error: { code: 'name-missing' } },
    });
  });

  it('an older document is upgraded, a newer one refused', async () => {
    const old = { name: 'rail', outsideDiameter: 42.4, wall: 2 };
    expect(await ask('POST', '/api/shop/sizes', { document: old, version: 1 })).toMatchObject({
      status: 201,
      body: { document: { ...old, tolerance: { by: 'standard' } } },
    });
    expect(await ask('POST', '/api/shop/grades', { document: grade, version: 99 })).toMatchObject({
      status: 422,
      body: { error: { problems: [{ code: 'newer-version' }] } },
    });
    expect(await ask('POST', '/api/shop/settings', { document: settings, version: 3 })).toMatchObject({
      status: 422,
      body: { error: { problems: [{ code: 'below-range', field: '/version', allowed: { low: 4 } }] } },
    });
    expect(await ask('POST', '/api/shop/rates', { document: rates, version: 5 })).toMatchObject({
      status: 422,
      body: { error: { problems: [{ code: 'below-range', field: '/version', allowed: { low: 6 } }] } },
    });
  });

  it.each<[Method, string, object | undefined, number, string]>([
    ['PUT', '/api/shop/sizes/none', { document: size, basedOn: 1 }, 404, 'kept-unknown'],
    ['DELETE', '/api/shop/grades/none', undefined, 404, 'kept-unknown'],
    ['POST', '/api/shop/machines/none/restore', undefined, 404, 'kept-unknown'],
    ['PUT', '/api/shop/sizes/none', { document: size }, 400, 'request-not-valid'],
    ['POST', '/api/shop/sizes', {}, 400, 'request-not-valid'],
    ['GET', '/api/shop/lathes', undefined, 404, 'address-unknown'],
  ])('%s %s %j is refused', async (method, url, payload, status, code) => {
    expect(await ask(method, url, payload)).toMatchObject({ status, body: { error: { code } } });
  });
});
