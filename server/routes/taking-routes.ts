import { Type } from 'typebox';
import type { TakeOutcome } from '../../db/stock-takings.ts';
import type { StockRepository } from '../../db/stock-repository.ts';
import type { StockLayout } from '../job/stock.ts';
import type { Taking } from '../job/stock-row.ts';
import type { App } from './app-type.ts';
import { openJob, type JobsService } from './jobs-routes.ts';
import { offcutsOf } from './offcuts.ts';
import { readStockLayout } from './read-stock.ts';
import { JobParams, StockLayoutDocument, TakingAnswer, TakingParams, refusals } from './schemas.ts';
import {
  changedStock,
  goneOffcut,
  mixedCurrencies,
  shortStock,
  takenLayout,
  unknownTaking,
  usedKey,
} from './stock-refusals.ts';

/** What a taking came to, or the refusal that says why nothing was taken. */
function takenOr(outcome: TakeOutcome, { currency }: StockLayout): Taking {
  switch (outcome.kind) {
    case 'taken':
      return outcome.taking;
    case 'short':
      throw shortStock(outcome);
    case 'changed':
      throw changedStock(outcome.name);
    case 'mixed-currencies':
      throw mixedCurrencies(outcome.name, outcome.currency, currency);
    case 'key-used':
      throw usedKey(outcome.taking);
  }
}

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
        summary: 'What was taken of the stock, the last taking first',
        response: { 200: Type.Array(TakingAnswer) },
      },
    },
    () => stock.takings(),
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
          title: Type.String({ maxLength: 120, title: 'title' }),
          layout: StockLayoutDocument,
        }),
        response: { 201: TakingAnswer, ...refusals(400, 404, 409, 410, 413, 415, 422) },
      },
    },
    async (request, reply) => {
      const { key, jobId, title } = request.body;
      const layout = readStockLayout(request.body.layout);
      if (layout.taken !== null) throw takenLayout(layout.taken);
      if (jobId !== null) await openJob(jobs, jobId);
      const asked = { key, jobId, title, layout, offcuts: offcutsOf(layout) };
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
      const outcome = await stock.takeBack(Number(number), now());
      if (outcome.kind === 'unknown') throw unknownTaking(number);
      if (outcome.kind === 'offcut-gone') throw goneOffcut(outcome.name);
      return outcome.taking;
    },
  );
}
