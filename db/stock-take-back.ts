import type { Taking } from '../server/job/stock-row.ts';
import type { Database } from './database.ts';
import { insertRow, isSameBar, isSameTube, recount, rowOf, type Stands } from './stock-rows.ts';
import { isBarInStock, taking } from './stored-stock.ts';

export type TakeBackOutcome =
  | { readonly kind: 'back'; readonly taking: Taking }
  /** An offcut has been used, changed or taken out since. Nothing has been written in any of the others. */
  | { readonly kind: 'offcut-gone'; readonly name: string }
  /** The row would count more bars than a row can. */
  | { readonly kind: 'row-full'; readonly name: string; readonly there: number; readonly back: number }
  | { readonly kind: 'unknown' };

/** The offcuts as they lie in stock, or the first that is not there as it came. */
async function offcutsOf(
  within: Database,
  returned: Taking['returned'],
): Promise<{ readonly kind: 'there'; readonly rows: readonly Stands[] } | { kind: 'offcut-gone'; name: string }> {
  const rows: Stands[] = [];
  for (const { id, document } of returned) {
    const row = await rowOf(within, id);
    const there = row !== undefined && !row.deleted && row.document.count === document.count;
    if (!there || !isSameTube(document, row.document)) return { kind: 'offcut-gone', name: document.name };
    rows.push(row);
  }
  return { kind: 'there', rows };
}

/** A row that bars go back to. */
type Back = { readonly taken: Taking['taken'][number]; readonly row: Stands | undefined; readonly count: number };

/** Where each bar goes: to its row as it was, or to a fresh one where its row has become another kind of bar. */
async function rowsBack(
  within: Database,
  { number, taken }: Taking,
): Promise<{ readonly kind: 'rows'; readonly rows: readonly Back[] } | TakeBackOutcome> {
  const rows: Back[] = [];
  for (const one of taken) {
    const row = await rowOf(within, one.id);
    if (row === undefined) throw new Error(`Stock ${one.id} is lost, of which taking ${String(number)} took bars`);
    if (!isSameBar(one.document, row.document)) {
      rows.push({ taken: one, row: undefined, count: one.count });
      continue;
    }
    // what was taken out of the stock meanwhile is not there again because these bars are
    const there = row.deleted ? 0 : row.document.count;
    const count = there + one.count;
    if (!isBarInStock({ ...row.document, count }))
      return { kind: 'row-full', name: row.document.name, there, back: one.count };
    rows.push({ taken: one, row, count });
  }
  return { kind: 'rows', rows };
}

/** Within a transaction of the caller. */
export async function takeBack(
  within: Database,
  number: number,
  newId: () => string,
  now: string,
): Promise<TakeBackOutcome> {
  const entry = await within.selectFrom('takings').selectAll().where('number', '=', number).executeTakeFirst();
  if (entry === undefined) return { kind: 'unknown' };
  const written = taking(entry);
  if (written.undoneAt !== null) return { kind: 'back', taking: written };
  const offcuts = await offcutsOf(within, written.returned);
  if (offcuts.kind === 'offcut-gone') return offcuts;
  const back = await rowsBack(within, written);
  if (back.kind !== 'rows') return back;
  // without a count, so that an offcut which is metal of its bar again cannot be restored beside it
  for (const row of offcuts.rows) await recount(within, row, 0, now, true);
  for (const { taken, row, count } of back.rows) {
    if (row === undefined) await insertRow(within, newId(), taken.document, now);
    else await recount(within, row, count, now, false);
  }
  await within.updateTable('takings').set({ undone_at: now }).where('number', '=', number).execute();
  return { kind: 'back', taking: { ...written, undoneAt: now } };
}
