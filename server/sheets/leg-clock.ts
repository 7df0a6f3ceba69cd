import type { Job } from '../job/job.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { turnWay } from '../language/turn-way.ts';
import { words } from '../language/words.ts';
import type { Figure } from '../plan/figure.ts';
import type { LegPlan } from '../plan/leg.ts';
import { clockPlaces, clockRing, clockTurn, type ClockPlace } from './clock.ts';
import { freest } from './free-place.ts';
import { HEIGHTS, STROKES, line, write, type Item, type Spot } from './ink.ts';
import { paragraph, stacked, type Block } from './text-block.ts';

/** Radius of the tube as drawn, and room round it for what its marks say [mm]. */
const RADIUS = 8.5;
const ROOM = 7.5;

/** The turn's own line, and the ticks of the two ends, as shares of the radius. */
const TURN = 0.6;
const TICK = { from: 0.3, to: 1.22 } as const;

/** How far round, and which way as seen from the foot; in line or half round where its ± leaves the way open. */
export function turnWords(turn: Figure, { units }: Job, way = turnWay(turn)): string {
  if (way === 'inLine') return words('sheet.in-line');
  const angle = formatFigure({ ...turn, value: Math.abs(turn.value) }, units);
  return way === 'half' ? words('sheet.half-round', { angle }) : words(`sheet.${way}`, { angle });
}

/**
 * The leg seen from its foot, the scribed line on top: where the foot is longest, where the head is cut deepest, and the
 * turn from the one to the other. Nothing where an end has no direction.
 */
export function legClock({ roll, foot }: LegPlan, job: Job, width: number): Block | null {
  if (roll === null || foot.longSide === null) return null;
  const long = foot.longSide.value;
  const head = long + roll.value;
  const centre: Spot = [width / 2, RADIUS + ROOM];
  const at = clockPlaces(centre, RADIUS);
  const tick = (degrees: number): Item =>
    line('mark', [at(degrees, TICK.from), at(degrees, TICK.to)], { ...STROKES.edge, width: 0.7 });
  const items: Item[] = [
    clockRing(at),
    tick(long),
    tick(head),
    ...(turnWay(roll) === 'inLine' ? [] : clockTurn(at, long, roll.value, TURN)),
    line('centreline', [at(0, 0.78), at(0, TICK.to)], STROKES.narrow),
  ];
  const area = { left: 0, top: 0, width, height: 2 * (RADIUS + ROOM) };
  for (const [degrees, text] of [
    [0, words('sheet.scribed-line')],
    [long, words('sheet.foot-long')],
    [head, words('sheet.head-long')],
  ] as const) {
    const said = freest(markPlaces(degrees, text, at), items, area);
    if (said !== undefined) items.push(said);
  }
  const small = { height: HEIGHTS.small };
  return stacked([
    paragraph(words('sheet.seen-from-foot'), width, { ...small, weight: 600 }),
    { height: area.height, items },
    paragraph(turnWords(roll, job), width, { height: 2.1, weight: 600 }),
    paragraph(words('sheet.roll-legend', { turn: longSideWords(foot.longSide, job) }), width, small),
  ]);
}

/** The shorter way round from the scribed line to the long side of the foot. */
const longSideWords = (longSide: Figure, job: Job): string =>
  turnWords({ ...longSide, value: longSide.value > 180 ? longSide.value - 360 : longSide.value }, job);

/** Places for the words of a mark, straight out of it first, then to either side. */
function markPlaces(degrees: number, text: string, at: ClockPlace) {
  return [0, 15, -15, 30, -30, 45, -45, 60, -60, 75, -75].flatMap((aside) =>
    [3, 4.5, 6, 7].map((out) => {
      const [x, y] = at(degrees + aside, 1 + out / RADIUS);
      const across = Math.sin(((degrees + aside) * Math.PI) / 180);
      const align = across > 0.35 ? 'left' : across < -0.35 ? 'right' : 'middle';
      return write([x, y + HEIGHTS.small / 2], text, { height: HEIGHTS.small, weight: 600, align });
    }),
  );
}
