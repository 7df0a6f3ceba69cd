import { placeAt, type Centreline } from '../geometry/centreline.ts';
import { keptPlace, keptStation, type KeptPlace } from '../geometry/kept-place.ts';
import { finenessOf } from '../geometry/least-distance.ts';
import { leastGap } from '../geometry/least-gap.ts';
import { inverted, moved, turned, type RigidMotion } from '../geometry/rigid-motion.ts';
import { clearOf, movedSolid, type Solid } from '../geometry/solid.ts';
import type { Post } from './corrected.ts';

/** So many times the distance from its axis that is asked for is far from a post; our own choice. */
const FAR = 3;

/** Of a ball or a bar; a wall has none [mm]. */
const radiusOf = (solid: Solid): number => (solid.shape === 'plane' ? 0 : solid.radius);

/** A tube that is further off the surface of a post than this is so far that no correction brings it too near [mm]. */
export function farFrom({ solid, keep }: Pick<Post, 'solid' | 'keep'>): number {
  const radius = radiusOf(solid);
  return FAR * (radius + keep) - radius;
}

/** A post out of reach has this many times more room than the frame that came back is off by; our own choice. */
const OUT_OF_REACH = 2;

/**
 * Whether the wanted frame leaves a post so much room that the search for a correction needs not look at it: a correction
 * lies nearer to the wanted frame than the frame does that is left as it came back, and a diameter more is left over.
 *
 * @param worst how far the frame that came back is off at the most [mm]
 */
export const isOutOfReach = ({ spare }: Post, worst: number, outsideDiameter: number): boolean =>
  spare !== undefined && spare > OUT_OF_REACH * worst + outsideDiameter;

/** Room beside a post [mm], and where on the tubes it is least. */
export type PostRoom = { readonly room: number; readonly part: number; readonly place: KeptPlace | undefined };

/**
 * Room that is left between a post and the tubes of a frame beyond what it asks for [mm]: negative where a tube comes
 * too near.
 *
 * @param lay the motion that lays the frame where it will stand
 * @returns undefined for a frame without tubes
 */
export function postRoom(
  { solid: stands, keep }: Post,
  parts: readonly Centreline[],
  lay: RigidMotion,
): PostRoom | undefined {
  const back = inverted(lay);
  // the post is brought to the frame: that is the less to move
  const solid = movedSolid(
    stands,
    (point) => moved(back, point),
    (way) => turned(back, way),
  );
  const length = parts.reduce((sum, line) => sum + line.length, 0);
  // one search over the pieces of all tubes: what is far from the post is left out at once
  const line = { pieces: parts.flatMap(({ pieces }) => pieces), length };
  const fine = finenessOf(2 * (radiusOf(solid) + keep), length);
  const gap = leastGap({ line, solid, lineTurns: null, solidTurns: null }, { fine });
  if (gap === undefined) return undefined;
  let along = gap.station;
  const found = parts.findIndex(({ length: own }, index) => {
    const isHere = along <= own || index === parts.length - 1;
    if (!isHere) along -= own;
    return isHere;
  });
  const part = parts[found];
  return { room: gap.distance - keep, part: found, place: part && keptPlace(part, along) };
}

/**
 * Room beside a post at the same place of a frame that is a little other: it is least there, so that the place itself
 * changes nothing of first order.
 */
export function roomAt(
  { solid, keep }: Post,
  { part: index, place }: PostRoom,
  parts: readonly Centreline[],
  lay: RigidMotion,
): number | undefined {
  const part = parts[index];
  const point = part === undefined || place === undefined ? undefined : placeAt(part, keptStation(place, part))?.point;
  return point === undefined ? undefined : clearOf(solid, moved(lay, point)).distance - keep;
}
