import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { LaidBar, StockBar, StockLayout } from '../../server/job/stock.ts';
import { newJob } from '../../server/job/default-job.ts';
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

const laid = (stock: string, lengths: number[], more: Partial<LaidBar> = {}): LaidBar => ({
  stock,
  name: 'rack',
  remnant: false,
  outsideDiameter: 38.1,
  wall: 1.65,
  grade: '316L',
  length: 6000,
  price: 9000,
  heat: 'H-1',
  pieces: lengths.map((length) => ({ name: 'hoop', length, job: '' })),
  ...more,
});
const layout = (bars: LaidBar[], more: Partial<StockLayout> = {}): StockLayout => ({
  found: 'proven',
  date: '2026-11-26',
  saw: { kerf: 2, endTrim: 5, leastRemnant: 300 },
  currency: 'EUR',
  bars,
  taken: null,
  ...more,
});
const take = (bars: StockLayout, more: object = {}) =>
  ask('POST', '/api/stock/takings', { key: 'key-number-1', jobId: null, title: 'Rail', layout: bars, ...more });
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

describe('taking bars', () => {
  beforeEach(async () => void (await add(bar('rack'))));

  it('takes what the layout cuts and keeps the offcuts that are long enough, as the saw leaves them', async () => {
    const first = laid('job-1', [2500, 2000]); // 6000 − 5 − 4500 − 2 × 2 leaves 1491
    const second = laid('job-1', [2900, 2800]); // 6000 − 5 − 5700 − 2 × 2 leaves 291, too short to keep
    const bought = laid('', [1000], { length: 3000, heat: '' }); // 3000 − 5 − 1000 − 2 leaves 1993
    const remnant = { remnant: true, count: 1, price: null };
    const returned = [
      { id: 'job-2', document: bar('R1-1', { ...remnant, length: 1491 }) },
      { id: 'job-3', document: bar('R1-2', { ...remnant, length: 1993, heat: '' }) },
    ];
    expect(await take(layout([first, second, bought]))).toMatchObject({
      status: 201,
      body: { number: 1, taken: [{ id: 'job-1', name: 'rack', count: 2 }], returned, undoneAt: null },
    });
    expect(await stock()).toEqual([bar('rack', { count: 1 }), returned[1]!.document, returned[0]!.document]);
    expect(await ask('GET', '/api/stock/takings')).toMatchObject({ status: 200, body: [{ number: 1, title: 'Rail' }] });
    expect(await ask('DELETE', '/api/stock/takings/1')).toMatchObject({ status: 200, body: { number: 1 } });
    expect(await stock()).toEqual([bar('rack')]);
  });

  it('that fills a bar to its end leaves no offcut', async () => {
    const saw = { kerf: 2, endTrim: 5, leastRemnant: 0 };
    expect(await take(layout([laid('job-1', [3000, 2993])], { saw }))).toMatchObject({
      status: 201,
      body: { returned: [] },
    });
  });

  it('sent again takes nothing more', async () => {
    const once = await take(layout([laid('job-1', [2500])]));
    expect(await take(layout([laid('job-1', [2500])]))).toEqual(once);
    expect((await stock())[0]).toEqual(bar('rack', { count: 2 }));
    expect(await take(layout([laid('job-1', [2400])]))).toMatchObject({
      status: 409,
      body: { error: { code: 'key-used', message: expect.stringContaining('number 1') as string } },
    });
  });

  it('is refused where there are too few: the row, how many there are and how many are needed', async () => {
    expect(await take(layout([1, 2, 3, 4].map(() => laid('job-1', [2500]))))).toMatchObject({
      status: 409,
      body: {
        error: {
          code: 'stock-short',
          message:
            'Only 3 bars of "rack" are left in stock; the layout cuts 4 bars of it. Nothing was taken. ' +
            'Lay the pieces out again, or put right how many there are.',
        },
      },
    });
    expect(await stock()).toEqual([bar('rack')]);
  });

  it.each<[string, StockLayout, object, number, string]>([
    ['another size than the row has', layout([laid('job-1', [10], { wall: 2 })]), {}, 409, 'stock-changed'],
    ['a row that is not there', layout([laid('gone', [10])]), {}, 409, 'stock-short'],
    ['another currency', layout([laid('job-1', [10])], { currency: 'USD' }), {}, 422, 'mixed-currencies'],
    ['pieces longer than their bar', layout([laid('job-1', [3000, 3000])]), {}, 422, 'bar-too-short'],
    ['bars that were taken already', layout([laid('job-1', [10])], { taken: 4 }), {}, 409, 'layout-taken'],
    ['a job that is not there', layout([laid('job-1', [10])]), { jobId: 'nobody' }, 404, 'job-unknown'],
    ['no key', layout([laid('job-1', [10])]), { key: '' }, 400, 'request-not-valid'],
  ])('is refused with %s', async (_what, bars, more, status, code) => {
    expect(await take(bars, more)).toMatchObject({ status, body: { error: { code } } });
    expect(await stock()).toEqual([bar('rack')]);
    expect((await ask('GET', '/api/stock/takings')).body).toEqual([]);
  });

  it('names both currencies, and the bar', async () => {
    expect(await take(layout([laid('job-1', [10])], { currency: 'USD' }))).toMatchObject({
      body: { error: { message: expect.stringMatching(/"rack" is priced in EUR, the layout in USD\./) as string } },
    });
  });

  it('is refused field by field where the layout is none', async () => {
    const wrong = layout([laid('job-1', [-1], { length: 0 })], { date: '2026-02-31' });
    expect(await take(wrong)).toMatchObject({
      status: 422,
      body: {
        error: {
          code: 'layout-not-valid',
          problems: [{ field: '/date' }, { field: '/bars/0/length' }, { field: '/bars/0/pieces/0/length' }],
        },
      },
    });
  });

  it('goes with its job', async () => {
    await ask('POST', '/api/jobs', { job: newJob('straight') });
    expect(await take(layout([laid('job-1', [10])]), { jobId: 'job-2' })).toMatchObject({
      status: 201,
      body: { jobId: 'job-2' },
    });
  });

  it('is not undone where an offcut was used since, and says what to do first', async () => {
    await take(layout([laid('job-1', [2500])]));
    const offcut = laid('job-2', [1000], { remnant: true, length: 3493, price: null });
    expect((await take(layout([offcut]), { key: 'key-number-2' })).status).toBe(201);
    expect(await ask('DELETE', '/api/stock/takings/1')).toMatchObject({
      status: 409,
      body: { error: { code: 'offcut-gone', message: expect.stringContaining('"R1-1"') as string } },
    });
    expect((await ask('DELETE', '/api/stock/takings/2')).status).toBe(200);
    expect((await ask('DELETE', '/api/stock/takings/1')).status).toBe(200);
    expect(await stock()).toEqual([bar('rack')]);
    expect(await ask('DELETE', '/api/stock/takings/7')).toMatchObject({
      status: 404,
      body: { error: { code: 'taking-unknown' } },
    });
  });
});
