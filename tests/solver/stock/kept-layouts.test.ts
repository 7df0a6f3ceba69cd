import { describe, expect, it } from 'vitest';
import type { Job } from '../../../server/job/job.ts';
import type { StockLayout } from '../../../server/job/stock.ts';
import type { CutPiece } from '../../../server/plan/stock.ts';
import { barShares } from '../../../server/solver/stock/bar-shares.ts';
import { planStock } from '../../../server/solver/stock/plan-stock.ts';
import { tubeNeeds } from '../../../server/solver/stock/tube-needs.ts';
import { barOf, byBar, KIND, layoutOf, pieceOf, SAW, stockJob } from './made-up-stock.ts';

const PIECES = [pieceOf('hoop', 2000), pieceOf('bar', 800)];

const withLayout =
  (layout: StockLayout, more: (job: Job) => Job = (job) => job) =>
  (job: Job): Job =>
    more({ ...job, stock: { ...job.stock, layout } });

const planned = (layout: StockLayout, more?: (job: Job) => Job, pieces: readonly CutPiece[] = PIECES) =>
  planStock({ job: stockJob(withLayout(layout, more)), pieces, tubes: new Map() });

const codes = ({ findings }: ReturnType<typeof planned>) => findings.map(({ code }) => code);

const credited = (percent: number | null) => (job: Job) => ({
  ...job,
  rates: { ...job.rates, remnantCredit: { value: percent, since: '', example: false } },
});

