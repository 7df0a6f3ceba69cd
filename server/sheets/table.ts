import { widthOf, type Weight } from './fonts.ts';
import { HEIGHTS, STROKES, line, write, type Item } from './ink.ts';
import { lineHeight, wrap, type Block } from './text-block.ts';

export type Column = { readonly head: string; readonly align: 'left' | 'middle' | 'right' };
/** A text in its column; a spanning one takes the rest of its row, whose other cells are left out. */
export type Cell = string | { readonly text: string; readonly weight: Weight; readonly span?: true };

export type Table = { readonly head: Block; readonly rows: readonly Block[] };

type TableOptions = {
  readonly width: number;
  readonly height?: number;
  /** False: columns keep their natural width. */
  readonly fill?: boolean;
};

/** Air left and right of a text in its cell [mm]. */
const PADDING = 1.3;

const textOf = (cell: Cell): string => (typeof cell === 'string' ? cell : cell.text);
const weightOf = (cell: Cell): Weight => (typeof cell === 'string' ? 400 : cell.weight);
const spans = (cell: Cell): boolean => typeof cell !== 'string' && cell.span === true;

/** Widths of a row's cells: those of their columns, and what is left of the row for one that spans. */
const cellWidths = (row: readonly Cell[], widths: readonly number[]): number[] =>
  row.map((cell, index) =>
    spans(cell) ? widths.slice(index).reduce((sum, one) => sum + one, 0) : (widths[index] ?? 0),
  );

/** Lays lines of text in a column's width. */
function lines(
  texts: readonly string[],
  left: number,
  width: number,
  how: { align: Column['align']; height: number; weight: Weight },
): Item[] {
  const x = how.align === 'left' ? left + PADDING : how.align === 'right' ? left + width - PADDING : left + width / 2;
  return texts.map((text, index) => write([x, lineHeight(how.height) * index + 1.72 * how.height], text, how));
}

/**
 * Widths of the columns: what their widest cell and their longest head word need, stretched to the width asked for.
 * Where they need more, the first column that wraps its text (align left) gives way.
 */
function columnWidths(
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  options: { width: number; height: number; fill: boolean },
): number[] {
  const { width, height, fill } = options;
  const natural = columns.map((column, index) => {
    const words = column.head.split(' ').map((word) => widthOf(word, HEIGHTS.small, 600));
    const cells = rows.map((row) => {
      const cell = row[index] ?? '';
      return spans(cell) ? 0 : widthOf(textOf(cell), height, weightOf(cell));
    });
    return Math.max(...words, ...cells) + 2 * PADDING + 0.01;
  });
  const total = natural.reduce((sum, one) => sum + one, 0);
  if (total <= width) return fill ? natural.map((one) => one + (width - total) / natural.length) : natural;
  const widest = natural.reduce(
    (best, one, index) => (columns[index]?.align === 'left' && one > (natural[best] ?? 0) ? index : best),
    Math.max(
      0,
      columns.findIndex((column) => column.align === 'left'),
    ),
  );
  const least = 18;
  return natural.map((one, index) => (index === widest ? Math.max(least, one - (total - width)) : one));
}

/** A ruled table: a head of small words, then rows between hairlines. */
export function table(columns: readonly Column[], rows: readonly (readonly Cell[])[], options: TableOptions): Table {
  const height = options.height ?? HEIGHTS.text;
  const widths = columnWidths(columns, rows, { width: options.width, height, fill: options.fill ?? true });
  const lefts = widths.map((_, index) => widths.slice(0, index).reduce((sum, one) => sum + one, 0));
  const total = widths.reduce((sum, one) => sum + one, 0);

  const heads = columns.map((column, index) =>
    wrap(column.head, (widths[index] ?? 0) - 2 * PADDING, { height: HEIGHTS.small, weight: 600 }),
  );
  const headLines = Math.max(1, ...heads.map((head) => head.length));
  const headHeight = headLines * lineHeight(HEIGHTS.small) + 1.2;
  const head: Block = {
    height: headHeight,
    items: [
      ...heads.flatMap((texts, index) =>
        lines(texts, lefts[index] ?? 0, widths[index] ?? 0, {
          align: columns[index]?.align ?? 'left',
          height: HEIGHTS.small,
          weight: 600,
        }),
      ),
      line(
        'table',
        [
          [0, headHeight],
          [total, headHeight],
        ],
        STROKES.edge,
      ),
    ],
  };
  return {
    head,
    rows: rows.map((row) => {
      const rooms = cellWidths(row, widths);
      const wrapped = row.map((cell, index) =>
        wrap(textOf(cell), (rooms[index] ?? 0) - 2 * PADDING + 0.02, { height, weight: weightOf(cell) }),
      );
      const rowHeight = Math.max(1, ...wrapped.map((cell) => cell.length)) * lineHeight(height) + 0.6 * height;
      const items = row.flatMap((cell, index) =>
        lines(wrapped[index] ?? [], lefts[index] ?? 0, rooms[index] ?? 0, {
          align: spans(cell) ? 'left' : (columns[index]?.align ?? 'left'),
          height,
          weight: weightOf(cell),
        }),
      );
      return {
        height: rowHeight,
        items: [
          ...items,
          line(
            'table',
            [
              [0, rowHeight],
              [total, rowHeight],
            ],
            STROKES.thin,
          ),
        ],
      };
    }),
  };
}

/** Height of a table with all its rows [mm]. */
export const tableHeight = ({ head, rows }: Table): number => rows.reduce((sum, row) => sum + row.height, head.height);

/** The whole table as one block. */
export function tableBlock({ head, rows }: Table): Block {
  let height = head.height;
  const items = [...head.items];
  for (const row of rows) {
    for (const item of row.items) {
      items.push(
        item.kind === 'text'
          ? { ...item, at: [item.at[0], item.at[1] + height] }
          : { ...item, points: item.points.map(([x, y]) => [x, y + height] as const) },
      );
    }
    height += row.height;
  }
  return { height, items };
}
