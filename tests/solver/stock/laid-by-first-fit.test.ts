import { describe, expect, it } from 'vitest';
import type { Job, SettledJob } from '../../../server/job/job.ts';
import type { StockLayout } from '../../../server/job/stock.ts';
import type { CutPiece } from '../../../server/plan/stock.ts';
import { planStock } from '../../../server/solver/stock/plan-stock.ts';
import { tubeLines } from '../../../server/solver/quote/tube-lines.ts';
import { tubeNeeds } from '../../../server/solver/stock/tube-needs.ts';
import { SOME } from '../quote/made-up-order.ts';
import { barOf, byBar, KIND, layoutOf, pieceOf, SAW, stockJob } from './made-up-stock.ts';

const PIECES = [pieceOf('hoop', 2000), pieceOf('bar', 800)];

const credited = (percent: number | null) => (job: Job) => ({
  ...job,
  rates: { ...job.rates, remnantCredit: { value: percent, since: '', example: false } },
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
