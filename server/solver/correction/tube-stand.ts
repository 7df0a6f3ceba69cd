import type { Centreline } from '../geometry/centreline.ts';
import { cross, dot, length, scale, subtract, unit, type Vector3 } from '../geometry/vector.ts';
import { standAt, type Stand } from '../returned/laid-line.ts';

/** A direction shorter than this says nothing. */
const NOTHING = 1e-6;

/**
 * How a tube stands at a station. Bending does not twist it: the direction square to it is the axis that the arc there
 * turns about, on a straight that of the arc before it, on the first straight that of the first arc.
 *
 * @param like for a member without arcs: what that direction is to be as near to as it can
 * @returns undefined for a centreline without pieces
 */
export function tubeStand(line: Centreline, station: number, like?: Vector3): Stand | undefined {
  const first = line.pieces[0];
  if (first === undefined) return undefined;
  const normal = firstNormal(line) ?? squareTo(first.direction, like);
  return standAt({ line, normal }, station);
}

function firstNormal({ pieces }: Centreline): Vector3 | undefined {
  for (const piece of pieces) if (piece.kind === 'arc') return piece.normal;
  return undefined;
}

/** A direction square to another and as near to `like` as it can be; without one, as near to an axis. */
function squareTo(direction: Vector3, like: Vector3 | undefined): Vector3 {
  const beside = like === undefined ? undefined : subtract(like, scale(direction, dot(like, direction)));
  if (beside !== undefined && length(beside) > NOTHING) return unit(beside) ?? beside;
  const axis = Math.abs(direction.z) < 0.9 ? { x: 0, y: 0, z: 1 } : { x: 1, y: 0, z: 0 };
  return unit(cross(axis, direction)) ?? axis;
}
