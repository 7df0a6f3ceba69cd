import { describe, expect, it } from 'vitest';
import { RATES } from '../../server/job/default-rates.ts';
import type { Rates } from '../../server/job/rates.ts';
import type { StockBar } from '../../server/job/stock.ts';
import { nestingResult, type Nested } from '../../server/nesting/nesting-result.ts';
import { nestedTrouble } from '../../server/nesting/nesting-trouble.ts';
import { sizesToCut, type NestedJob } from '../../server/nesting/sizes-to-cut.ts';
import type { CutPiece } from '../../server/plan/stock.ts';
import { firstFit } from '../../server/solver/stock/first-fit.ts';
import { pieceOf } from '../solver/stock/made-up-stock.ts';
import { barsIn, cut } from './cut-for-test.ts';

const KIND = { outsideDiameter: 42.4, wall: 2, grade: '316L' };
/** Lengths of a task count so many in a millimetre. */
const MM = 1_000_000;
const SAW = { kerf: 2, endTrim: 10, leastRemnant: 300 };

const piece = (name: string, length: number, more: Partial<CutPiece> = {}): CutPiece =>
  pieceOf(name, length, { ...KIND, ...more });

const job = (id: string, pieces: CutPiece[], quantity = 1): NestedJob => ({
  id,
  title: id === '' ? 'Rail' : `Gate ${id}`,
  pieces,
  quantity,
});

const row = (id: string, more: Partial<StockBar>) => ({
  id,
  revision: 1,
  savedAt: '2026-01-01T00:00:00.000Z',
  document: {
    name: id,
    remnant: false,
    ...KIND,
    length: 6000,
    count: 1,
    price: null,
    currency: 'EUR',
    minorDigits: 2,
    heat: '',
    ...more,
  },
});

const own = (value: number | null) => ({ value, since: '', example: false });
const rate = (more: Partial<Rates['tubes'][number]>): Pick<Rates, 'tubes'> => ({
  tubes: [{ size: null, by: 'bar', perMetre: own(1500), barLength: 6000, perBar: own(8000), ...more }],
});

const sizes = (jobs: NestedJob[], stock: ReturnType<typeof row>[] = [], rates: Pick<Rates, 'tubes'> = RATES) =>
  sizesToCut({ jobs, stock, rates, saw: SAW });

function solved(jobs: NestedJob[], stock: ReturnType<typeof row>[] = [], rates: Pick<Rates, 'tubes'> = RATES) {
  const all = sizes(jobs, stock, rates);
  const nested: Nested = {
    sizes: all,
    jobs,
    saw: SAW,
    currency: 'EUR',
    minorDigits: 2,
    credit: 0,
    date: '2026-02-03',
    leftOut: [],
  };
  const found = all.map(({ task }) => cut(task).best);
  return { nested, found, result: nestingResult(nested, found) };
}

describe('what bars cost', () => {
  const costs = (stock: ReturnType<typeof row>[], rates: Pick<Rates, 'tubes'>) =>
    sizes([job('', [piece('hoop', 1000)])], stock, rates)[0]!.task.bars.map(({ cost }) => cost);

  it('is what the tube is charged by, and the other where that is not known', () => {
    expect(costs([], rate({}))).toEqual([8000]);
    expect(costs([], rate({ by: 'metre' }))).toEqual([9000]);
    expect(costs([], rate({ perBar: own(null) }))).toEqual([9000]);
    expect(costs([], rate({ by: 'metre', perMetre: own(null) }))).toEqual([8000]);
  });

  it('is nothing for a remnant, and as by the rates for a bar in stock, that have no price of their own', () => {
    const stock = [
      row('left over', { remnant: true, length: 1500 }),
      row('priced remnant', { remnant: true, length: 1600, price: 700 }),
      row('short bar', { length: 3000 }),
      row('priced bar', { length: 4000, price: 4100 }),
    ];
    expect(costs(stock, rate({}))).toEqual([0, 700, 4000, 4100, 8000]);
  });

  it('is their length where no price is known, and the answer has no cost', () => {
    const open = rate({ perBar: own(null), perMetre: own(null) });
    expect(costs([row('left over', { remnant: true, length: 1500 })], open)).toEqual([0, 600_000]);
    const { result } = solved([job('', [piece('hoop', 1000)])], [], open);
    expect(result.sizes[0]).toMatchObject({ bars: 1, toBuy: 1, cost: null, bound: null, proven: true, gap: 0 });
    expect(result.layout.bars[0]!.price).toBeNull();
    expect(result.shares).toEqual([{ job: 'Rail', id: '', cost: null }]);
  });
});

describe('which bars are used', () => {
  it('of the size and grade of the pieces, not empty rows, and alike ones together', () => {
    const stock = [
      row('a', { length: 4000, count: 2, price: 100 }),
      row('b', { length: 4000, count: 3, price: 100 }),
      row('none left', { length: 4100, count: 0 }),
      row('other wall', { wall: 2.6 }),
      row('other grade', { grade: '304L' }),
    ];
    const [size] = sizes([job('', [piece('hoop', 1000)], 9)], stock);
    expect(size!.task.bars).toEqual([
      { length: 4000 * MM, count: 5, cost: 100 },
      { length: 6000 * MM, count: null, cost: 9000 },
    ]);
    expect(size!.sources[0]!.map((source) => source.stock)).toEqual(['a', 'b']);
  });

  it('each size and grade by itself', () => {
    const jobs = [job('', [piece('hoop', 1000), piece('leg', 800, { outsideDiameter: 33.7 })])];
    const { result } = solved(jobs);
    expect(result.sizes.map(({ outsideDiameter, bars }) => [outsideDiameter, bars])).toEqual([
      [42.4, 1],
      [33.7, 1],
    ]);
  });
});

