import { Type } from 'typebox';
import { KEPT_KINDS, KEPT_NAMES, KEPT_SCHEMAS, type Kept, type KeptKind } from '../job/kept.ts';
import type { ShopRepository } from '../../db/shop-repository.ts';
import type { App } from './app-type.ts';
import type { JobsService } from './jobs-routes.ts';
import { readKept } from './read-kept.ts';
import { deletedKept, staleKept, takenName, unknownKept } from './request-error.ts';
import { KeptParams, keptBody, keptIn, refusals, staleKeptIn } from './schemas.ts';

export type ShopService = Pick<JobsService, 'now' | 'newId'> & { readonly shop: ShopRepository };

/** Where the list of each kind stands, and what its document is called in the OpenAPI text. */
const LISTS = {
  machine: { list: 'machines', schema: 'Machine' },
  size: { list: 'sizes', schema: 'KeptSize' },
  grade: { list: 'grades', schema: 'OwnGrade' },
  settings: { list: 'settings', schema: 'KeptSettings' },
  rates: { list: 'rates', schema: 'Rates' },
} as const;

const Shop = Type.Object(
  {
    machines: Type.Array(keptIn(LISTS.machine.schema)),
    sizes: Type.Array(keptIn(LISTS.size.schema)),
    grades: Type.Array(keptIn(LISTS.grade.schema)),
    settings: Type.Array(keptIn(LISTS.settings.schema)),
    rates: Type.Array(keptIn(LISTS.rates.schema)),
  },
  { title: 'shop' },
);

export function shopRoutes(app: App, service: ShopService): void {
  for (const kind of KEPT_KINDS) app.addSchema({ ...KEPT_SCHEMAS[kind], $id: LISTS[kind].schema });

  app.get(
    '/api/shop',
    {
      schema: {
        tags: ['shop'],
        summary: 'The machines, sizes of tube, grades, weld settings and rates that the shop keeps, each by name',
        response: { 200: Shop },
      },
    },
    () => service.shop.all(),
  );

  for (const kind of KEPT_KINDS) keptRoutes(app, service, kind);
}

const withRevision = ({ revision }: Kept): Readonly<Record<string, string>> => ({ etag: `"${String(revision)}"` });

/** The routes of one kind: keep, save, take out, put back. */
function keptRoutes(app: App, { shop, now, newId }: ShopService, kind: KeptKind): void {
  const { list, schema } = LISTS[kind];
  const called = KEPT_NAMES[kind];
  const tags = ['shop'];
  const address = `/api/shop/${list}`;

  app.post(
    address,
    {
      schema: {
        tags,
        summary: `Keep a new ${called} with the shop, under a name that no other ${called} has`,
        body: Type.Object(keptBody(schema)),
        response: { 201: keptIn(schema), ...refusals(400, 409, 413, 415, 422) },
      },
    },
    async (request, reply) => {
      const { document, version } = request.body;
      const outcome = await shop.keep(kind, newId(), readKept(kind, document, version), now());
      if (outcome.kind === 'name-taken') throw takenName(kind, outcome.other);
      return reply.code(201).headers(withRevision(outcome.saved)).send(outcome.saved);
    },
  );

  app.put(
    `${address}/:id`,
    {
      schema: {
        tags,
        summary: `Save a kept ${called} as its next revision, unless another save came first`,
        params: KeptParams,
        body: Type.Object({
          ...keptBody(schema),
          basedOn: Type.Integer({ minimum: 1, maximum: 999_999_999, title: 'based on revision' }),
        }),
        response: { 200: keptIn(schema), 409: staleKeptIn(schema), ...refusals(400, 404, 410, 413, 415, 422) },
      },
    },
    async (request, reply) => {
      const { id } = request.params;
      const { document, version, basedOn } = request.body;
      const yours = readKept(kind, document, version);
      const outcome = await shop.save(kind, id, yours, basedOn, now());
      if (outcome.kind === 'unknown') throw unknownKept(kind, id);
      if (outcome.kind === 'deleted') throw deletedKept(kind, id);
      if (outcome.kind === 'name-taken') throw takenName(kind, outcome.other);
      if (outcome.kind === 'stale') throw staleKept(kind, yours, outcome.theirs);
      return reply.headers(withRevision(outcome.saved)).send(outcome.saved);
    },
  );

  app.delete(
    `${address}/:id`,
    {
      schema: {
        tags,
        summary: `Take a ${called} out of the shop; it can be restored, and jobs that took it over keep theirs`,
        params: KeptParams,
        response: { 204: Type.Null(), ...refusals(400, 404) },
      },
    },
    async (request, reply) => {
      const { id } = request.params;
      if (!(await shop.remove(kind, id, now()))) throw unknownKept(kind, id);
      return reply.code(204).send(null);
    },
  );

  app.post(
    `${address}/:id/restore`,
    {
      schema: {
        tags,
        summary: `Put a deleted ${called} back into the shop`,
        params: KeptParams,
        response: { 200: keptIn(schema), ...refusals(400, 404, 409) },
      },
    },
    async (request) => {
      const outcome = await shop.restore(kind, request.params.id);
      if (outcome.kind === 'unknown') throw unknownKept(kind, request.params.id);
      if (outcome.kind === 'name-taken') throw takenName(kind, outcome.other);
      return outcome.saved;
    },
  );
}
