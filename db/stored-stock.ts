import type { Selectable } from 'kysely';
import { JOB_VERSION } from '../server/job/job.ts';
import type { StockBar } from '../server/job/stock.ts';
import { parseStockBar, type ListedTaking, type StockRow, type Taking } from '../server/job/stock-row.ts';
import type { StockTable, TakingsTable } from './tables/tables.ts';

/** A stored row; one that cannot be read is a fault. */
export function stockRow(row: Selectable<StockTable>): StockRow {
  const parsed = parseStockBar(JSON.parse(row.document));
  if (!parsed.ok) throw new Error(`Stock ${row.id} cannot be read: ${parsed.problems[0]?.message ?? ''}`);
  return { id: row.id, revision: row.revision, savedAt: row.saved_at, document: parsed.document };
}

/** The columns of a row that follow from its document; one that is no bar is a fault. */
export function stockColumns(document: StockBar) {
  const parsed = parseStockBar(document);
  if (!parsed.ok) throw new Error(`This cannot be kept in stock: ${parsed.problems[0]?.message ?? ''}`);
  return { name: document.name, version: JOB_VERSION, document: JSON.stringify(document) };
}

/** Whether this can stand in the stock. */
export const isBarInStock = (document: StockBar): boolean => parseStockBar(document).ok;

/** By size, grade and length, the longest first; what is alike by name. */
export function bySize({ document: one, id }: StockRow, { document: other, id: otherId }: StockRow): number {
  return (
    one.outsideDiameter - other.outsideDiameter ||
    one.wall - other.wall ||
    alphabetical(one.grade, other.grade) ||
    other.length - one.length ||
    alphabetical(one.name, other.name) ||
    alphabetical(id, otherId)
  );
}

const alphabetical = (one: string, other: string): number => (one < other ? -1 : Number(one > other));

/** What the book says of one taking. The program alone has written it. */
export const taking = (row: Selectable<TakingsTable>): Taking => ({
  number: row.number,
  takenAt: row.taken_at,
  jobId: row.job_id,
  together: JSON.parse(row.together) as Taking['together'],
  title: row.title,
  layout: JSON.parse(row.layout) as Taking['layout'],
  taken: JSON.parse(row.taken) as Taking['taken'],
  returned: JSON.parse(row.returned) as Taking['returned'],
  undoneAt: row.undone_at,
});

/** What the list says of it: what is cut from each bar is left out. */
export function listedTaking(row: Selectable<TakingsTable>): ListedTaking {
  const { layout, ...rest } = taking(row);
  return { ...rest, layout: { ...layout, bars: layout.bars.map(({ pieces: _pieces, ...bar }) => bar) } };
}
