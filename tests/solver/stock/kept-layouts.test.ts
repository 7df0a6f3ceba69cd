import { describe, expect, it } from 'vitest';
import type { Job } from '../../../server/job/job.ts';
import type { TubeRate } from '../../../server/job/rates.ts';
import type { LaidBar, StockLayout } from '../../../server/job/stock.ts';
import type { CutPiece } from '../../../server/plan/stock.ts';
import { barShares } from '../../../server/solver/stock/bar-shares.ts';
import { planStock } from '../../../server/solver/stock/plan-stock.ts';
import { barOf, byBar, layoutOf, pieceOf, SAW, stockJob } from './made-up-stock.ts';

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
    const short = layoutOf([barOf({ hoop: 2000, bar: 800 }, { length: 2816, stock: 'b-1' })]);
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
    const { stock } = planned(layoutOf([barOf({ hoop: 2000 }), { ...bar, stock: 'b-1' }]));
    expect(stock.sizes[0]!.cost!.value).toBe(9000 + 333);
  });

  it('costs nothing that is known while a bar of the stock has no price, or one in other money, and says so', () => {
    const of = (given: Partial<LaidBar>, more: Partial<StockLayout> = {}, by?: (job: Job) => Job) =>
      planned(layoutOf([barOf({ hoop: 2000, bar: 800 }, { stock: 'b-1', ...given })], { taken: 7, ...more }), by);
    const none = { value: null, since: '', example: false };
    const open = of({ price: null, name: 'rack 4' }, {}, (job) => ({
      ...job,
      rates: { ...job.rates, tubes: job.rates.tubes.map((row) => ({ ...row, perMetre: none, perBar: none })) },
    }));
    expect(open.stock.sizes[0]).toMatchObject({ from: 'kept', cost: null });
    expect(open.findings).toMatchObject([
      {
        code: 'layout-price-open',
        grade: 'caution',
        field: '/stock/layout',
        data: { name: 'rack 4', value: 1 },
        wayOut: { field: '/stock/layout', value: null },
      },
    ]);
    const foreign = of({}, { currency: 'GBP' });
    expect(foreign.stock.sizes[0]).toMatchObject({ from: 'kept', cost: null });
    expect(foreign.findings).toMatchObject([
      { code: 'layout-currency', grade: 'caution', data: { other: 'GBP', currency: 'EUR' } },
    ]);
    const coarser = of({}, { minorDigits: 0 });
    expect(coarser.stock.sizes[0]!.cost).toBeNull();
    expect(coarser.findings).toMatchObject([{ code: 'layout-currency', field: '/stock/layout/minorDigits' }]);
  });

  it('prices bars that are to be bought as the rates say today, in their money', () => {
    const stale = layoutOf([barOf({ hoop: 2000, bar: 800 }, { price: 1 })], { currency: 'GBP' });
    const rated = (rate: Partial<TubeRate>) => (job: Job) => ({
      ...job,
      rates: { ...job.rates, tubes: [{ ...byBar(9000), ...rate }] },
    });
    const own = (value: number | null) => ({ value, since: '', example: false });
    const cost = (rate: Partial<TubeRate>, layout = stale) => planned(layout, rated(rate)).stock.sizes[0]!;
    expect(cost({ perBar: own(8000) })).toMatchObject({ cost: { value: 8000 }, bars: [{ price: 8000 }] });
    // a bar of another length than the rates have: by its length; and by the metre whatever the bar costs
    const longer = layoutOf([barOf({ hoop: 2000, bar: 800 }, { length: 7500 })]);
    expect(cost({ perBar: own(8000) }, longer).cost!.value).toBe(10_000);
    expect(cost({ by: 'metre', perMetre: own(1500), perBar: own(1) }).cost!.value).toBe(9000);
    expect(cost({ perBar: own(null), perMetre: own(1400) }).cost!.value).toBe(8400);
    expect(cost({ perBar: own(null) })).toMatchObject({ cost: null, bars: [{ price: null }] });
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

  it('is for so many frames as are asked for; bars cut alike are one, listed so or not', () => {
    const frames = (count: number) => (job: Job) => ({ ...job, quote: { ...job.quote, quantities: [count] } });
    const one = layoutOf([barOf({ hoop: 2000, bar: 800 })]);
    expect(planned(one, frames(2)).findings).toMatchObject([{ code: 'layout-stale', data: { value: 2 } }]);
    const listed = layoutOf([barOf({ hoop: 2000, bar: 800 }), barOf({ hoop: 2000, bar: 800 }, { price: 1 })]);
    const counted = layoutOf([barOf({ hoop: 2000, bar: 800 }, { times: 2 })]);
    expect(planned(listed, frames(2)).stock).toEqual(planned(counted, frames(2)).stock);
    const { stock, findings } = planned(listed, frames(2));
    expect(findings).toEqual([]);
    expect(stock.sizes[0]).toMatchObject({
      pieces: { value: 4 },
      metres: { value: 5.6 },
      cost: { value: 18000 },
      bars: [{ number: 1, times: 2 }],
    });
    // shares are of all bars, however they are listed
    expect(stock.sizes[0]!.used.value).toBeCloseTo((100 * 2800) / 6000, 9);
    expect(planned(counted, frames(3)).findings).toMatchObject([{ code: 'layout-stale', data: { value: 2 } }]);
    expect(planned(counted, frames(1)).findings).toMatchObject([{ code: 'layout-stale', data: { value: 2 } }]);
  });

  it('numbers bars on, those cut alike among them', () => {
    const frames = (job: Job) => ({ ...job, quote: { ...job.quote, quantities: [3] } });
    const layout = layoutOf([
      barOf({ hoop: 2000 }, { times: 3 }),
      barOf({ bar: 800, 'gate:rail': 100 }),
      barOf({ bar: 800 }, { times: 2 }),
    ]);
    expect(planned(layout, frames).stock.sizes[0]!.bars.map(({ number, times }) => [number, times])).toEqual([
      [1, 3],
      [4, 1],
      [5, 2],
    ]);
  });

  it('is cut with the saw as it is now: drawn so where all still fits, not followed where a bar overflows', () => {
    const sawn = (saw: Partial<StockLayout['saw']>) => (job: Job) => ({
      ...job,
      stock: { ...job.stock, saw: { ...SAW, ...saw } },
    });
    // 2816 = 10 + 2000 + 3 + 800 + 3
    const tight = layoutOf([barOf({ hoop: 2000, bar: 800 }, { length: 2816, name: 'short one', stock: 'b-1' })], {
      taken: 1,
    });
    const wider = planned(tight, sawn({ kerf: 4 }));
    expect(wider.stock.sizes[0]).toMatchObject({ from: 'kept', bars: [{ endTrim: 10 }] });
    expect(wider.stock.sizes[0]!.bars[0]!.pieces[1]!.from).toBe(2014);
    expect(planned(tight, sawn({ endTrim: 14 })).findings).toMatchObject([
      { code: 'layout-stale', data: { name: 'short one' } },
    ]);
    expect(planned(tight, sawn({ kerf: 7 })).stock.sizes[0]!.from).toBe('first-fit');
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
      layoutOf([barOf({ hoop: 2000 }, { stock: 'b-1' }), barOf({ bar: 800 }, { stock: 'b-2' })], { taken });
    expect(planned(fromStock(null)).findings).toMatchObject([
      { code: 'layout-not-taken', grade: 'note', data: { value: 2 } },
    ]);
    expect(codes(planned(fromStock(7)))).toEqual([]);
  });
});
