import { Type } from 'typebox';
import type { JobRepository } from '../../db/job-repository.ts';
import { OwnTime } from '../plan/quote.ts';
import { ownTimes } from '../solver/quote/own-times.ts';
import type { App } from './app-type.ts';

/** What the work of the shop really took, over all its jobs. */
export function timesRoutes(app: App, { jobs }: { readonly jobs: JobRepository }): void {
  app.get(
    '/api/shop/times',
    {
      schema: {
        tags: ['shop'],
        summary:
          'What the work really took, operation by operation, over all jobs that are neither deleted nor made up',
        response: { 200: Type.Array(OwnTime) },
      },
    },
    async () => ownTimes(await jobs.times()),
  );
}