describe('a layout that is kept', () => {
  it('is what the plan shows and what tube costs, where it is for these pieces', () => {
    const { stock, findings } = planned(layoutOf([barOf({ hoop: 2000, bar: 800 })]));
    expect(findings).toEqual([]);
    const [size] = stock.sizes;
    expect(size).toMatchObject({ from: 'kept', proven: true, least: null, cost: { value: 9000, unit: 'minor' } });
    const [bar] = size!.bars;
    expect(bar!.pieces.map(({ from, to }) => [from, to])).toEqual([
      [10, 2010],
      [2013, 2813],
    ]);
    // 6000 − 10 − 2800 − 6
    expect(bar!.offcut.value).toBe(3184);
    expect(bar!.kept).toBe(true);
    expect(size!.used.value + size!.keptShare.value + size!.scrap.value).toBeCloseTo(100, 9);
    expect(size!.scrap.value).toBeCloseTo((100 * 16) / 6000, 9);
  });

  it('has its kept offcuts credited, so much of what the bar costs by its length', () => {
    const cost = (percent: number | null) => planned(layoutOf([barOf({ hoop: 2000, bar: 800 })]), credited(percent));
    // 9000 × 0.5 × 3184 / 6000 = 2388
    expect(cost(50).stock.sizes[0]!.cost!.value).toBe(9000 - 2388);
    expect(cost(null).stock.sizes[0]!.cost).toBeNull();
    // nothing is kept: nobody needs to know what it would be worth
    const short = layoutOf([barOf({ hoop: 2000, bar: 800 }, { length: 2816 })]);
    expect(planned(short, credited(null)).stock.sizes[0]!.cost!.value).toBe(9000);
  });

  it('shares a bar with other jobs by length, to the last minor unit', () => {
    // with a kerf for each piece: 803 of 803 + 1203 + 403
    const bar = barOf({ bar: 800, 'gate:rail': 1200, 'davit:stay': 400 }, { price: 1000 });
    const shares = barShares(bar, SAW, 0)!;
    expect([...shares]).toEqual([
      ['', 333],
      ['gate', 500],
      ['davit', 167],
    ]);
    const { stock } = planned(layoutOf([barOf({ hoop: 2000 }), bar]));
    expect(stock.sizes[0]!.cost!.value).toBe(9000 + 333);
  });

  it('costs nothing that is known while a price is open or in another currency', () => {
    const open = planned(layoutOf([barOf({ hoop: 2000, bar: 800 }, { price: null })]));
    expect(open.stock.sizes[0]).toMatchObject({ from: 'kept', cost: null });
    expect(codes(open)).toEqual([]);
    const foreign = planned(layoutOf([barOf({ hoop: 2000, bar: 800 })], { currency: 'GBP' }));
    expect(foreign.stock.sizes[0]).toMatchObject({ from: 'kept', cost: null });
    expect(foreign.findings).toMatchObject([
      { code: 'layout-currency', grade: 'caution', data: { other: 'GBP', currency: 'EUR' } },
    ]);
  });

  it.each([
    ['a piece that is missing', layoutOf([barOf({ hoop: 2000 })]), { name: 'bar', value: 1 }],
    ['a piece too many', layoutOf([barOf({ hoop: 2000, bar: 800, foot: 60 })]), { name: 'foot', value: 1 }],
    ['another length', layoutOf([barOf({ hoop: 2000.06, bar: 800 })]), { name: 'hoop', value: 2 }],
    ['another size', layoutOf([barOf({ hoop: 2000, bar: 800 }, { wall: 2 })]), { name: 'hoop', value: 4 }],
    ['another grade', layoutOf([barOf({ hoop: 2000, bar: 800 }, { grade: '304' })]), { name: 'hoop', value: 4 }],
    [
      'a bar that is too short',
      layoutOf([barOf({ hoop: 2000, bar: 800 }, { length: 2812 })]),
      { name: 'rack 1', value: 2 },
    ],
  ])('is not followed with %s', (_, layout, data) => {
    const { stock, findings } = planned(layout);
    expect(stock.sizes[0]!.from).toBe('first-fit');
    expect(findings).toMatchObject([{ code: 'layout-stale', grade: 'caution', field: '/stock/layout', data }]);
  });

  it('is for so many frames as are asked for', () => {
    const twice = (job: Job) => ({ ...job, quote: { ...job.quote, quantities: [2] } });
    const one = layoutOf([barOf({ hoop: 2000, bar: 800 })]);
    expect(codes(planned(one, twice))).toEqual(['layout-stale']);
    const two = layoutOf([barOf({ hoop: 2000, bar: 800 }), barOf({ hoop: 2000, bar: 800 })]);
    const { stock, findings } = planned(two, twice);
    expect(findings).toEqual([]);
    expect(stock.sizes[0]).toMatchObject({ pieces: { value: 4 }, metres: { value: 5.6 }, cost: { value: 18000 } });
  });

  it('takes a length that no saw tells apart', () => {
    expect(codes(planned(layoutOf([barOf({ hoop: 2000.04, bar: 799.96 })])))).toEqual([]);
  });

  it('tells of several heats, and of another than the job is for; legs are not bent', () => {
    const heats = (one: string, other: string) =>
      layoutOf([barOf({ hoop: 2000 }, { heat: one }), barOf({ bar: 800 }, { heat: other })]);
    const ofJob = (heat: string) => (job: Job) => ({ ...job, tube: { ...job.tube, heat } });
    expect(planned(heats('A', 'B')).findings).toMatchObject([
      { code: 'layout-heats', grade: 'caution', data: { heats: 'A, B', value: 2 } },
    ]);
    expect(codes(planned(heats('A', 'A')))).toEqual([]);
    expect(codes(planned(heats('A', '')))).toEqual([]);
    expect(planned(heats('A', 'A'), ofJob('C')).findings).toMatchObject([
      { code: 'layout-heats', data: { heats: 'C, A' } },
    ]);
    const legs = [pieceOf('hoop', 2000), pieceOf('bar', 800, { kind: 'leg' })];
    expect(codes(planned(heats('A', 'B'), undefined, legs))).toEqual([]);
  });

  it('says while bars of it are still on the rack', () => {
    const fromStock = (taken: number | null) =>
      layoutOf([barOf({ hoop: 2000, bar: 800 }, { stock: 'b-1' })], { taken });
    expect(planned(fromStock(null)).findings).toMatchObject([
      { code: 'layout-not-taken', grade: 'note', data: { value: 1 } },
    ]);
    expect(codes(planned(fromStock(7)))).toEqual([]);
  });
});

