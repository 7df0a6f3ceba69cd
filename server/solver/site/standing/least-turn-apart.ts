import { composed, turnAbout, turned, turnOf, type RigidMotion } from '../../geometry/rigid-motion.ts';
import { cross, dot, length, ORIGIN, scale, subtract, unit, type Vector3 } from '../../geometry/vector.ts';

/** A unit direction in the structure's axes that is to rise by so much [sine] against a unit upright. */
export type Rise = { readonly along: Vector3; readonly sine: number; readonly up: Vector3 };

/** Steps of the search: far more than it takes, our own choice. */
const MOST_STEPS = 40;
/** Largest turn of one step [rad]; our own choice. */
const LONGEST = 0.5;
/** Turn by which derivatives are taken [rad]: our own choice, between rounding and curvature. */
const NUDGE = 1e-6;
/** Steps shorter than this are rounding [rad]. */
const SETTLED = 1e-13;
/** Slopes [sines] that are missed by less are met: rounding. */
const MET = 1e-12;

/** How far off both slopes are [sines], and the turn along the line that keeps both [rad]: all three are to be nothing. */
type Miss = { readonly slopes: readonly [Vector3, Vector3]; readonly values: Vector3 };

/**
 * The least turn that brings two directions to their slopes against two different uprights, as a rotation vector [rad]:
 * (R d₁) · v₁ = sin a₁, (R d₂) · v₂ = sin a₂, and of all such turns the one with no part along the line that keeps both.
 * Solved by Newton's method.
 *
 * @param start a turn near it
 * @returns undefined where none is found that meets both slopes to 1e-12
 */
export function leastTurnApart(one: Rise, two: Rise, start: Vector3): Vector3 | undefined {
  let motion = turnAbout(ORIGIN, start, ORIGIN);
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const miss = missOf(one, two, motion);
    const change = stepFrom(one, two, motion, miss);
    if (change === undefined) break;
    const size = length(change);
    motion = composed(turnAbout(ORIGIN, size > LONGEST ? scale(change, LONGEST / size) : change, ORIGIN), motion);
    if (size < SETTLED) break;
  }
  const { values } = missOf(one, two, motion);
  return Math.abs(values.x) < MET && Math.abs(values.y) < MET ? turnOf(motion) : undefined;
}

function missOf(one: Rise, two: Rise, motion: RigidMotion): Miss {
  const [first, second] = [turned(motion, one.along), turned(motion, two.along)];
  // a small turn δ of the frame changes e · v by δ · (e × v)
  const slopes = [cross(first, one.up), cross(second, two.up)] as const;
  const keeps = unit(cross(slopes[0], slopes[1])) ?? ORIGIN;
  const values = {
    x: dot(first, one.up) - one.sine,
    y: dot(second, two.up) - two.sine,
    z: dot(turnOf(motion), keeps),
  };
  return { slopes, values };
}

/** Newton's step; undefined where the three conditions do not settle one. */
function stepFrom(one: Rise, two: Rise, motion: RigidMotion, { slopes, values }: Miss): Vector3 | undefined {
  const by = (turn: Vector3): number =>
    (missOf(one, two, composed(turnAbout(ORIGIN, turn, ORIGIN), motion)).values.z - values.z) / NUDGE;
  const third = {
    x: by({ x: NUDGE, y: 0, z: 0 }),
    y: by({ x: 0, y: NUDGE, z: 0 }),
    z: by({ x: 0, y: 0, z: NUDGE }),
  };
  // J δ = −miss by Cramer's rule: δ = −(m₁ r₂×r₃ + m₂ r₃×r₁ + m₃ r₁×r₂) / det
  const [first, second] = slopes;
  const pairs = [cross(second, third), cross(third, first), cross(first, second)] as const;
  const determinant = dot(first, pairs[0]);
  if (determinant === 0) return undefined;
  const sum = [values.x, values.y, values.z].reduce(
    (total, value, index) => subtract(total, scale(pairs[index] ?? ORIGIN, value)),
    ORIGIN,
  );
  return scale(sum, 1 / determinant);
}
