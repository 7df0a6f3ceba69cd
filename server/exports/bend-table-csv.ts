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

/** In the order in which the person at the bender reads them; the heads are those of the bend sheet. */
const COLUMNS: readonly Column<Row>[] = [
  { head: words('sheet.member'), cell: ({ member }) => member },
  { head: words('sheet.bend-number'), cell: ({ bend }) => bend.number },
  { head: words('sheet.made'), cell: ({ bend }) => wordsOf('choice.made', bend.made) },
  figures(words('sheet.straight-before'), 'mm', (bend) => bend.feed),
  figures(words('sheet.start-mark'), 'mm', (bend) => bend.startMark),
  figures(words('sheet.middle-mark'), 'mm', (bend) => bend.middleMark),
  figures(words('sheet.end-mark'), 'mm', (bend) => bend.endMark),
  figures(words('sheet.rotation'), 'deg', (bend) => bend.rotation),
  figures(words('export.rotation-round'), 'mm', (bend) => bend.rotationRound),
  figures(words('sheet.angle-wanted'), 'deg', (bend) => bend.angle),
  figures(words('sheet.bend-to'), 'deg', (bend) => bend.angleToBendTo),
  figures(words('sheet.die'), 'mm', (bend) => bend.dieRadius),
  figures(words('sheet.radius-after'), 'mm', (bend) => bend.radiusAfterRelease),
  figures(words('export.arc-length'), 'mm', (bend) => bend.arcLength),
  figures(words('sheet.check-outside'), 'mm', (bend) => bend.check),
];

/** The bend table of a frame: one row a bend, in the order of work, member by member. */
export function bendTableCsv(input: ExportInput): Exported {
  const chosen = chosenMembers(input);
  if (!chosen.ok) return chosen;
  const rows = chosen.members.flatMap(({ name, bends }) => bends.map((bend): Row => ({ member: name, bend })));
  return rows.length === 0 ? refused('no-bends') : exported(csvText(COLUMNS, rows));
}
