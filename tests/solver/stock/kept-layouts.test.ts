import { describe, expect, it } from 'vitest';
import type { Job, SettledJob } from '../../../server/job/job.ts';
import type { TubeRate } from '../../../server/job/rates.ts';
import type { LaidBar, StockLayout } from '../../../server/job/stock.ts';
import type { CutPiece } from '../../../server/plan/stock.ts';
import { barShares } from '../../../server/solver/stock/bar-shares.ts';
import { planStock } from '../../../server/solver/stock/plan-stock.ts';
import { tubeLines } from '../../../server/solver/quote/tube-lines.ts';
import { tubeNeeds } from '../../../server/solver/stock/tube-needs.ts';
import { SOME } from '../quote/made-up-order.ts';
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
    const of = (given: Partial<LaidBar>, more: Partial<StockLayout> = {}) =>
      planned(layoutOf([barOf({ hoop: 2000, bar: 800 }, { stock: 'b-1', ...given })], { taken: 7, ...more }));
    const open = of({ price: null, name: 'rack 4' });
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
    const sawn = (saw: Partial<typeof SAW>) => (job: Job) => ({
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
    const needs = tubeNeeds({ pieces, quantity: 10, rates: job.rates, saw: SAW, layout: null });
    expect(needs.map(({ field, bars, metres }) => [field, bars!.count, metres])).toEqual([
      ['/rates/tubes/0', 10, 30],
      ['/rates/tubes/1', 1, 1],
    ]);
    expect(needs[0]!.bars!.keptLength).toBeCloseTo(10 * 2987, 6);
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
  const needs = (pieces: readonly CutPiece[], quantity: number, layout: StockLayout | null, job = stockJob()) =>
    tubeNeeds({ pieces, quantity, rates: job.rates, saw: SAW, layout });

  it('has this job’s share of a layout that it is asked for, where that is for exactly as many frames', () => {
    const layout = layoutOf([barOf({ hoop: 2000, bar: 800 })]);
    expect(needs(PIECES, 1, layout)[0]!.kept).toMatchObject({ amount: 9000, bars: 1, by: 'perBar', isCredited: true });
    expect(needs(PIECES, 2, layout)[0]!.kept).toBeNull();
    expect(needs(PIECES, 1, null)[0]!.kept).toBeNull();
  });

  it('has no bars for a piece that none gives', () => {
    const [need] = needs([pieceOf('a', 5995)], 1, null);
    expect(need).toMatchObject({ bars: null, metres: 5.995, pieces: [{ name: 'a', length: 5995, count: 1 }] });
  });
});

describe('a thousand frames', () => {
  it('take no longer list of bars than a few: those cut alike are one', () => {
    const many = (job: Job): Job => ({ ...job, quote: { ...job.quote, quantities: [1000] } });
    const pieces = [pieceOf('a', 2790.5), pieceOf('b', 905.6), pieceOf('c', 412)];
    const { stock } = planStock({ job: stockJob(many), pieces, tubes: new Map() });
    const [size] = stock.sizes;
    const bars = size!.bars.reduce((sum, { times }) => sum + times, 0);
    expect(bars).toBeGreaterThan(700);
    expect(size!.cost!.value).toBe(bars * 9000);
    expect(JSON.stringify(stock).length).toBeLessThan(12_000);
    // numbered on without a gap
    let next = 1;
    for (const { number, times } of size!.bars) {
      expect(number).toBe(next);
      next += times;
    }
    const laid = size!.bars.flatMap(({ times, pieces: on }) => on.map(({ name }) => ({ name, times })));
    for (const { name } of pieces)
      expect(laid.reduce((sum, piece) => sum + (piece.name === name ? piece.times : 0), 0)).toBe(1000);
  });
});

describe('the cost of bars in the plan', () => {
  const amounts = (job: SettledJob, pieces: readonly CutPiece[], layout: StockLayout | null): number | null => {
    const order = { quantities: { ...SOME, pieces }, job, quantity: job.quote.quantities[0]!, layout };
    const lines = tubeLines(order);
    return lines.some(({ amount }) => amount === null) ? null : lines.reduce((sum, { amount }) => sum + amount!, 0);
  };

  it.each([1, 2, 7, 100])('is what the lines of the quote come to, for %i frames', (quantity) => {
    // half of 1.5 x the offcut: halves of a minor unit among them
    for (const percent of [0, 7, 33.3, 50]) {
      for (const perBar of [9000, 8999, 3001]) {
        const job = stockJob((one) => ({
          ...credited(percent)(one),
          rates: { ...credited(percent)(one).rates, tubes: [byBar(perBar)] },
          quote: { ...one.quote, quantities: [quantity] },
        }));
        const pieces = [pieceOf('a', 2000), pieceOf('b', 1187.5), pieceOf('c', 777)];
        const { stock } = planStock({ job, pieces, tubes: new Map() });
        expect(stock.sizes[0]!.cost!.value).toBe(amounts(job, pieces, null));
        const layout = layoutOf([
          barOf({ a: 2000, 'gate:x': 1000.3 }, { stock: 'b-1', price: 4001, times: quantity }),
          barOf({ b: 1187.5, c: 777 }, { times: quantity }),
        ]);
        const laid = { ...job, stock: { ...job.stock, layout } };
        const kept = planStock({ job: laid, pieces, tubes: new Map() }).stock.sizes[0]!;
        expect(kept.from).toBe('kept');
        expect(kept.cost!.value).toBe(amounts(laid, pieces, layout));
      }
    }
  });
});
