import type { LaidBar, StockBar, StockLayout } from '../server/job/stock.ts';
import { JOB_VERSION } from '../server/job/job.ts';
import type { StockRow, Taking } from '../server/job/stock-row.ts';
import type { Database } from './database.ts';
import { stockColumns, stockRow, taking } from './stored-stock.ts';

/** What is to be taken: the bars of a layout that lie in stock, with the offcuts that come back to it. */
export type TakingAsked = {
  /** Made by who asks: the same key again takes nothing more. */
  readonly key: string;
  readonly jobId: string | null;
  readonly title: string;
  readonly layout: StockLayout;
  /** In the order of the bars; they get their names from the number of the taking. */
  readonly offcuts: readonly Omit<StockBar, 'name'>[];
};

export type TakeOutcome =
  | { readonly kind: 'taken'; readonly taking: Taking }
  /** Nothing has been written in any of the others. */
  | { readonly kind: 'short'; readonly name: string; readonly there: number; readonly needed: number }
  | { readonly kind: 'changed'; readonly name: string; readonly row: StockRow }
  | { readonly kind: 'mixed-currencies'; readonly name: string; readonly currency: string }
  | { readonly kind: 'key-used'; readonly taking: Taking };

export type TakeBackOutcome =
  | { readonly kind: 'back'; readonly taking: Taking }
  /** An offcut has been used, changed or taken out since. Nothing has been written. */
  | { readonly kind: 'offcut-gone'; readonly name: string }
  | { readonly kind: 'unknown' };

type Stands = StockRow & { readonly deleted: boolean };

async function rowOf(within: Database, id: string): Promise<Stands | undefined> {
  const row = await within.selectFrom('stock').selectAll().where('id', '=', id).executeTakeFirst();
  return row === undefined ? undefined : { ...stockRow(row), deleted: row.deleted_at !== null };
}

/** A row with another count, as its next revision. */
async function recount(within: Database, row: Stands, count: number, now: string, deleted: boolean): Promise<void> {
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

const isSameTube = (one: Omit<LaidBar, 'stock' | 'pieces' | 'price' | 'heat' | 'name'>, other: StockBar): boolean =>
  one.outsideDiameter === other.outsideDiameter &&
  one.wall === other.wall &&
  one.grade === other.grade &&
  one.length === other.length;

/** A row with the bars of a layout that come off it. */
type Drawn = { readonly row: Stands; readonly count: number };

/** Every row that bars come off, or why they cannot. */
async function drawnFrom(
  within: Database,
  { layout }: TakingAsked,
): Promise<{ readonly kind: 'drawn'; readonly rows: readonly Drawn[] } | TakeOutcome> {
  const rows: Drawn[] = [];
  for (const id of new Set(layout.bars.map(({ stock }) => stock).filter((stock) => stock !== ''))) {
    const bars = layout.bars.filter(({ stock }) => stock === id);
    const row = await rowOf(within, id);
    const name = row?.document.name ?? bars[0]?.name ?? id;
    const there = row === undefined || row.deleted ? 0 : row.document.count;
    if (row === undefined || there < bars.length) return { kind: 'short', name, there, needed: bars.length };
    if (!bars.every((bar) => isSameTube(bar, row.document))) return { kind: 'changed', name, row };
    const { price, currency } = row.document;
    if (price !== null && currency !== layout.currency) return { kind: 'mixed-currencies', name, currency };
    rows.push({ row, count: bars.length });
  }
  return { kind: 'drawn', rows };
}

/** Offcuts are called after the taking that they come from: R12-1, R12-2 … */
const remnantName = (number: number, index: number): string => `R${String(number)}-${String(index + 1)}`;

/** What the book says where it was asked before: the same request has nothing more to take. */
async function askedBefore(within: Database, asked: TakingAsked): Promise<TakeOutcome | null> {
  const row = await within.selectFrom('takings').selectAll().where('key', '=', asked.key).executeTakeFirst();
  if (row === undefined) return null;
  const same = row.job_id === asked.jobId && row.layout === JSON.stringify(asked.layout);
  return { kind: same ? 'taken' : 'key-used', taking: taking(row) };
}

/** Within a transaction of the caller. */
export async function takeBars(
  within: Database,
  asked: TakingAsked,
  newId: () => string,
  now: string,
): Promise<TakeOutcome> {
  const before = await askedBefore(within, asked);
  if (before !== null) return before;
  const drawn = await drawnFrom(within, asked);
  if (drawn.kind !== 'drawn') return drawn;
  for (const { row, count } of drawn.rows) {
    const left = row.document.count - count;
    // a remnant that is used up is gone; bars are bought again
    await recount(within, row, left, now, row.document.remnant && left === 0);
  }
  const { key, jobId, title, layout } = asked;
  const taken = drawn.rows.map(({ row, count }) => ({ id: row.id, name: row.document.name, count }));
  const { number } = await within
    .insertInto('takings')
    .values({
      key,
      taken_at: now,
      job_id: jobId,
      title,
      version: JOB_VERSION,
      layout: JSON.stringify(layout),
      taken: JSON.stringify(taken),
      returned: '[]',
      undone_at: null,
    })
    .returning('number')
    .executeTakeFirstOrThrow();
  const returned = asked.offcuts.map((offcut, index) => ({
    id: newId(),
    document: { name: remnantName(number, index), ...offcut },
  }));
  for (const { id, document } of returned)
    await within
      .insertInto('stock')
      .values({ id, ...stockColumns(document), revision: 1, saved_at: now, deleted_at: null })
      .execute();
  await within
    .updateTable('takings')
    .set({ returned: JSON.stringify(returned) })
    .where('number', '=', number)
    .execute();
  return { kind: 'taken', taking: { number, takenAt: now, jobId, title, layout, taken, returned, undoneAt: null } };
}

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

/** Within a transaction of the caller. */
export async function takeBack(within: Database, number: number, now: string): Promise<TakeBackOutcome> {
  const entry = await within.selectFrom('takings').selectAll().where('number', '=', number).executeTakeFirst();
  if (entry === undefined) return { kind: 'unknown' };
  const written = taking(entry);
  if (written.undoneAt !== null) return { kind: 'back', taking: written };
  const offcuts = await offcutsOf(within, written.returned);
  if (offcuts.kind === 'offcut-gone') return offcuts;
  // without a count, so that an offcut which is metal of its bar again cannot be restored beside it
  for (const row of offcuts.rows) await recount(within, row, 0, now, true);
  for (const { id, count } of written.taken) {
    const row = await rowOf(within, id);
    if (row === undefined) throw new Error(`Stock ${id} is lost, of which taking ${String(number)} took bars`);
    // what was taken out of the stock meanwhile is not there again because these bars are
    await recount(within, row, (row.deleted ? 0 : row.document.count) + count, now, false);
  }
  await within.updateTable('takings').set({ undone_at: now }).where('number', '=', number).execute();
  return { kind: 'back', taking: { ...written, undoneAt: now } };
}
