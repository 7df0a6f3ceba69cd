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
  /** Lines that heads may take, where there is room for that; as many as they have words where it is left out. */
  readonly headLines?: number;
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

/** No column is narrower than this, unless all that it says is [mm]. */
const LEAST = 7;

/** Heads of more lines than this are as narrow as their longest word. */
const MOST_HEAD = 3;

const wordsIn = (text: string): string[] => text.split(/\s+/);

/**
 * Widths of the columns: what their widest cell and their longest head word need, stretched to the width asked for.
 * Where they need more, the widest of those that wrap their text (align left) give way, down to their longest word.
 */
function columnWidths(
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  options: { width: number; height: number; fill: boolean; headLines: number },
): number[] {
  const { width, height, fill, headLines } = options;
  const needs = columns.map((column, index) => {
    const cells = rows.flatMap((row): Exclude<Cell, string>[] => {
      const cell = row[index] ?? '';
      return spans(cell) ? [] : [{ text: textOf(cell), weight: weightOf(cell) }];
    });
    const head = headWidth(column.head, headLines);
    const whole = Math.max(head, ...cells.map(({ text, weight }) => widthOf(text, height, weight)));
    const word = Math.max(
      head,
      ...cells.flatMap(({ text, weight }) => wordsIn(text).map((one) => widthOf(one, height, weight))),
    );
    const room = 2 * PADDING + 0.01;
    const natural = whole + room;
    const least = column.align === 'left' ? Math.min(natural, Math.max(LEAST, word + room)) : natural;
    return { natural, least };
  });
  const total = needs.reduce((sum, { natural }) => sum + natural, 0);
  if (total > width && headLines < Infinity) {
    return columnWidths(columns, rows, { ...options, headLines: headLines < MOST_HEAD ? headLines + 1 : Infinity });
  }
  if (total <= width) return needs.map(({ natural }) => natural + (fill ? (width - total) / needs.length : 0));
  const capped = (cap: number): number[] => needs.map(({ natural, least }) => Math.max(least, Math.min(natural, cap)));
  const sum = (widths: readonly number[]): number => widths.reduce((all, one) => all + one, 0);
  let [low, high] = [0, Math.max(...needs.map(({ natural }) => natural))];
  for (let halving = 0; halving < 40; halving += 1) {
    const cap = (low + high) / 2;
    if (sum(capped(cap)) <= width) low = cap;
    else high = cap;
  }
  return lettersWide(capped(low), columns, width);
}

/** The narrowest that a head of some words can be set in so many lines [mm]. */
function headWidth(head: string, lines: number): number {
  const style = { height: HEIGHTS.small, weight: 600 } as const;
  const words = wordsIn(head);
  const ends = words.flatMap((_, from) =>
    words
      .slice(from)
      .map((__, count) => widthOf(words.slice(from, from + count + 1).join(' '), style.height, style.weight)),
  );
  const longest = Math.max(...words.map((word) => widthOf(word, style.height, style.weight)));
  const fitting = ends
    .toSorted((a, b) => a - b)
    .find((width) => width >= longest && wrap(head, width + 0.01, style).length <= lines);
  return fitting ?? longest;
}

/** Where even the longest words do not fit beside one another, they are broken by letters, the widest column first. */
function lettersWide(widths: readonly number[], columns: readonly Column[], width: number): number[] {
  const over = widths.reduce((sum, one) => sum + one, 0) - width;
  if (over <= 1e-6) return [...widths];
  const left = widths.map((one, index) => (columns[index]?.align === 'left' ? one : 0));
  const widest = left.indexOf(Math.max(...left));
  return widths.map((one, index) => (index === widest ? Math.max(LEAST, one - over) : one));
}

/** A ruled table: a head of small words, then rows between hairlines. */
export function table(columns: readonly Column[], rows: readonly (readonly Cell[])[], options: TableOptions): Table {
  const height = options.height ?? HEIGHTS.text;
  const widths = columnWidths(columns, rows, {
    width: options.width,
    height,
    fill: options.fill ?? true,
    headLines: options.headLines ?? Infinity,
  });
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
