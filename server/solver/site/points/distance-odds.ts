import { dot, length, scale, subtract, unit, type Vector3 } from '../../geometry/vector.ts';
import type { KnownDistance } from './known-distance.ts';
import type { Plane } from './plane-through.ts';

/** A known distance and what it is measured from, as people call it. */
export type NamedDistance = KnownDistance & { readonly name: string };
export type NamedPlane = Plane & { readonly name: string };

/** Two that cannot both hold: what they lack [mm], and that in the accuracies of both. */
export type Odds = { readonly one: string; readonly other: string; readonly lack: number; readonly off: number };

/** The two that are most at odds: balls that do not touch, one within the other, one that does not reach the plane. */
export function mostAtOdds(known: readonly NamedDistance[], plane: NamedPlane | null): Odds | null {
  const odds: Odds[] = known.flatMap((one, index) => {
    const pairs = known.slice(0, index).map((other) => {
      const lack = between(length(subtract(one.from, other.from)), one.distance, other.distance);
      return { one: other.name, other: one.name, lack, off: lack / Math.hypot(one.accuracy, other.accuracy) };
    });
    if (plane === null) return pairs;
    const lack = Math.abs(heightOver(one.from, plane)) - one.distance;
    return [...pairs, { one: one.name, other: plane.name, lack, off: lack / one.accuracy }];
  });
  return odds.reduce<Odds | null>((most, one) => (one.off > (most?.off ?? 0) ? one : most), null);
}

/** What two distances lack to meet, by how far their points are apart [mm]; below 0 where they meet. */
const between = (apart: number, one: number, other: number): number =>
  Math.max(apart - one - other, Math.abs(one - other) - apart);

const heightOver = (point: Vector3, { at, normal }: Plane): number => dot(subtract(point, at), normal);

/** A change of one distance that makes all just meet [mm]. */
export type Change = { readonly index: number; readonly from: number; readonly to: number };

/**
 * For each of as many distances as it takes: to what it would have to change, it alone, so that all just meet. The
 * others meet in a circle; from a point anywhere the distances to a circle run from √(t² + (s − R)²) to √(t² + (s + R)²),
 * with t along its axis and s square to it. Least change first.
 */
export function changesThatMeet(known: readonly KnownDistance[], plane: Plane | null): Change[] {
  return known
    .flatMap(({ from, distance }, index) => {
      const circle = circleOf(
        known.filter((_, other) => other !== index),
        plane,
      );
      if (circle === undefined) return [];
      const arm = subtract(from, circle.middle);
      const along = dot(arm, circle.axis);
      const aside = length(subtract(arm, scale(circle.axis, along)));
      const [least, most] = [Math.hypot(along, aside - circle.radius), Math.hypot(along, aside + circle.radius)];
      return [{ index, from: distance, to: Math.min(Math.max(distance, least), most) }];
    })
    .sort((a, b) => Math.abs(a.to - a.from) - Math.abs(b.to - b.from));
}

type Circle = { readonly middle: Vector3; readonly axis: Vector3; readonly radius: number };

/** Where two balls meet, or one and a plane; undefined where they do not. */
function circleOf([one, other]: readonly KnownDistance[], plane: Plane | null): Circle | undefined {
  if (one === undefined) return undefined;
  if (plane !== null) return circleAt(one, plane.normal, -heightOver(one.from, plane));
  if (other === undefined) return undefined;
  const apart = subtract(other.from, one.from);
  const axis = unit(apart);
  const span = length(apart);
  return axis && circleAt(one, axis, (one.distance ** 2 - other.distance ** 2 + span ** 2) / (2 * span));
}

/** The circle of a ball that lies so far along an axis from its middle. */
function circleAt({ from, distance }: KnownDistance, axis: Vector3, along: number): Circle | undefined {
  const squared = distance ** 2 - along ** 2;
  const middle = subtract(from, scale(axis, -along));
  return squared < 0 ? undefined : { middle, axis, radius: Math.sqrt(squared) };
}
