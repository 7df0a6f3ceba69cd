import type { Document } from '../../server/job/check-value.ts';
import { newJob } from '../../server/job/default-job.ts';
import { versionOneJob } from './version-1-job.ts';

/** A new job with its rates as versions 1 to 5 had them, and without what came with quotes. */
export function jobBeforeQuotes(shape: 'hoop' | 'straight'): Document {
  const { stock: _stock, quote: _quote, log: _log, ...rest } = newJob(shape);
  return { ...rest, rates: structuredClone(versionOneJob.rates) };
}
