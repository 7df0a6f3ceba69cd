import type { Job } from '../job/job.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { words } from '../language/words.ts';
import type { LevelRow, PlaneReading } from '../plan/site.ts';
import { bandOf, sideWords } from './site-words.ts';
import { table, type Cell, type Table } from './table.ts';

/** Steeper than this a line is told by how far it is off plumb [degrees]. */
const STEEP = 45;

/** What the level must show now, line by line; where one held in a plane shows something else, that is marked. */
export function levelTable(rows: readonly LevelRow[], job: Job, width: number): Table {
  const { units } = job;
  return table(
    [
      { head: words('sheet.level-of'), align: 'left' },
      { head: words('sheet.level-along'), align: 'right' },
      { head: words('sheet.level-off-plumb'), align: 'right' },
      { head: words('sheet.level-fore-and-aft'), align: 'left' },
      { head: words('sheet.level-athwart'), align: 'left' },
      { head: words('sheet.level-sure'), align: 'right' },
      { head: words('sheet.level-marked'), align: 'middle' },
    ],
    rows.map((row): Cell[] => {
      const held = (plane: PlaneReading['plane']): Cell => ({
        text: heldWords(
          row.planes.find((one) => one.plane === plane),
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

const nameOf = ({ of, name }: LevelRow): string =>
  of === 'hinge' ? words('sheet.level-hinge') : of === 'direction' ? name : words(`sheet.level-${of}`, { name });

/** What a level shows that is held in a plane, with the side that is higher, or that a steep line leans to. */
function heldWords(reading: PlaneReading | undefined, job: Job): string {
  if (reading === undefined) return '—';
  const { shows, rises, offPlumb, leans } = reading;
  const value = formatFigure(shows, job.units);
  if (shows.value > STEEP) {
    return leans === null
      ? words('sheet.level-plumb', { value })
      : words('sheet.level-leans', { value, off: formatFigure(offPlumb, job.units), side: sideWords(job, leans) });
  }
  return rises === null ? value : words('sheet.side-higher', { size: value, side: sideWords(job, rises) });
}
