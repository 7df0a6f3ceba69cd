import type { Job } from '../job/job.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { isSteep } from '../language/site-rules.ts';
import { words, wordsOf } from '../language/words.ts';
import type { LevelRow, PlaneReading } from '../plan/site.ts';
import { bandOf, sideWords, towardsWords } from './site-words.ts';
import { table, type Cell, type Table } from './table.ts';

/** What the level must show now, line by line; where one held in a plane shows something else, that is marked. */
export function levelTable(rows: readonly LevelRow[], job: Job, width: number): Table {
  const { units } = job;
  return table(
    [
      { head: words('sheet.level-of'), align: 'left' },
      { head: words('sheet.level-along'), align: 'right' },
      { head: words('sheet.level-off-plumb'), align: 'right' },
      { head: heldIn('fore-and-aft', job), align: 'left' },
      { head: heldIn('athwart', job), align: 'left' },
      { head: words('sheet.level-sure'), align: 'right' },
      { head: words('sheet.level-marked'), align: 'middle' },
    ],
    rows.map((row): Cell[] => {
      const held = (plane: PlaneReading['plane']): Cell => ({
        text: heldWords(
          row.planes.find((one) => one.plane === plane),
          isSteep(row),
          job,
        ),
        weight: row.differs ? 600 : 400,
      });
      return [
        nameOf(row),
        { text: formatFigure(row.along, units), weight: 600 },
        formatFigure(row.offPlumb, units),
        held('fore-and-aft'),
        held('athwart'),
        bandOf(row.along, job),
        { text: row.differs ? words('sheet.level-differs') : '', weight: 600 },
      ];
    }),
    { width, height: 2.1 },
  );
}

const heldIn = (plane: PlaneReading['plane'], { site }: Job): string =>
  words('sheet.level-held', { plane: wordsOf(`plane.${site.sides}`, plane) });

const nameOf = ({ of, name }: LevelRow): string =>
  of === 'hinge' ? words('sheet.level-hinge') : of === 'direction' ? name : words(`sheet.level-${of}`, { name });

/** What a level shows that is held in a plane, with the side that is higher, or that a steep line leans to. */
function heldWords(reading: PlaneReading | undefined, steep: boolean, job: Job): string {
  if (reading === undefined) return '—';
  const { shows, rises, offPlumb, leans } = reading;
  const value = formatFigure(shows, job.units);
  if (steep) {
    return leans === null
      ? words('sheet.level-plumb', { value })
      : words('sheet.level-leans', {
          value,
          off: formatFigure(offPlumb, job.units),
          towards: towardsWords(job, leans),
        });
  }
  return rises === null ? value : words('sheet.side-higher', { size: value, side: sideWords(job, rises) });
}
