import { words, wordsOf } from '../language/words.ts';
import type { Plan } from '../plan/plan.ts';
import type { Procedure, Weld } from '../plan/welding.ts';
import { csvText, numberOf, type Column } from './csv.ts';
import { chosenMembers, exported, refused, type ExportInput, type Exported } from './export-file.ts';

/** A weld with the settings of its form, and the chambers that are filled while it is made. */
type Row = { readonly weld: Weld; readonly procedure: Procedure | undefined; readonly chambers: readonly number[] };

const COLUMNS: readonly Column<Row>[] = [
  { head: words('export.head.weld'), cell: ({ weld }) => weld.name },
  { head: words('export.head.kind'), cell: ({ weld }) => wordsOf('weld.kind', weld.kind) },
  { head: words('export.head.member'), cell: ({ weld }) => weld.member },
  { head: `${words('export.head.station')} (mm)`, cell: ({ weld }) => weld.station },
  { head: words('export.head.onto'), cell: ({ weld }) => weld.onto },
  { head: words('export.head.preparation'), cell: ({ weld }) => wordsOf('weld.preparation', weld.preparation) },
  { head: `${words('export.head.gap')} (mm)`, cell: ({ weld }) => numberOf(weld.gap) },
  { head: `${words('export.head.weld-length')} (mm)`, cell: ({ weld }) => numberOf(weld.length) },
  { head: words('export.head.position'), cell: ({ weld }) => weld.position.code },
  { head: words('export.head.position-american'), cell: ({ weld }) => weld.position.american },
  { head: words('export.head.process'), cell: ({ weld }) => weld.symbol.process },
  { head: `${words('export.head.current-low')} (A)`, cell: ({ procedure }) => numberOf(procedure?.currentLow ?? null) },
  {
    head: `${words('export.head.current-high')} (A)`,
    cell: ({ procedure }) => numberOf(procedure?.currentHigh ?? null),
  },
  { head: words('export.head.filler'), cell: ({ procedure }) => procedure?.filler ?? '' },
  {
    head: `${words('export.head.filler-diameter')} (mm)`,
    cell: ({ procedure }) => numberOf(procedure?.fillerDiameter ?? null),
  },
  { head: words('export.head.tacks'), cell: ({ weld }) => numberOf(weld.tacks.count) },
  { head: `${words('export.head.hi-lo')} (mm)`, cell: ({ weld }) => numberOf(weld.misfit?.hiLo ?? null) },
  { head: `${words('export.head.hi-lo-polish')} (mm)`, cell: ({ weld }) => numberOf(weld.misfit?.polish ?? null) },
  { head: `${words('export.head.hi-lo-standard')} (mm)`, cell: ({ weld }) => numberOf(weld.misfit?.standard ?? null) },
  { head: `${words('export.head.shrinkage')} (mm)`, cell: ({ weld }) => numberOf(weld.shrinkage) },
  { head: words('export.head.chambers'), cell: ({ chambers }) => chambers.join(' ') },
];

const rowOf = (weld: Weld, { welding, purge }: Plan): Row => ({
  weld,
  procedure: welding?.procedures.find(({ form }) => form === weld.form),
  chambers: (purge?.chambers ?? []).filter(({ welds }) => welds.includes(weld.name)).map(({ number }) => number),
});

/** The welds of what is to be made: one row a weld, in the plan's order. */
export function weldsCsv(input: ExportInput): Exported {
  const chosen = chosenMembers(input);
  if (!chosen.ok) return chosen;
  const { plan, member } = input;
  const welds = (plan.welding?.welds ?? []).filter((weld) => member === null || weld.member === member);
  return welds.length === 0
    ? refused('no-welds')
    : exported(
        csvText(
          COLUMNS,
          welds.map((weld) => rowOf(weld, plan)),
        ),
      );
}
