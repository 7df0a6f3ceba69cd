import type { Centreline } from '../../server/solver/geometry/centreline.ts';
import { length, subtract } from '../../server/solver/geometry/vector.ts';
import { hoopPoints, levelOn } from '../../server/solver/returned/hoop-points.ts';

/** The sizes of a hoop as they are typed, centre to centre [mm]; undefined for another tube. */
export function readHoop(line: Centreline) {
  const points = hoopPoints(line);
  if (points === undefined) return undefined;
  const { tangent, leg } = points;
  const feet = levelOn(points, 0);
  return {
    'width-at-corners': length(subtract(tangent.right, tangent.left)),
    'width-at-feet': length(subtract(feet.right, feet.left)),
    'left-leg': leg.left,
    'right-leg': leg.right,
  };
}
