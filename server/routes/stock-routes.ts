import { Type } from 'typebox';
import type { StockRepository } from '../../db/stock-repository.ts';
import { StockBar, StockLayout } from '../job/stock.ts';
import type { App } from './app-type.ts';
import type { JobsService } from './jobs-routes.ts';
import { readStockBar } from './read-stock.ts';
import { KeptParams, StockBarDocument, StockRowAnswer, StaleStockAnswer, refusals } from './schemas.ts';
import { deletedRow, staleRow, unknownRow } from './stock-refusals.ts';
import { takingRoutes } from './taking-routes.ts';

export type StockService = JobsService & { readonly stock: StockRepository };

/** The bars and remnants of the shop, row by row; what is taken of them has routes of its own. */
export function stockRoutes(app: App, service: StockService): void {
  const { stock, now, newId } = service;
  const tags = ['stock'];
  app.addSchema({ ...StockBar, $id: 'StockBar' });
  app.addSchema({ ...StockLayout, $id: 'StockLayout' });

  app.get(
    '/api/stock',
    {
      schema: {
        tags,
        summary: 'The bars and remnants of the shop, by size, grade and length',
        response: { 200: Type.Array(StockRowAnswer) },
      },
    },
    () => stock.all(),
  );

  app.post(
    '/api/stock',
    {
      schema: {
        tags,
        summary: 'A new row of the stock: bars of one kind, or a remnant',
        body: Type.Object({ document: StockBarDocument }),
        response: { 201: StockRowAnswer, ...refusals(400, 413, 415, 422) },
      },
    },
    async (request, reply) =>
      reply.code(201).send(await stock.add(newId(), readStockBar(request.body.document), now())),
  );

  app.put(
    '/api/stock/:id',
    {
      schema: {
        tags,
        summary: 'Save a row of the stock, unless another save or a taking came first',
        params: KeptParams,
        body: Type.Object({
          document: StockBarDocument,
          basedOn: Type.Integer({ minimum: 1, maximum: 999_999_999, title: 'based on revision' }),
        }),
        response: { 200: StockRowAnswer, 409: StaleStockAnswer, ...refusals(400, 404, 410, 413, 415, 422) },
      },
    },
    async (request) => {
      const { id } = request.params;
      const yours = readStockBar(request.body.document);
      const outcome = await stock.save(id, yours, request.body.basedOn, now());
      if (outcome.kind === 'unknown') throw unknownRow(id);
      if (outcome.kind === 'deleted') throw deletedRow(id);
      if (outcome.kind === 'stale') throw staleRow(yours, outcome.theirs);
      return outcome.saved;
    },
  );

  app.delete(
    '/api/stock/:id',
    {
      schema: {
        tags,
        summary: 'Take a row out of the stock; it can be restored',
        params: KeptParams,
        response: { 204: Type.Null(), ...refusals(400, 404) },
      },
    },
    async (request, reply) => {
      const { id } = request.params;
      if (!(await stock.remove(id, now()))) throw unknownRow(id);
      return reply.code(204).send(null);
    },
  );

  app.post(
    '/api/stock/:id/restore',
    {
      schema: {
        tags,
        summary: 'Put a deleted row back into the stock',
        params: KeptParams,
        response: { 200: StockRowAnswer, ...refusals(400, 404) },
      },
    },
    async (request) => {
      const row = await stock.restore(request.params.id);
      if (row === null) throw unknownRow(request.params.id);
      return row;
    },
  );

  takingRoutes(app, service);
}
