import { words } from '../language/words.ts';
import type { BarPlan, PieceOnBar, SizeLayout } from '../plan/stock.ts';
import { csvText, type Cell, type Column } from './csv.ts';
import { isFor } from './cut-list-csv.ts';
import { chosenMembers, exported, refused, type ExportInput, type Exported } from './export-file.ts';

/** A stretch of a bar: what is cut off first, a piece, or what is left; saw cuts are the gaps between. */
type Stretch = {
  readonly what: 'trim' | 'piece' | 'kept' | 'scrap';
  readonly name: string;
  readonly job: string;
  /** Off the trimmed end [mm]; what is cut off before it lies on the other side. */
  readonly from: number;
  readonly to: number;
};

type Row = { readonly size: SizeLayout; readonly bar: BarPlan; readonly stretch: Stretch };

const yesNo = (is: boolean): Cell => words(is ? 'export.yes' : 'export.no');

const COLUMNS: readonly Column<Row>[] = [
  { head: words('export.head.bar'), cell: ({ bar }) => bar.number },
  { head: words('export.head.bars'), cell: ({ bar }) => bar.times },
  { head: words('export.head.in-stock'), cell: ({ bar }) => bar.stock },
  { head: words('export.head.bar-name'), cell: ({ bar }) => bar.name },
  { head: words('export.head.remnant'), cell: ({ bar }) => yesNo(bar.remnant) },
  { head: words('export.head.heat'), cell: ({ bar }) => bar.heat },
  { head: `${words('export.head.outside-diameter')} (mm)`, cell: ({ size }) => size.outsideDiameter },
  { head: `${words('export.head.wall')} (mm)`, cell: ({ size }) => size.wall },
  { head: words('export.head.grade'), cell: ({ size }) => size.grade },
  { head: `${words('export.head.bar-length')} (mm)`, cell: ({ bar }) => bar.length },
  { head: words('export.head.on-bar'), cell: ({ stretch }) => words(`export.on-bar.${stretch.what}`) },
  { head: words('export.head.piece'), cell: ({ stretch }) => stretch.name },
  { head: words('export.head.other-job'), cell: ({ stretch }) => stretch.job },
  { head: `${words('export.head.tape-from')} (mm)`, cell: ({ stretch }) => stretch.from },
  { head: `${words('export.head.tape-to')} (mm)`, cell: ({ stretch }) => stretch.to },
  { head: `${words('export.head.length')} (mm)`, cell: ({ stretch }) => stretch.to - stretch.from },
];

/** Bars from end to end, those cut alike once: one row for each stretch, in the order of the saw; of one member where one is chosen, its pieces. */
export function barsCsv(input: ExportInput): Exported {
  const chosen = chosenMembers(input);
  if (!chosen.ok) return chosen;
  const { plan, member } = input;
  const own = new Set(
    (plan.stock?.pieces ?? []).filter((piece) => member !== null && isFor(piece, member)).map(({ name }) => name),
  );
  const rows = (plan.stock?.sizes ?? [])
    .flatMap((size) => size.bars.flatMap((bar) => stretchesOf(bar).map((stretch): Row => ({ size, bar, stretch }))))
    .filter(({ stretch: { name, job } }) => member === null || (job === '' && own.has(name)));
  return rows.length === 0 ? refused('no-bars') : exported(csvText(COLUMNS, rows));
}

/** A bar's stretches; the first piece begins at the trimmed end. */
function stretchesOf({ pieces, endTrim, length, offcut, kept }: BarPlan): Stretch[] {
  const hooked = pieces[0]?.from ?? 0;
  const none = { name: '', job: '' };
  const end = length - endTrim;
  const piece = ({ name, job, from, to }: PieceOnBar): Stretch => ({
    what: 'piece',
    name,
    job,
    from: from - hooked,
    to: to - hooked,
  });
  return [
    ...(endTrim > 0 ? [{ what: 'trim', ...none, from: -endTrim, to: 0 } as const] : []),
    ...pieces.map(piece),
    ...(offcut.value > 0
      ? [{ what: kept ? 'kept' : 'scrap', ...none, from: end - offcut.value, to: end } as const]
      : []),
  ];
}
