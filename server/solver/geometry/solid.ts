import { add, dot, scale, squareTo, subtract, unit, type Vector3 } from './vector.ts';

/** A round bar [mm]; its axis is a unit vector. Ends along the axis from `at`, cut square; null: without end. */
export type RoundBar = {
  readonly shape: 'cylinder';
  readonly at: Vector3;
  readonly axis: Vector3;
  readonly radius: number;
  readonly ends: { readonly from: number; readonly to: number } | null;
};

/** A convex solid [mm]: a ball, everything behind a plane (its normal points out of it), or a round bar. */
export type Solid =
  | { readonly shape: 'point'; readonly at: Vector3; readonly radius: number }
  | { readonly shape: 'plane'; readonly at: Vector3; readonly normal: Vector3 }
  | RoundBar;

/** How far a point is off the surface of a solid [mm], negative inside, and the unit way that takes it off fastest. */
export type Clear = { readonly distance: number; readonly out: Vector3 };

const ACROSS_NONE = { x: 0, y: 0, z: 1 };

/**
 * Distance of a point from the surface of a solid. A convex function of the point: nowhere does it lie below
 * `distance + out · (other − point)`, which is what bounds of a whole stretch rest on.
 */
export function clearOf(solid: Solid, point: Vector3): Clear {
  const { at } = solid;
  // by coordinates and without vectors between: a search asks for this thousands of times
  const [x, y, z] = [point.x - at.x, point.y - at.y, point.z - at.z];
  if (solid.shape === 'plane') {
    const { normal } = solid;
    return { distance: x * normal.x + y * normal.y + z * normal.z, out: normal };
  }
  if (solid.shape === 'point') {
    const size = Math.sqrt(x * x + y * y + z * z);
    return {
      distance: size - solid.radius,
      out: size > 0 ? { x: x / size, y: y / size, z: z / size } : ACROSS_NONE,
    };
  }
  const { axis, radius, ends } = solid;
  const along = x * axis.x + y * axis.y + z * axis.z;
  const [u, v, w] = [x - along * axis.x, y - along * axis.y, z - along * axis.z];
  const size = Math.sqrt(u * u + v * v + w * w);
  const side = size - radius;
  const outward = (): Vector3 => (size > 0 ? { x: u / size, y: v / size, z: w / size } : squareTo(axis));
  if (ends === null) return { distance: side, out: outward() };
  const isLow = along < (ends.from + ends.to) / 2;
  const end = isLow ? ends.from - along : along - ends.to;
  if (side <= 0 || end <= 0) {
    if (side >= end) return { distance: side, out: outward() };
    return { distance: end, out: isLow ? scale(axis, -1) : axis };
  }
  // off the rim
  const distance = Math.sqrt(side * side + end * end);
  return { distance, out: add(scale(outward(), side / distance), scale(axis, (isLow ? -end : end) / distance)) };
}

/** The place of a solid's centre, plane or axis, between its ends, that is nearest to a point [mm]. */
export function heartOf(solid: Solid, point: Vector3): Vector3 {
  const away = subtract(point, solid.at);
  if (solid.shape === 'point') return solid.at;
  if (solid.shape === 'plane') return subtract(point, scale(solid.normal, dot(away, solid.normal)));
  const along = dot(away, solid.axis);
  const { from = along, to = along } = solid.ends ?? {};
  return add(solid.at, scale(solid.axis, Math.min(to, Math.max(from, along))));
}

/** No point is deeper in a solid than this [mm]; endless for what lies behind a plane. */
export function deepest(solid: Solid): number {
  if (solid.shape === 'plane') return Infinity;
  if (solid.shape === 'point' || solid.ends === null) return solid.radius;
  return Math.min(solid.radius, (solid.ends.to - solid.ends.from) / 2);
}

