import type { Units } from '../../server/job/job.ts';

/** The unit in which the stock is read where no job is open, kept on this machine. */
const KEY = 'hoopwright.stock.units';

/** Sixteenths, as a tape has them; common practice, no source. */
const FRACTION = 16;

export const stockUnits = (): Units => ({
  length: localStorage.getItem(KEY) === 'inch' ? 'inch' : 'mm',
  fraction: FRACTION,
});

export const keepStockUnits = ({ length }: Units): void => {
  localStorage.setItem(KEY, length);
};
