import type { LaidBar, StockBar } from '../server/job/stock.ts';
import type { StockRow } from '../server/job/stock-row.ts';
import type { Database } from './database.ts';
import { stockColumns, stockRow } from './stored-stock.ts';

/** A row of the stock, whether it stands there or was taken out. */
export type Stands = StockRow & { readonly deleted: boolean };

export async function rowOf(within: Database, id: string): Promise<Stands | undefined> {
  const row = await within.selectFrom('stock').selectAll().where('id', '=', id).executeTakeFirst();
  return row === undefined ? undefined : { ...stockRow(row), deleted: row.deleted_at !== null };
}

/** A row with another count, as its next revision. */
export async function recount(
  within: Database,
  row: Stands,
  count: number,
  now: string,
  deleted: boolean,
): Promise<void> {
  await within
    .updateTable('stock')
    .set({
      ...stockColumns({ ...row.document, count }),
      revision: row.revision + 1,
      saved_at: now,
      deleted_at: deleted ? now : null,
    })
    .where('id', '=', row.id)
    .execute();
}

/** A row that was not there before. */
export async function insertRow(within: Database, id: string, document: StockBar, now: string): Promise<void> {
  const columns = { ...stockColumns(document), revision: 1, saved_at: now, deleted_at: null };
  await within
    .insertInto('stock')
    .values({ id, ...columns })
    .execute();
}

type Tube = Pick<LaidBar, 'outsideDiameter' | 'wall' | 'grade' | 'length'>;

export const isSameTube = (one: Tube, other: Tube): boolean =>
  one.outsideDiameter === other.outsideDiameter &&
  one.wall === other.wall &&
  one.grade === other.grade &&
  one.length === other.length;

/** Whether bars are of one tube and one certificate. */
export const isSameBar = (one: Tube & Pick<LaidBar, 'heat'>, other: Tube & Pick<LaidBar, 'heat'>): boolean =>
  isSameTube(one, other) && one.heat === other.heat;
