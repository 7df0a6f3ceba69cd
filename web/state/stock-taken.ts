import type { StockLayout } from '../../server/job/stock.ts';
import type { ListedTaking, Taking } from '../../server/job/stock-row.ts';
import { barsOn } from './bars-of-jobs.ts';

type Of = Pick<ListedTaking, 'jobId' | 'together'>;

/** Whether bars were taken for a job, alone or with others. */
export const isTakenFor = ({ jobId, together }: Of, id: string): boolean =>
  together.length === 0 ? jobId === id : together.some((one) => one.id === id);

/** The bars of a taking as one of its jobs keeps them, marked as taken; null where none of them is for this job. */
export function layoutFrom({ number, jobId, together, layout }: Taking, id: string): StockLayout | null {
  if (together.length === 0) return jobId === id ? { ...layout, taken: number } : null;
  const own = together.find((one) => one.id === id)?.name;
  if (own === undefined) return null;
  const bars = barsOn(layout.bars, own).map((bar) => ({
    ...bar,
    pieces: bar.pieces.map((piece) => ({ ...piece, job: piece.job === own ? '' : piece.job })),
  }));
  return bars.length === 0 ? null : { ...layout, bars, taken: number };
}
