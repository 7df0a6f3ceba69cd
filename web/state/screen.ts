import type { FlatPoint, View, ViewDimension } from '../../server/plan/view.ts';

/** Where the drawing lies on the screen: pixels for each millimetre, and the screen's place of the origin. */
export type Screen = { readonly scale: number; readonly left: number; readonly top: number };

export type Size = { readonly width: number; readonly height: number };

/** Fits a view into a part of the screen, with room all round for what is written beside the lines [px]. */
export function fit(bounds: View['bounds'], size: Size, margin: number): Screen {
  const [left, bottom, right, top] = bounds;
  const wide = Math.max(right - left, 1e-6);
  const high = Math.max(top - bottom, 1e-6);
  const room = { width: Math.max(size.width - 2 * margin, 1), height: Math.max(size.height - 2 * margin, 1) };
  const scale = Math.min(room.width / wide, room.height / high);
  return {
    scale,
    left: size.width / 2 - ((left + right) / 2) * scale,
    top: size.height / 2 + ((bottom + top) / 2) * scale,
  };
}

/** A point on the screen [px], y down. */
export const onScreen = ([x, y]: FlatPoint, screen: Screen): FlatPoint => [
  screen.left + x * screen.scale,
  screen.top - y * screen.scale,
];

const tenth = (value: number): string => value.toFixed(1);

/** The path of a row of points, for the d of an SVG path. */
export const pathOf = (points: readonly FlatPoint[], screen: Screen): string =>
  points
    .map((point, index) => {
      const [x, y] = onScreen(point, screen);
      return `${index === 0 ? 'M' : 'L'}${tenth(x)} ${tenth(y)}`;
    })
    .join('');

/** Length of an arrowhead and half its width [px]: slim and filled, as ISO 129-1 draws them (from memory). */
const ARROW = { length: 10, half: 2 };

/** An arrowhead with its tip at `tip`, pointing away from `tail`; both on the screen. */
export function arrowhead(tip: FlatPoint, tail: FlatPoint): string {
  const size = Math.hypot(tip[0] - tail[0], tip[1] - tail[1]);
  if (size === 0) return '';
  const along: FlatPoint = [(tip[0] - tail[0]) / size, (tip[1] - tail[1]) / size];
  const back: FlatPoint = [tip[0] - along[0] * ARROW.length, tip[1] - along[1] * ARROW.length];
  const across: FlatPoint = [-along[1] * ARROW.half, along[0] * ARROW.half];
  const corner = (sign: 1 | -1): string => `L${tenth(back[0] + sign * across[0])} ${tenth(back[1] + sign * across[1])}`;
  return `M${tenth(tip[0])} ${tenth(tip[1])}${corner(1)}${corner(-1)}Z`;
}

/** Turn of a text along a line so that it reads from the bottom or the right of the sheet [degrees, clockwise]. */
export function readingTurn(from: FlatPoint, to: FlatPoint): number {
  const turn = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
  const upright = turn > 90 ? turn - 180 : turn <= -90 ? turn + 180 : turn;
  return Math.abs(upright - 90) < 1e-9 ? -90 : upright;
}

/** About how large a value is on the screen [px]: seven figures at the size that they are written in. */
const VALUE = { width: 54, height: 17 };

/**
 * A value stands on its line; where the line lies close to what it measures and the value would stand between them,
 * it hangs on the far side [px].
 */
const LIFT = { above: -6, below: 18, close: 24 };

function liftOf(from: FlatPoint, start: FlatPoint, turn: number): number {
  const out = [start[0] - from[0], start[1] - from[1]] as const;
  const angle = (turn * Math.PI) / 180;
  const down = -out[0] * Math.sin(angle) + out[1] * Math.cos(angle);
  return down > 0 && down < LIFT.close ? LIFT.below : LIFT.above;
}

/** Where along its line a value may stand, best first. */
const PLACES = [0.5, 0.34, 0.66, 0.22, 0.78, 0.12, 0.88];

export type DrawnDimension = {
  readonly dimension: ViewDimension;
  readonly from: FlatPoint;
  readonly to: FlatPoint;
  readonly start: FlatPoint;
  readonly end: FlatPoint;
  /** Where the value stands. */
  readonly middle: FlatPoint;
  readonly turn: number;
  /** From the line to the foot of the value, across the reading direction, down positive [px]. */
  readonly lift: number;
};

/** What is touched to type a value [px]; DimensionLine draws it. */
const TOUCH = { width: 68, height: 44 };

type Box = { readonly width: number; readonly height: number };
type Placed = Pick<DrawnDimension, 'middle' | 'turn'>;

/** Two boxes about two places lie on each other where neither their places along nor across keep them apart. */
function collide(one: Placed, other: Placed, box: Box): boolean {
  const apart = [Math.abs(one.middle[0] - other.middle[0]), Math.abs(one.middle[1] - other.middle[1])] as const;
  const lies = (angle: number): readonly [number, number] =>
    Math.abs(angle) > 45 ? [box.height, box.width] : [box.width, box.height];
  const [a, b] = [lies(one.turn), lies(other.turn)];
  return apart[0] < (a[0] + b[0]) / 2 && apart[1] < (a[1] + b[1]) / 2;
}

/**
 * Dimensions on the screen, each value moved along its line where it would lie on another, or where two that can be
 * typed would be touched for each other; on a line too short for that it stands beyond its end. Short lines leave the
 * least choice and choose first.
 */
export function drawnDimensions(dimensions: readonly ViewDimension[], screen: Screen): DrawnDimension[] {
  const lined = dimensions.map((dimension) => {
    const [start, end] = [onScreen(dimension.line[0], screen), onScreen(dimension.line[1], screen)];
    return { dimension, start, end, size: Math.hypot(end[0] - start[0], end[1] - start[1]) };
  });
  const drawn = new Map<ViewDimension, DrawnDimension>();
  for (const { dimension, start, end, size } of lined.toSorted((a, b) => a.size - b.size)) {
    const turn = readingTurn(start, end);
    const others = [...drawn.values()];
    const at = (share: number): FlatPoint => [
      start[0] + (end[0] - start[0]) * share,
      start[1] + (end[1] - start[1]) * share,
    ];
    const isFree = (share: number, box: Box, among: readonly DrawnDimension[]): boolean =>
      !among.some((other) => collide(other, { middle: at(share), turn }, box));
    const touched = dimension.field === '' ? [] : others.filter((other) => other.dimension.field !== '');
    const isReadable = (share: number): boolean => isFree(share, VALUE, others);
    const beyond = (VALUE.width / 2 + ARROW.length) / Math.max(size, 1);
    const share =
      PLACES.find((one) => isReadable(one) && isFree(one, TOUCH, touched)) ??
      PLACES.find(isReadable) ??
      [1 + beyond, -beyond].find(isReadable) ??
      0.5;
    const from = onScreen(dimension.from, screen);
    const to = onScreen(dimension.to, screen);
    const lift = liftOf(from, start, turn);
    drawn.set(dimension, { dimension, from, to, start, end, middle: at(share), turn, lift });
  }
  return dimensions.flatMap((dimension) => drawn.get(dimension) ?? []);
}
