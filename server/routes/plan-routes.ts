import { planInWords } from '../plan-in-words.ts';
import { lastFew } from '../solver/memory.ts';
import type { App } from './app-type.ts';
import { readJob } from './read-job.ts';
import { JobDocument, PlanDocument, refusals } from './schemas.ts';

/** Frames whose bends and ways are kept for the next letter typed: a few people at work at once. */
const KEPT_FRAMES = 8;

export function planRoutes(app: App): void {
  const memory = lastFew(KEPT_FRAMES);
  app.post(
    '/api/plan',
    {
      // a plan is all ours and holds what its schema says, which the tests look at; writing it branch by branch
      // costs as much as making it
      serializerCompiler: () => (plan) => JSON.stringify(plan),
      schema: {
        tags: ['plan'],
        summary: 'Everything that can be said about a job; nothing is stored',
        body: JobDocument,
        response: { 200: PlanDocument, ...refusals(400, 413, 415, 422) },
      },
    },
    (request) => planInWords(readJob(request.body), memory),
  );
}
