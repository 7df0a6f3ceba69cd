import type { Job } from '../job/job.ts';
import { formatClosely } from '../language/length-format.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { words } from '../language/words.ts';
import type { LegPlan } from '../plan/leg.ts';
import { HEIGHTS, STROKES, box, write } from './ink.ts';
import { legEnds } from './leg-wraps.ts';
import { sideWords } from './site-words.ts';
import { lineHeight, paragraph, stacked, wrap, type Block } from './text-block.ts';

/** Height of the letters, the side of a box to tick, and what it takes before its words [mm]. */
const HEIGHT = 2.1;
const SIDE = 3;
const BOX = 5;

/** What is done with a leg, each step with a box to tick. */
export function legSteps(leg: LegPlan, job: Job, width: number): Block {
  const { units } = job;
  const ends = legEnds(leg);
  const foot = ends.find(({ at }) => at === 'foot');
  const head = ends.find(({ at }) => at === 'head');
  const said = [
    words('sheet.leg-step-saw', { length: formatFigure(leg.cutLength, units) }),
    ...(ends.length === 0 ? [] : [words('sheet.leg-step-scribe')]),
    ...(foot === undefined ? [] : [words('sheet.leg-step-foot')]),
    ...(head === undefined ? [] : [words(foot === undefined ? 'sheet.leg-step-head' : 'sheet.leg-step-head-too')]),
    words('sheet.leg-step-check', {
      middle: formatFigure(leg.middleLength, units),
      shortest: formatFigure(leg.shortest, units),
      longest: formatFigure(leg.longest, units),
    }),
    ...plateStep(leg, job),
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

/** The plate that a foot stands on. */
const plateStep = ({ foot: { end, plate } }: LegPlan, { units }: Job): string[] =>
  plate === 0 || end === 'socket' ? [] : [words(`sheet.leg-step-plate.${end}`, { plate: formatClosely(plate, units) })];

/** A box and its sentence, on as many lines as that takes. */
function step(text: string, width: number): Block {
  const lines = wrap(text, width - BOX, { height: HEIGHT, weight: 400 });
  return {
    height: lines.length * lineHeight(HEIGHT) + 0.6,
    items: [
      box('frame', { left: 0, top: 0.5, width: SIDE, height: SIDE }, STROKES.narrow),
      ...lines.map((part, index) => write([BOX, index * lineHeight(HEIGHT) + 1.45 * HEIGHT], part, { height: HEIGHT })),
    ],
  };
}
