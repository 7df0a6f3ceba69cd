import { placeAt, type Centreline } from '../geometry/centreline.ts';
import { angleBetween, length, subtract, type Vector3 } from '../geometry/vector.ts';
import { moveDirection, movePoint, type PlaneMotion } from './plane-motion.ts';

/**
 * Where a cut member closes again. `stationA` on the piece that is held, `stationB` on the piece that moves, both
 * measured along the uncut centreline [mm]; `kink` between the two centrelines [rad]; `hiLo` what is left between
 * the two axes at the joint [mm]. Each face is tilted by kink/2 off square.
 */
export type ClosedJoint = {
  readonly stationA: number;
  readonly stationB: number;
  readonly removed: number;
  readonly kink: number;
  readonly hiLo: number;
  readonly point: Vector3;
};

/** Newton steps at the most; a crossing of two smooth curves is met in fewer than ten. */
const MOST_STEPS = 60;

/**
 * Finds where a centreline in the plane meets its own moved copy: C(a) = M C(b). Where the two run parallel (a
 * straight moved across its own line) they never meet; the two stations are then laid face to face about the
 * guess, and what is left across is the hi-lo.
 *
 * @param guess stations to start from [mm]
 * @returns the joint, or undefined for a centreline without pieces
 */
export function meetMovedCopy(
  centreline: Centreline,
  motion: PlaneMotion,
  guess: { stationA: number; stationB: number },
): ClosedJoint | undefined {
  let { stationA, stationB } = guess;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const a = placeAt(centreline, stationA);
    const b = placeAt(centreline, stationB);
    if (a === undefined || b === undefined) return undefined;
    const gap = subtract(movePoint(motion, b.point), a.point);
    const moved = moveDirection(motion, b.tangent);
    // gap + moved·db − tangent·da = 0, two equations in the plane
    const determinant = a.tangent.y * moved.x - a.tangent.x * moved.y;
    const [da, db] =
      Math.abs(determinant) < 1e-12
        ? [0, -(gap.x * moved.x + gap.y * moved.y)]
        : [
            (gap.y * moved.x - gap.x * moved.y) / determinant,
            (a.tangent.x * gap.y - a.tangent.y * gap.x) / determinant,
          ];
    stationA += da;
    stationB += db;
    if (Math.abs(da) + Math.abs(db) < 1e-11) break;
  }
  const a = placeAt(centreline, stationA);
  const b = placeAt(centreline, stationB);
  if (a === undefined || b === undefined) return undefined;
  const met = movePoint(motion, b.point);
  return {
    stationA,
    stationB,
    removed: stationB - stationA,
    kink: angleBetween(a.tangent, moveDirection(motion, b.tangent)),
    hiLo: length(subtract(met, a.point)),
    point: a.point,
  };
}

/**
 * Length to take out between the two finished faces so that a joint shortens its member as wanted [mm]:
 * L = wanted + gap − shrinkage. The scrap that falls out is two kerfs shorter when both kerfs lie in it.
 */
export const lengthToRemove = (closing: { shortening: number; gap: number; shrinkage: number }): number =>
  closing.shortening + closing.gap - closing.shrinkage;