describe('without a layout', () => {
  const laid = (pieces: readonly CutPiece[], change?: (job: Job) => Job) =>
    planStock({ job: stockJob(change), pieces, tubes: new Map() }).stock.sizes;

  it('lays pieces by first fit, and says where no fewer bars can do', () => {
    const [size] = laid([pieceOf('a', 3000), pieceOf('b', 2900), pieceOf('c', 2500), pieceOf('d', 2500)]);
    expect(size).toMatchObject({ from: 'first-fit', proven: true, least: { value: 2 }, cost: { value: 18000 } });
    expect(size!.bars.map(({ number, pieces }) => [number, pieces.map(({ name }) => name)])).toEqual([
      [1, ['a', 'b']],
      [2, ['c', 'd']],
    ]);
    const [other] = laid(
      [...['a', 'b'].map((name) => pieceOf(name, 40)), ...['c', 'd', 'e', 'f'].map((name) => pieceOf(name, 30))],
      (job) => ({
        ...job,
        stock: { ...job.stock, saw: { kerf: 0, endTrim: 0, leastRemnant: 10 } },
        rates: { ...job.rates, tubes: [byBar(9000, 100)], remnantCredit: { value: 50, since: '', example: false } },
      }),
    );
    // 4 + 4 | 3 + 3 + 3 | 3: offcuts 20, 10 and 70, half of what they cost back
    expect(other).toMatchObject({ proven: false, least: { value: 2 }, cost: { value: 27000 - 4500 } });
    expect(other!.used.value).toBeCloseTo((100 * 200) / 300, 9);
    expect(other!.keptShare.value).toBeCloseTo((100 * 100) / 300, 9);
  });

  it('takes the row of the size, else the one for all', () => {
    const rows = (job: Job): Job => ({
      ...job,
      rates: { ...job.rates, tubes: [byBar(9000), { ...byBar(5000), size: { outsideDiameter: 30, wall: 1.5 } }] },
    });
    const job = stockJob(rows);
    const pieces = [pieceOf('a', 3000), pieceOf('b', 100, { outsideDiameter: 30, wall: 1.5 })];
    const needs = tubeNeeds({ pieces, quantity: 10, rates: job.rates, stock: job.stock });
    expect(needs.map(({ field, bars, metres }) => [field, bars!.count, metres])).toEqual([
      ['/rates/tubes/0', 10, 30],
      ['/rates/tubes/1', 1, 1],
    ]);
    expect(needs[0]!.bars!.keptMetres).toBeCloseTo(10 * 2.987, 9);
    expect(laid(pieces, rows).map(({ cost }) => cost!.value)).toEqual([9000, 5000]);
  });

  it('has no price by the metre, and no bars where none are known', () => {
    const none = (job: Job): Job => ({ ...job, rates: { ...job.rates, tubes: [] } });
    expect(laid(PIECES, none)).toMatchObject([{ from: 'none', bars: [], cost: null, used: { value: 0 } }]);
    const metre = (job: Job): Job => ({ ...job, rates: { ...job.rates, tubes: [{ ...byBar(9000), by: 'metre' }] } });
    expect(laid(PIECES, metre)).toMatchObject([{ from: 'first-fit', cost: null }]);
    expect(laid([])).toEqual([]);
  });

  it('reckons mass by the density of the grade', () => {
    const [size] = laid([pieceOf('a', 1000)]);
    // 8000 kg/m3 × π (38.1 − 1.65) 1.65 mm2
    expect(size!.mass.value).toBeCloseTo((Math.PI * 8000 * 36.45 * 1.65) / 1e6, 9);
    expect(size).toMatchObject(KIND);
  });
});

describe('what tube is needed', () => {
  it('has this job’s share of a kept layout that is for exactly as many frames', () => {
    const layout = layoutOf([barOf({ hoop: 2000, bar: 800 })]);
    const job = stockJob(withLayout(layout));
    const kept = (quantity: number) =>
      tubeNeeds({ pieces: PIECES, quantity, rates: job.rates, stock: job.stock })[0]!.kept;
    expect(kept(1)).toEqual({ amount: 9000, bars: 1 });
    expect(kept(2)).toBeNull();
    const rates = { ...job.rates, currency: 'USD' };
    expect(tubeNeeds({ pieces: PIECES, quantity: 1, rates, stock: job.stock })[0]!.kept).toEqual({
      amount: null,
      bars: 1,
    });
  });

  it('has no bars for a piece that none gives', () => {
    const job = stockJob();
    const [need] = tubeNeeds({ pieces: [pieceOf('a', 5995)], quantity: 1, rates: job.rates, stock: job.stock });
    expect(need).toMatchObject({ bars: null, metres: 5.995, pieces: [{ name: 'a', length: 5995, count: 1 }] });
  });
});
