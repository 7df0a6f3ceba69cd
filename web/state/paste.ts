import type { Job } from '../../server/job/job.ts';
import type { LengthProblem } from '../../server/language/length-text.ts';
import type { NumberProblem } from '../../server/language/number-text.ts';
import type { Heading, PastedCells, PastedRow } from './pasted-cells.ts';
import { withValue } from './pointer.ts';
import { rowsAt } from './rows.ts';
import { namesUnit, readText, textOf, type FieldForm } from './typed-text.ts';

/** One column of a table: the field of a row and how its cells are read. */
export type Column = { readonly name: string; readonly form: FieldForm };

/** A table that rows can be pasted into. */
export type Table = {
  /** JSON pointer of its rows. */
  readonly pointer: string;
  readonly columns: readonly Column[];
  readonly least: number;
  readonly most: number;
  /** A row that a pasted table starts from where it does not name every column. */
  readonly blank: Readonly<Record<string, unknown>>;
};

/** Over the rows that stand, from one cell on; or in the place of them all. */
export type PastePlace = { readonly row: number; readonly column: number } | 'whole';

/** Why nothing was pasted. Rows are numbered as they were pasted, from 1. */
export type PasteProblem =
  | {
      readonly kind: 'cell';
      readonly row: number;
      readonly column: string;
      readonly text: string;
      readonly why: `length.${LengthProblem}` | `number.${NumberProblem}`;
    }
  | {
      readonly kind: 'too-many';
      readonly row: number;
      readonly count: number;
      readonly most: number;
      /** Row of the table that the first pasted row would lie on, from 1. */
      readonly from: number;
    }
  | { readonly kind: 'too-few'; readonly count: number; readonly least: number }
  | { readonly kind: 'too-wide'; readonly row: number; readonly count: number; readonly room: number }
  | { readonly kind: 'heading-twice'; readonly heading: string }
  | { readonly kind: 'nothing' };

export type Pasted =
  | {
      readonly ok: true;
      readonly job: Job;
      readonly count: number;
      /** Rows below the pasted ones that stand as they were. */
      readonly left: number;
      /** Headings of columns that the table does not have. */
      readonly unused: readonly string[];
      /** Columns of a whole table that nothing was pasted for, so that they start from the blank row. */
      readonly absent: readonly string[];
    }
  | { readonly ok: false; readonly problem: PasteProblem };

/** Which column of the table each pasted column goes to, with the unit of its heading. */
type Aim = { readonly column: Column | null; readonly unit: string | null };

const failure = (problem: PasteProblem): Pasted => ({ ok: false, problem });

const byName = (headings: readonly Heading[], columns: readonly Column[]): readonly Aim[] =>
  headings.map(({ name, unit }) => ({ column: columns.find((column) => column.name === name) ?? null, unit }));

function namedTwice(headings: readonly Heading[]): string | undefined {
  const named = headings.filter(({ name }) => name !== null && name !== '');
  return named.find(({ name }, at) => named.findIndex((other) => other.name === name) !== at)?.text;
}

/** What does not fit the table in its size; undefined where everything does. */
function sizeProblem(cells: PastedCells, table: Table, place: PastePlace): PasteProblem | undefined {
  const start = place === 'whole' ? 0 : place.row;
  const count = cells.rows.length;
  const over = cells.rows[table.most - start];
  if (count === 0) return { kind: 'nothing' };
  if (over !== undefined) return { kind: 'too-many', row: over.number, count, most: table.most, from: start + 1 };
  if (place === 'whole' && count < table.least) return { kind: 'too-few', count, least: table.least };
  const twice = namedTwice(cells.headings ?? []);
  if (twice !== undefined) return { kind: 'heading-twice', heading: twice };
  const room = cells.headings?.length ?? table.columns.length - (place === 'whole' ? 0 : place.column);
  const wide = cells.rows.find((row) => row.cells.length > room);
  return wide === undefined ? undefined : { kind: 'too-wide', row: wide.number, count: wide.cells.length, room };
}

