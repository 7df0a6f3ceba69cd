import { leastSquares } from '../least-squares.ts';
import {
  UNMOVED,
  bestMotion,
  composed,
  moved,
  turnAbout,
  type PointPair,
  type RigidMotion,
} from '../geometry/rigid-motion.ts';
import { add, ORIGIN, scale, type Vector3 } from '../geometry/vector.ts';
import type { Lines } from './lines.ts';
import type { Measured } from './readings.ts';
import { pointOf } from './tube-places.ts';

/** How a frame stood while it was measured is not known: three turns [rad] and three shifts [mm] from a first guess. */
export type PoseGuess = { readonly first: RigidMotion; readonly pivot: Vector3 };

/** Sizes of the six unknowns of a pose; our own choice, wide enough not to hold a reading. */
export const POSE_SIZES = [0.3, 0.3, 0.3, 300, 300, 300] as const;

export function poseAt({ first, pivot }: PoseGuess, values: readonly number[], from = 0): RigidMotion {
  const [a = 0, b = 0, c = 0, x = 0, y = 0, z = 0] = values.slice(from, from + 6);
  return composed(turnAbout(pivot, { x: a, y: b, z: c }, { x, y, z }), first);
}

/** The axis of the frame that may have stood up: each of its own, either way; a little off, where a level is smooth. */
const UPRIGHT: readonly Vector3[] = [
  { x: 0, y: 0, z: 0 },
  { x: Math.PI / 2, y: 0, z: 0 },
  { x: -Math.PI / 2, y: 0, z: 0 },
  { x: 0, y: Math.PI / 2, z: 0 },
  { x: 0, y: -Math.PI / 2, z: 0 },
  { x: Math.PI, y: 0, z: 0 },
];
const ASKEW: Vector3 = { x: 0.011, y: 0.007, z: 0.003 };

/**
 * A first guess of how the frame stood: by its points where there are three or more of them, else the attitude among six
 * upright ones from which levels and points are met best.
 */
export function guessPose(measured: readonly Measured[], lines: Lines): PoseGuess {
  const posed = measured.filter((one) => one.posed);
  const points = completePoints(posed, lines);
  if (points.length >= 3) {
    const first = bestMotion(points);
    return { first, pivot: moved(first, centre(points.map(({ from }) => from))) };
  }
  let best: { guess: PoseGuess; cost: number } | undefined;
  for (const turn of UPRIGHT) {
    const about = turnAbout(ORIGIN, ASKEW, ORIGIN);
    const first = shiftedTo(posed, lines, composed(about, turnAbout(ORIGIN, turn, ORIGIN)));
    const guess = { first, pivot: moved(first, ORIGIN) };
    const { motion, cost } = settled(guess, posed, lines, 2);
    if (best === undefined || cost < best.cost - 1e-6)
      best = { guess: { first: motion, pivot: moved(motion, ORIGIN) }, cost };
  }
  return best?.guess ?? { first: UNMOVED, pivot: ORIGIN };
}

/** The pose in which a frame meets its posed readings best. */
export function bestPose(measured: readonly Measured[], lines: Lines): RigidMotion {
  const posed = measured.filter((one) => one.posed);
  return posed.length === 0 ? UNMOVED : settled(guessPose(posed, lines), posed, lines, 6).motion;
}

function settled(
  guess: PoseGuess,
  posed: readonly Measured[],
  lines: Lines,
  rounds: number,
): { motion: RigidMotion; cost: number } {
  const unknowns = POSE_SIZES.map((size) => ({ start: 0, size }));
  const found = leastSquares(
    unknowns,
    (values) => {
      const pose = poseAt(guess, values);
      return [
        ...posed.map((one) => ((one.predict(lines, pose) ?? one.value) - one.value) / one.accuracy),
        // so weak that it decides nothing but what no reading does: a turn about the plumb line under levels alone
        ...values.map((value, index) => (WEAK * value) / (POSE_SIZES[index] ?? 1)),
      ];
    },
    undefined,
    rounds,
  );
  return { motion: poseAt(guess, found.values), cost: found.cost };
}

const WEAK = 1e-3;

/** Places with all three coordinates, where they are on the frame and where they were measured. */
function completePoints(posed: readonly Measured[], lines: Lines): PointPair[] {
  return posed.flatMap((one, index): PointPair[] => {
    const { point } = one;
    const [y, z] = [posed[index + 1], posed[index + 2]];
    if (point?.axis !== 'x' || y?.point?.axis !== 'y' || z?.point?.axis !== 'z') return [];
    if (y.point.place !== point.place || z.point.place !== point.place) return [];
    const from = pointOf(point.place, lines);
    return from === undefined ? [] : [{ from, to: { x: one.value, y: y.value, z: z.value }, weight: 1 }];
  });
}

/** Shifted so that the coordinates that were measured are met on average. */
function shiftedTo(posed: readonly Measured[], lines: Lines, motion: RigidMotion): RigidMotion {
  const mean = (axis: 'x' | 'y' | 'z'): number => {
    const off = posed.flatMap(({ point, value }) => {
      const from = point?.axis === axis ? pointOf(point.place, lines) : undefined;
      return from === undefined ? [] : [value - moved(motion, from)[axis]];
    });
    return off.length === 0 ? 0 : off.reduce((sum, one) => sum + one, 0) / off.length;
  };
  return composed(turnAbout(ORIGIN, ORIGIN, { x: mean('x'), y: mean('y'), z: mean('z') }), motion);
}

const centre = (points: readonly Vector3[]): Vector3 =>
  points.reduce((sum, point) => add(sum, scale(point, 1 / points.length)), ORIGIN);
