import type { Job } from '../job/job.ts';
import { fieldName } from '../language/field-name.ts';
import { formatClosely } from '../language/length-format.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { turnWay } from '../language/turn-way.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Figure } from '../plan/figure.ts';
import type { LegPlan } from '../plan/leg.ts';
import { figuresRow, type Named } from './figures-row.ts';
import { HEIGHTS } from './ink.ts';
import { turnWords } from './leg-clock.ts';
import { bandOf, withBand } from './site-words.ts';
import { table, tableBlock, type Cell } from './table.ts';
import { beside, type Block } from './text-block.ts';

/** Width that the length to saw off takes, and the air beside it [mm]. */
const LARGE = 64;
const AIR = 3;

/** Height of the numbers beside it: three rows at the most [mm]. */
const FACTS = 3.1;

/**
 * What is set and read at the saw, in that order: the length, then foot, head and roll; `unread` where the length rests on
 * a level that nobody has read.
 */
export function legNumbers(leg: LegPlan, job: Job, width: number, unread: boolean): Block {
  const { units } = job;
  const { cutLength, foot, head, roll, rollRound } = leg;
  const length: Named = { name: words('sheet.saw-off-at'), value: formatFigure(cutLength, units) };
  const sure: Named = { name: sureWords(unread), value: bandOf(cutLength, job) };
  const mitred = foot.end === 'mitre';
  const facts: Named[] = [
    sure,
    mitred
      ? { name: words('sheet.foot-saw'), value: formatFigure(foot.tilt, units) }
      : { name: words('sheet.foot-square'), value: words('sheet.square') },
    ...(foot.rise === null ? [] : [{ name: words('sheet.foot-rise'), value: formatFigure(foot.rise, units) }]),
    ...(foot.plate === 0 ? [] : [{ name: words('sheet.foot-plate'), value: formatClosely(foot.plate, units) }]),
    { name: words('sheet.head-angle'), value: formatFigure(head.axisAngle, units) },
    ...(roll === null || rollRound === null
      ? []
      : [
          {
            name: words('sheet.roll-round'),
            value: rollWords(roll, rollRound, job),
          },
        ]),
  ];
  return beside([
    { left: 0, block: figuresRow([length], LARGE, HEIGHTS.wall) },
    { left: LARGE + AIR, block: figuresRow(facts, width - LARGE - AIR, FACTS) },
  ]);
}

/** The turn between the ends of a leg round its outside, with its angle; or that there is none. */
const rollWords = (roll: Figure, round: Figure, job: Job): string =>
  turnWay(roll) === 'inLine'
    ? words('sheet.in-line')
    : words('sheet.roll', { girth: turnWords(round, job, turnWay(roll)), angle: formatFigure(sized(roll), job.units) });

const sized = (turn: Figure): Figure => ({ ...turn, value: Math.abs(turn.value) });

/** What stands at the ±: that it leaves out how the structure lies, where that is not read. */
export const sureWords = (unread: boolean): string =>
  [words('sheet.sure-to'), ...(unread ? [words('leg.levelNotRead')] : [])].join('; ');

/** Everything else that is known of a leg's lengths, as a list of names and numbers. */
export function legTable(leg: LegPlan, job: Job, width: number): Block {
  const { units } = job;
  const row = (name: string, figure: Figure | null): Cell[][] =>
    figure === null ? [] : [[name, { text: withBand(figure, job), weight: 600 }]];
  const pair = (key: 'sheet.ends-take' | 'sheet.lines-along', one: Figure, other: Figure): Cell[][] => [
    [words(key), { text: `${formatFigure(one, units)}; ${formatFigure(other, units)}`, weight: 600 }],
  ];
  const { adjust } = leg;
  const rows: Cell[][] = [
    ...row(words('sheet.centre-length'), leg.centreLength),
    ...row(words('sheet.middle-length'), leg.middleLength),
    ...pair('sheet.ends-take', leg.foot.takes, leg.head.takes),
    ...pair('sheet.lines-along', leg.shortest, leg.longest),
    ...row(words('sheet.foot-off-square'), leg.foot.end === 'mitre' ? null : leg.foot.tilt),
    [headAt(leg, job), { text: formatFigure(leg.head.station, units), weight: 600 }],
    ...slopeRows(leg, job),
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
          ...(adjust.slope === null
            ? []
            : [
                [
                  words('sheet.adjust-slope'),
                  {
                    text: words('sheet.from-to', {
                      least: formatFigure(adjust.slope.least, units),
                      most: formatFigure(adjust.slope.most, units),
                    }),
                    weight: 600,
                  } as const,
                ],
              ]),
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

/** What a degree of slope takes of the leg; where the legs set several slopes, of each, signed. */
function slopeRows({ slopes, perDegree }: LegPlan, { units }: Job): Cell[][] {
  const value = (figure: Figure): Cell => ({ text: formatFigure(figure, units), weight: 600 });
  if (slopes.length > 1) {
    return slopes.map((one) => [words('sheet.for-a-degree-of', { slope: slopeName(one) }), value(one.perDegree)]);
  }
  const turns = slopes[0]?.axis === 'turn';
  const name = words(turns ? 'sheet.for-a-degree-of-turn' : 'sheet.for-a-degree');
  return perDegree === null ? [] : [[name, value(perDegree)]];
}

function slopeName({ axis, field }: LegPlan['slopes'][number]): string {
  if (axis === 'asked') return fieldName(field);
  return words(axis === 'turn' ? 'sheet.slope-turn' : `sheet.standing-${axis}`);
}

/** On which tube the head sits, and from which of its ends that is measured: 'head on hoop, from its left foot'. */
function headAt({ head: { member } }: LegPlan, { frame }: Job): string {
  const end = frame.shape === 'hoop' && member === 'hoop' ? words('place.hoop.start') : wordsOf('place', 'start');
  return words('sheet.head-at', { member, end });
}