/** A cell with the unit of its heading, where it has none of its own and the job's would be another. */
const inUnit = (cell: string, unit: string | null, job: Job): string =>
  unit === null || cell === '' || namesUnit(cell) || unit === (job.units.length === 'mm' ? 'mm' : 'in')
    ? cell
    : `${cell} ${unit}`;

/** A text is kept where the field would not show the same number by itself: a fraction, a unit, a finer number. */
function saysMore(text: string, value: number | null, form: FieldForm, job: Job): boolean {
  if (value === null) return false;
  const shown = textOf(form, value, job);
  const back = readText(form, shown, job);
  return text !== shown && (namesUnit(text) || text.includes('/') || !back.ok || back.value !== value);
}

/**
 * Lays pasted cells over a table, adding rows where they are needed, or puts them in its place. Nothing is pasted
 * where one cell cannot be read or one row is too many: half a table is worse than none.
 */
export function withPasted(job: Job, cells: PastedCells, table: Table, place: PastePlace): Pasted {
  const problem = sizeProblem(cells, table, place);
  if (problem !== undefined) return failure(problem);
  const start = place === 'whole' ? 0 : place.row;
  const rows = place === 'whole' ? [] : [...rowsAt(job, table.pointer)];
  const texts = new Map(Object.entries(job.asTyped));
  if (place === 'whole') for (const key of texts.keys()) if (key.startsWith(`${table.pointer}/`)) texts.delete(key);
  const first = place === 'whole' ? 0 : place.column;
  const width = Math.max(...cells.rows.map((row) => row.cells.length));
  const aims =
    cells.headings === null
      ? table.columns.slice(first, first + width).map((column): Aim => ({ column, unit: null }))
      : byName(cells.headings, table.columns);

  for (const [line, pasted] of cells.rows.entries()) {
    const at = start + line;
    const stands = rows[at] ?? (place === 'whole' ? table.blank : added(rows, table));
    const row: Record<string, unknown> = { ...(stands as Record<string, unknown>) };
    for (const [nth, { column, unit }] of aims.entries()) {
      if (column === null) continue;
      const cell = inUnit(pasted.cells[nth] ?? '', unit, job);
      const reading = readText(column.form, cell, job);
      if (!reading.ok) return failure(cellProblem(pasted, nth, column, reading.why));
      row[column.name] = reading.value;
      const key = `${table.pointer}/${String(at)}/${column.name}`;
      if (saysMore(cell, reading.value, column.form, job)) texts.set(key, cell);
      else texts.delete(key);
    }
    rows[at] = row;
  }

  const named = new Set(aims.map(({ column }) => column?.name));
  const absent = table.columns.filter(({ name, form }) => !form.mayBeEmpty && !named.has(name));
  return {
    ok: true,
    job: { ...withValue(job, table.pointer, rows), asTyped: Object.fromEntries(texts) },
    count: cells.rows.length,
    left: rows.length - start - cells.rows.length,
    unused: (cells.headings ?? []).filter(({ name, text }) => name === null && text !== '').map(({ text }) => text),
    absent: place === 'whole' ? absent.map(({ name }) => name) : [],
  };
}

/** A row below the last starts as that stands, without what may be left open. */
function added(rows: readonly unknown[], { columns, blank }: Table): Record<string, unknown> {
  const row: Record<string, unknown> = { ...blank, ...(rows.at(-1) as Record<string, unknown> | undefined) };
  for (const { name, form } of columns) if (form.mayBeEmpty) row[name] = null;
  return row;
}

const cellProblem = (
  row: PastedRow,
  nth: number,
  column: Column,
  why: Extract<PasteProblem, { kind: 'cell' }>['why'],
): PasteProblem => ({ kind: 'cell', row: row.number, column: column.name, text: row.cells[nth] ?? '', why });
