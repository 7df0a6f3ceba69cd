import type { StockRow, Taking } from '../job/stock-row.ts';
import type { StockBar } from '../job/stock.ts';
import { RequestError } from './request-error.ts';

const bars = (count: number): string => (count === 1 ? 'one bar' : `${String(count)} bars`);

export const unknownRow = (id: string): RequestError =>
  new RequestError(404, 'stock-unknown', `There is no row ${id} in stock. Look for it in the list of the stock.`);

export const deletedRow = (id: string): RequestError =>
  new RequestError(410, 'stock-deleted', `The row ${id} was taken out of the stock. Restore it to go on with it.`);

export const staleRow = (yours: StockBar, theirs: StockRow): RequestError =>
  new RequestError(
    409,
    'stale-save',
    `Revision ${String(theirs.revision)} of "${theirs.document.name}" was saved meanwhile, or bars of it were taken. Nothing is lost: look at both and save again.`,
    { more: { yours, theirs } },
  );

/** There are fewer bars than the layout cuts. */
export const shortStock = (short: { readonly name: string; readonly there: number; readonly needed: number }) =>
  new RequestError(
    409,
    'stock-short',
    `${short.there === 0 ? 'Nothing' : `Only ${bars(short.there)}`} of "${short.name}" ${short.there > 1 ? 'are' : 'is'} left in stock; the layout cuts ${bars(short.needed)} of it. Nothing was taken. Lay the pieces out again, or put right how many there are.`,
  );

const CHANGED = { size: 'size, grade or length', heat: 'heat number', price: 'price' } as const;

export const changedStock = (name: string, what: keyof typeof CHANGED): RequestError =>
  new RequestError(
    409,
    'stock-changed',
    `"${name}" is not what the layout says any more: its ${CHANGED[what]} was changed. Nothing was taken. Lay the pieces out again.`,
  );

type Currency = Pick<StockBar, 'currency' | 'minorDigits'>;

/** Two currencies as a person tells them apart: by their digits too where they have one name. */
export function twoCurrencies(one: Currency, other: Currency): readonly [string, string] {
  if (one.currency !== other.currency) return [one.currency, other.currency];
  const told = ({ currency, minorDigits }: Currency): string =>
    `${currency} with ${String(minorDigits)} digits after the point`;
  return [told(one), told(other)];
}

/** Prices in two currencies never add up. */
export function mixedCurrencies(name: string, priced: Currency, layout: Currency): RequestError {
  const [theirs, ours] = twoCurrencies(priced, layout);
  return new RequestError(
    422,
    'mixed-currencies',
    `"${name}" is priced in ${theirs}, the layout in ${ours}. Nothing was taken. Give it a price in ${ours}, or lay the pieces out without it.`,
  );
}

export const usedKey = ({ number }: Taking): RequestError =>
  new RequestError(
    409,
    'key-used',
    `This request was sent before with other bars: they were taken as number ${String(number)}. Ask again with another key.`,
  );

export const takenLayout = (number: number): RequestError =>
  new RequestError(
    409,
    'layout-taken',
    `The bars of this layout were taken already, as number ${String(number)}. Nothing more was taken. Put those back first, or lay the pieces out again.`,
  );

/** What the pieces need is more than their bar has. */
export const overfullBar = (number: number, length: number): RequestError =>
  new RequestError(
    422,
    'bar-too-short',
    `The pieces on bar ${String(number)} with its trim and kerfs are longer than the ${String(length)} mm that it has. Nothing was taken. Lay the pieces out again.`,
  );

/** The same bars for the same job, asked for anew. */
export const takenBefore = ({ number }: Taking): RequestError =>
  new RequestError(
    409,
    'taken-already',
    `These bars were taken for this job already, as number ${String(number)} in the book. Nothing more was taken. Put those back first, or lay the pieces out again.`,
  );

/** A row counts no more bars than its field takes. */
export const fullRow = (full: { readonly name: string; readonly there: number; readonly back: number }) =>
  new RequestError(
    409,
    'row-full',
    `"${full.name}" counts ${bars(full.there)} already; ${bars(full.back)} more are too many for one row. Nothing was put back. Put right how many there are, then put these back.`,
  );

export const unknownTaking = (number: string): RequestError =>
  new RequestError(404, 'taking-unknown', `Nothing was taken as number ${number}. Look for it in the list.`);

export const goneOffcut = (name: string): RequestError =>
  new RequestError(
    409,
    'offcut-gone',
    `The offcut "${name}" of these bars has been used or changed since. Nothing was put back. Where it was taken, put that back first; else put right how many bars there are by hand.`,
  );
