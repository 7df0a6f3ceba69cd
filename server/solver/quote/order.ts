import type { Job } from '../../job/job.ts';
import type { StockLayout } from '../../job/stock.ts';
import type { Quantities } from './quantities.ts';

/** A piece of work to be priced at the rates of a job, however many frames of it there are. */
export type Task = { readonly quantities: Quantities; readonly job: Job };

/**
 * So many frames of it. `layout`: the kept layout whose bars its tube is sawn from, where it is the one that was laid out;
 * without it tube goes by the metre or by first fit.
 */
export type Order = Task & { readonly quantity: number; readonly layout?: StockLayout | null };
