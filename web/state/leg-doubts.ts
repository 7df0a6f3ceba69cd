import type { Job } from '../../server/job/job.ts';
import type { Site } from '../../server/job/site.ts';
import { doubtWords } from '../../server/language/doubt-words.ts';
import type { Doubt } from '../../server/plan/leg.ts';
import { valueAt } from './pointer.ts';
import { nameAtField } from './site-names.ts';

/**
 * The field that a doubtful value is typed in: a reading of a level stands for its angle or height, the head of a leg for
 * the place that is marked on the tube, a list of readings for the first of them.
 */
export function fieldToMeasure(job: Job, field: string): string {
  const value = valueAt(job, field);
  if (Array.isArray(value)) return value.length === 0 ? field : fieldToMeasure(job, `${field}/0`);
  if (typeof value !== 'object' || value === null) return field;
  const key = ['angle', 'height', 'value', 'x', 'spot', 'named', 'distance', 'shape'].find((one) => one in value);
  return key === undefined ? field : `${field}/${key}`;
}

/** What a part of a band comes from, something without a name by its number. */
export const doubtAt = (site: Site, doubt: Doubt): string =>
  doubtWords(doubt.name === '' ? { ...doubt, name: nameAtField(site, doubt.field) } : doubt);
