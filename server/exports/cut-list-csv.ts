import { words } from '../language/words.ts';
import type { CutPiece } from '../plan/stock.ts';
import { csvText, numberOf, type Column } from './csv.ts';
import { chosenMembers, exported, refused, type ExportInput, type Exported } from './export-file.ts';

/** A piece with its number in the whole cut list. */
type Row = { readonly number: number; readonly piece: CutPiece };

const KINDS: Readonly<Record<CutPiece['kind'], string>> = {
  member: words('sheet.member'),
  length: words('export.head.length'),
  'let-in': words('export.wrap.piece'),
  leg: words('export.head.leg'),
};

const COLUMNS: readonly Column<Row>[] = [
  { head: words('export.head.leg-number'), cell: ({ number }) => number },
  { head: words('export.head.piece'), cell: ({ piece }) => piece.name },
  { head: words('export.head.kind'), cell: ({ piece }) => KINDS[piece.kind] },
  { head: words('export.head.for'), cell: ({ piece }) => piece.of },
  { head: words('export.head.part'), cell: ({ piece }) => piece.part },
  { head: words('export.head.parts'), cell: ({ piece }) => piece.parts },
  { head: words('export.head.count'), cell: ({ piece }) => piece.count },
  { head: `${words('export.head.length-to-saw')} (mm)`, cell: ({ piece }) => numberOf(piece.length) },
  { head: `${words('export.head.outside-diameter')} (mm)`, cell: ({ piece }) => piece.outsideDiameter },
  { head: `${words('export.head.wall')} (mm)`, cell: ({ piece }) => piece.wall },
  { head: words('export.head.grade'), cell: ({ piece }) => piece.grade },
];

/** What is sawn off bars, as sawn: one row a piece; of one member where one is chosen, the pieces that it is made from. */
export function cutListCsv(input: ExportInput): Exported {
  const chosen = chosenMembers(input);
  if (!chosen.ok) return chosen;
  const { plan, member } = input;
  const rows = (plan.stock?.pieces ?? [])
    .map((piece, index): Row => ({ number: index + 1, piece }))
    .filter(({ piece }) => member === null || isFor(piece, member));
  return rows.length === 0 ? refused('nothing-to-saw') : exported(csvText(COLUMNS, rows));
}

/** Whether a member is made from a piece; a let-in piece and a leg have names of their own. */
export const isFor = ({ kind, of }: CutPiece, member: string): boolean =>
  (kind === 'member' || kind === 'length') && of === member;
