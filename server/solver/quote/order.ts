import type { Job } from '../../job/job.ts';
import type { Quantities } from './quantities.ts';

/** So many frames of one piece of work, to be priced at the rates of a job. */
export type Order = { readonly quantities: Quantities; readonly job: Job; readonly quantity: number };
