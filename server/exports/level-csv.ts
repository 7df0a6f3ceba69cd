import { isSteep } from '../language/site-rules.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Site } from '../job/site.ts';
import type { LevelPlan, LevelRow, PlaneReading } from '../plan/site.ts';
import { csvText, numberOf, type Cell, type Column } from './csv.ts';
import { chosenMembers, exported, refused, type ExportInput, type Exported } from './export-file.ts';

/** What a level shows for one line, the readings of the structure that it rests on, and what its sides are called. */
type Row = { readonly row: LevelRow; readonly level: LevelPlan; readonly sides: Site['sides'] };

const sideOf = (side: PlaneReading['rises'] | undefined, { sides }: Row): string =>
  side === undefined || side === null ? '' : wordsOf(`side.${sides}`, side);

/**
 * The columns of one plane: what a level held in it shows, off plumb, and the side that is higher, or for a steep line
 * the side that its upper end leans to.
 */
function planeColumns(plane: PlaneReading['plane'], sides: Site['sides']): Column<Row>[] {
  const head = (what: string, unit = ''): string => `${words(`export.head.${sides}.${plane}`)}: ${what}${unit}`;
  const of = ({ row }: Row): PlaneReading | undefined => row.planes.find((one) => one.plane === plane);
  const number = (one: PlaneReading['shows'] | undefined): Cell => numberOf(one ?? null);
  return [
    { head: head(words('export.head.shows'), ' (deg)'), cell: (row) => number(of(row)?.shows) },
    {
      head: head(`${words('export.head.shows')}, ${words('export.head.plus-minus')}`, ' (deg)'),
      cell: (row) => of(row)?.shows.band?.plusMinus ?? null,
    },
    { head: head(words('export.head.rises')), cell: (row) => (isSteep(row.row) ? '' : sideOf(of(row)?.rises, row)) },
    { head: head(words('export.head.off-plumb'), ' (deg)'), cell: (row) => number(of(row)?.offPlumb) },
    { head: head(words('export.head.leans')), cell: (row) => (isSteep(row.row) ? sideOf(of(row)?.leans, row) : '') },
  ];
}

/** The columns, planes and sides called as the job calls them. */
const columns = (sides: Site['sides']): readonly Column<Row>[] => [
  { head: words('export.head.level-of'), cell: ({ row }) => wordsOf('level.of', row.of) },
  { head: words('export.head.name'), cell: ({ row }) => row.name },
  { head: `${words('export.head.along')} (deg)`, cell: ({ row }) => numberOf(row.along) },
  {
    head: `${words('export.head.along')}: ${words('export.head.plus-minus')} (deg)`,
    cell: ({ row }) => row.along.band?.plusMinus ?? null,
  },
  { head: `${words('export.head.off-plumb')} (deg)`, cell: ({ row }) => numberOf(row.offPlumb) },
  ...planeColumns('fore-and-aft', sides),
  ...planeColumns('athwart', sides),
  // nobody has read a level: there is no set that the numbers rest on
  { head: words('export.head.set'), cell: ({ level }) => (level.known ? level.set : null) },
  { head: words('export.head.taken'), cell: ({ level }) => level.taken },
];

/** What a level must show as the structure lies now: one row a line; of one member where one is chosen. */
export function levelCsv(input: ExportInput): Exported {
  const chosen = chosenMembers(input);
  if (!chosen.ok) return chosen;
  const { plan, job, member } = input;
  const { site } = plan;
  if (site === null) return refused('no-level-rows');
  const rows = site.rows.filter(({ of, name }) => member === null || (of === 'member' && name === member));
  if (rows.length === 0) return refused('no-level-rows');
  const { sides } = job.site;
  return exported(
    csvText(
      columns(sides),
      rows.map((row) => ({ row, level: site.level, sides })),
    ),
  );
}
