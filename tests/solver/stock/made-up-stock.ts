import { newJob } from '../../../server/job/default-job.ts';
import type { Job, SettledJob } from '../../../server/job/job.ts';
import type { TubeRate } from '../../../server/job/rates.ts';
import type { LaidBar, StockLayout } from '../../../server/job/stock.ts';
import type { CutPiece } from '../../../server/plan/stock.ts';
import { figure } from '../../../server/solver/figure.ts';
import { settledShrinkage } from '../../../server/solver/welding/shrinkage.ts';

/** The tube that all of it is of. */
export const KIND = { outsideDiameter: 38.1, wall: 1.65, grade: '316L' } as const;

export const SAW = { kerf: 3, endTrim: 10, leastRemnant: 500 } as const;

export const pieceOf = (name: string, length: number, more: Partial<CutPiece> = {}): CutPiece => ({
  kind: 'member',
  of: name,
  part: 1,
  parts: 1,
  name,
  field: '/frame',
  ...KIND,
  length: figure(length, 'mm', 'L', [], ['geometry']),
  count: 1,
  ...more,
});

/** Pieces on a bar to be bought: this job's by name and length, another's with its title before a colon. */
export const barOf = (pieces: Readonly<Record<string, number>>, more: Partial<LaidBar> = {}): LaidBar => ({
  stock: '',
  name: 'rack 1',
  remnant: false,
  ...KIND,
  length: 6000,
  price: 9000,
  heat: '',
  times: 1,
  pieces: Object.entries(pieces).map(([key, length]) => {
    const [job, name] = key.includes(':') ? key.split(':') : ['', key];
    return { name: name!, length, job: job! };
  }),
  ...more,
});

export const layoutOf = (bars: readonly LaidBar[], more: Partial<StockLayout> = {}): StockLayout => ({
  found: 'proven',
  date: '',
  saw: SAW,
  currency: 'EUR',
  minorDigits: 2,
  bars: [...bars],
  taken: null,
  ...more,
});

/** A price of tube of any size, by the bar of 6 m. */
export const byBar = (perBar: number | null, barLength = 6000): TubeRate => {
  const own = (value: number | null) => ({ value, since: '', example: false });
  return { size: null, by: 'bar', perMetre: own(null), barLength, perBar: own(perBar) };
};

/** A job with its shrinkage settled, its bars by the bar at 90.00. */
export function stockJob(change: (job: Job) => Job = (job) => job): SettledJob {
  const begun = newJob('hoop');
  const job = change({
    ...begun,
    stock: { ...begun.stock, saw: SAW },
    rates: { ...begun.rates, tubes: [byBar(9000)], remnantCredit: { value: 0, since: '', example: false } },
    quote: { ...begun.quote, quantities: [1] },
  });
  return { ...job, closing: { ...job.closing, shrinkage: settledShrinkage(job) } };
}
