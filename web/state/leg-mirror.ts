import type { Direction } from '../../server/job/direction.ts';
import type { Point } from '../../server/plan/figure.ts';

/** A plane that everything is mirrored in: a point of it and the unit vector square to it. */
export type Mirror = { readonly at: Point; readonly normal: Point };

/** Places nearer together than this have nothing between them to mirror in [mm]. */
const APART = 1;

/** Places to type over are rounded to this [mm]; directions to this. */
const ROUNDED = { place: 0.1, direction: 1e-6 } as const;

const rounded = (value: number, to: number): number => {
  const steps = Math.round(value / to);
  // never −0, which would be typed as such
  return steps === 0 ? 0 : Number((steps * to).toFixed(6));
};

/** The plane midway between two places; null where they are one place. */
export function mirrorBetween(one: Point, other: Point): Mirror | null {
  const [x, y, z] = [other.x - one.x, other.y - one.y, other.z - one.z];
  const size = Math.hypot(x, y, z);
  if (size < APART) return null;
  const at = { x: (one.x + other.x) / 2, y: (one.y + other.y) / 2, z: (one.z + other.z) / 2 };
  return { at, normal: { x: x / size, y: y / size, z: z / size } };
}

function reflected({ x, y, z }: Point, { at, normal }: Mirror, to: number): Point {
  const twice = 2 * ((x - at.x) * normal.x + (y - at.y) * normal.y + (z - at.z) * normal.z);
  return {
    x: rounded(x - twice * normal.x, to),
    y: rounded(y - twice * normal.y, to),
    z: rounded(z - twice * normal.z, to),
  };
}

export const mirroredPoint = (point: Point, mirror: Mirror): Point => reflected(point, mirror, ROUNDED.place);

/** How much of a mirror's normal must lie along an axis for a lean to be mirrored along that axis alone. */
const ALONG_AXIS = 0.9;

/**
 * A direction on the other side. A vector is mirrored; a lean where the mirror stands square to the structure; what is
 * said by a thing, a tube or points stays, as it names what is really there.
 */
export function mirroredDirection(direction: Direction, { normal }: Mirror): Direction {
  const origin = { x: 0, y: 0, z: 0 };
  if (direction.by === 'axes') {
    return { ...direction, vector: reflected(direction.vector, { at: origin, normal }, ROUNDED.direction) };
  }
  if (direction.by !== 'lean' && direction.by !== 'plumb') return direction;
  if (Math.abs(normal.x) > ALONG_AXIS) return { ...direction, ahead: 0 - direction.ahead };
  return Math.abs(normal.y) > ALONG_AXIS ? { ...direction, port: 0 - direction.port } : direction;
}
