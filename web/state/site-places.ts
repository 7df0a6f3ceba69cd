import type { Job } from '../../server/job/job.ts';

const SITE = '/site';

/** Pointers of everything of the site that a test is true of, in the order of the job. */
export function sitePlaces(job: Job, is: (key: string, value: unknown) => boolean): readonly string[] {
  const within = (value: unknown, pointer: string): string[] => {
    if (typeof value !== 'object' || value === null) return [];
    return Object.entries(value).flatMap(([key, inner]: [string, unknown]) => [
      ...(is(key, inner) ? [`${pointer}/${key}`] : []),
      ...within(inner, `${pointer}/${key}`),
    ]);
  };
  return within(job.site, SITE);
}
