import { Job } from '../job/job.ts';
import type { Schema } from '../job/check-value.ts';
import { problemsOf } from '../job/validate.ts';
import { Plan } from '../plan/plan.ts';
import type { App } from '../routes/app-type.ts';
import { RequestError } from '../routes/request-error.ts';

/**
 * Holds requests against their schemas with the same words that a job gets. A document that a schema only points
 * at (a Job) passes here and is read by its route. Answers are typed by their schemas and written as plain JSON.
 */
export function checkRequests(app: App): void {
  app.addSchema({ ...Job, $id: 'Job' });
  app.addSchema({ ...Plan, $id: 'Plan' });
  app.setValidatorCompiler<Schema>(({ schema }) => (value: unknown) => {
    const problems = problemsOf(schema, value);
    const [first] = problems;
    if (first === undefined) return { value };
    return { error: new RequestError(400, 'request-not-valid', first.message, { problems }) };
  });
  app.setSerializerCompiler(() => (answer) => JSON.stringify(answer));
}
