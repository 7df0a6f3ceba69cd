import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openDatabase, type Database } from '../../db/database.ts';
import { stockRepository, type StockRepository } from '../../db/stock-repository.ts';
import type { TakingAsked } from '../../db/stock-takings.ts';
import type { LaidBar, StockBar, StockLayout } from '../../server/job/stock.ts';
import { at, bar } from './kept-things.ts';

let database: Database;
let stock: StockRepository;
let ids: number;
const newId = () => `new-${String((ids += 1))}`;

beforeEach(async () => {
  ids = 0;
  database = await openDatabase(':memory:');
  stock = stockRepository(database);
  await stock.add('rack', bar('rack'), at(1));
  await stock.add('end', bar('old end', { remnant: true, length: 1500, count: 1, price: null, heat: 'H-9' }), at(1));
});
afterEach(() => database.destroy());

const laid = (id: string, more: Partial<LaidBar> = {}): LaidBar => ({
  stock: id,
  name: 'as it was called',
  remnant: false,
  outsideDiameter: 38.1,
  wall: 1.65,
  grade: '316L',
  length: 6000,
  price: 9000,
  heat: 'H-1',
  pieces: [{ name: 'hoop', length: 2500, job: '' }],
  ...more,
});
const layout = (...bars: LaidBar[]): StockLayout => ({
  found: 'proven',
  date: '2026-11-26',
  saw: { kerf: 2, endTrim: 5, leastRemnant: 300 },
  currency: 'EUR',
  bars,
  taken: null,
});
const offcut = (length: number): Omit<StockBar, 'name'> => {
  const { name: _name, ...rest } = bar('', { remnant: true, count: 1, price: null, length });
  return rest;
};
const asked = (bars: LaidBar[], more: Partial<TakingAsked> = {}): TakingAsked => ({
  key: 'first-key',
  jobId: null,
  title: 'Rail',
  layout: layout(...bars),
  offcuts: [offcut(3491)],
  ...more,
});
const take = (request: TakingAsked, minute = 2) => stock.take(request, newId, at(minute));
const counts = async () => Object.fromEntries((await stock.all()).map(({ id, document }) => [id, document.count]));

const END = laid('end', { remnant: true, length: 1500, price: null });

describe('taking the bars of a layout', () => {
  it('counts them off their rows, uses remnants up, and puts the offcuts into stock under names of their own', async () => {
    const outcome = await take(asked([laid('rack'), laid('rack'), END, laid('')]));
    expect(outcome).toEqual({
      kind: 'taken',
      taking: {
        number: 1,
        takenAt: at(2),
        jobId: null,
        title: 'Rail',
        layout: layout(laid('rack'), laid('rack'), END, laid('')),
        taken: [
          { id: 'rack', name: 'rack', count: 2 },
          { id: 'end', name: 'old end', count: 1 },
        ],
        returned: [{ id: 'new-1', document: { name: 'R1-1', ...offcut(3491) } }],
        undoneAt: null,
      },
    });
    expect(await counts()).toEqual({ rack: 1, 'new-1': 1 });
    expect((await stock.all()).map(({ revision }) => revision)).toEqual([2, 1]);
    expect(await stock.takings()).toEqual(outcome.kind === 'taken' ? [outcome.taking] : []);
  });

  it('leaves a row of bars where nothing is left of it', async () => {
    await take(asked([laid('rack'), laid('rack'), laid('rack')], { offcuts: [] }));
    expect(await counts()).toEqual({ rack: 0, end: 1 });
  });

  it('makes an older save of a row stale', async () => {
    await take(asked([laid('rack')]));
    expect(await stock.save('rack', bar('rack', { count: 3 }), 1, at(3))).toMatchObject({
      kind: 'stale',
      theirs: { revision: 2, document: { count: 2 } },
    });
  });

  it('numbers each in the book, the last one first, and never gives a number twice', async () => {
    await take(asked([laid('rack')], { key: 'a' }));
    await take(asked([laid('rack')], { key: 'b', title: 'Step' }), 3);
    expect((await stock.takings()).map(({ number, title }) => `${String(number)} ${title}`)).toEqual([
      '2 Step',
      '1 Rail',
    ]);
    expect((await stock.all()).map(({ document }) => document.name)).toContain('R2-1');
  });

  it('asked for again with the same key takes nothing more', async () => {
    const first = await take(asked([laid('rack')]));
    expect(await take(asked([laid('rack')]), 3)).toEqual(first);
    expect(await counts()).toMatchObject({ rack: 2, 'new-1': 1 });
    const both = await Promise.all([4, 5].map((minute) => take(asked([laid('rack')], { key: 'twice' }), minute)));
    expect(both[0]).toEqual(both[1]);
    expect(await counts()).toMatchObject({ rack: 1 });
    expect(await take(asked([laid('rack'), laid('rack')]))).toMatchObject({ kind: 'key-used', taking: { number: 1 } });
  });
});

