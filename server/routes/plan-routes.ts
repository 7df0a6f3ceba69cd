import { planInWords } from '../plan-in-words.ts';
import type { App } from './app-type.ts';
import { readJob } from './read-job.ts';
import { JobDocument, PlanDocument, refusals } from './schemas.ts';

export function planRoutes(app: App): void {
  app.post(
    '/api/plan',
    {
      schema: {
        tags: ['plan'],
        summary: 'Everything that can be said about a job; nothing is stored',
        body: JobDocument,
        response: { 200: PlanDocument, ...refusals(400, 413, 415, 422) },
      },
    },
    (request) => planInWords(readJob(request.body)),
  );
}
