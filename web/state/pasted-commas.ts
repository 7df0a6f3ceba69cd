import type { PastedRow } from './pasted-cells.ts';

/** A comma that can only be a decimal comma: 12,5, 0,125, 1000,250, 12,3456. */
const DECIMAL = /^[^\d,.]*(?:\d*,\d{1,2}|\d*,\d{4,}|0\d*,\d+|\d{4,},\d+)[^\d,.]*$/;
/** Points that part thousands before a decimal comma: 1.234,5. */
const POINTED = /^[^\d,.]*\d{1,3}(?:\.\d{3})+,\d+[^\d,.]*$/;
/** Commas that part thousands: 1,234.5 or 1,234,567. */
const THOUSANDS = /^[^\d,.]*\d{1,3}(?:(?:,\d{3})+\.\d+|(?:,\d{3}){2,})[^\d,.]*$/;
/** A decimal point: 12.5; 1.234 might part thousands and says nothing. */
const POINT = /^[^\d,.]*(?:\d*\.\d{1,2}|\d*\.\d{4,}|0\.\d+|\d{4,}\.\d+)[^\d,.]*$/;

/**
 * Numbers of one table are written in one way. A comma that alone could be read in two ways (1,500) is clear where
 * another cell of the table can be read in one way only; where none can, or they disagree, the cells stay as they are
 * and the reading of a length refuses them.
 */
export function withClearCommas(rows: readonly PastedRow[]): readonly PastedRow[] {
  const cells = rows.flatMap((row) => row.cells);
  if (!cells.some((cell) => cell.includes(','))) return rows;
  const has = (pattern: RegExp): boolean => cells.some((cell) => pattern.test(cell));
  const pointed = has(POINTED);
  const decimal = pointed || has(DECIMAL);
  const thousands = has(THOUSANDS);
  if (decimal === thousands || (decimal && has(POINT))) return rows;
  const clear = (cell: string): string =>
    thousands
      ? cell.replace(/(\d),(?=\d{3}(?!\d))/g, '$1')
      : (pointed ? cell.replace(/(\d)\.(?=\d{3}(?!\d))/g, '$1') : cell).replace(/(\d),(?=\d)/, '$1.');
  return rows.map((row) => ({ ...row, cells: row.cells.map(clear) }));
}
