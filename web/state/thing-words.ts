import type { Units } from '../../server/job/job.ts';
import { formatFigure } from '../../server/language/quantity-format.ts';
import { words } from '../../server/language/words.ts';
import type { GapRow } from '../../server/plan/gap.ts';

/** What a thing is called; one without a name by its number, from 0. */
export const thingName = (name: string, index: number): string =>
  name === '' ? words('thing.number', { number: index + 1 }) : name;

/** 'at 8.0° of the frame’s swing': where the gap is least; empty where nothing swings. */
export function swungWords({ frameSwing, thingSwing }: GapRow, units: Units): string {
  const parts = [
    ...(frameSwing === null ? [] : [words('gap.frameSwing', { angle: formatFigure(frameSwing, units) })]),
    ...(thingSwing === null ? [] : [words('gap.thingSwing', { angle: formatFigure(thingSwing, units) })]),
  ];
  return parts.join(', ');
}
