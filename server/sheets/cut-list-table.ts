import type { Units } from '../job/job.ts';
import { closeParts, fixed, formatLength } from '../language/length-format.ts';
import { words } from '../language/words.ts';
import type { CutPiece, SizeLayout } from '../plan/stock.ts';
import { STROKES, box } from './ink.ts';
import { table, type Cell, type Column, type Table } from './table.ts';
import type { Block } from './text-block.ts';

/** Side of a box to tick, and its place from the right end of a row [mm]. */
const BOX = 3;
const FROM_RIGHT = 5;

type Size = Pick<SizeLayout, 'outsideDiameter' | 'wall' | 'grade'>;

export const isOfSize = (one: Size, other: Size): boolean =>
  one.outsideDiameter === other.outsideDiameter && one.wall === other.wall && one.grade === other.grade;

/** Number of each piece: its place in the whole cut list. */
export type Numbered = { readonly number: number; readonly piece: CutPiece };

export const numbered = (pieces: readonly CutPiece[]): Numbered[] =>
  pieces.map((piece, index) => ({ number: index + 1, piece }));

/** What is sawn: number, name, length in the job's unit and in millimetres, how many, what for, and a box to tick. */
export function cutListTable(rows: readonly Numbered[], units: Units, width: number): Table {
  const inches = units.length === 'inch';
  const columns: Column[] = [
    { head: words('sheet.stock-number'), align: 'right' },
    { head: words('sheet.stock-piece'), align: 'left' },
    { head: words('sheet.stock-length'), align: 'right' },
    ...(inches ? [{ head: words('sheet.stock-length-mm'), align: 'right' } as const] : []),
    { head: words('sheet.stock-count'), align: 'right' },
    { head: words('sheet.stock-for'), align: 'left' },
    { head: words('sheet.stock-sawn'), align: 'right' },
  ];
  const made = table(
    columns,
    rows.map(({ number, piece }): Cell[] => [
      String(number),
      { text: piece.name, weight: 600 },
      { text: formatLength(piece.length.value, units), weight: 600 },
      ...(inches ? [closeParts(Number(fixed(piece.length.value, 1)), { ...units, length: 'mm' }).number] : []),
      String(piece.count),
      purpose(piece),
      '',
    ]),
    { width },
  );
  return { ...made, rows: made.rows.map((row) => ticked(row, width)) };
}

/** A row with a box to tick at its right end. */
export function ticked(row: Block, right: number): Block {
  const drawn = box('frame', { left: right - FROM_RIGHT, top: 0.9, width: BOX, height: BOX }, STROKES.narrow);
  return { ...row, items: [...row.items, drawn] };
}

function purpose({ kind, of, part, parts }: CutPiece): string {
  switch (kind) {
    case 'member':
      return words('sheet.stock-for.member');
    case 'length':
      return words('sheet.stock-for.length', { part, parts, of });
    case 'let-in':
      return words('sheet.stock-for.let-in', { of });
    case 'leg':
      return words('sheet.stock-for.leg');
  }
}