describe('lengths', () => {
  it('are rounded so that what fits can be cut: pieces up, bars down, by far less than any saw', () => {
    const [size] = sizes([job('', [piece('a', 1234.561), piece('b', 1234.56100004), piece('c', 1000.00000051)])]);
    expect(size!.task.pieces).toEqual([
      { length: 1_234_561_000, count: 1 },
      { length: 1_234_561_001, count: 1 },
      { length: 1_000_000_001, count: 1 },
    ]);
    expect(size!.task).toMatchObject({ kerf: 2 * MM, endTrim: 10 * MM });
    const [stocked] = sizes([job('', [piece('a', 10)])], [row('odd', { length: 1999.9999999 })]);
    expect(stocked!.task.bars[0]!.length).toBe(1_999_999_999);
  });

  it.each([
    [600.001, 6000.01],
    [600.0001, 6000.001],
    [6000.01 / 10, 6000.01],
  ])('ten of %f mm go on a bar of %f mm without a kerf, and that is proven', (length, barLength) => {
    const saw = { kerf: 0, endTrim: 0, leastRemnant: 300 };
    const all = sizesToCut({ jobs: [job('', [piece('a', length)], 10)], stock: [], rates: rate({ barLength }), saw });
    expect(firstFit([{ length, count: 10 }], barLength, saw)).toMatchObject([{ bars: 1 }]);
    expect(barsIn(cut(all[0]!.task).best)).toBe(1);
  });

  it('a bar that is just long enough is taken: the last kerf may run out of its end', () => {
    // 10 + 2 × 2994 + 2 = 6000
    const { result } = solved([job('', [piece('hoop', 2994, { count: 2 })])]);
    expect(result.layout.bars).toMatchObject([{ times: 1 }]);
    expect(solved([job('', [piece('hoop', 2994.01, { count: 2 })])]).result.layout.bars).toMatchObject([{ times: 2 }]);
  });

  it('what is longer than any bar is named with the longest piece that there could be', () => {
    const { result } = solved([job('', [piece('hoop', 6200), piece('leg', 500)])]);
    expect(result.overlong).toEqual([{ job: '', name: 'hoop', length: 6200, longest: 5990 }]);
    expect(result.layout.bars.flatMap(({ pieces }) => pieces.map(({ name }) => name))).toEqual(['leg']);
  });

  it('without any bar everything is too long', () => {
    const { result } = solved([job('', [piece('hoop', 500)])], [], { tubes: [] });
    expect(result.overlong).toEqual([{ job: '', name: 'hoop', length: 500, longest: 0 }]);
    expect(result.layout).toMatchObject({ bars: [], found: 'proven' });
  });
});

describe('bars as found', () => {
  const jobs = [
    job('', [piece('hoop', 2000)], 2),
    job('gate-1', [piece('post', 1500), piece('rail', 400)]),
    job('gate-2', [piece('post', 1900)]),
  ];
  const stock = [row('rack 3', { remnant: true, length: 2020, heat: 'A17' })];
  const { result } = solved(jobs, stock);

  it('every piece with its name and what it is for, the bars of other jobs alone left out', () => {
    const laid = result.layout.bars.flatMap(({ pieces }) => pieces);
    expect(laid.filter((one) => one.job === '').map(({ name }) => name)).toEqual(['hoop', 'hoop']);
    expect(result.layout.bars.every(({ pieces }) => pieces.some((one) => one.job === ''))).toBe(true);
    expect(result.layout.bars.find(({ stock: id }) => id === 'rack 3')).toMatchObject({
      name: 'rack 3',
      remnant: true,
      price: null,
      heat: 'A17',
    });
    expect(result.layout).toMatchObject({
      saw: SAW,
      currency: 'EUR',
      date: '2026-02-03',
      found: 'proven',
      taken: null,
    });
  });

  it('what they cost is shared out to the last minor unit', () => {
    expect(result.sizes).toHaveLength(1);
    const cost = result.sizes[0]!.cost!;
    expect(cost).toBe(9000);
    expect(result.shares.map(({ id }) => id)).toEqual(['', 'gate-1', 'gate-2']);
    expect(result.shares.reduce((sum, share) => sum + share.cost!, 0)).toBe(cost);
  });

  it('is told to have too few bars where they run out, and how many more would do', () => {
    const long = [job('', [piece('hoop', 6500)], 3)];
    const few = [row('long', { length: 7000, count: 1, price: 100 })];
    const { nested, found } = solved(long, few);
    expect(nestedTrouble(nested.sizes, found)).toMatch(/too few bars of 42.4 × 2 mm 316L .* 2 more of the longest/);
    const enough = solved(long, [row('long', { length: 7000, count: 3, price: 100 })]);
    expect(nestedTrouble(enough.nested.sizes, enough.found)).toBe('');
  });
});
