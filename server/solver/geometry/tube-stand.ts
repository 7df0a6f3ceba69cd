import type { Centreline } from './centreline.ts';
import { firstNormal, type Stand } from './chain.ts';
import { standAt } from './laid-line.ts';
import { squareTo, type Vector3 } from './vector.ts';

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
  const normal = firstNormal(line.pieces) ?? squareTo(first.direction, like ?? null);
  return standAt({ line, normal }, station);
}
