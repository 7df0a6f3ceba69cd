import type { Units } from '../../server/job/job.ts';
import type { StockRow } from '../../server/job/stock-row.ts';
import { draftsOf } from './drafts.ts';
import { textsInUnits, type BarTexts, type LengthsBefore } from './stock-form.ts';

/** Whose fields stand open: those of a row, as it was when they were opened, or of bars or a remnant put on the list. */
export type OpenBar = Pick<StockRow, 'id' | 'revision'> | 'bars' | 'remnant';

/** A row that is typed and not saved, in the units that it is typed in. */
export type BarDraft = { readonly open: OpenBar; readonly texts: BarTexts; readonly units: Units };

/** Half-typed rows, kept on this machine: by the job that they are typed in, or for the page of the stock. */
export const barDrafts = draftsOf<BarDraft>('bar');

/** Where the page of the stock keeps its own. */
export const ON_STOCK_PAGE = 'stock';

/**
 * A draft for a list as it is now: what was typed over a row that has gone since is a row to put on the list.
 *
 * @param before the lengths that a row has, or that a fresh one began with
 */
export function draftNow(
  { open, texts, units: typedIn }: BarDraft,
  { bars, units, fresh }: { readonly bars: readonly StockRow[]; readonly units: Units; readonly fresh: LengthsBefore },
): BarDraft {
  const row = typeof open === 'string' ? undefined : bars.find(({ id }) => id === open.id);
  const isGone = typeof open !== 'string' && row === undefined;
  return {
    open: isGone ? (texts.remnant ? 'remnant' : 'bars') : open,
    texts: textsInUnits(texts, { typedIn, units, before: row?.document ?? fresh }),
    units,
  };
}
