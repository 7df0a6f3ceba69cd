import { JOB_VERSION } from '../server/job/job.ts';
import type { LaidBar, StockBar, StockLayout } from '../server/job/stock.ts';
import type { StockRow, Taking } from '../server/job/stock-row.ts';
import type { Database } from './database.ts';
import { insertRow, isSameTube, recount, rowOf, type Stands } from './stock-rows.ts';
import { taking } from './stored-stock.ts';
import { takenAlready } from './taken-already.ts';

/** What is to be taken: the bars of a layout that lie in stock, with the offcuts that come back to it. */
export type TakingAsked = Pick<Taking, 'jobId' | 'together' | 'title' | 'layout'> & {
  /** Made by who asks: the same key again takes nothing more. */
  readonly key: string;
  /** In the order of the bars; they get their names from the number of the taking. */
  readonly offcuts: readonly Omit<StockBar, 'name'>[];
};

/** What of a bar is not as the layout says. */
export type Changed = 'size' | 'heat' | 'price';

export type TakeOutcome =
  | { readonly kind: 'taken'; readonly taking: Taking }
  /** Nothing has been written in any of the others. */
  | { readonly kind: 'short'; readonly name: string; readonly there: number; readonly needed: number }
  | { readonly kind: 'changed'; readonly name: string; readonly what: Changed; readonly row: StockRow }
  | { readonly kind: 'mixed-currencies'; readonly name: string; readonly priced: Currency }
  /** These bars were taken for this job, by another request, and have not been put back. */
  | { readonly kind: 'already'; readonly taking: Taking }
  | { readonly kind: 'key-used'; readonly taking: Taking };

/** A currency with the digits of its minor unit, as a price counts in it. */
export type Currency = Pick<StockBar, 'currency' | 'minorDigits'>;

/** A row with the bars of a layout that come off it. */
type Drawn = { readonly row: Stands; readonly count: number };

/** What of a row is not as a bar says that is cut from it; a row without a price is priced by the rates. */
function changedFrom(bar: LaidBar, row: StockBar): Changed | undefined {
  if (!isSameTube(bar, row)) return 'size';
  if (bar.heat !== row.heat) return 'heat';
  return row.price !== null && row.price !== bar.price ? 'price' : undefined;
}

const isSameCurrency = (one: Currency, other: Currency): boolean =>
  one.currency === other.currency && one.minorDigits === other.minorDigits;

/** Every row that bars come off, or why they cannot. */
async function drawnFrom(
  within: Database,
  layout: StockLayout,
): Promise<{ readonly kind: 'drawn'; readonly rows: readonly Drawn[] } | TakeOutcome> {
  const rows: Drawn[] = [];
  for (const id of new Set(layout.bars.map(({ stock }) => stock).filter((stock) => stock !== ''))) {
    const bars = layout.bars.filter(({ stock }) => stock === id);
    const needed = bars.reduce((sum, { times }) => sum + times, 0);
    const row = await rowOf(within, id);
    const name = row?.document.name ?? bars[0]?.name ?? id;
    const there = row === undefined || row.deleted ? 0 : row.document.count;
    if (row === undefined || there < needed) return { kind: 'short', name, there, needed };
    const { price, currency, minorDigits } = row.document;
    if (price !== null && !isSameCurrency(row.document, layout))
      return { kind: 'mixed-currencies', name, priced: { currency, minorDigits } };
    for (const bar of bars) {
      const what = changedFrom(bar, row.document);
      if (what !== undefined) return { kind: 'changed', name, what, row };
    }
    rows.push({ row, count: needed });
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
  const already = await takenAlready(within, asked);
  if (already !== undefined) return { kind: 'already', taking: already };
  const drawn = await drawnFrom(within, asked.layout);
  if (drawn.kind !== 'drawn') return drawn;
  for (const { row, count } of drawn.rows) {
    const left = row.document.count - count;
    // a remnant that is used up is gone; bars are bought again
    await recount(within, row, left, now, row.document.remnant && left === 0);
  }
  const taken = drawn.rows.map(({ row: { id, document }, count }) => ({
    id,
    name: document.name,
    count,
    document: { ...document, count },
  }));
  return { kind: 'taken', taking: await written(within, asked, taken, newId, now) };
}

/** The entry in the book, with the offcuts that come back named after it. */
async function written(
  within: Database,
  { key, jobId, together, title, layout, offcuts }: TakingAsked,
  taken: Taking['taken'],
  newId: () => string,
  now: string,
): Promise<Taking> {
  const { number } = await within
    .insertInto('takings')
    .values({
      key,
      taken_at: now,
      job_id: jobId,
      together: JSON.stringify(together),
      title,
      version: JOB_VERSION,
      layout: JSON.stringify(layout),
      taken: JSON.stringify(taken),
      returned: '[]',
      undone_at: null,
    })
    .returning('number')
    .executeTakeFirstOrThrow();
  const returned = offcuts.map((offcut, index) => ({
    id: newId(),
    document: { name: remnantName(number, index), ...offcut },
  }));
  for (const { id, document } of returned) await insertRow(within, id, document, now);
  await within
    .updateTable('takings')
    .set({ returned: JSON.stringify(returned) })
    .where('number', '=', number)
    .execute();
  return { number, takenAt: now, jobId, together, title, layout, taken, returned, undoneAt: null };
}
