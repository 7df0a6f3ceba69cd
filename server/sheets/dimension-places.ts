import type { ViewDimension } from '../plan/view.ts';
import type { Dimension } from './dimension.ts';
import type { Spot } from './ink.ts';

/** Least distance of a dimension line from what it measures, and of two lines on one side, on paper [mm]. */
const LEAST = 6.5;

type Place = (point: readonly [number, number]) => Spot;
type Placed = { readonly dimension: Dimension; readonly out: Spot; readonly level: number };

/** Which way a dimension's line lies off what it measures; nothing where it lies on it. */
function outward(from: Spot, at: Spot): Spot | undefined {
  const length = Math.hypot(at[0] - from[0], at[1] - from[1]);
  return length < 0.5 ? undefined : [(at[0] - from[0]) / length, (at[1] - from[1]) / length];
}

/** Lines whose ways differ by less than some degrees stand on one side: legs that lean a little count as upright. */
const sameSide = (a: Spot, b: Spot): boolean => a[0] * b[0] + a[1] * b[1] > 0.9;

const pushed = (dimension: Dimension, out: Spot, by: number): Dimension => {
  const shift = ([x, y]: Spot): Spot => [x + out[0] * by, y + out[1] * by];
  return { ...dimension, line: [shift(dimension.line[0]), shift(dimension.line[1])] };
};

/** Dimensions on paper: where a small scale brings lines of one side too near to one another, they are pushed outwards. */
export function placeDimensions(
  dimensions: readonly ViewDimension[],
  place: Place,
  say: (dimension: ViewDimension) => string,
): Dimension[] {
  const free: Dimension[] = [];
  const sides: Placed[][] = [];
  for (const one of dimensions) {
    const dimension: Dimension = {
      from: place(one.from),
      to: place(one.to),
      line: [place(one.line[0]), place(one.line[1])],
      text: say(one),
      radius: one.radius,
    };
    const out = outward(dimension.from, dimension.line[0]);
    if (out === undefined || one.radius) free.push(dimension);
    else {
      const side = sides.find(([first]) => first !== undefined && sameSide(first.out, out));
      const level = dimension.line[0][0] * out[0] + dimension.line[0][1] * out[1];
      if (side === undefined) sides.push([{ dimension, out, level }]);
      else side.push({ dimension, out, level });
    }
  }
  return [...free, ...sides.flatMap(spreadSide)];
}

function spreadSide(side: readonly Placed[]): Dimension[] {
  let reached = -Infinity;
  return side
    .toSorted((one, other) => one.level - other.level)
    .map(({ dimension, out, level }) => {
      const stand = Math.hypot(dimension.line[0][0] - dimension.from[0], dimension.line[0][1] - dimension.from[1]);
      const by = Math.max(0, LEAST - stand, reached + LEAST - level);
      reached = level + by;
      return pushed(dimension, out, by);
    });
}
