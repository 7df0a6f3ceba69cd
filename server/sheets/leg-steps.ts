import type { Job } from '../job/job.ts';
import { formatLength } from '../language/length-format.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { words } from '../language/words.ts';
import type { LegPlan } from '../plan/leg.ts';
import { HEIGHTS, write } from './ink.ts';
import { legEnds } from './leg-wraps.ts';
import { tick } from './sign.ts';
import { sideWords } from './site-words.ts';
import { lineHeight, paragraph, stacked, wrap, type Block } from './text-block.ts';

/** Height of the letters, and what a box to tick takes before its words [mm]. */
const HEIGHT = 2.1;
const BOX = 6;

/** What is done with a leg, each step with a box to tick. */
export function legSteps(leg: LegPlan, job: Job, width: number): Block {
  const { units } = job;
  const ends = legEnds(leg);
  const foot = ends.find(({ at }) => at === 'foot');
  const head = ends.find(({ at }) => at === 'head');
  const said = [
    words('sheet.leg-step-saw', { length: formatFigure(leg.cutLength, units) }),
    ...(ends.length === 0 ? [] : [words('sheet.leg-step-scribe')]),
    ...(foot === undefined
      ? []
      : [words('sheet.leg-step-foot', { distance: formatLength(foot.template.ringStation, units) })]),
    ...(head === undefined
      ? []
      : [words('sheet.leg-step-head', { distance: formatLength(head.template.ringStation, units) })]),
    words('sheet.leg-step-check', {
      middle: formatFigure(leg.middleLength, units),
      shortest: formatFigure(leg.shortest, units),
      longest: formatFigure(leg.longest, units),
    }),
    ends.length === 0
      ? words('sheet.leg-step-set-up')
      : words('sheet.leg-step-set-up-line', { ahead: sideWords(job, 'ahead') }),
    words('sheet.leg-step-read'),
    words(leg.head.end === 'saddle' ? 'sheet.leg-step-weld' : 'sheet.leg-step-fasten'),
  ];
  return stacked([
    paragraph(words('sheet.order'), width, { height: HEIGHTS.text, weight: 600 }),
    ...said.map((text, index) => step(words('sheet.order-row', { number: index + 1, text }), width)),
  ]);
}

/** A box and its sentence, on as many lines as that takes. */
function step(text: string, width: number): Block {
  const [first = '', ...rest] = wrap(text, width - BOX, { height: HEIGHT, weight: 400 });
  return stacked([
    tick(first, HEIGHT),
    ...rest.map((part) => ({
      height: lineHeight(HEIGHT),
      items: [write([BOX, 1.1 * HEIGHT], part, { height: HEIGHT })],
    })),
  ]);
}