/** The place of a straight stretch that is nearest to a solid, or deepest in it. */
export type Nearest = {
  /** Of the stretch from its start. */
  readonly share: number;
  readonly point: Vector3;
  readonly distance: number;
  /** No point of space is nearer to the surface than `below + out · (point − nearest)`. */
  readonly below: number;
  readonly out: Vector3;
};

export function nearestOn(solid: Solid, from: Vector3, to: Vector3): Nearest {
  const along = subtract(to, from);
  const nearest = nearestAt(solid, { from, along }, footOf(solid, from, along));
  return solid.shape === 'cylinder' && solid.ends !== null && !isBySide(solid, nearest)
    ? halvedTo(solid, { from, along })
    : nearest;
}

type Stretch = { readonly from: Vector3; readonly along: Vector3 };

function nearestAt(solid: Solid, { from, along }: Stretch, share: number): Nearest {
  const point = add(from, scale(along, share));
  const { distance, out } = clearOf(solid, point);
  return { share, point, distance, below: distance, out };
}

/** The share of a stretch that is nearest to a ball, to a plane, or to a bar without ends. */
function footOf(solid: Solid, from: Vector3, along: Vector3): number {
  if (solid.shape === 'plane') return dot(along, solid.normal) < 0 ? 1 : 0;
  const away = subtract(from, solid.at);
  if (solid.shape === 'point') return footOn(away, along);
  const square = (of: Vector3): Vector3 => subtract(of, scale(solid.axis, dot(of, solid.axis)));
  return footOn(square(away), square(along));
}

/** Where a line `away + s · along` comes nearest to the origin, within 0 … 1. */
function footOn(away: Vector3, along: Vector3): number {
  const square = dot(along, along);
  return square > 0 ? Math.min(1, Math.max(0, -dot(away, along) / square)) : 0;
}

/** Whether it is the side of a bar that decides how far a place of it is off: its ends then change nothing. */
const isBySide = ({ axis }: RoundBar, { out }: Nearest): boolean => Math.abs(dot(out, axis)) < SQUARE;

/** Cosine of what counts as square; rounding. */
const SQUARE = 1e-9;

/** No more than this share of a bar's radius is left to gain, finer than a search tells apart, or so many halvings. */
const NO_GAIN = 1e-8;
const MOST_HALVINGS = 50;

/**
 * Halving between a place where the distance falls and one where it rises. The two slopes are mixed so that nothing is
 * left of them along the stretch: both bound a convex function, and so does any mixture, where the rim makes a corner
 * in it as well.
 */
function halvedTo(bar: RoundBar, stretch: Stretch): Nearest {
  const { along } = stretch;
  let low = nearestAt(bar, stretch, 0);
  let falls = dot(low.out, along);
  if (falls >= 0) return low;
  let high = nearestAt(bar, stretch, 1);
  let rises = dot(high.out, along);
  if (rises <= 0) return high;
  for (let halving = 0; ; halving += 1) {
    const middle = nearestAt(bar, stretch, (low.share + high.share) / 2);
    const ofLow = rises / (rises - falls);
    const half = (high.share - low.share) / 2;
    const below = ofLow * (low.distance + falls * half) + (1 - ofLow) * (high.distance - rises * half);
    if (middle.distance - below <= NO_GAIN * bar.radius || halving >= MOST_HALVINGS)
      return { ...middle, below, out: add(scale(low.out, ofLow), scale(high.out, 1 - ofLow)) };
    const slope = dot(middle.out, along);
    if (slope < 0) [low, falls] = [middle, slope];
    else [high, rises] = [middle, slope];
  }
}

/** A solid that was moved: places by one function, directions by another. */
export function movedSolid(
  solid: Solid,
  place: (point: Vector3) => Vector3,
  direction: (way: Vector3) => Vector3,
): Solid {
  const at = place(solid.at);
  if (solid.shape === 'point') return { ...solid, at };
  return solid.shape === 'plane'
    ? { ...solid, at, normal: unit(direction(solid.normal)) ?? solid.normal }
    : { ...solid, at, axis: unit(direction(solid.axis)) ?? solid.axis };
}
