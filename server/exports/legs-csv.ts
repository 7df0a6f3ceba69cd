import { words, wordsOf } from '../language/words.ts';
import type { Site } from '../job/site.ts';
import type { LegPlan } from '../plan/leg.ts';
import { csvText, numberOf, type Column } from './csv.ts';
import { chosenMembers, exported, refused, type ExportInput, type Exported } from './export-file.ts';

/** A leg, and what the sides of its site are called. */
type Row = { readonly leg: LegPlan; readonly sides: Site['sides'] };

const sideOf = ({ leg: { side }, sides }: Row): string =>
  side === 'middle' ? words('export.side.middle') : wordsOf(`side.${sides}`, side);

const COLUMNS: readonly Column<Row>[] = [
  { head: words('export.head.leg-number'), cell: ({ leg }) => leg.number },
  { head: words('export.head.leg'), cell: ({ leg }) => leg.name },
  { head: words('export.head.side'), cell: sideOf },
  { head: `${words('export.head.outside-diameter')} (mm)`, cell: ({ leg }) => leg.outsideDiameter },
  { head: `${words('export.head.wall')} (mm)`, cell: ({ leg }) => leg.wall },
  { head: `${words('export.head.centre-length')} (mm)`, cell: ({ leg }) => numberOf(leg.centreLength) },
  { head: `${words('export.head.cut-length')} (mm)`, cell: ({ leg }) => numberOf(leg.cutLength) },
  {
    head: `${words('export.head.cut-length')}: ${words('export.head.plus-minus')} (mm)`,
    cell: ({ leg }) => leg.cutLength.band?.plusMinus ?? null,
  },
  { head: `${words('export.head.foot-tilt')} (deg)`, cell: ({ leg }) => numberOf(leg.foot.tilt) },
  { head: `${words('export.head.head-angle')} (deg)`, cell: ({ leg }) => numberOf(leg.head.axisAngle) },
  { head: `${words('export.head.roll')} (deg)`, cell: ({ leg }) => numberOf(leg.roll) },
  { head: `${words('export.head.roll-round')} (mm)`, cell: ({ leg }) => numberOf(leg.rollRound) },
  { head: `${words('export.head.per-degree')} (mm/deg)`, cell: ({ leg }) => numberOf(leg.perDegree) },
  { head: words('export.head.onto'), cell: ({ leg }) => leg.head.member },
  { head: `${words('export.head.station')} (mm)`, cell: ({ leg }) => numberOf(leg.head.station) },
];

/** The legs as they are cut: one row a leg, in the job's order; of one member where one is chosen, those under it. */
export function legsCsv(input: ExportInput): Exported {
  const chosen = chosenMembers(input);
  if (!chosen.ok) return chosen;
  const { plan, job, member } = input;
  const legs = (plan.site?.legs ?? []).filter(({ head }) => member === null || head.member === member);
  const { sides } = job.site;
  return legs.length === 0
    ? refused('no-legs')
    : exported(
        csvText(
          COLUMNS,
          legs.map((leg) => ({ leg, sides })),
        ),
      );
}
