import type { Job } from '../../server/job/job.ts';
import { readText, withText, type FieldForm } from './typed-text.ts';
import { rowsAt, withRowAdded } from './rows.ts';

/** One column of a table: the field of a row and how its cells are read. */
export type Column = { readonly name: string; readonly form: FieldForm };

export type Pasted =
  { readonly ok: true; readonly job: Job; readonly count: number } | { readonly ok: false; readonly row: number };

/** Cells of rows copied from a spreadsheet: parted by tabs or semicolons; null where the text is a single cell. */
export function cellsOf(text: string): readonly (readonly string[])[] | null {
  const lines = text.replace(/\r\n?/g, '\n').replace(/\n+$/, '').split('\n');
  const cells = lines.map((line) => line.split(/[\t;]/).map((cell) => cell.trim()));
  return lines.length > 1 || cells.some((row) => row.length > 1) ? cells : null;
}

/**
 * Lays pasted cells over a table from one row and column on, adding rows where they are needed. Nothing is pasted
 * where one cell cannot be read: half a table is worse than none.
 */
export function withPasted(
  job: Job,
  cells: readonly (readonly string[])[],
  table: { readonly pointer: string; readonly columns: readonly Column[]; readonly fresh: unknown },
  from: { readonly row: number; readonly column: number },
): Pasted {
  let next = job;
  for (const [line, row] of cells.entries()) {
    const at = from.row + line;
    if (rowsAt(next, table.pointer).length <= at) next = withRowAdded(next, table.pointer, table.fresh);
    for (const [place, cell] of row.entries()) {
      const column = table.columns[from.column + place];
      if (column === undefined) continue;
      if (!readText(column.form, cell, job).ok) return { ok: false, row: line + 1 };
      next = withText(next, `${table.pointer}/${String(at)}/${column.name}`, cell, column.form);
    }
  }
  return { ok: true, job: next, count: cells.length };
}
