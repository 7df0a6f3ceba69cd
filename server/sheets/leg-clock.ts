import type { Job } from '../job/job.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { words } from '../language/words.ts';
import type { Figure } from '../plan/figure.ts';
import type { LegPlan } from '../plan/leg.ts';
import { freest } from './free-place.ts';
import { HEIGHTS, STROKES, line, shape, write, type Item, type Spot } from './ink.ts';
import { longSideOf } from './leg-wraps.ts';
import { paragraph, stacked, type Block } from './text-block.ts';

/** Radius of the tube as drawn, and of the arc between its two marks [mm]. */
const RADIUS = 9;
const ARC = 5.5;
const CHORDS = 72;

/** Room round the tube for what its marks say [mm]. */
const ROOM = 6;

/** Which way round a turn goes, as seen from the foot. */
export const turnWords = (roll: Figure, { units }: Job): string =>
  words(roll.value < 0 ? 'sheet.anticlockwise' : 'sheet.clockwise', {
    angle: formatFigure({ ...roll, value: Math.abs(roll.value) }, units),
  });

/**
 * The leg seen from its foot, the scribed line on top: where the foot is longest, where the head is, and the turn from
 * the one to the other. Nothing where an end has no direction.
 */
export function legClock(leg: LegPlan, job: Job, width: number): Block | null {
  const long = longSideOf(leg);
  if (leg.roll === null || long === null) return null;
  const centre: Spot = [width / 2, RADIUS + ROOM];
  const at = (degrees: number, radius: number): Spot => {
    const angle = (degrees * Math.PI) / 180;
    return [centre[0] + radius * Math.sin(angle), centre[1] - radius * Math.cos(angle)];
  };
  const head = long + leg.roll.value;
  const steps = Math.max(2, Math.ceil(Math.abs(leg.roll.value) / 5));
  const arc = Array.from({ length: steps + 1 }, (_, index) => at(long + ((head - long) * index) / steps, ARC));
  const round = Array.from({ length: CHORDS }, (_, index) => at((360 * index) / CHORDS, RADIUS));
  const spoke = (degrees: number): Spot[] => [at(degrees, ARC - 3), at(degrees, RADIUS + 2)];
  const items: Item[] = [
    shape('edge', round, { stroke: STROKES.edge, fill: null }),
    line('mark', spoke(long), { ...STROKES.edge, width: 0.7 }),
    line('mark', spoke(head), { ...STROKES.edge, width: 0.7 }),
    line('turn', arc, STROKES.narrow),
    line('centreline', [at(0, RADIUS - 2), at(0, RADIUS + 2)], STROKES.narrow),
  ];
  const area = { left: 0, top: 0, width, height: 2 * (RADIUS + ROOM) };
  for (const [degrees, text] of [
    [long, words('sheet.foot-long')],
    [head, words('sheet.head-long')],
    [0, words('sheet.scribed-line')],
  ] as const) {
    const said = freest(markPlaces(degrees, text, at), items, area);
    if (said !== undefined) items.push(said);
  }
  const drawn: Block = { height: area.height, items };
  const small = { height: HEIGHTS.small };
  return stacked([
    paragraph(words('sheet.seen-from-foot'), width, { ...small, weight: 600 }),
    drawn,
    paragraph(turnWords(leg.roll, job), width, { height: 2.1, weight: 600 }),
    paragraph(words('sheet.roll-legend'), width, small),
  ]);
}

/** Places for the words of a mark, straight out of it first, then to either side. */
function markPlaces(degrees: number, text: string, at: (degrees: number, radius: number) => Spot) {
  return [0, 15, -15, 30, -30, 45, -45, 60, -60].flatMap((aside) =>
    [3, 4.5, 6].map((out) => {
      const [x, y] = at(degrees + aside, RADIUS + out);
      const across = Math.sin(((degrees + aside) * Math.PI) / 180);
      const align = across > 0.35 ? 'left' : across < -0.35 ? 'right' : 'middle';
      return write([x, y + HEIGHTS.small / 2], text, { height: HEIGHTS.small, weight: 600, align });
    }),
  );
}
