import { beforeEach, describe, expect, it } from 'vitest';
import type { LaidBar, StockBar, StockLayout } from '../../server/job/stock.ts';
import { newJob } from '../../server/job/default-job.ts';
import { bar } from '../db/kept-things.ts';
import * as madeUp from '../db/made-up-takings.ts';
import { serverOfEachTest } from './server-under-test.ts';

const { ask } = serverOfEachTest();
const add = (document: object) => ask('POST', '/api/stock', { document });

const laid = (stock: string, lengths: number[], more: Partial<LaidBar> = {}): LaidBar =>
  madeUp.laid(stock, { name: 'rack', pieces: lengths.map((length) => ({ name: 'hoop', length, job: '' })), ...more });
const layout = (bars: LaidBar[], more: Partial<StockLayout> = {}): StockLayout => ({
  ...madeUp.layout(...bars),
  ...more,
});
const take = (bars: StockLayout, more: object = {}) =>
  ask('POST', '/api/stock/takings', {
    key: 'key-number-1',
    jobId: null,
    together: [],
    title: 'Rail',
    layout: bars,
    ...more,
  });
const stock = async () => {
  const { body } = await ask('GET', '/api/stock');
  return (body as { document: StockBar }[]).map(({ document }) => document);
};

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
      body: {
        number: 1,
        taken: [{ id: 'job-1', name: 'rack', count: 2, document: bar('rack', { count: 2 }) }],
        returned,
        undoneAt: null,
      },
    });
    expect(await stock()).toEqual([bar('rack', { count: 1 }), returned[1]!.document, returned[0]!.document]);
    expect(await ask('GET', '/api/stock/takings')).toMatchObject({ status: 200, body: [{ number: 1, title: 'Rail' }] });
    const { body } = await ask('GET', '/api/stock/takings');
    const [listed] = body as { layout: { bars: object[] } }[];
    expect(listed!.layout.bars.map((one) => 'pieces' in one)).toEqual([false, false, false]);
    expect(await ask('GET', '/api/stock/takings/1')).toMatchObject({
      status: 200,
      body: { number: 1, layout: { bars: [first, second, bought] } },
    });
    expect((await ask('GET', '/api/stock/takings/2')).status).toBe(404);
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
    ['another heat than the row has', layout([laid('job-1', [10], { heat: '' })]), {}, 409, 'stock-changed'],
    ['another price than the row has', layout([laid('job-1', [10], { price: 1 })]), {}, 409, 'stock-changed'],
    ['other digits of its currency', layout([laid('job-1', [10])], { minorDigits: 0 }), {}, 422, 'mixed-currencies'],
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

  it('tells a currency of other digits apart by them', async () => {
    expect(await take(layout([laid('job-1', [10])], { minorDigits: 0 }))).toMatchObject({
      body: {
        error: {
          message: expect.stringMatching(/EUR with 2 digits after the point, the layout in EUR with 0/) as string,
        },
      },
    });
  });

  it('of bars that are cut alike keeps their offcuts as one row', async () => {
    expect(await take(layout([laid('job-1', [2500, 2000], { times: 3 })]))).toMatchObject({
      status: 201,
      body: { returned: [{ document: { name: 'R1-1', length: 1491, count: 3, minorDigits: 2 } }] },
    });
    expect(await stock()).toMatchObject([{ count: 0 }, { count: 3 }]);
  });

  it('a second time for its job is refused with the number of the first, whatever the key', async () => {
    await ask('POST', '/api/jobs', { job: newJob('straight') });
    const bars = layout([laid('job-1', [10])]);
    expect((await take(bars, { jobId: 'job-2' })).status).toBe(201);
    expect(await take(bars, { jobId: 'job-2', key: 'key-number-2' })).toMatchObject({
      status: 409,
      body: { error: { code: 'taken-already', message: expect.stringContaining('number 1') as string } },
    });
    expect(await take(bars, { together: [{ id: 'nobody', name: 'N' }], key: 'key-number-3' })).toMatchObject({
      status: 404,
      body: { error: { code: 'job-unknown' } },
    });
  });

  it('is not put back into a row that is full, and says what to do', async () => {
    await take(layout([laid('job-1', [2500])]));
    await ask('PUT', '/api/stock/job-1', { document: bar('rack', { count: 100_000 }), basedOn: 2 });
    expect(await ask('DELETE', '/api/stock/takings/1')).toMatchObject({
      status: 409,
      body: { error: { code: 'row-full', message: expect.stringContaining('100000 bars already') as string } },
    });
  });

  it('goes with its job', async () => {
    await ask('POST', '/api/jobs', { job: newJob('straight') });
    expect(await take(layout([laid('job-1', [10])]), { jobId: 'job-2' })).toMatchObject({
      status: 201,
      body: { jobId: 'job-2' },
    });
  });

  it('for a job that credits half of a remnant puts it into stock at that, and for no job without a price', async () => {
    const job = newJob('straight');
    const remnantCredit = { value: 50, since: '2026-01-01', example: false };
    await ask('POST', '/api/jobs', { job: { ...job, rates: { ...job.rates, remnantCredit } } });
    // 6000 − 5 − 4500 − 2 × 2 leaves 1491, and 9000 × 1491/6000 × 1/2 = 1118.25
    const bars = layout([laid('job-1', [2500, 2000])]);
    const returned = { remnant: true, length: 1491, price: 1118, currency: 'EUR', minorDigits: 2 };
    expect(await take(bars, { jobId: 'job-2' })).toMatchObject({
      status: 201,
      body: { returned: [{ document: returned }] },
    });
    expect((await stock()).filter(({ remnant }) => remnant)).toMatchObject([returned]);
    expect(await take(bars, { key: 'key-number-2' })).toMatchObject({
      body: { returned: [{ document: { price: null } }] },
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
