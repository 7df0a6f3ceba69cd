import { setImmediate } from 'node:timers/promises';
import { Type } from 'typebox';
import type { Job } from '../job/job.ts';
import type { StockRow } from '../job/stock-row.ts';
import { Nesting, NestingRequest } from '../nesting/nesting.ts';
import { nestingDesk } from '../nesting/nesting-desk.ts';
import { nestedSum, nestedTrouble, nestingResult } from '../nesting/nesting-result.ts';
import { sizesToCut, type NestedJob } from '../nesting/sizes-to-cut.ts';
import { plan } from '../solver/plan.ts';
import { isSameKind } from '../solver/stock/tube-sizes.ts';
import type { App } from './app-type.ts';
import { openJob } from './jobs-routes.ts';
import { readJob } from './read-job.ts';
import { RequestError } from './request-error.ts';
import { JobDocument, KeptParams, refusals } from './schemas.ts';
import type { StockService } from './stock-routes.ts';

const Asked = Type.Object({ ...NestingRequest.properties, job: JobDocument }, { additionalProperties: false });

const mixedCurrencies = (whose: string, theirs: string, ours: string): RequestError =>
  new RequestError(
    422,
    'mixed-currencies',
    `${whose} is priced in ${theirs} and this job in ${ours}. Prices in two currencies never add up: put one of them right, or leave it out.`,
  );

const nothingToCut = (): RequestError =>
  new RequestError(
    422,
    'nothing-to-cut',
    'This job has no piece that is cut from a bar. Its frame has to be planned first; the plan says what is missing.',
  );

const busy = (): RequestError =>
  new RequestError(503, 'busy', 'Other searches for bars wait already. Try again in a minute.');

const unknownNesting = (id: string): RequestError =>
  new RequestError(
    404,
    'nesting-unknown',
    `There is no search for bars ${id}, or it ended a while ago. Start it again.`,
  );

/** The pieces of one job, as its plan shows them. */
const nestedJob = (job: Job, of: Pick<NestedJob, 'id' | 'title' | 'quantity'>): NestedJob => ({
  ...of,
  pieces: plan(job).stock?.pieces ?? [],
});

/** Rows with a price of bars that could be cut, all in the currency of the job. */
function priced(stock: readonly StockRow[], jobs: readonly NestedJob[], currency: string): readonly StockRow[] {
  const usable = stock.filter(({ document }) =>
    jobs.some(({ pieces }) => pieces.some((piece) => isSameKind(piece, document))),
  );
  for (const { document } of usable)
    if (document.count > 0 && document.price !== null && document.currency !== currency)
      throw mixedCurrencies(`The bar "${document.name}" in stock`, document.currency, currency);
  return usable;
}

/** Bars for the pieces of some jobs, sought beside the plan: searches are started, looked at and ended. */
export function nestingRoutes(app: App, { jobs, stock, now, newId }: StockService): void {
  const tags = ['stock'];
  const desk = nestingDesk();
  app.addHook('preClose', (done) => {
    desk.stop();
    done();
  });

  /** This job and the stored ones that are cut with it. */
  async function nestedJobs(job: Job, quantity: number, ids: readonly string[]): Promise<NestedJob[]> {
    const nested = [nestedJob(job, { id: '', title: '', quantity })];
    for (const id of new Set(ids)) {
      const { job: other } = await openJob(jobs, id);
      const title = other.title.trim() === '' ? id : other.title;
      if (other.rates.currency !== job.rates.currency)
        throw mixedCurrencies(`The job "${title}"`, other.rates.currency, job.rates.currency);
      nested.push(nestedJob(other, { id, title, quantity: other.quote.quantities[0] ?? 1 }));
      // a plan takes its time, and others want an answer meanwhile
      await setImmediate();
    }
    return nested;
  }

  app.post(
    '/api/nestings',
    {
      schema: {
        tags,
        summary: 'Seek the cheapest bars for the pieces of a job, with other jobs or without; it goes on by itself',
        body: Asked,
        response: { 202: Nesting, ...refusals(400, 404, 410, 413, 415, 422, 503) },
      },
    },
    async (request, reply) => {
      const { quantity, useStock, seconds, with: others } = request.body;
      const job = readJob(request.body.job);
      const nested = await nestedJobs(job, quantity, others);
      if (nested[0]?.pieces.length === 0) throw nothingToCut();
      const { rates } = job;
      const { saw } = job.stock;
      const rows = useStock ? priced(await stock.all(), nested, rates.currency) : [];
      const sizes = sizesToCut({ jobs: nested, stock: rows, rates, saw });
      const date = now().slice(0, 10);
      const all = { sizes, jobs: nested, saw, currency: rates.currency, credit: rates.remnantCredit.value, date };
      const tasks = sizes.map(({ task }) => task);
      const pieces = tasks.flatMap((task) => task.pieces).reduce((sum, { count }) => sum + count, 0);
      const started = desk.start(newId(), {
        task: { sizes: tasks, seconds },
        pieces,
        sum: (found) => nestedSum(all, found),
        result: (found) => nestingResult(all, found),
        trouble: (found) => nestedTrouble(all, found),
      });
      if (started === null) throw busy();
      return reply.code(202).send(started);
    },
  );

  app.get(
    '/api/nestings/:id',
    {
      schema: {
        tags,
        summary: 'How far a search for bars has come, with the best so far or what was found',
        params: KeptParams,
        response: { 200: Nesting, ...refusals(400, 404) },
      },
    },
    (request) => {
      const nesting = desk.look(request.params.id);
      if (nesting === null) throw unknownNesting(request.params.id);
      return nesting;
    },
  );

  app.delete(
    '/api/nestings/:id',
    {
      schema: {
        tags,
        summary: 'End a search for bars; the best so far stays for a while',
        params: KeptParams,
        response: { 204: Type.Null(), ...refusals(400, 404) },
      },
    },
    async (request, reply) => {
      if (!desk.cancel(request.params.id)) throw unknownNesting(request.params.id);
      return reply.code(204).send(null);
    },
  );
}
