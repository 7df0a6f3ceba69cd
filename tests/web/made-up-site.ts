import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import { figure } from '../../server/solver/figure.ts';

export const hoop = newJob('hoop');

/** The job with something else said of its site. */
export const withSite = (site: Partial<Job['site']>, job: Job = hoop): Job => ({
  ...job,
  site: { ...job.site, ...site },
});

/** Made-up numbers of a plan. */
export const degrees = (value: number) => figure(value, 'deg', 'x = y', [], ['first-order']);
export const millimetres = (value: number) => figure(value, 'mm', 'x = y', [], ['first-order']);
