import type { Units } from '../../server/job/job.ts';
import { formatFigure } from '../../server/language/quantity-format.ts';
import { words } from '../../server/language/words.ts';
import type { GapRow } from '../../server/plan/gap.ts';

/** 'least over the swing, at 8.0° of the frame’s': where the gap is least; as it stands where nothing swings. */
export function swungWords({ frameSwing, thingSwing }: GapRow, units: Units): string {
  const parts = [
    ...(frameSwing === null ? [] : [words('gap.frameSwing', { angle: formatFigure(frameSwing, units) })]),
    ...(thingSwing === null ? [] : [words('gap.thingSwing', { angle: formatFigure(thingSwing, units) })]),
  ];
  return parts.length === 0 ? words('gap.atRest') : words('gap.overSwing', { at: parts.join(', ') });
}
