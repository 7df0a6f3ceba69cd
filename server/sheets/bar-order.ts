import { formatLength } from '../language/length-format.ts';
import { words } from '../language/words.ts';
import type { BarPlan } from '../plan/stock.ts';
import { onTape, type OnTape } from './bars-on-tape.ts';
import type { BarDrawing } from './bar-picture.ts';
import { ticked } from './cut-list-table.ts';
import { table, type Cell, type Table } from './table.ts';
import { beside, space, type Block } from './text-block.ts';

/** Letters of the list, and the air between its two columns [mm]. */
const HEIGHT = 2.15;
const AIR = 8;

/** More pieces than this stand two beside one another. */
const ONE_BELOW_ANOTHER = 3;

/** The pieces of a bar in the order of the saw, with where each begins and ends on a tape that lies along all of them. */
export function barOrder(bar: BarPlan, { width, units, numberOf }: BarDrawing): Table {
  const pieces = onTape(bar);
  const wide = (width - AIR) / 2;
  const row = (piece: OnTape): Cell[] => [
    numberOf(piece.name, piece.job),
    piece.job === '' ? piece.name : words('sheet.stock-of-job', { name: piece.name, job: piece.job }),
    formatLength(piece.to - piece.from, units),
    formatLength(piece.from, units),
    { text: formatLength(piece.to, units), weight: 600 },
    '',
  ];
  const made = table(
    [
      { head: words('sheet.stock-number'), align: 'right' },
      { head: words('sheet.stock-piece'), align: 'left' },
      { head: words('sheet.stock-length'), align: 'right' },
      { head: words('sheet.stock-starts'), align: 'right' },
      { head: words('sheet.stock-ends'), align: 'right' },
      { head: words('sheet.stock-sawn'), align: 'right' },
    ],
    pieces.map(row),
    { width: wide, height: HEIGHT, headLines: 2 },
  );
  const rows = made.rows.map((one) => ticked(one, wide));
  if (rows.length <= ONE_BELOW_ANOTHER) return { head: made.head, rows };
  const pair = (left: Block, right: Block): Block =>
    beside([
      { left: 0, block: left },
      { left: wide + AIR, block: right },
    ]);
  return {
    head: pair(made.head, made.head),
    // read along the row, so that the order holds where the list runs over to a next page
    rows: rows.flatMap((left, index) => (index % 2 === 0 ? [pair(left, rows[index + 1] ?? space(0))] : [])),
  };
}
