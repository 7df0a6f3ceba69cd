import { afterEach, beforeEach } from 'vitest';
import { openDatabase, type Database } from '../../db/database.ts';
import { stockRepository, type StockRepository } from '../../db/stock-repository.ts';
import type { TakingAsked } from '../../db/stock-takings.ts';
import type { LaidBar, StockBar, StockLayout } from '../../server/job/stock.ts';
import { at, bar } from './kept-things.ts';

/** A remnant as it lies in stock. */
export const OLD_END = bar('old end', { remnant: true, length: 1500, count: 1, price: null, heat: 'H-9' });

export const laid = (id: string, more: Partial<LaidBar> = {}): LaidBar => ({
  stock: id,
  name: 'as it was called',
  remnant: false,
  outsideDiameter: 38.1,
  wall: 1.65,
  grade: '316L',
  length: 6000,
  price: 9000,
  heat: 'H-1',
  times: 1,
  pieces: [{ name: 'hoop', length: 2500, job: '' }],
  ...more,
});
export const layout = (...bars: LaidBar[]): StockLayout => ({
  found: 'proven',
  date: '2026-11-26',
  saw: { kerf: 2, endTrim: 5, leastRemnant: 300 },
  currency: 'EUR',
  minorDigits: 2,
  bars,
  taken: null,
});
export const offcut = (length: number): Omit<StockBar, 'name'> => {
  const { name: _name, ...rest } = bar('', { remnant: true, count: 1, price: null, length });
  return rest;
};
export const asked = (bars: LaidBar[], more: Partial<TakingAsked> = {}): TakingAsked => ({
  key: 'first-key',
  jobId: null,
  together: [],
  title: 'Rail',
  layout: layout(...bars),
  offcuts: [offcut(3491)],
  ...more,
});

/** The remnant as a layout has it. */
export const END = laid('end', { remnant: true, length: 1500, price: 0, heat: 'H-9' });

/** A stock of its own for each test of a file: bars in a rack and an old end; its new ids are new-1, new-2 … */
export function stockOfEachTest() {
  let opened: { readonly database: Database; readonly stock: StockRepository } | undefined;
  let ids = 0;
  const newId = () => `new-${String((ids += 1))}`;
  const now = () => {
    if (opened === undefined) throw new Error('The stock is filled before each test of its file.');
    return opened;
  };
  beforeEach(async () => {
    ids = 0;
    const database = await openDatabase(':memory:');
    const stock = stockRepository(database);
    opened = { database, stock };
    await stock.add('rack', bar('rack'), at(1));
    await stock.add('end', OLD_END, at(1));
  });
  afterEach(() => now().database.destroy());
  return {
    get stock() {
      return now().stock;
    },
    newId,
    take: (request: TakingAsked, minute = 2) => now().stock.take(request, newId, at(minute)),
    counts: async () => Object.fromEntries((await now().stock.all()).map(({ id, document }) => [id, document.count])),
  };
}
