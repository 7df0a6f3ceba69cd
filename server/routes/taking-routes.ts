import { Type } from 'typebox';
import type { TakeOutcome } from '../../db/stock-takings.ts';
import type { StockRepository } from '../../db/stock-repository.ts';
import type { StockLayout } from '../job/stock.ts';
import type { Taking } from '../job/stock-row.ts';
import { barsTogether } from '../solver/stock/bars-alike.ts';
import { takingOffcuts } from '../solver/stock/taking-offcuts.ts';
import type { App } from './app-type.ts';
import { openJob, type JobsService } from './jobs-routes.ts';
import { readStockLayout } from './read-stock.ts';
import { JobParams, ListedTakingAnswer, StockLayoutDocument, TakingAnswer, TakingParams, refusals } from './schemas.ts';
import {
  changedStock,
  fullRow,
  goneOffcut,
  mixedCurrencies,
  overfullBar,
  shortStock,
  takenBefore,
  takenLayout,
  unknownTaking,
  usedKey,
} from './stock-refusals.ts';

/** What a taking came to, or the refusal that says why nothing was taken. */
function takenOr(outcome: TakeOutcome, layout: StockLayout): Taking {
  switch (outcome.kind) {
    case 'taken':
      return outcome.taking;
    case 'short':
      throw shortStock(outcome);
    case 'changed':
      throw changedStock(outcome.name, outcome.what);
    case 'mixed-currencies':
      throw mixedCurrencies(outcome.name, outcome.priced, layout);
    case 'already':
      throw takenBefore(outcome.taking);
    case 'key-used':
      throw usedKey(outcome.taking);
  }
}

/** As many jobs as are cut from the same bars at once, each by the name that its pieces bear. */
const Together = Type.Array(
  Type.Object({ id: JobParams.properties.id, name: Type.String({ minLength: 1, maxLength: 120, title: 'name' }) }),
  { maxItems: 21, title: 'jobs that are cut together' },
);

/** Bars are taken by the layout that they are cut by, all of them at once, and can be put back. */
export function takingRoutes(
  app: App,
  { jobs, stock, now, newId }: JobsService & { readonly stock: StockRepository },
): void {
  const tags = ['stock'];

  app.get(
    '/api/stock/takings',
    {
      schema: {
        tags,
        summary: 'The latest that was taken of the stock, the last taking first, without the pieces of each bar',
        response: { 200: Type.Array(ListedTakingAnswer) },
      },
    },
    () => stock.takings(),
  );

  app.get(
    '/api/stock/takings/:number',
    {
      schema: {
        tags,
        summary: 'One taking with what is cut from its bars',
        params: TakingParams,
        response: { 200: TakingAnswer, ...refusals(400, 404) },
      },
    },
    async (request) => {
      const { number } = request.params;
      const taking = await stock.taking(Number(number));
      if (taking === null) throw unknownTaking(number);
      return taking;
    },
  );

  app.post(
    '/api/stock/takings',
    {
      schema: {
        tags,
        summary: 'Take the bars of a layout, and put its offcuts into stock; the same key again takes nothing more',
        body: Type.Object({
          key: Type.String({ pattern: '^[\\w-]{8,64}$', title: 'key', description: 'a uuid made by who asks' }),
          jobId: Type.Union([JobParams.properties.id, Type.Null()], { title: 'job id' }),
          together: Together,
          title: Type.String({ maxLength: 120, title: 'title' }),
          layout: StockLayoutDocument,
        }),
        response: { 201: TakingAnswer, ...refusals(400, 404, 409, 410, 413, 415, 422) },
      },
    },
    async (request, reply) => {
      const { key, jobId, together, title } = request.body;
      const asTyped = readStockLayout(request.body.layout);
      if (asTyped.taken !== null) throw takenLayout(asTyped.taken);
      for (const { id } of together) await openJob(jobs, id);
      const job = jobId === null ? null : (await openJob(jobs, jobId)).job;
      // cut by the saw that the job has now, as its plan and its price are
      const layout = job === null ? asTyped : { ...asTyped, saw: job.stock.saw };
      const { offcuts, overfull } = takingOffcuts(layout, job?.rates ?? null);
      if (overfull !== null)
        throw overfullBar(1 + barsTogether(layout.bars.slice(0, overfull)), layout.bars[overfull]?.length ?? 0);
      const asked = { key, jobId, together, title, layout, offcuts };
      const outcome = await stock.take(asked, newId, now());
      return reply.code(201).send(takenOr(outcome, layout));
    },
  );

  app.delete(
    '/api/stock/takings/:number',
    {
      schema: {
        tags,
        summary: 'Put the bars of a taking back and its offcuts away again',
        params: TakingParams,
        response: { 200: TakingAnswer, ...refusals(400, 404, 409) },
      },
    },
    async (request) => {
      const { number } = request.params;
      const outcome = await stock.takeBack(Number(number), newId, now());
      if (outcome.kind === 'unknown') throw unknownTaking(number);
      if (outcome.kind === 'row-full') throw fullRow(outcome);
      if (outcome.kind === 'offcut-gone') throw goneOffcut(outcome.name);
      return outcome.taking;
    },
  );
}