describe('bars that cannot be taken', () => {
  const untouched = async () => {
    expect(await counts()).toEqual({ rack: 3, end: 1 });
    expect(await stock.takings()).toEqual([]);
  };

  it('where there are too few, none is, and the row is named with how many there are', async () => {
    const four = Array.from({ length: 4 }, () => laid('rack'));
    expect(await take(asked([END, ...four]))).toEqual({ kind: 'short', name: 'rack', there: 3, needed: 4 });
    await untouched();
  });

  it('where the row is gone or was never there', async () => {
    expect(await take(asked([laid('nowhere')]))).toEqual({
      kind: 'short',
      name: 'as it was called',
      there: 0,
      needed: 1,
    });
    await stock.remove('end', at(2));
    expect(await take(asked([laid('rack'), END]))).toEqual({ kind: 'short', name: 'old end', there: 0, needed: 1 });
    await stock.restore('end');
    await untouched();
  });

  it.each<Partial<LaidBar>>([{ outsideDiameter: 42.4 }, { wall: 2 }, { grade: '304L' }, { length: 5990 }])(
    'where the row is of another tube than the layout says: %j',
    async (other) => {
      expect(await take(asked([laid('rack'), laid('rack', other)]))).toMatchObject({ kind: 'changed', name: 'rack' });
      await untouched();
    },
  );

  it('where its price is in another currency; one without a price has none', async () => {
    const request = asked([laid('rack')]);
    const dollars = { ...request, layout: { ...request.layout, currency: 'USD' } };
    expect(await take(dollars)).toEqual({ kind: 'mixed-currencies', name: 'rack', currency: 'EUR' });
    await untouched();
    expect(await take({ ...dollars, layout: { ...layout(END), currency: 'USD' } })).toMatchObject({ kind: 'taken' });
  });

  it('of two at once for the last of them exactly one gets it', async () => {
    const outcomes = await Promise.all(['a', 'b', 'c'].map((key) => take(asked([END], { key, offcuts: [] }))));
    expect(outcomes.map(({ kind }) => kind).sort()).toEqual(['short', 'short', 'taken']);
    expect(await counts()).toEqual({ rack: 3 });
  });
});

describe('putting bars back', () => {
  it('has every bar and remnant there again and its offcuts gone; once and for all', async () => {
    const before = (await stock.all()).map(({ document }) => document);
    await take(asked([laid('rack'), laid('rack'), END]));
    expect(await stock.takeBack(1, at(5))).toMatchObject({ kind: 'back', taking: { number: 1, undoneAt: at(5) } });
    expect((await stock.all()).map(({ document }) => document)).toEqual(before);
    expect(await stock.takeBack(1, at(6))).toMatchObject({ kind: 'back', taking: { undoneAt: at(5) } });
    expect(await counts()).toEqual({ rack: 3, end: 1 });
    expect(await stock.takings()).toMatchObject([{ number: 1, undoneAt: at(5) }]);
  });

  it('leaves an offcut that is metal of its bar again without a count, even if it is restored', async () => {
    await take(asked([laid('rack')]));
    await stock.takeBack(1, at(5));
    expect(await stock.restore('new-1')).toMatchObject({ document: { name: 'R1-1', count: 0 } });
  });

  it('goes on from what the row has become', async () => {
    await take(asked([laid('rack')]));
    await stock.save('rack', bar('rack by the door', { count: 7 }), 2, at(3));
    await stock.takeBack(1, at(4));
    expect(await stock.all()).toMatchObject([{ document: { name: 'rack by the door', count: 8 } }, { id: 'end' }]);
  });

  it('brings only its own bars back where the row was taken out meanwhile', async () => {
    await take(asked([laid('rack')]));
    await stock.remove('rack', at(3));
    await stock.takeBack(1, at(4));
    expect(await counts()).toMatchObject({ rack: 1 });
  });

  it('is refused where an offcut was cut up, until that is put back too', async () => {
    await take(asked([laid('rack')]));
    const offcutBar = laid('new-1', { remnant: true, length: 3491 });
    await take(asked([offcutBar], { key: 'second', offcuts: [] }), 3);
    const book = await stock.takings();
    expect(await stock.takeBack(1, at(4))).toEqual({ kind: 'offcut-gone', name: 'R1-1' });
    expect(await counts()).toEqual({ rack: 2, end: 1 });
    expect(await stock.takings()).toEqual(book);
    await stock.takeBack(2, at(5));
    expect(await stock.takeBack(1, at(6))).toMatchObject({ kind: 'back' });
    expect(await counts()).toEqual({ rack: 3, end: 1 });
  });

  it.each<[string, Partial<StockBar>]>([
    ['shortened', { length: 3000 }],
    ['counted anew', { count: 2 }],
  ])('is refused where an offcut was %s', async (_how, change) => {
    await take(asked([laid('rack')]));
    await stock.save('new-1', { name: 'R1-1', ...offcut(3491), ...change }, 1, at(3));
    expect(await stock.takeBack(1, at(4))).toEqual({ kind: 'offcut-gone', name: 'R1-1' });
  });

  it('does not mind an offcut that only has another name', async () => {
    await take(asked([laid('rack')]));
    await stock.save('new-1', { ...offcut(3491), name: 'by the window' }, 1, at(3));
    expect(await stock.takeBack(1, at(4))).toMatchObject({ kind: 'back' });
  });

  it('knows numbers that never were', async () => {
    expect(await stock.takeBack(9, at(1))).toEqual({ kind: 'unknown' });
  });
});
