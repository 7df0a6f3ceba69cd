import { placeOn } from '../../geometry/centreline.ts';
import { cross, dot, length, subtract, unit, type Vector3 } from '../../geometry/vector.ts';
import type { LaidFrame, LaidHinge, LaidLeg } from '../laid-site.ts';

/** Steps round an arc in which its furthest place is sought [rad]; what is missed is below 0.04 % of the radius. */
const STEP = Math.PI / 60;

/** A leg that pushes this close past the hinge [mm] turns nothing: its force is not told. Our own choice. */
const LEAST_LEVER = 1;

/** Levers of a frame about its hinge [mm]: of the place furthest from it, and of the place furthest from it as seen from above. */
export type Reach = { readonly any: number; readonly down: number };

/** How far from its hinge the centrelines of a frame reach; `up` is up by gravity. */
export function reachOf({ lines }: Pick<LaidFrame, 'lines'>, { at, axis }: LaidHinge, up: Vector3): Reach {
  const level = cross(up, axis);
  let any = 0;
  let down = 0;
  for (const { centreline } of lines)
    for (const piece of centreline.pieces) {
      const steps = piece.kind === 'straight' ? 1 : Math.max(1, Math.ceil(piece.angle / STEP));
      for (let step = 0; step <= steps; step += 1) {
        const from = subtract(placeOn(piece, (piece.length * step) / steps).point, at);
        any = Math.max(any, length(cross(axis, from)));
        // axis · (from × up): what a load down turns with
        down = Math.max(down, Math.abs(dot(from, level)));
      }
    }
  return { any, down };
}

/** Lever of a leg's push about the hinge [mm]; undefined where it is too short to turn anything. */
export function leverOf({ head, foot }: LaidLeg, { at, axis }: LaidHinge): number | undefined {
  const along = unit(subtract(head, foot));
  const lever = along === undefined ? 0 : Math.abs(dot(axis, cross(subtract(head, at), along)));
  return lever < LEAST_LEVER ? undefined : lever;
}
