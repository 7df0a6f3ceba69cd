import type { StockBar } from '../server/job/stock.ts';
import type { ListedTaking, StockRow, Taking } from '../server/job/stock-row.ts';
import type { Database } from './database.ts';
import type { Absent } from './job-repository.ts';
import { insertRow } from './stock-rows.ts';
import { bySize, listedTaking, stockColumns, stockRow, taking } from './stored-stock.ts';
import { takeBack, type TakeBackOutcome } from './stock-take-back.ts';
import { takeBars, type TakeOutcome, type TakingAsked } from './stock-takings.ts';

export type StockSaved = { readonly kind: 'saved'; readonly saved: StockRow };

export type StockSaveOutcome =
  | StockSaved
  /** Another save or a taking came first. Nothing has been written. */
  | { readonly kind: 'stale'; readonly theirs: StockRow }
  | Absent;

/** The latest takings that are listed; the others stay in the book, each under its number. Our own choice. */
const LISTED = 50;

/** Bars and remnants of the shop, and the book of what was taken. Times (ISO 8601) and ids come from outside. */
export type StockRepository = ReturnType<typeof stockRepository>;

export function stockRepository(database: Database) {
  const row = (id: string, within: Database) =>
    within.selectFrom('stock').selectAll().where('id', '=', id).executeTakeFirst();

  return {
    /** What lies in stock, by size, grade and length; rows of which nothing is left among them. */
    async all(): Promise<StockRow[]> {
      const rows = await database.selectFrom('stock').selectAll().where('deleted_at', 'is', null).execute();
      return rows.map(stockRow).sort(bySize);
    },

    async add(id: string, document: StockBar, now: string): Promise<StockRow> {
      await insertRow(database, id, document, now);
      return { id, revision: 1, savedAt: now, document };
    },

    /**
     * Saves a row as its next revision, if `basedOn` is still the latest one: a taking counts as a save. The same
     * document sent again (an answer got lost on the way) is answered with the revision that it already is.
     */
    async save(id: string, document: StockBar, basedOn: number, now: string): Promise<StockSaveOutcome> {
      const columns = stockColumns(document);
      return database.transaction().execute(async (transaction): Promise<StockSaveOutcome> => {
        const stands = await row(id, transaction);
        if (stands === undefined) return { kind: 'unknown' };
        if (stands.deleted_at !== null) return { kind: 'deleted' };
        if (stands.revision !== basedOn) {
          const theirs = stockRow(stands);
          return stands.document === columns.document ? { kind: 'saved', saved: theirs } : { kind: 'stale', theirs };
        }
        const revision = basedOn + 1;
        await transaction
          .updateTable('stock')
          .set({ ...columns, revision, saved_at: now })
          .where('id', '=', id)
          .execute();
        return { kind: 'saved', saved: { id, revision, savedAt: now, document } };
      });
    },

    /** Takes a row out of the stock; it can be restored. False where there is no such row. */
    async remove(id: string, now: string): Promise<boolean> {
      if ((await row(id, database)) === undefined) return false;
      await database
        .updateTable('stock')
        .set({ deleted_at: now })
        .where('id', '=', id)
        .where('deleted_at', 'is', null)
        .execute();
      return true;
    },

    /** Puts a deleted row back; one that was never deleted stays as it is. Null where there is no such row. */
    async restore(id: string): Promise<StockRow | null> {
      await database.updateTable('stock').set({ deleted_at: null }).where('id', '=', id).execute();
      const stands = await row(id, database);
      return stands === undefined ? null : stockRow(stands);
    },

    /** Takes every bar of a layout that lies in stock, and puts its offcuts there: all of it, or nothing. */
    take: (asked: TakingAsked, newId: () => string, now: string): Promise<TakeOutcome> =>
      database.transaction().execute((transaction) => takeBars(transaction, asked, newId, now)),

    /**
     * Puts the bars of a taking back and its offcuts away again: all of it, or nothing. Bars whose row has become another
     * kind of bar get a row of their own. A second time changes nothing.
     */
    takeBack: (number: number, newId: () => string, now: string): Promise<TakeBackOutcome> =>
      database.transaction().execute((transaction) => takeBack(transaction, number, newId, now)),

    /** The latest takings, the last one first, without what is cut from each bar. */
    async takings(): Promise<ListedTaking[]> {
      const rows = await database.selectFrom('takings').selectAll().orderBy('number', 'desc').limit(LISTED).execute();
      return rows.map(listedTaking);
    },

    /** One taking with all of its layout; null where there is none of that number. */
    async taking(number: number): Promise<Taking | null> {
      const row = await database.selectFrom('takings').selectAll().where('number', '=', number).executeTakeFirst();
      return row === undefined ? null : taking(row);
    },
  };
}
