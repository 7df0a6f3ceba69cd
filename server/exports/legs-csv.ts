import { uncutLegs } from '../language/uncut-legs.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Job } from '../job/job.ts';
import type { Site } from '../job/site.ts';
import type { LegPlan } from '../plan/leg.ts';
import { csvText, numberOf, type Cell, type Column } from './csv.ts';
import { chosenMembers, exported, refused, type ExportInput, type Exported } from './export-file.ts';

/** A leg, and what the sides of its site are called; of one that cannot be cut its name, and why. */
type Row = {
  readonly number: number;
  readonly name: string;
  readonly leg: LegPlan | null;
  readonly why: string;
  readonly sides: Site['sides'];
};

/** A column of what is known of a leg that can be cut; empty for one that cannot. */
const known = (head: string, cell: (leg: LegPlan, sides: Site['sides']) => Cell): Column<Row> => ({
  head,
  cell: ({ leg, sides }) => (leg === null ? null : cell(leg, sides)),
});

const ringOf = ({ templates }: LegPlan, scrap: 'start' | 'finish'): Cell =>
  templates.find((one) => one.scrap === scrap)?.ringStation ?? null;

const COLUMNS: readonly Column<Row>[] = [
  { head: words('export.head.leg-number'), cell: ({ number }) => number },
  { head: words('export.head.leg'), cell: ({ name }) => name },
  known(words('export.head.side'), ({ side }, sides) =>
    side === 'middle' ? words('export.side.middle') : wordsOf(`side.${sides}`, side),
  ),
  known(`${words('export.head.outside-diameter')} (mm)`, (leg) => leg.outsideDiameter),
  known(`${words('export.head.wall')} (mm)`, (leg) => leg.wall),
  known(`${words('export.head.centre-length')} (mm)`, (leg) => numberOf(leg.centreLength)),
  known(`${words('export.head.cut-length')} (mm)`, (leg) => numberOf(leg.cutLength)),
  known(
    `${words('export.head.cut-length')}: ${words('export.head.plus-minus')} (mm)`,
    (leg) => leg.cutLength.band?.plusMinus ?? null,
  ),
  known(`${words('export.head.shortest')} (mm)`, (leg) => numberOf(leg.shortest)),
  known(`${words('export.head.longest')} (mm)`, (leg) => numberOf(leg.longest)),
  known(words('export.head.foot-end'), (leg) => words(`leg.footEnd.${leg.foot.end}`)),
  known(`${words('export.head.plate')} (mm)`, (leg) => leg.foot.plate),
  known(`${words('export.head.foot-tilt')} (deg)`, (leg) => numberOf(leg.foot.tilt)),
  known(`${words('export.head.foot-ring')} (mm)`, (leg) => ringOf(leg, 'start')),
  known(words('export.head.head-end'), (leg) => words(`leg.headEnd.${leg.head.end}`)),
  known(words('export.head.head-on'), (leg) => leg.head.member),
  known(`${words('export.head.head-station')} (mm)`, (leg) => numberOf(leg.head.station)),
  known(`${words('export.head.head-angle')} (deg)`, (leg) => numberOf(leg.head.axisAngle)),
  known(`${words('export.head.head-ring')} (mm)`, (leg) => ringOf(leg, 'finish')),
  known(`${words('export.head.roll')} (deg)`, (leg) => numberOf(leg.roll)),
  known(`${words('export.head.roll-round')} (mm)`, (leg) => numberOf(leg.rollRound)),
  known(`${words('export.head.per-degree')} (mm/deg)`, (leg) => numberOf(leg.perDegree)),
  { head: words('export.head.uncut'), cell: ({ why }) => why },
];

/**
 * The legs as they are cut: one row a leg, in the job's order, and one without numbers for a leg that cannot be cut, with
 * why; of one member where one is chosen, those under it.
 */
export function legsCsv(input: ExportInput): Exported {
  const chosen = chosenMembers(input);
  if (!chosen.ok) return chosen;
  const { plan, job, member } = input;
  const legs = (plan.site?.legs ?? []).filter(({ head }) => member === null || head.member === member);
  if (legs.length === 0) return refused('no-legs');
  const { sides } = job.site;
  const rows: Row[] = [
    ...legs.map((leg) => ({ number: leg.number, name: leg.name, leg, why: '', sides })),
    ...uncutLegs(plan, job)
      .filter(({ number }) => member === null || headMember(job, number) === member)
      .map((uncut) => ({ ...uncut, leg: null, sides })),
  ];
  return exported(
    csvText(
      COLUMNS,
      rows.toSorted((one, other) => one.number - other.number),
    ),
  );
}

/** On which member a leg is typed to have its head; undefined where that is a point of the site. */
function headMember({ site }: Job, number: number): string | undefined {
  const at = site.legs[number - 1]?.head.at;
  return at !== undefined && 'member' in at ? at.member : undefined;
}
