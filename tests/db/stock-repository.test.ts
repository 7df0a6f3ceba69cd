import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openDatabase, type Database } from '../../db/database.ts';
import { stockRepository, type StockRepository } from '../../db/stock-repository.ts';
import { at, bar } from './kept-things.ts';

let database: Database;
let stock: StockRepository;

beforeEach(async () => {
  database = await openDatabase(':memory:');
  stock = stockRepository(database);
});
afterEach(() => database.destroy());

describe('the stock', () => {
  it('is empty at first, and then by size, grade and length with the longest first', async () => {
    expect(await stock.all()).toEqual([]);
    await stock.add('a', bar('thick', { wall: 2 }), at(1));
    await stock.add('b', bar('short', { length: 900, remnant: true, count: 1, price: null }), at(2));
    await stock.add('c', bar('rack 2'), at(3));
    await stock.add('d', bar('other grade', { grade: '304L' }), at(4));
    await stock.add('e', bar('rack 1'), at(5));
    await stock.add('f', bar('thin tube', { outsideDiameter: 25.4 }), at(6));
    expect((await stock.all()).map(({ id }) => id)).toEqual(['f', 'd', 'e', 'c', 'b', 'a']);
    expect((await stock.all())[0]).toEqual({
      id: 'f',
      revision: 1,
      savedAt: at(6),
      document: bar('thin tube', { outsideDiameter: 25.4 }),
    });
  });

  it('takes two rows of one name, and rows of which nothing is left', async () => {
    await stock.add('a', bar('rack'), at(1));
    await stock.add('b', bar('rack', { count: 0 }), at(2));
    expect((await stock.all()).map(({ document }) => document.count)).toEqual([3, 0]);
  });

  it('numbers each save, and a stale one writes nothing and gives what stands', async () => {
    await stock.add('a', bar('rack'), at(1));
    expect(await stock.save('a', bar('rack', { count: 5 }), 1, at(2))).toMatchObject({
      kind: 'saved',
      saved: { revision: 2, savedAt: at(2), document: { count: 5 } },
    });
    expect(await stock.save('a', bar('rack', { count: 9 }), 1, at(3))).toEqual({
      kind: 'stale',
      theirs: { id: 'a', revision: 2, savedAt: at(2), document: bar('rack', { count: 5 }) },
    });
    expect(await stock.save('a', bar('rack', { count: 5 }), 1, at(4))).toMatchObject({
      kind: 'saved',
      saved: { revision: 2 },
    });
    expect(await stock.all()).toMatchObject([{ revision: 2, document: { count: 5 } }]);
  });

  it('of two saves at once lets one win', async () => {
    await stock.add('a', bar('rack'), at(1));
    const outcomes = await Promise.all([5, 6, 7].map((count) => stock.save('a', bar('rack', { count }), 1, at(2))));
    expect(outcomes.map(({ kind }) => kind).sort()).toEqual(['saved', 'stale', 'stale']);
  });

  it('can be taken out and put back', async () => {
    await stock.add('a', bar('rack'), at(1));
    expect(await stock.remove('a', at(2))).toBe(true);
    expect(await stock.all()).toEqual([]);
    expect(await stock.save('a', bar('rack'), 1, at(3))).toEqual({ kind: 'deleted' });
    expect(await stock.restore('a')).toMatchObject({ id: 'a', document: bar('rack') });
    expect(await stock.all()).toHaveLength(1);
  });

  it('knows rows that never were', async () => {
    expect(await stock.save('x', bar('rack'), 1, at(1))).toEqual({ kind: 'unknown' });
    expect(await stock.remove('x', at(1))).toBe(false);
    expect(await stock.restore('x')).toBeNull();
  });

  it('takes nothing that is no bar, and says which row cannot be read', async () => {
    await expect(stock.add('a', bar('rack', { count: -1 }), at(1))).rejects.toThrow(/kept in stock: How many is -1/);
    await stock.add('a', bar('rack'), at(1));
    await expect(stock.save('a', bar('rack', { wall: 20 }), 1, at(2))).rejects.toThrow(/Wall is 20/);
    await database.updateTable('stock').set({ document: '{}' }).execute();
    await expect(stock.all()).rejects.toThrow(/Stock a cannot be read/);
  });
});
