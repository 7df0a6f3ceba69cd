import type { Job } from '../../server/job/job.ts';
import { valueAt, withValue } from './pointer.ts';

/** The rows of a table in the job. */
export function rowsAt(job: Job, pointer: string): readonly unknown[] {
  const rows = valueAt(job, pointer);
  return Array.isArray(rows) ? rows : [];
}

/**
 * The job with its rows in another order, fewer or more. `order` names for each new row the old one that it was, or
 * a fresh value; texts as typed go along with their rows.
 */
export function withRows(job: Job, pointer: string, order: readonly (number | { fresh: unknown })[]): Job {
  const rows = rowsAt(job, pointer);
  const next = order.map((entry) => (typeof entry === 'number' ? rows[entry] : entry.fresh));
  const places = new Map(order.map((entry, place) => [entry, place]));
  const texts: Record<string, string> = {};
  const prefix = `${pointer}/`;
  for (const [key, text] of Object.entries(job.asTyped)) {
    if (!key.startsWith(prefix)) {
      texts[key] = text;
      continue;
    }
    const [index = '', ...rest] = key.slice(prefix.length).split('/');
    const place = places.get(Number(index));
    if (place !== undefined) texts[[pointer, String(place), ...rest].join('/')] = text;
  }
  return { ...withValue(job, pointer, next), asTyped: texts };
}

const indices = (count: number): number[] => Array.from({ length: count }, (_, index) => index);

export const withRowAdded = (job: Job, pointer: string, fresh: unknown): Job =>
  withRows(job, pointer, [...indices(rowsAt(job, pointer).length), { fresh }]);

/** The job with a fresh row before the one that stands at an index. */
export const withRowInserted = (job: Job, pointer: string, index: number, fresh: unknown): Job => {
  const order: (number | { fresh: unknown })[] = indices(rowsAt(job, pointer).length);
  order.splice(index, 0, { fresh });
  return withRows(job, pointer, order);
};

export const withRowsReversed = (job: Job, pointer: string): Job =>
  withRows(job, pointer, indices(rowsAt(job, pointer).length).reverse());

export const withoutRow = (job: Job, pointer: string, index: number): Job =>
  withRows(
    job,
    pointer,
    indices(rowsAt(job, pointer).length).filter((row) => row !== index),
  );

/** Swaps a row with the one above (−1) or below (+1); the job as it is where there is none. */
export function withRowMoved(job: Job, pointer: string, index: number, by: -1 | 1): Job {
  const order = indices(rowsAt(job, pointer).length);
  const other = index + by;
  if (order[index] === undefined || order[other] === undefined) return job;
  order[index] = other;
  order[other] = index;
  return withRows(job, pointer, order);
}
