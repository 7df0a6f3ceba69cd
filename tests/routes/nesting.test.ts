import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import { StockLayout, type StockBar } from '../../server/job/stock.ts';
import { problemsOf } from '../../server/job/validate.ts';
import type { Nesting } from '../../server/nesting/nesting.ts';
import { plan } from '../../server/solver/plan.ts';
import { serverUnderTest, type UnderTest } from './server-under-test.ts';

let server: UnderTest;
const ids = { gate: 'gate', dollars: 'dollars' };

/** A straight tube, as it comes. */
function straight(title: string, length: number, more: Partial<Job> = {}): Job {
  return { ...newJob('straight'), title, frame: { shape: 'straight', length }, ...more };
}

const own = straight('Rail', 2000);
const bar: StockBar = {
  name: 'rack 3',
  remnant: true,
  outsideDiameter: own.tube.outsideDiameter,
  wall: own.tube.wall,
  grade: '316L',
  length: 2010,
  count: 1,
  price: null,
  currency: 'EUR',
  minorDigits: 2,
  heat: 'A17',
};

beforeAll(async () => {
  server = await serverUnderTest();
  const now = '2026-01-01T00:00:00.000Z';
  const gate = straight('Gate', 1500);
  await server.jobs.create(ids.gate, { ...gate, quote: { ...gate.quote, quantities: [3, 10] } }, now);
  const dollars = straight('Yard', 900);
  await server.jobs.create(ids.dollars, { ...dollars, rates: { ...dollars.rates, currency: 'USD' } }, now);
  const added = await server.app.inject({ method: 'POST', url: '/api/stock', payload: { document: bar } });
  expect(added.statusCode).toBe(201);
});
afterAll(() => server.close());

const asked = (more: object = {}) => ({
  job: own,
  id: null,
  with: [],
  quantity: 2,
  useStock: true,
  seconds: 20,
  ...more,
});
const start = (payload: object) => server.app.inject({ method: 'POST', url: '/api/nestings', payload });
const look = async (id: string) => (await server.app.inject(`/api/nestings/${id}`)).json<Nesting>();

