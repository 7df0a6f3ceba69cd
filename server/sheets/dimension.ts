import { freest } from './free-place.ts';
import {
  COLOURS,
  HEIGHTS,
  STROKES,
  line,
  shape,
  write,
  type Drawn,
  type Item,
  type Rectangle,
  type Spot,
  type Written,
} from './ink.ts';

/** A dimension on the page [mm]: what is measured, where its line lies, and what it says. */
export type Dimension = {
  readonly from: Spot;
  readonly to: Spot;
  readonly line: readonly [Spot, Spot];
  readonly text: string;
  readonly radius: boolean;
};

/** The same dimension elsewhere on the page. */
export function movedDimension(dimension: Dimension, [dx, dy]: Spot): Dimension {
  const shift = ([x, y]: Spot): Spot => [x + dx, y + dy];
  const { from, to, line: ends } = dimension;
  return { ...dimension, from: shift(from), to: shift(to), line: [shift(ends[0]), shift(ends[1])] };
}

/** Arrowheads are filled and slim (ISO 129-1); lengths [mm] are ours. */
const ARROW = { length: 2.5, half: 0.4 } as const;
const OVERSHOOT = 1.5;
const GAP = 1;
/** A value stands clear of the arrowheads of its own line. */
const ABOVE_LINE = 1.3;

const unit = ([x0, y0]: Spot, [x1, y1]: Spot): { x: number; y: number; length: number } => {
  const length = Math.hypot(x1 - x0, y1 - y0);
  return length === 0 ? { x: 1, y: 0, length: 0 } : { x: (x1 - x0) / length, y: (y1 - y0) / length, length };
};

/** An arrowhead with its tip at `tip`, pointing along the direction. */
export const arrowhead = ([x, y]: Spot, along: { x: number; y: number }): Drawn =>
  shape(
    'dimension',
    [
      [x, y],
      [x - along.x * ARROW.length - along.y * ARROW.half, y - along.y * ARROW.length + along.x * ARROW.half],
      [x - along.x * ARROW.length + along.y * ARROW.half, y - along.y * ARROW.length - along.x * ARROW.half],
    ],
    { stroke: null, fill: COLOURS.black },
  );

/** From near the measured point to a little past the dimension line; nothing where the two fall together. */
function extension(measured: Spot, end: Spot): Drawn[] {
  const along = unit(measured, end);
  if (along.length <= GAP) return [];
  return [
    line(
      'dimension',
      [
        [measured[0] + along.x * GAP, measured[1] + along.y * GAP],
        [end[0] + along.x * OVERSHOOT, end[1] + along.y * OVERSHOOT],
      ],
      STROKES.thin,
    ),
  ];
}

/** The lines of a dimension; arrows stand outside where there is no room between. */
export function dimensionLines(dimension: Dimension): Drawn[] {
  const [start, end] = dimension.line;
  const along = unit(start, end);
  const back = { x: -along.x, y: -along.y };
  if (dimension.radius) {
    return [line('dimension', [start, end], STROKES.thin), arrowhead(end, along)];
  }
  const outside = along.length < 2.6 * ARROW.length;
  const reach = outside ? 2 * ARROW.length : 0;
  return [
    ...extension(dimension.from, start),
    ...extension(dimension.to, end),
    line(
      'dimension',
      [
        [start[0] - along.x * reach, start[1] - along.y * reach],
        [end[0] + along.x * reach, end[1] + along.y * reach],
      ],
      STROKES.thin,
    ),
    arrowhead(start, outside ? along : back),
    arrowhead(end, outside ? back : along),
  ];
}

/** Places along the line where its value is tried, as shares of its length, the middle first; then past its ends. */
const SHARES = [0.5, 0.38, 0.62, 0.26, 0.74, 0.15, 0.85] as const;

/** The value above its line, readable from the bottom or from the right, at the freest place. */
export function dimensionText(dimension: Dimension, items: readonly Item[], area: Rectangle): Item[] {
  const [start, end] = dimension.line;
  const raw = unit(start, end);
  // The page's y runs down: a line that climbs to the right has y < 0. Text runs to the right, or upwards.
  const flip = raw.x < -1e-9 || (Math.abs(raw.x) <= 1e-9 && raw.y > 0);
  const along = flip ? { x: -raw.x, y: -raw.y } : { x: raw.x, y: raw.y };
  const turn = Math.abs(along.x) <= 1e-9 ? 90 : (Math.atan2(-along.y, along.x) * 180) / Math.PI;
  const up: Spot = [along.y * ABOVE_LINE, -along.x * ABOVE_LINE];
  const say = (share: number, align: Written['align'] = 'middle', push = 0): Written =>
    write(
      [
        start[0] + (end[0] - start[0]) * share + up[0] + along.x * push,
        start[1] + (end[1] - start[1]) * share + up[1] + along.y * push,
      ],
      dimension.text,
      { height: HEIGHTS.text, align, turn },
    );
  const middle = say(0.5);
  const first = flip ? 1 : 0;
  const past = [say(1 - first, 'left', 2 * ARROW.length), say(first, 'right', -2 * ARROW.length)];
  const between = SHARES.map((share) => say(share));
  const candidates = middle.width + 2 < raw.length ? [...between, ...past] : [...past, ...between];
  const chosen = freest(candidates, items, area);
  if (chosen === undefined) return [];
  const pastEnd = past.indexOf(chosen);
  if (pastEnd < 0) return [chosen];
  // past an end the line goes on under its value
  const [x, y] = pastEnd === 0 ? (flip ? start : end) : flip ? end : start;
  const reach = (pastEnd === 0 ? 1 : -1) * (2 * ARROW.length + chosen.width);
  return [
    chosen,
    line(
      'dimension',
      [
        [x, y],
        [x + along.x * reach, y + along.y * reach],
      ],
      STROKES.thin,
    ),
  ];
}
