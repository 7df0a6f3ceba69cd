import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { StockBar } from '../../server/job/stock.ts';
import { bar } from '../db/kept-things.ts';
import { serverUnderTest, type UnderTest } from './server-under-test.ts';

let server: UnderTest;
beforeEach(async () => void (server = await serverUnderTest()));
afterEach(() => server.close());

async function ask(method: 'GET' | 'POST' | 'PUT' | 'DELETE', url: string, payload?: object) {
  const response = await server.app.inject({ method, url, ...(payload === undefined ? {} : { payload }) });
  const body: unknown = response.body === '' ? null : response.json();
  return { status: response.statusCode, body };
}
const add = (document: object) => ask('POST', '/api/stock', { document });

const stock = async () => {
  const { body } = await ask('GET', '/api/stock');
  return (body as { document: StockBar }[]).map(({ document }) => document);
};

describe('rows of the stock', () => {
  it('are added, saved on top of what stands, taken out and put back', async () => {
    expect(await ask('GET', '/api/stock')).toEqual({ status: 200, body: [] });
    const row = { id: 'job-1', revision: 1, savedAt: '2026-01-01T00:00:01.000Z', document: bar('rack') };
    expect(await add(bar('rack'))).toEqual({ status: 201, body: row });
    const more = bar('rack', { count: 8 });
    expect(await ask('PUT', '/api/stock/job-1', { document: more, basedOn: 1 })).toMatchObject({
      status: 200,
      body: { revision: 2, document: { count: 8 } },
    });
    expect(await ask('PUT', '/api/stock/job-1', { document: bar('rack', { count: 2 }), basedOn: 1 })).toMatchObject({
      status: 409,
      body: { error: { code: 'stale-save' }, yours: { count: 2 }, theirs: { revision: 2, document: { count: 8 } } },
    });
    expect((await ask('DELETE', '/api/stock/job-1')).status).toBe(204);
    expect(await stock()).toEqual([]);
    expect(await ask('PUT', '/api/stock/job-1', { document: more, basedOn: 2 })).toMatchObject({
      status: 410,
      body: { error: { code: 'stock-deleted' } },
    });
    expect(await ask('POST', '/api/stock/job-1/restore')).toMatchObject({ status: 200, body: { document: more } });
  });

  it.each<[Partial<StockBar>, string, string]>([
    [{ count: -1 }, '/count', 'How many is -1; allowed is at least 0, at most 100000. Give a larger value.'],
    [
      { count: 1.5 },
      '/count',
      'How many is 1.5; it takes a whole number, at least 0, at most 100000. Leave the decimals out.',
    ],
    [{ length: 0 }, '/length', 'Length is 0; allowed is at least 0.001 mm, at most 20000 mm. Give a larger value.'],
    [{ wall: 19.05 }, '/wall', 'Wall is 19.05; allowed is more than 0 mm, less than 19.05 mm. Give a smaller value.'],
    [
      { price: -5 },
      '/price',
      'Price of a bar is -5; allowed is at least 0 minor/bar, at most 1000000000 minor/bar. Give a larger value.',
    ],
    [
      { currency: 'euro' },
      '/currency',
      'Currency is the text "euro", which does not have the form of this field. Correct its spelling.',
    ],
  ])('are refused with %j: field, value, range and way out', async (wrong, field, message) => {
    expect(await add(bar('rack', wrong))).toMatchObject({
      status: 422,
      body: { error: { code: 'stock-not-valid', problems: [{ field, message }] } },
    });
    expect(await stock()).toEqual([]);
  });

  it('say every value that is wrong', async () => {
    const { heat: _heat, ...document } = bar('rack', { count: -1, outsideDiameter: 0 });
    expect(await add({ ...document, colour: 'red' })).toMatchObject({
      status: 422,
      body: {
        error: {
          message: expect.stringMatching(/^This bar has 4 values that cannot be taken/) as string,
          problems: [{ field: '/outsideDiameter' }, { field: '/count' }, { field: '/heat' }, { field: '/colour' }],
        },
      },
    });
  });

  it.each<['PUT' | 'DELETE' | 'POST', string, object | undefined, number, string]>([
    ['PUT', '/api/stock/none', { document: bar('rack'), basedOn: 1 }, 404, 'stock-unknown'],
    ['DELETE', '/api/stock/none', undefined, 404, 'stock-unknown'],
    ['POST', '/api/stock/none/restore', undefined, 404, 'stock-unknown'],
    ['PUT', '/api/stock/none', { document: bar('rack') }, 400, 'request-not-valid'],
    ['POST', '/api/stock', {}, 400, 'request-not-valid'],
  ])('%s %s %j is refused', async (method, url, payload, status, code) => {
    expect(await ask(method, url, payload)).toMatchObject({ status, body: { error: { code } } });
  });
});
