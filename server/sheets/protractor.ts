import type { Units } from '../job/job.ts';
import { formatFigure } from '../language/quantity-format.ts';
import type { Figure } from '../plan/figure.ts';
import { HEIGHTS, STROKES, around, line, moved, textCorners, write, type Item, type Spot } from './ink.ts';
import type { Block } from './text-block.ts';

/** An angle after release and what the machine is told for it. */
export type TrueAngle = { readonly wanted: Figure; readonly told: Figure };

/** Lengths of the legs and radius of the degree arc on paper [mm]. */
const LEG = 66;
const BEYOND = 46;
const ARC = 40;

/** The degree arc goes on this far past the larger angle [degrees]. */
const PAST = 8;

/** Lines beside each leg, to see by whether the tube lies along it, this far apart [mm]. */
const BESIDE = [8, 16] as const;

/** A degree's name stands at least this far from a leg [degrees]. */
const NAME = 4.5;

/** Angles that are easy to read on it [degrees]; outside them a leg lies too near to the other's line. */
const EASY = { least: 15, most: 150 } as const;

export const isEasy = (degrees: number): boolean => degrees >= EASY.least && degrees <= EASY.most;

type Place = (degrees: number, distance: number, aside?: number) => Spot;

/** Places by angle from straight on, anticlockwise, with the corner at the origin; `aside` to the right of the way out. */
const at: Place = (degrees, distance, aside = 0) => {
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [distance * cos + aside * sin, -distance * sin + aside * cos];
};

/**
 * An angle of a bend drawn true: the leg before it from the left, the leg after release (wide), the leg as the machine is
 * told (dashed), and an arc of degrees counted from straight on.
 */
export function protractor({ wanted, told }: TrueAngle, units: Units, width: number): Block {
  const leg = (degrees: number, from: number, to: number, aside = 0): readonly Spot[] => [
    at(degrees, from, aside),
    at(degrees, to, aside),
  ];
  const wide = { ...STROKES.edge, width: 0.7 };
  const drawn: Item[] = [
    line('leg', leg(180, 0, LEG), wide),
    line('centreline', leg(0, 0, BEYOND), STROKES.centreline),
    line('leg', leg(wanted.value, 0, LEG), wide),
    line('leg', leg(told.value, 0, LEG), STROKES.hidden),
    ...BESIDE.flatMap((aside) => [
      line('mark', leg(180, 0, LEG, -aside), STROKES.faint),
      line('mark', leg(wanted.value, ARC + 3, LEG, aside), STROKES.faint),
    ]),
    ...degreeArc(Math.ceil(Math.max(wanted.value, told.value) + PAST), [wanted.value, told.value]),
    endWords(wanted, 'after', units),
    endWords(told, 'told', units),
  ];
  const bounds = around(drawn.flatMap((item) => (item.kind === 'text' ? textCorners(item) : item.points)));
  const shift: Spot = [(width - bounds.width) / 2 - bounds.left, 2 - bounds.top];
  return { height: bounds.height + 4, items: drawn.map((item) => moved(item, shift)) };
}

/** A tick each degree, longer each fifth, named each tenth where no leg runs through the name. */
function degreeArc(last: number, legs: readonly number[]): Item[] {
  const round = Array.from({ length: last + 1 }, (_, degree) => at(degree, ARC));
  const items: Item[] = [line('mark', round, STROKES.thin)];
  for (let degree = 0; degree <= last; degree += 1) {
    const long = degree % 10 === 0 ? 4 : degree % 5 === 0 ? 3 : 1.5;
    items.push(line('mark', [at(degree, ARC - long), at(degree, ARC)], STROKES.thin));
    if (degree % 10 !== 0 || degree === 0 || legs.some((leg) => Math.abs(leg - degree) < NAME)) continue;
    const [x, y] = at(degree, ARC - 6.2);
    items.push(write([x, y + HEIGHTS.small / 2], String(degree), { height: HEIGHTS.small, align: 'middle' }));
  }
  return items;
}

/** The angle at the end of its leg; the one that the machine is told lies further round. */
function endWords(angle: Figure, which: 'after' | 'told', units: Units): Item {
  const [x, y] = at(angle.value, LEG + 3);
  const how = { height: HEIGHTS.head, weight: which === 'after' ? 600 : 400 } as const;
  const text = formatFigure(angle, units);
  if (which === 'told') return write([x - 1, angle.value < 60 ? y - 2 : y], text, { ...how, align: 'right' });
  return write([x + 1, angle.value > 90 ? y - 1.5 : y + (angle.value < 60 ? 3 : 0)], text, { ...how, align: 'left' });
}