async function found(payload: object): Promise<Nesting> {
  const response = await start(payload);
  expect(response.statusCode).toBe(202);
  const { id } = response.json<Nesting>();
  for (let tries = 0; tries < 600; tries += 1) {
    const nesting = await look(id);
    if (nesting.state !== 'waiting' && nesting.state !== 'running') return nesting;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error('It never ended.');
}

describe('bars for a job', () => {
  it('from the stock and bought, with another job among them, each piece with its name', async () => {
    const nesting = await found(asked({ with: [ids.gate, ids.gate], quantity: 4 }));
    expect(nesting).toMatchObject({ state: 'done', pieces: 7, trouble: '', best: { bars: 3, cost: 18_000 } });
    const { layout, layouts, whole, sizes, shares, overlong } = nesting.result!;
    expect(problemsOf(StockLayout, layout)).toEqual([]);
    expect(layouts.map(({ id, title }) => [id, title])).toEqual([
      [null, 'Rail'],
      [ids.gate, 'Gate'],
    ]);
    expect(layouts[0]!.layout).toEqual(layout);
    for (const one of [whole, ...layouts.map((each) => each.layout)]) expect(problemsOf(StockLayout, one)).toEqual([]);
    expect(whole.bars.reduce((sum, { times }) => sum + times, 0)).toBe(3);
    expect(new Set(whole.bars.flatMap(({ pieces }) => pieces.map(({ job }) => job)))).toEqual(
      new Set(['Rail', 'Gate']),
    );
    expect(layout.found).toBe('proven');
    const remnant = layout.bars.find(({ remnant: is }) => is);
    expect(remnant).toMatchObject({ name: 'rack 3', heat: 'A17', price: null, pieces: [{ length: 2000, job: '' }] });
    const hoops = layout.bars.map(({ times, pieces }) => times * pieces.filter(({ job }) => job === '').length);
    expect(hoops.reduce((sum, count) => sum + count, 0)).toBe(4);
    expect(sizes).toMatchObject([{ bars: 3, toBuy: 2, cost: 18_000, bound: 18_000, proven: true, gap: 0 }]);
    expect(shares.map(({ id, job }) => [id, job])).toEqual([
      ['', 'Rail'],
      [ids.gate, 'Gate'],
    ]);
    expect(shares.reduce((sum, { cost }) => sum + cost!, 0)).toBe(18_000);
    expect(overlong).toEqual([]);
  });

  it('the plan takes the layout as it is', async () => {
    const quantity = own.quote.quantities[0]!;
    const { result } = await found(asked({ with: [ids.gate], quantity }));
    const kept = { ...own, stock: { ...own.stock, layout: result!.layout } };
    const { stock, findings } = plan(kept);
    expect(stock!.sizes.map(({ from }) => from)).toEqual(['kept']);
    expect(findings.filter(({ code }) => code === 'layout-stale')).toEqual([]);
  });

  it('jobs of one title are told apart, and the job itself is not cut with itself', async () => {
    const gate = straight('Gate', 1700);
    const { result } = await found(asked({ job: gate, id: 'another', with: [ids.gate, 'another'] }));
    expect(result!.layouts.map(({ title }) => title)).toEqual(['Gate (another)', 'Gate (gate)']);
  });

  it('each other job can keep its own, and its plan pays what was told', async () => {
    const { result } = await found(asked({ with: [ids.gate], quantity: own.quote.quantities[0]! }));
    const stored = await server.jobs.find(ids.gate);
    if (stored.kind !== 'found') throw new Error('The job is gone.');
    const { job } = stored.saved;
    const layout = result!.layouts[1]!.layout;
    const { stock, findings } = plan({ ...job, stock: { ...job.stock, layout } });
    expect(stock!.sizes.map(({ from }) => from)).toEqual(['kept']);
    expect(stock!.sizes[0]!.cost?.value).toBe(result!.shares[1]!.cost);
    expect(findings.filter(({ code }) => code === 'layout-stale')).toEqual([]);
  });

  it('bought alone, where the stock is not to be used', async () => {
    const { result } = await found(asked({ useStock: false }));
    expect(result!.layout.bars.map(({ stock, remnant }) => [stock, remnant])).toEqual([['', false]]);
  });

  describe('without the bars of the stock whose prices do not add up with those of the job', () => {
    const far = { ...bar, name: 'far rack', remnant: false, length: 6000, count: 5, price: 1, currency: 'USD' };
    const added: string[] = [];
    const add = async (document: StockBar) => {
      const { body } = await server.app.inject({ method: 'POST', url: '/api/stock', payload: { document } });
      const { id } = JSON.parse(body) as { id: string };
      added.push(id);
      return id;
    };
    afterEach(async () => {
      for (const id of added.splice(0)) await server.app.inject({ method: 'DELETE', url: `/api/stock/${id}` });
    });

    it('which are named with what they are priced in; those without a price, or without bars, mix nothing', async () => {
      const id = await add(far);
      const digits = await add({ ...far, name: 'other digits', currency: 'EUR', minorDigits: 0 });
      await add({ ...far, name: 'none left', count: 0 });
      const { state, result } = await found(asked());
      expect([state, result!.layout.currency]).toEqual(['done', 'EUR']);
      expect(result!.leftOut).toEqual([
        { id, name: 'far rack', currency: 'USD', minorDigits: 2 },
        { id: digits, name: 'other digits', currency: 'EUR', minorDigits: 0 },
      ]);
      const stocks = result!.whole.bars.map(({ stock }) => stock);
      expect(stocks.length).toBeGreaterThan(0);
      expect(stocks.filter((stock) => stock === id || stock === digits)).toEqual([]);
    });

    it('of which there are none where the stock is not used, or has them in other sizes', async () => {
      await add(far);
      expect((await found(asked({ useStock: false }))).result!.leftOut).toEqual([]);
      const thicker = straight('Rail', 2000, { tube: { ...own.tube, wall: 2.5 } });
      expect((await found(asked({ job: thicker }))).result!.leftOut).toEqual([]);
      await add({ ...far, name: 'no price', price: null });
      expect((await found(asked())).result!.leftOut.map(({ name }) => name)).toEqual(['far rack']);
    });

    it('and are told where what is left is too little', async () => {
      await add({ ...far, name: 'long rack', length: 9000 });
      await add({ ...far, name: 'own rack', length: 9000, count: 1, currency: 'EUR' });
      const { state, trouble } = await found(asked({ job: straight('Mast', 7000) }));
      expect(state).toBe('failed');
      expect(trouble).toMatch(
        /too few bars .* Left out, .*: "long rack" \(priced in USD with 2 digits after the point\)\.$/,
      );
    });
  });

  it('names what no bar is long enough for', async () => {
    const { state, result, pieces } = await found(asked({ job: straight('Mast', 7000) }));
    expect([state, pieces]).toEqual(['done', 0]);
    expect(result!.overlong).toMatchObject([{ job: '', name: 'tube', length: 7000 }]);
    expect(result!.layout.bars).toEqual([]);
  });
});

describe('a search for bars', () => {
  it('is ended by who started it, and the next one goes on', async () => {
    const many = asked({ with: [ids.gate], quantity: 150, seconds: 60 });
    const started = await Promise.all(Array.from({ length: 4 }, () => start(many)));
    expect(started.map(({ statusCode }) => statusCode)).toEqual([202, 202, 202, 202]);
    const full = await start(many);
    expect(full.statusCode).toBe(503);
    expect(full.json()).toMatchObject({ error: { code: 'busy' } });
    for (const { id } of started.map((response) => response.json<Nesting>())) {
      const ended = await server.app.inject({ method: 'DELETE', url: `/api/nestings/${id}` });
      expect(ended.statusCode).toBe(204);
      expect((await look(id)).state).toBe('cancelled');
    }
    expect((await found(asked())).state).toBe('done');
  });

  it('that is not there', async () => {
    for (const method of ['GET', 'DELETE'] as const) {
      const response = await server.app.inject({ method, url: '/api/nestings/none' });
      expect(response.statusCode).toBe(404);
      expect(response.json()).toMatchObject({ error: { code: 'nesting-unknown' } });
    }
  });
});

describe('refused', () => {
  const refusal = async (payload: object) => {
    const response = await start(payload);
    const { error } = response.json<{ error: { code: string; message: string } }>();
    return { status: response.statusCode, ...error };
  };

  it('a job in another currency, with both of them', async () => {
    const refused = await refusal(asked({ with: [ids.dollars] }));
    expect(refused).toMatchObject({ status: 422, code: 'mixed-currencies' });
    expect(refused.message).toMatch(/"Yard".*USD.*EUR/);
  });

  it('money that counts in other digits, with both of them', async () => {
    const rates = { ...own.rates, minorDigits: 0 };
    const refused = await refusal(asked({ job: { ...own, rates }, with: [ids.gate] }));
    expect(refused).toMatchObject({ status: 422, code: 'mixed-currencies' });
    expect(refused.message).toMatch(/EUR with 2 digits after the point and this job in EUR with 0/);
  });

  it('who comes when too many wait, before anything is read or planned', async () => {
    const many = asked({ quantity: 150, seconds: 60 });
    const started = await Promise.all(Array.from({ length: 4 }, () => start(many)));
    expect(await refusal(asked({ job: 5 }))).toMatchObject({ status: 503, code: 'busy' });
    for (const { id } of started.map((response) => response.json<Nesting>()))
      await server.app.inject({ method: 'DELETE', url: `/api/nestings/${id}` });
    expect(await refusal(asked({ job: 5 }))).toMatchObject({ status: 422, code: 'job-not-valid' });
  });

  it('a job without anything to cut, and jobs that are not there', async () => {
    const short = newJob('hoop');
    const none = { ...short, frame: { ...short.frame, width: { value: 20, reference: 'outside' } } };
    expect(await refusal(asked({ job: none }))).toMatchObject({ status: 422, code: 'nothing-to-cut' });
    expect(await refusal(asked({ with: ['none'] }))).toMatchObject({ status: 404, code: 'job-unknown' });
    expect(await refusal(asked({ job: 5 }))).toMatchObject({ status: 422, code: 'job-not-valid' });
    expect(await refusal(asked({ seconds: 61 }))).toMatchObject({ status: 400 });
    expect(await refusal(asked({ quantity: 0 }))).toMatchObject({ status: 400 });
  });
});
