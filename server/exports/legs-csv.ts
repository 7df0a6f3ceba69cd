import { words, wordsOf } from '../language/words.ts';
import type { LegPlan } from '../plan/leg.ts';
import { csvText, numberOf, type Column } from './csv.ts';
import { chosenMembers, exported, refused, type ExportInput, type Exported } from './export-file.ts';

const COLUMNS: readonly Column<LegPlan>[] = [
  { head: words('export.head.leg-number'), cell: ({ number }) => number },
  { head: words('export.head.leg'), cell: ({ name }) => name },
  { head: words('export.head.side'), cell: ({ side }) => wordsOf('choice.legSide', side) },
  { head: `${words('export.head.outside-diameter')} (mm)`, cell: ({ outsideDiameter }) => outsideDiameter },
  { head: `${words('export.head.wall')} (mm)`, cell: ({ wall }) => wall },
  { head: `${words('export.head.centre-length')} (mm)`, cell: ({ centreLength }) => numberOf(centreLength) },
  { head: `${words('export.head.cut-length')} (mm)`, cell: ({ cutLength }) => numberOf(cutLength) },
  {
    head: `${words('export.head.cut-length')} ± (mm)`,
    cell: ({ cutLength }) => cutLength.band?.plusMinus ?? null,
  },
  { head: `${words('export.head.foot-tilt')} (deg)`, cell: ({ foot }) => numberOf(foot.tilt) },
  { head: `${words('export.head.head-angle')} (deg)`, cell: ({ head }) => numberOf(head.axisAngle) },
  { head: `${words('export.head.roll')} (deg)`, cell: ({ roll }) => numberOf(roll) },
  { head: `${words('export.head.roll-round')} (mm)`, cell: ({ rollRound }) => numberOf(rollRound) },
  { head: `${words('export.head.per-degree')} (mm/deg)`, cell: ({ perDegree }) => numberOf(perDegree) },
  { head: words('export.head.onto'), cell: ({ head }) => head.member },
  { head: `${words('export.head.station')} (mm)`, cell: ({ head }) => numberOf(head.station) },
];

/** The legs as they are cut: one row a leg, in the job's order; of one member where one is chosen, those under it. */
export function legsCsv(input: ExportInput): Exported {
  const chosen = chosenMembers(input);
  if (!chosen.ok) return chosen;
  const { plan, member } = input;
  const legs = (plan.site?.legs ?? []).filter(({ head }) => member === null || head.member === member);
  return legs.length === 0 ? refused('no-legs') : exported(csvText(COLUMNS, legs));
}
