import type { Units } from '../job/job.ts';
import { figureParts } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { BendRow } from '../plan/bending.ts';
import type { Figure } from '../plan/figure.ts';
import { table, type Cell, type Column, type Table } from './table.ts';

/** One row a bend, in the order of work; the unit stands in each head. */
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
      column(words('sheet.start-mark'), length),
      column(words('sheet.middle-mark'), length),
      column(words('sheet.end-mark'), length),
      column(words('sheet.rotation'), ''),
      column(words('sheet.rotation-round'), length),
      column(words('sheet.angle-wanted'), ''),
      column(words('sheet.bend-to'), ''),
      column(words('sheet.die'), length),
      column(words('sheet.radius-after'), length),
      column(words('sheet.check-outside'), length),
    ],
    bends.map((bend): Cell[] => [
      { text: String(bend.number), weight: 600 },
      wordsOf('choice.made', bend.made),
      show(bend.feed),
      { text: show(bend.startMark), weight: 600 },
      show(bend.middleMark),
      show(bend.endMark),
      { text: show(bend.rotation), weight: 600 },
      show(bend.rotationRound),
      show(bend.angle),
      { text: show(bend.angleToBendTo), weight: 600 },
      show(bend.dieRadius),
      show(bend.radiusAfterRelease),
      show(bend.check),
    ]),
    { width },
  );
}
