import { add, cross, dot, length, ORIGIN, scale, subtract, type Vector3 } from '../../geometry/vector.ts';
import { MOST_DEVIATIONS } from '../deviations.ts';
import { squaresAt, type KnownDistance } from './known-distance.ts';
import { nearestPlace } from './nearest-place.ts';
import type { Plane } from './plane-through.ts';
import { intoAxes, outOfAxes, type SolvingAxes } from './solving-axes.ts';

/** Where distances meet, in the structure's axes. */
export type Meeting = {
  /** One place, or the two that fit alike: mirrored in the plane of the known points, on a plane in their line. */
  readonly places: readonly [Vector3] | readonly [Vector3, Vector3];
  /** Root of the sum of the squared residuals in accuracies: 0 where they meet. */
  readonly misfit: number;
};

/** Two places fit alike where their misfits, squared, are no more than this apart: three deviations; our own choice. */
const ALIKE = MOST_DEVIATIONS ** 2;
/** Two searches that end this close have found the same place, as a share of the distances; our own choice. */
const SAME = 1e-7;

/** Distances that it takes: to three points, on a plane to two. */
export const needed = (plane: Plane | null): 2 | 3 => (plane === null ? 3 : 2);

/**
 * Where distances from known points meet. As many as it takes: the places where three spheres meet, or two circles on a
 * plane, in closed form; where they lack a little, the place nearest to all. More than it takes: the least squares,
 * begun from both places that the widest known points give and from the differences of the squares.
 *
 * @param axes of these known points and this plane
 */
export function meeting(known: readonly KnownDistance[], plane: Plane | null, axes: SolvingAxes): Meeting {
  const flat = plane !== null;
  const local = known.map((one) => ({ ...one, from: intoAxes(axes, one.from) }));
  const based = basedOn(local, axes.base, flat);
  const out = (place: Vector3): Vector3 => outOfAxes(axes, place);
  if (known.length === needed(plane)) {
    if (based.squared > 0) {
      const [one, other] = mirrored(based.place, Math.sqrt(based.squared), flat);
      return { places: [out(one), out(other)], misfit: 0 };
    }
    // they lie in the plane of the known points (on a plane: in their line), where both places are one
    const place = nearestPlace(local, based.place, true);
    return { places: [out(place)], misfit: Math.sqrt(squaresAt(place, local)) };
  }
  const starts = [
    ...mirrored(based.place, Math.sqrt(Math.abs(based.squared)), flat),
    ...byDifferences(local, axes.base[0] ?? 0, flat),
  ];
  const found = starts
    .map((start) => nearestPlace(local, start, flat))
    .map((place) => ({ place, squares: squaresAt(place, local) }))
    .sort((a, b) => a.squares - b.squares);
  const [best = { place: based.place, squares: squaresAt(based.place, local) }] = found;
  const same = SAME * Math.max(...known.map(({ distance }) => distance));
  const other = found.find(({ place }) => length(subtract(place, best.place)) > same);
  const alike = other !== undefined && other.squares - best.squares < ALIKE;
  return { places: alike ? [out(best.place), out(other.place)] : [out(best.place)], misfit: Math.sqrt(best.squares) };
}

/** Both places that lie so far to either side. */
const mirrored = ({ x, y, z }: Vector3, aside: number, flat: boolean): [Vector3, Vector3] =>
  flat
    ? [
        { x, y: y + aside, z },
        { x, y: y - aside, z },
      ]
    : [
        { x, y, z: z + aside },
        { x, y, z: z - aside },
      ];

/**
 * What the distances from the points that the axes rest on give: the place between both mirror images, and the square
 * of how far they lie aside of it [mm²]; below 0 where the distances do not meet. From the differences of
 * |P − A|² = d².
 */
function basedOn(
  local: readonly KnownDistance[],
  base: readonly number[],
  flat: boolean,
): { place: Vector3; squared: number } {
  const [first, second, third] = base.map((index) => local[index]);
  if (first === undefined || second === undefined) return { place: ORIGIN, squared: 0 };
  const span = second.from.x;
  // on a plane each point stands off it by z, and counts by its circle there
  const square = ({ from, distance }: KnownDistance): number => distance ** 2 - from.z ** 2;
  const x = (square(first) - square(second) + span ** 2) / (2 * span);
  if (flat || third === undefined) return { place: { x, y: 0, z: 0 }, squared: square(first) - x ** 2 };
  const { x: along, y: aside } = third.from;
  const y = (square(first) - square(third) + along ** 2 + aside ** 2 - 2 * x * along) / (2 * aside);
  return { place: { x, y, z: 0 }, squared: square(first) - x ** 2 - y ** 2 };
}

/** A spread below this share of the whole, squared, is rounding: the points lie in one plane, or on a plane in one line. */
const FLAT = 1e-9;

/**
 * The place that solves the differences of the squared distances, which are linear in it, by least squares; none where
 * the known points leave it open.
 */
function byDifferences(local: readonly KnownDistance[], base: number, flat: boolean): Vector3[] {
  const first = local[base];
  if (first === undefined) return [];
  const square = ({ from, distance }: KnownDistance): number => distance ** 2 - dot(from, from);
  let [x, y, z, right] = [ORIGIN, ORIGIN, ORIGIN, ORIGIN];
  for (const [index, one] of local.entries()) {
    if (index === base) continue;
    const between = scale(subtract(one.from, first.from), 2);
    const row = flat ? { ...between, z: 0 } : between;
    // normal equations: Σ row ⊗ row · place = Σ row (difference of squares)
    [x, y, z] = [add(x, scale(row, row.x)), add(y, scale(row, row.y)), add(z, scale(row, row.z))];
    right = add(right, scale(row, square(first) - square(one)));
  }
  // on a plane the third direction is left as it is
  const solved = solvedBy({ x, y, z: flat ? { x: 0, y: 0, z: x.x + y.y } : z }, right);
  return solved === undefined ? [] : [solved];
}

/**
 * Solves N p = r, N symmetric and by its rows, by Cramer's rule; undefined where its least eigenvalue, which is nearly
 * its determinant over the sum of its 2 × 2 minors, is rounding beside its trace.
 */
function solvedBy({ x, y, z }: { readonly x: Vector3; readonly y: Vector3; readonly z: Vector3 }, right: Vector3) {
  const [yz, zx, xy] = [cross(y, z), cross(z, x), cross(x, y)];
  const determinant = dot(x, yz);
  if (!(determinant > FLAT * (x.x + y.y + z.z) * (yz.x + zx.y + xy.z))) return undefined;
  const sum = add(add(scale(yz, right.x), scale(zx, right.y)), scale(xy, right.z));
  return scale(sum, 1 / determinant);
}
