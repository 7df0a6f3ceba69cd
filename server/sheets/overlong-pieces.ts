import type { Units } from '../job/job.ts';
import { formatFigure, formatQuantity } from '../language/quantity-format.ts';
import { words } from '../language/words.ts';
import type { OverlongPiece } from '../plan/stock.ts';
import { HEIGHTS } from './ink.ts';
import { paragraph, space, stacked, type Block } from './text-block.ts';

/** Pieces that no bar is long enough for, each with what to do about it. */
export function overlongPieces(pieces: readonly OverlongPiece[], units: Units, width: number): Block[] {
  const [first, ...rest] = pieces.map((piece) =>
    stacked([
      paragraph(pieceWords(piece, units), width, { weight: 600 }),
      paragraph(wayOut(piece, units), width),
      space(1),
    ]),
  );
  if (first === undefined) return [];
  const head = paragraph(words('sheet.stock-overlong'), width, { height: HEIGHTS.head, weight: 600 });
  return [stacked([space(2), head, first]), ...rest];
}

const pieceWords = ({ name, length, longest }: OverlongPiece, units: Units): string =>
  words('sheet.stock-overlong-piece', {
    name,
    length: formatFigure(length, units),
    longest: formatFigure(longest, units),
  });

function wayOut({ member, joints, offered, enough }: OverlongPiece, units: Units): string {
  const length = (mm: number): string => formatQuantity(mm, 'mm', units);
  if (joints.length === 0) return words('sheet.stock-overlong-nowhere');
  const stretches = joints
    .map(({ from, to }) => words('sheet.stock-overlong-stretch', { from: length(from), to: length(to) }))
    .join(', ');
  const places = words('sheet.stock-overlong-stretches', { member, stretches });
  const first =
    offered === null
      ? words('sheet.stock-overlong-several')
      : words(enough ? 'sheet.stock-overlong-offered' : 'sheet.stock-overlong-first', {
          station: length(offered),
          member,
        });
  return `${first} ${places}`;
}
