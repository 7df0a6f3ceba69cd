import { placeOn } from '../../geometry/centreline.ts';
import { cross, dot, length, subtract, type Vector3 } from '../../geometry/vector.ts';
import type { LaidSite } from '../laid-site.ts';

/** Steps round an arc in which its furthest place is sought [rad]: our own choice; what is missed is below 0.04 % of the radius. */
const STEP = Math.PI / 60;

/** any: square to the line from the hinge. down: by gravity, as the structure lies. */
export type ReachWay = 'any' | 'down';

/** A place of the frame's centrelines, the same on every laying of the site: tube, piece and share of its length. */
type FrameSpot = { readonly line: number; readonly piece: number; readonly share: number };

/** What a load turns with about the hinge [mm] at a place of the frame. */
function leverAt({ frame, up }: LaidSite, from: Vector3, way: ReachWay): number {
  const axis = frame?.hinge?.axis;
  if (axis === undefined) return 0;
  // axis · (from × up) is what a load down turns with
  return way === 'any' ? length(cross(axis, from)) : Math.abs(dot(from, cross(up, axis)));
}

/**
 * How far from its hinge a frame reaches [mm], on any laying of the site: the lever of the place of its centrelines that is
 * furthest from the hinge as typed, or furthest from it as seen from above.
 *
 * @returns for each way undefined where there is no hinge
 */
export function reachOf(typed: LaidSite, way: ReachWay): (laid: LaidSite) => number | undefined {
  const spot = furthestSpot(typed, way);
  return (laid) => {
    const from = spot && fromHinge(laid, spot);
    return from && leverAt(laid, from, way);
  };
}

function furthestSpot(typed: LaidSite, way: ReachWay): FrameSpot | undefined {
  let best: { readonly spot: FrameSpot; readonly lever: number } | undefined;
  for (const [line, { centreline }] of (typed.frame?.lines ?? []).entries())
    for (const [piece, of] of centreline.pieces.entries()) {
      const steps = of.kind === 'straight' ? 1 : Math.max(1, Math.ceil(of.angle / STEP));
      for (let step = 0; step <= steps; step += 1) {
        const spot = { line, piece, share: step / steps };
        const from = fromHinge(typed, spot);
        const lever = from === undefined ? 0 : leverAt(typed, from, way);
        if (from !== undefined && (best === undefined || lever > best.lever)) best = { spot, lever };
      }
    }
  return best?.spot;
}

function fromHinge({ frame }: LaidSite, { line, piece, share }: FrameSpot): Vector3 | undefined {
  const hinge = frame?.hinge ?? null;
  const found = frame?.lines[line]?.centreline.pieces[piece];
  return hinge === null || found === undefined
    ? undefined
    : subtract(placeOn(found, found.length * share).point, hinge.at);
}
