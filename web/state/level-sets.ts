import type { Job } from '../../server/job/job.ts';
import { LEVEL_SETS } from './level-readings.ts';
import { valueAt, withValue } from './pointer.ts';
import { withoutRow } from './rows.ts';
import { sitePlaces } from './site-places.ts';

/** Pointers of every place that names a set of readings: what was found by plumb line or off plumb while it held. */
const placesOfSets = (job: Job): readonly string[] =>
  sitePlaces(job, (key, value) => key === 'set' && typeof value === 'number');

/** Whether something else rests on a set: it cannot be taken out before that does. */
export const isSetUsed = (job: Job, set: number): boolean =>
  placesOfSets(job).some((pointer) => valueAt(job, pointer) === set + 1);

/** The job without a set; what names a later one goes on naming it. */
export function withoutSet(job: Job, set: number): Job {
  const moved = placesOfSets(job).reduce((next, pointer) => {
    const number = Number(valueAt(next, pointer));
    return number > set + 1 ? withValue(next, pointer, number - 1) : next;
  }, job);
  return withoutRow(moved, LEVEL_SETS, set);
}
