import type { Job } from '../job/job.ts';
import { formatClosely } from '../language/length-format.ts';
import { formatBand, formatFigure, formatQuantity } from '../language/quantity-format.ts';
import { words } from '../language/words.ts';
import type { Figure } from '../plan/figure.ts';
import type { LegPlan } from '../plan/leg.ts';
import { figuresRow, type Named } from './figures-row.ts';
import { HEIGHTS } from './ink.ts';
import { turnWords } from './leg-clock.ts';
import { withBand } from './site-words.ts';
import { table, tableBlock, type Cell } from './table.ts';
import { beside, type Block } from './text-block.ts';

/** Width that the length to saw off takes, and the air beside it [mm]. */
const LARGE = 64;
const AIR = 3;

/** What is set and read at the saw, in that order: the length, then foot, head and roll. */
export function legNumbers(leg: LegPlan, job: Job, width: number): Block {
  const { units } = job;
  const { cutLength, foot, head, roll, rollRound } = leg;
  const length: Named = { name: words('sheet.saw-off-at'), value: formatFigure(cutLength, units) };
  const sure: Named = {
    name: words('sheet.sure-to'),
    value: cutLength.band === null ? '—' : formatBand(cutLength.band, 'mm', units),
  };
  const mitred = foot.end === 'mitre';
  const facts: Named[] = [
    sure,
    { name: words('sheet.foot-saw'), value: mitred ? formatFigure(foot.tilt, units) : words('sheet.square') },
    ...(foot.rise === null ? [] : [{ name: words('sheet.foot-rise'), value: formatFigure(foot.rise, units) }]),
    { name: words('sheet.head-angle'), value: formatFigure(head.axisAngle, units) },
    ...(roll === null || rollRound === null
      ? []
      : [
          {
            name: words('sheet.roll-round'),
            value: formatQuantity(Math.abs(rollRound.value), rollRound.unit, units),
          },
          { name: words('sheet.roll'), value: turnWords(roll, job) },
        ]),
  ];
  return beside([
    { left: 0, block: figuresRow([length], LARGE, HEIGHTS.wall) },
    { left: LARGE + AIR, block: figuresRow(facts, width - LARGE - AIR, HEIGHTS.head) },
  ]);
}

/** Everything else that is known of a leg's lengths, as a list of names and numbers. */
export function legTable(leg: LegPlan, job: Job, width: number): Block {
  const { units } = job;
  const row = (name: string, figure: Figure | null): Cell[][] =>
    figure === null ? [] : [[name, { text: withBand(figure, job), weight: 600 }]];
  const pair = (key: 'sheet.ends-take' | 'sheet.lines-along', one: Figure, other: Figure): Cell[][] => [
    [words(key), { text: `${formatFigure(one, units)}; ${formatFigure(other, units)}`, weight: 600 }],
  ];
  const { adjust, perDegree } = leg;
  const rows: Cell[][] = [
    ...row(words('sheet.centre-length'), leg.centreLength),
    ...row(words('sheet.middle-length'), leg.middleLength),
    ...pair('sheet.ends-take', leg.foot.takes, leg.head.takes),
    ...pair('sheet.lines-along', leg.shortest, leg.longest),
    ...row(words('sheet.foot-off-square'), leg.foot.end === 'mitre' ? null : leg.foot.tilt),
    [words('sheet.head-at', { member: leg.head.member }), { text: formatFigure(leg.head.station, units), weight: 600 }],
    ...(perDegree === null
      ? []
      : [[words('sheet.for-a-degree'), { text: formatClosely(perDegree.value, units), weight: 600 } as const]]),
    ...(adjust === null
      ? []
      : [
          [
            words(`sheet.adjusted.${adjust.by}`),
            {
              text: words('sheet.from-to', {
                least: formatFigure(adjust.least, units),
                most: formatFigure(adjust.most, units),
              }),
              weight: 600,
            } as const,
          ],
          ...row(words('sheet.adjust-slope'), adjust.slope),
        ]),
    ...row(words('sheet.mass'), leg.mass),
  ];
  return tableBlock(
    table(
      [
        { head: words('sheet.of-this-leg'), align: 'left' },
        { head: '', align: 'right' },
      ],
      rows,
      { width, height: 2 },
    ),
  );
}
