import type { Units } from '../job/job.ts';
import { figureParts } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { BendRow } from '../plan/bending.ts';
import type { Figure } from '../plan/figure.ts';
import { table, type Cell, type Column, type Table } from './table.ts';

/** What the large rows do not say of each bend; the unit of length stands in the head. */
export function bendTable(bends: readonly BendRow[], units: Units, width: number): Table {
  const length = units.length === 'mm' ? 'mm' : 'in';
  const show = (figure: Figure | null): string => (figure === null ? '—' : figureParts(figure, units).number);
  const column = (head: string, unit: string): Column => ({
    head: unit === '' ? head : `${head} ${unit}`,
    align: 'right',
  });
  return table(
    [
      { head: words('sheet.bend-number'), align: 'middle' },
      { head: words('sheet.made'), align: 'left' },
      column(words('sheet.straight-before'), length),
      column(words('sheet.middle-mark'), length),
      column(words('sheet.end-mark'), length),
      column(words('sheet.angle-wanted'), ''),
      column(words('sheet.die'), length),
      column(words('sheet.radius-after'), length),
      { head: words('sheet.mandrel'), align: 'left' },
    ],
    bends.map((bend): Cell[] => [
      { text: String(bend.number), weight: 600 },
      wordsOf('choice.made', bend.made),
      show(bend.feed),
      show(bend.middleMark),
      show(bend.endMark),
      show(bend.angle),
      bend.made === 'rolled' ? '—' : show(bend.dieRadius),
      show(bend.radiusAfterRelease),
      wordsOf('mandrel', bend.mandrel),
    ]),
    { width, height: 2.1 },
  );
}
