import { add, cross, dot, length, scale, squareTo, subtract, unit, type Vector3 } from './vector.ts';

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
  const away = subtract(point, solid.at);
  if (solid.shape === 'plane') return { distance: dot(away, solid.normal), out: solid.normal };
  if (solid.shape === 'point') {
    const size = length(away);
    return { distance: size - solid.radius, out: size > 0 ? scale(away, 1 / size) : ACROSS_NONE };
  }
  const { axis, radius, ends } = solid;
  const along = dot(away, axis);
  const across = subtract(away, scale(axis, along));
  const size = length(across);
  const outward = size > 0 ? scale(across, 1 / size) : squareTo(axis);
  const side = size - radius;
  if (ends === null) return { distance: side, out: outward };
  const middle = (ends.from + ends.to) / 2;
  const end = Math.abs(along - middle) - (ends.to - ends.from) / 2;
  const endward = along < middle ? scale(axis, -1) : axis;
  if (side > 0 && end > 0) {
    // off the rim
    const distance = Math.hypot(side, end);
    return { distance, out: scale(add(scale(outward, side), scale(endward, end)), 1 / distance) };
  }
  return end > side ? { distance: end, out: endward } : { distance: side, out: outward };
}

/** The place of a straight stretch that is nearest to a solid, or deepest in it, as a share of it from its start. */
export function nearestShare(solid: Solid, from: Vector3, to: Vector3): number {
  const along = subtract(to, from);
  if (solid.shape === 'plane') return dot(along, solid.normal) < 0 ? 1 : 0;
  if (solid.shape === 'point') return footOn(subtract(from, solid.at), along);
  const { axis } = solid;
  const away = subtract(from, solid.at);
  const flat = subtract(along, scale(axis, dot(along, axis)));
  const share = footOn(subtract(away, scale(axis, dot(away, axis))), flat);
  return solid.ends === null ? share : nearestToBar({ ...solid, ends: solid.ends }, { from, along, share });
}

/** Where a line `away + s · along` comes nearest to the origin, within 0 … 1. */
function footOn(away: Vector3, along: Vector3): number {
  const square = dot(along, along);
  return square > 0 ? Math.min(1, Math.max(0, -dot(away, along) / square)) : 0;
}

/** The slope is followed until no more than this is left to gain [mm], or so many times: each halves what is left. */
const NO_GAIN = 1e-9;
const MOST_HALVINGS = 50;

/**
 * The same for a bar with ends: where its side alone decides, the place of the bar without ends; else by halving on the
 * slope of a convex function.
 */
function nearestToBar(
  bar: RoundBar & { readonly ends: NonNullable<RoundBar['ends']> },
  { from, along, share }: { readonly from: Vector3; readonly along: Vector3; readonly share: number },
): number {
  const at = (s: number): Vector3 => add(from, scale(along, s));
  const slope = (s: number): number => dot(clearOf(bar, at(s)).out, along);
  const away = subtract(at(share), bar.at);
  const rise = dot(away, bar.axis);
  const side = length(cross(away, bar.axis)) - bar.radius;
  const end = Math.max(rise - bar.ends.to, bar.ends.from - rise);
  if (end <= Math.min(side, 0)) return share;
  let [low, high] = [0, 1];
  if (slope(low) >= 0) return low;
  if (slope(high) <= 0) return high;
  for (let halving = 0; halving < MOST_HALVINGS; halving += 1) {
    const middle = (low + high) / 2;
    const rises = slope(middle);
    if (Math.abs(rises) * (high - low) <= NO_GAIN) return middle;
    if (rises < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** A solid with every point moved: places by one function, directions by another. */
export function movedSolid(
  solid: Solid,
  place: (point: Vector3) => Vector3,
  direction: (way: Vector3) => Vector3,
): Solid {
  const at = place(solid.at);
  if (solid.shape === 'point') return { ...solid, at };
  if (solid.shape === 'plane') return { ...solid, at, normal: direction(solid.normal) };
  return { ...solid, at, axis: unit(direction(solid.axis)) ?? solid.axis };
}
