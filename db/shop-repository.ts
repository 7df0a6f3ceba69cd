import type { Database } from './database.ts';
import type { Kept, KeptDocuments, KeptKind } from '../server/job/kept.ts';
import { keptColumns, keptThing, nameKey } from './kept-thing.ts';
import type { Absent } from './job-repository.ts';

/** Another thing of the same kind bears the name. Nothing has been written. */
export type NameTaken<Kind extends KeptKind> = { readonly kind: 'name-taken'; readonly other: Kept<Kind> };

export type KeptSaved<Kind extends KeptKind> = { readonly kind: 'saved'; readonly saved: Kept<Kind> };

export type KeepOutcome<Kind extends KeptKind> = KeptSaved<Kind> | NameTaken<Kind>;

export type KeptSaveOutcome<Kind extends KeptKind> =
  | KeepOutcome<Kind>
  /** Another save came first. Nothing has been written. */
  | { readonly kind: 'stale'; readonly theirs: Kept<Kind> }
  | Absent;

/** Everything that the shop keeps, each list by name. */
export type Shop = {
  readonly machines: Kept<'machine'>[];
  readonly sizes: Kept<'size'>[];
  readonly grades: Kept<'grade'>[];
  readonly settings: Kept<'settings'>[];
  readonly rates: Kept<'rates'>[];
};

/** Machines, sizes, grades, weld settings and rates of the shop. Times (ISO 8601) and ids come from outside. */
export type ShopRepository = ReturnType<typeof shopRepository>;

export function shopRepository(database: Database) {
  const row = (kind: KeptKind, id: string, within: Database) =>
    within.selectFrom('kept').selectAll().where('kind', '=', kind).where('id', '=', id).executeTakeFirst();

  async function list<Kind extends KeptKind>(kind: Kind): Promise<Kept<Kind>[]> {
    const rows = await database
      .selectFrom('kept')
      .selectAll()
      .where('kind', '=', kind)
      .where('deleted_at', 'is', null)
      .orderBy('name_key')
      .execute();
    return rows.map((each) => keptThing(kind, each));
  }

  /** Who else bears this name in the shop. */
  async function namesake<Kind extends KeptKind>(
    kind: Kind,
    name: string,
    id: string,
    within: Database,
  ): Promise<NameTaken<Kind> | null> {
    const other = await within
      .selectFrom('kept')
      .selectAll()
      .where('kind', '=', kind)
      .where('name_key', '=', nameKey(name))
      .where('id', '!=', id)
      .where('deleted_at', 'is', null)
      .executeTakeFirst();
    return other === undefined ? null : { kind: 'name-taken', other: keptThing(kind, other) };
  }

  return {
    async all(): Promise<Shop> {
      return {
        machines: await list('machine'),
        sizes: await list('size'),
        grades: await list('grade'),
        settings: await list('settings'),
        rates: await list('rates'),
      };
    },

    async keep<Kind extends KeptKind>(
      kind: Kind,
      id: string,
      document: KeptDocuments[Kind],
      now: string,
    ): Promise<KeepOutcome<Kind>> {
      const columns = keptColumns(kind, document);
      return database.transaction().execute(async (transaction): Promise<KeepOutcome<Kind>> => {
        const taken = await namesake(kind, document.name, id, transaction);
        if (taken !== null) return taken;
        await transaction
          .insertInto('kept')
          .values({ id, ...columns, revision: 1, saved_at: now, deleted_at: null })
          .execute();
        return { kind: 'saved', saved: { id, revision: 1, savedAt: now, document } };
      });
    },

    /**
     * Saves a kept thing as its next revision, if `basedOn` is still the latest one. The same document sent again
     * (an answer got lost on the way) is answered with the revision that it already is.
     */
    async save<Kind extends KeptKind>(
      kind: Kind,
      id: string,
      document: KeptDocuments[Kind],
      basedOn: number,
      now: string,
    ): Promise<KeptSaveOutcome<Kind>> {
      const columns = keptColumns(kind, document);
      return database.transaction().execute(async (transaction): Promise<KeptSaveOutcome<Kind>> => {
        const stands = await row(kind, id, transaction);
        if (stands === undefined) return { kind: 'unknown' };
        if (stands.deleted_at !== null) return { kind: 'deleted' };
        if (stands.revision !== basedOn) {
          const theirs = keptThing(kind, stands);
          const same = JSON.stringify(theirs.document) === columns.document;
          return same ? { kind: 'saved', saved: theirs } : { kind: 'stale', theirs };
        }
        const taken = await namesake(kind, document.name, id, transaction);
        if (taken !== null) return taken;
        const revision = basedOn + 1;
        await transaction
          .updateTable('kept')
          .set({ ...columns, revision, saved_at: now })
          .where('id', '=', id)
          .execute();
        return { kind: 'saved', saved: { id, revision, savedAt: now, document } };
      });
    },

    /** Takes a kept thing out of the shop; it can be restored. False where there is no such thing. */
    async remove(kind: KeptKind, id: string, now: string): Promise<boolean> {
      const stands = await row(kind, id, database);
      if (stands === undefined) return false;
      await database
        .updateTable('kept')
        .set({ deleted_at: now })
        .where('id', '=', id)
        .where('deleted_at', 'is', null)
        .execute();
      return true;
    },

    /** Puts a deleted thing back, unless another has taken its name; one that was never deleted stays as it is. */
    async restore<Kind extends KeptKind>(
      kind: Kind,
      id: string,
    ): Promise<KeepOutcome<Kind> | { readonly kind: 'unknown' }> {
      return database.transaction().execute(async (transaction) => {
        const stands = await row(kind, id, transaction);
        if (stands === undefined) return { kind: 'unknown' };
        const taken = await namesake(kind, stands.name, id, transaction);
        if (taken !== null) return taken;
        await transaction.updateTable('kept').set({ deleted_at: null }).where('id', '=', id).execute();
        return { kind: 'saved', saved: keptThing(kind, stands) };
      });
    },
  };
}
