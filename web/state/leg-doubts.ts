import type { Job } from '../../server/job/job.ts';
import { valueAt } from './pointer.ts';

/**
 * The field that a doubtful value is typed in: a reading of a level stands for its angle or height, the head of a leg for
 * the place that is marked on the tube.
 */
export function fieldToMeasure(job: Job, field: string): string {
  const value = valueAt(job, field);
  if (typeof value !== 'object' || value === null) return field;
  const key = ['angle', 'height', 'spot', 'named', 'distance'].find((one) => one in value);
  return key === undefined ? field : `${field}/${key}`;
}
