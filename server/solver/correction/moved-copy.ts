import { placeAt, type Centreline } from '../geometry/centreline.ts';
import { add, dot, subtract, type Vector3 } from '../geometry/vector.ts';
import { moveDirection, movePoint, type PlaneMotion } from './plane-motion.ts';

/**
 * Where a cut member closes again. `stationA` on the piece that is held, `stationB` on the piece that moves, both
 * measured along the uncut centreline [mm]. `kink` is the turn from the held centreline to the moved one
 * [rad, right-handed about z]; `hiLo` is how far the moved one lies to the left of the held one [mm]. Each face is
 * tilted by half the kink off square.
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
const MOST_STEPS = 40;

/** A last step this small [mm] leaves an error of its square; nearly parallel curves cannot be met much closer. */
const SETTLED = 1e-6;

/**
 * Finds where a curved centreline in the plane meets its own moved copy: C(a) = M C(b).
 *
 * @param guess stations to start from [mm]
 * @returns the joint; undefined where the two do not meet near the guess
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
    const determinant = planeCross(moved, a.tangent);
    if (Math.abs(determinant) < 1e-12) return undefined;
    const da = planeCross(moved, gap) / determinant;
    const db = planeCross(a.tangent, gap) / determinant;
    stationA += da;
    stationB += db;
    if (Math.abs(da) + Math.abs(db) < SETTLED) return closedAt(centreline, motion, { stationA, stationB });
  }
  return undefined;
}

/**
 * Closes a centreline about a chosen station: the two faces stand as far before it as behind it, and as near to
 * each other as they come; what is left across is the hi-lo. For straights, where the place is free.
 *
 * @param middle station halfway between the two faces [mm]
 */
export function closeAbout(centreline: Centreline, motion: PlaneMotion, middle: number): ClosedJoint | undefined {
  let half = 0;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const a = placeAt(centreline, middle - half);
    const b = placeAt(centreline, middle + half);
    if (a === undefined || b === undefined) return undefined;
    const both = add(a.tangent, moveDirection(motion, b.tangent));
    const change = -dot(subtract(movePoint(motion, b.point), a.point), both) / dot(both, both);
    // both faces move by `change`, each along its own tangent: the gap closes by twice that over |both|²/2
    half += change;
    if (Math.abs(change) < SETTLED) break;
  }
  return closedAt(centreline, motion, { stationA: middle - half, stationB: middle + half });
}

function closedAt(
  centreline: Centreline,
  motion: PlaneMotion,
  stations: { stationA: number; stationB: number },
): ClosedJoint | undefined {
  const a = placeAt(centreline, stations.stationA);
  const b = placeAt(centreline, stations.stationB);
  if (a === undefined || b === undefined) return undefined;
  const moved = moveDirection(motion, b.tangent);
  return {
    stationA: stations.stationA,
    stationB: stations.stationB,
    removed: stations.stationB - stations.stationA,
    kink: Math.atan2(planeCross(a.tangent, moved), dot(a.tangent, moved)),
    hiLo: planeCross(a.tangent, subtract(movePoint(motion, b.point), a.point)),
    point: a.point,
  };
}

const planeCross = (a: Vector3, b: Vector3): number => a.x * b.y - a.y * b.x;

/**
 * Length to take out between the two finished faces so that a joint shortens its member as wanted [mm]:
 * L = wanted + gap − shrinkage. The scrap that falls out is two kerfs shorter when both kerfs lie in it.
 */
export const lengthToRemove = (closing: { shortening: number; gap: number; shrinkage: number }): number =>
  closing.shortening + closing.gap - closing.shrinkage;
