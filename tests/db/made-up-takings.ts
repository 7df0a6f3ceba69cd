import type { TakingAsked } from '../../db/stock-takings.ts';
import type { LaidBar, StockBar, StockLayout } from '../../server/job/stock.ts';
import { bar } from './kept-things.ts';

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
