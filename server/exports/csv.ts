import { stringify } from 'csv-stringify/sync';
import type { Figure } from '../plan/figure.ts';

/** One cell: a number stands as a number, an amount with all its decimals, nothing where there is none. */
export type Cell = string | number | null | { readonly amount: number; readonly decimals: number };

/** A column: its head, which carries the unit, and what stands below it. */
export type Column<Row> = { readonly head: string; readonly cell: (row: Row) => Cell };

/**
 * Decimals of a number in a table. Our own choice: finer than a machine or a tape reads, and coarse enough that 90°
 * does not come out as 89.99999999999999.
 */
const DECIMALS = 4;

const roundedNumber = (value: number): number => Number(value.toFixed(DECIMALS)) || 0; // never −0

/** The number of a figure; its unit stands in the head. */
export const numberOf = (figure: Figure | null): Cell => figure?.value ?? null;

/**
 * A text that a spreadsheet would run as a formula gets an apostrophe before it, which it shows as text.
 * First characters after OWASP, 'CSV Injection': = + - @, tab, carriage return, line feed and their full-width forms.
 * Numbers of ours stay as they are: −12.5 is no formula.
 */
const harmless = (text: string): string => (/^[=+\-@\t\r\n＝＋－＠]/.test(text) ? `'${text}` : text);

const written = (cell: Cell): string => {
  if (cell === null) return '';
  if (typeof cell === 'string') return harmless(cell);
  return typeof cell === 'number' ? String(roundedNumber(cell)) : (cell.amount || 0).toFixed(cell.decimals); // never −0
};

/**
 * A table after RFC 4180: one header line, CRLF, quotes where a field needs them, a decimal point whatever the country.
 * Texts outside ASCII get a byte order mark in front, without which common spreadsheets misread them; a table of ASCII
 * alone does without, so that a program that does not know the mark finds the first head as it is.
 */
export function csvText<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string {
  const records = [
    columns.map(({ head }) => harmless(head)),
    ...rows.map((row) => columns.map(({ cell }) => written(cell(row)))),
  ];
  const text = stringify(records, { record_delimiter: 'windows' });
  return /^\p{ASCII}*$/u.test(text) ? text : `\uFEFF${text}`;
}
