import { words, wordsOf } from '../language/words.ts';
import type { BendRow } from '../plan/bending.ts';
import type { Figure } from '../plan/figure.ts';
import { csvText, numberOf, type Column } from './csv.ts';
import { chosenMembers, exported, refused, type ExportInput, type Exported } from './export-file.ts';

type Row = { readonly member: string; readonly bend: BendRow };

/** A column of figures, with their unit in its head. */
const figures = (head: string, unit: 'mm' | 'deg', figure: (bend: BendRow) => Figure | null): Column<Row> => ({
  head: `${head} (${unit})`,
  cell: ({ bend }) => numberOf(figure(bend)),
});

/** In the order in which the person at the bender reads them; the heads are the table's own, so that they stay. */
const COLUMNS: readonly Column<Row>[] = [
  { head: words('export.head.member'), cell: ({ member }) => member },
  { head: words('export.head.bend-number'), cell: ({ bend }) => bend.number },
  { head: words('export.head.made'), cell: ({ bend }) => wordsOf('choice.made', bend.made) },
  figures(words('export.head.straight-before'), 'mm', (bend) => bend.feed),
  figures(words('export.head.start-mark'), 'mm', (bend) => bend.startMark),
  figures(words('export.head.middle-mark'), 'mm', (bend) => bend.middleMark),
  figures(words('export.head.end-mark'), 'mm', (bend) => bend.endMark),
  figures(words('export.head.rotation'), 'deg', (bend) => bend.rotation),
  figures(words('export.head.rotation-round'), 'mm', (bend) => bend.rotationRound),
  figures(words('export.head.angle-wanted'), 'deg', (bend) => bend.angle),
  figures(words('export.head.bend-to'), 'deg', (bend) => bend.angleToBendTo),
  figures(words('export.head.die'), 'mm', (bend) => bend.dieRadius),
  figures(words('export.head.radius-after'), 'mm', (bend) => bend.radiusAfterRelease),
  figures(words('export.head.arc-length'), 'mm', (bend) => bend.arcLength),
  figures(words('export.head.check-outside'), 'mm', (bend) => bend.check),
];

/** The bend table of a frame: one row a bend, in the order of work, member by member. */
export function bendTableCsv(input: ExportInput): Exported {
  const chosen = chosenMembers(input);
  if (!chosen.ok) return chosen;
  const rows = chosen.members.flatMap(({ name, bends }) => bends.map((bend): Row => ({ member: name, bend })));
  return rows.length === 0 ? refused('no-bends') : exported(csvText(COLUMNS, rows));
}
