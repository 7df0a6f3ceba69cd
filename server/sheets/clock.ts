import { arrowhead } from './dimension.ts';
import { COLOURS, STROKES, line, shape, type Item, type Spot } from './ink.ts';
import type { Block } from './text-block.ts';

/** Chords round a whole circle. */
const CHORDS = 72;

/** The turn's own line lies this share of the circle's radius outside it; the scribed line's tick reaches from one to the other. */
const TURN = 1.28;
const TICK = { from: 0.62, to: 1 } as const;

/** Below this the tube is not turned [degrees]: under what a shop can set. */
const NOTHING = 0.005;

export const isTurned = (rotation: number): boolean => Math.abs(rotation) >= NOTHING;

/** Room that a clock takes for a circle of this radius [mm]. */
export const clockSize = (radius: number): number => 2 * radius * TURN + 2;

/** A place at a clock: so far round from the top, clockwise, and so far out [degrees, shares of its radius]. */
export type ClockPlace = (degrees: number, share: number) => Spot;

export const clockPlaces =
  ([x, y]: Spot, radius: number): ClockPlace =>
  (degrees, share) => {
    const angle = (degrees * Math.PI) / 180;
    return [x + share * radius * Math.sin(angle), y - share * radius * Math.cos(angle)];
  };

/** The tube of a clock, seen along it. */
export const clockRing = (at: ClockPlace): Item =>
  shape(
    'edge',
    Array.from({ length: CHORDS }, (_, index) => at((360 * index) / CHORDS, 1)),
    { stroke: STROKES.edge, fill: null },
  );

/** A turn of a clock from one place to another, with its arrowhead; clockwise is positive [degrees]. */
export function clockTurn(at: ClockPlace, from: number, turn: number, share: number): Item[] {
  const steps = Math.max(2, Math.ceil((Math.abs(turn) * CHORDS) / 360));
  const path = Array.from({ length: steps + 1 }, (_, index) => at(from + (turn * index) / steps, share));
  return [line('turn', path, STROKES.edge), ...turnHead(at(from + turn, share), from + turn, Math.sign(turn))];
}

/**
 * The tube seen from behind, looking towards the clamp: the line scribed on top before it is turned (hollow tick), the
 * way it is turned (arrow), and where the line stands then (filled tick).
 *
 * A bend's rotation is right-handed about the feed direction where `sign` is +1, and seen along the feed that is
 * clockwise; a machine that counts the other way says the same turn with the other sign.
 *
 * @param rotation as the machine counts it [degrees]
 * @param sign +1 or −1, the machine's
 */
export function clock(rotation: number, sign: 1 | -1, radius: number): Block {
  const size = clockSize(radius);
  const centre = size / 2;
  const clockwise = rotation * sign;
  const at = clockPlaces([centre, centre], radius);
  const tick = (degrees: number): readonly Spot[] => [at(degrees, TICK.from), at(degrees, TICK.to)];
  const items: Item[] = [
    clockRing(at),
    line('centreline', [at(0, -0.3), at(0, 0.3)], STROKES.thin),
    line('centreline', [at(90, -0.3), at(90, 0.3)], STROKES.thin),
  ];
  if (!isTurned(rotation)) {
    return { height: size, items: [...items, line('mark', tick(0), { ...STROKES.edge, width: 1 })] };
  }
  return {
    height: size,
    items: [
      ...items,
      line('mark', tick(0), STROKES.hidden),
      line('mark', tick(clockwise), { ...STROKES.edge, width: 1 }),
      ...clockTurn(at, 0, clockwise, TURN),
    ],
  };
}

/** The arrowhead of a turn, larger than a dimension's so that it is seen from where the tube is turned. */
function turnHead(tip: Spot, degrees: number, sense: number): Item[] {
  const angle = (degrees * Math.PI) / 180;
  const head = arrowhead(tip, { x: sense * Math.cos(angle), y: sense * Math.sin(angle) });
  const grow = 1.25;
  const [x, y] = tip;
  const points = head.points.map(([px, py], index): Spot => {
    if (index === 0) return [x, y];
    const back: Spot = [(px - x) * grow, (py - y) * grow];
    const along = back[0] * sense * Math.cos(angle) + back[1] * sense * Math.sin(angle);
    const aside: Spot = [back[0] - along * sense * Math.cos(angle), back[1] - along * sense * Math.sin(angle)];
    return [x + back[0] + 1.6 * aside[0], y + back[1] + 1.6 * aside[1]];
  });
  return [shape('dimension', points, { stroke: null, fill: COLOURS.black })];
}
