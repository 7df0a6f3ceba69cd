import { widthOf } from './fonts.ts';
import { HEIGHTS, STROKES, line, write, type Item } from './ink.ts';
import type { Table } from './table.ts';
import { fitted, lineHeight, wrap, type Block } from './text-block.ts';

/** A row of things beside one another: its name, what it says of each; amounts stand right and on one line. */
export type SideRow = {
  readonly name: string;
  readonly cells: readonly string[];
  readonly amounts?: boolean;
  readonly bold?: boolean;
};

type SideOptions = { readonly width: number; readonly height?: number };

/** Share of the width that the names of the rows take, the widest that a column is, and air in a cell [mm]. */
const NAMES = 0.24;
const WIDEST = 60;
const PADDING = 1.3;

/** The smallest that an amount is set, so that a long one stays on its line [mm]. */
const SMALLEST = 1.4;

/** How many things stand beside one another; more of them begin a new table below. */
export const MOST_BESIDE = 4;

/** Things in groups that stand beside one another, as even as they come: five are three and two. */
export function besideGroups<T>(things: readonly T[], most: number = MOST_BESIDE): T[][] {
  const groups = Math.ceil(things.length / most);
  const each = Math.ceil(things.length / Math.max(1, groups));
  return Array.from({ length: groups }, (_, index) => things.slice(index * each, (index + 1) * each));
}

/** Columns of one width for things that are weighed against each other, rows for what is said of them. */
export function sideBySide(
  heads: readonly string[],
  rows: readonly SideRow[],
  { width, height = HEIGHTS.text }: SideOptions,
): Table {
  const names = Math.max(NAMES * width, ...(heads.length < 3 ? rows.map(({ name }) => nameWidth(name, height)) : [0]));
  const label = Math.min(names, width / 2);
  const each = Math.min(WIDEST, (width - label) / Math.max(1, heads.length));
  const total = label + each * heads.length;
  const at = (index: number): number => label + index * each;
  const headed = heads.map((head) => wrap(head, each - 2 * PADDING, { height: HEIGHTS.small, weight: 600 }));
  const right = rows.every(({ amounts = false }) => amounts);
  const headHeight = Math.max(1, ...headed.map(({ length }) => length)) * lineHeight(HEIGHTS.small) + 1.2;
  const head: Block = {
    height: headHeight,
    items: [
      ...headed.flatMap((texts, index) =>
        texts.map((text, row) =>
          write([right ? at(index + 1) - PADDING : at(index) + PADDING, lineHeight(HEIGHTS.small) * row + 3.1], text, {
            height: HEIGHTS.small,
            weight: 600,
            align: right ? 'right' : 'left',
          }),
        ),
      ),
      rule(headHeight, total, STROKES.edge),
    ],
  };
  return { head, rows: rows.map((row) => rowBlock(row, { label, each, total, height })) };
}

const nameWidth = (name: string, height: number): number => widthOf(name, height, 600) + 2 * PADDING;

const rule = (y: number, width: number, how: (typeof STROKES)['edge']): Item =>
  line(
    'table',
    [
      [0, y],
      [width, y],
    ],
    how,
  );

function rowBlock(
  { name, cells, amounts = false, bold = false }: SideRow,
  size: { label: number; each: number; total: number; height: number },
): Block {
  const { label, each, total, height } = size;
  const weight = bold ? 600 : 400;
  const named = wrap(name, label - 2 * PADDING, { height, weight });
  const told = cells.map((text) => (amounts ? [text] : wrap(text, each - 2 * PADDING, { height, weight })));
  const rowHeight = Math.max(1, named.length, ...told.map(({ length }) => length)) * lineHeight(height) + 0.6 * height;
  const base = (row: number): number => lineHeight(height) * row + 1.72 * height;
  return {
    height: rowHeight,
    items: [
      ...named.map((text, row) => write([PADDING, base(row)], text, { height, weight })),
      ...told.flatMap((texts, index) =>
        texts.map((text, row): Item => {
          const left = label + index * each;
          if (!amounts) return write([left + PADDING, base(row)], text, { height, weight });
          const set = fitted(text, each - 2 * PADDING, { height, weight }, SMALLEST);
          return write([left + each - PADDING, base(row)], set.text, { height: set.height, weight, align: 'right' });
        }),
      ),
      rule(rowHeight, total, STROKES.thin),
    ],
  };
}
