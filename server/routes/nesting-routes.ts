import { setImmediate } from 'node:timers/promises';
import { Type } from 'typebox';
import { Nesting, NestingRequest } from '../nesting/nesting.ts';
import { nestingDesk, type NestingOrder } from '../nesting/nesting-desk.ts';
import { jobNames } from '../nesting/job-names.ts';
import { nestedSum, nestingResult } from '../nesting/nesting-result.ts';
import { nestedTrouble, troubleAhead } from '../nesting/nesting-trouble.ts';
import { isSameCurrency, priceableRows, type Currency } from '../nesting/priceable-rows.ts';
import { sizesToCut, type NestedJob } from '../nesting/sizes-to-cut.ts';
import { lastFew } from '../solver/memory.ts';
import { plan } from '../solver/plan.ts';
import type { App } from './app-type.ts';
import { openJob } from './jobs-routes.ts';
import { readJob } from './read-job.ts';
import { RequestError } from './request-error.ts';
import { JobDocument, KeptParams, refusals } from './schemas.ts';
import { twoCurrencies } from './stock-refusals.ts';
import type { StockService } from './stock-routes.ts';

const Asked = Type.Object({ ...NestingRequest.properties, job: JobDocument }, { additionalProperties: false });

type Wanted = Pick<NestingRequest, 'job' | 'id' | 'quantity' | 'with'>;

function mixedCurrencies(whose: string, priced: Currency, own: Currency): RequestError {
  const [theirs, ours] = twoCurrencies(priced, own);
  return new RequestError(
    422,
    'mixed-currencies',
    `${whose} is priced in ${theirs} and this job in ${ours}. Prices in two currencies never add up: put one of them right, or leave it out.`,
  );
}

const nothingToCut = (): RequestError =>
  new RequestError(
    422,
    'nothing-to-cut',
    'This job has no piece that is cut from a bar. Its frame has to be planned first; the plan says what is missing.',
  );

const busy = (): RequestError =>
  new RequestError(503, 'busy', 'Other searches for bars wait already. Try again in a minute.');

const tooMuch = (why: string): RequestError => new RequestError(422, 'layout-too-large', why);

const unknownNesting = (id: string): RequestError =>
  new RequestError(
    404,
    'nesting-unknown',
    `There is no search for bars ${id}, or it ended a while ago. Start it again.`,
  );

/** Jobs whose frames are kept, so that laying them out anew plans nothing twice: as many as are cut together. */
const KEPT_FRAMES = 21;

/** Bars for the pieces of some jobs, sought beside the plan: searches are started, looked at and ended. */
export function nestingRoutes(app: App, { jobs, stock, now, newId }: StockService): void {
  const tags = ['stock'];
  const desk = nestingDesk();
  app.addHook('preClose', (done) => {
    desk.stop();
    done();
  });

  const memory = lastFew(KEPT_FRAMES);

  /** This job and the stored ones that are cut with it, each with its name on the bars of the others. */
  async function nestedJobs({ job, id, quantity, with: others }: Wanted): Promise<NestedJob[]> {
    const read = [{ id: '', stored: id ?? '', job, quantity }];
    for (const other of new Set(others))
      if (other !== id) {
        const { job: theirs } = await openJob(jobs, other);
        read.push({ id: other, stored: other, job: theirs, quantity: theirs.quote.quantities[0] ?? 1 });
      }
    const names = jobNames(read.map((one) => ({ id: one.stored, title: one.job.title })));
    const nested: NestedJob[] = [];
    for (const [index, one] of read.entries()) {
      const title = names[index] ?? one.id;
      if (!isSameCurrency(one.job.rates, job.rates))
        throw mixedCurrencies(`The job "${title}"`, one.job.rates, job.rates);
      nested.push({ id: one.id, title, quantity: one.quantity, pieces: plan(one.job, memory).stock?.pieces ?? [] });
      // a plan takes its time, and others want an answer meanwhile
      await setImmediate();
    }
    return nested;
  }

  /** What the desk is asked for. */
  async function orderOf(wanted: Wanted, useStock: boolean, seconds: number): Promise<NestingOrder> {
    const nested = await nestedJobs(wanted);
    if (nested[0]?.pieces.length === 0) throw nothingToCut();
    const { rates } = wanted.job;
    const { saw } = wanted.job.stock;
    const { rows, leftOut } = priceableRows(useStock ? await stock.all() : [], nested, rates);
    const sizes = sizesToCut({ jobs: nested, stock: rows, rates, saw });
    const ahead = troubleAhead(sizes);
    if (ahead !== '') throw tooMuch(ahead);
    const { currency, minorDigits } = rates;
    const date = now().slice(0, 10);
    const all = { sizes, jobs: nested, saw, currency, minorDigits, credit: rates.remnantCredit.value, date, leftOut };
    const tasks = sizes.map(({ task }) => task);
    return {
      task: { sizes: tasks, seconds },
      pieces: tasks.flatMap((task) => task.pieces).reduce((sum, { count }) => sum + count, 0),
      sum: (found) => nestedSum(all, found),
      result: (found) => nestingResult(all, found),
      trouble: (found) => nestedTrouble(sizes, found, leftOut),
    };
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
      // before anything is planned: who has to come back later has cost nothing
      const place = desk.place();
      if (place === null) throw busy();
      try {
        const { useStock, seconds, ...wanted } = request.body;
        const order = await orderOf({ ...wanted, job: readJob(wanted.job) }, useStock, seconds);
        return await reply.code(202).send(place.start(newId(), order));
      } finally {
        place.leave();
      }
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
