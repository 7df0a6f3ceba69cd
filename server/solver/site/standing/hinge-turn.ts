import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import { DEGREES } from '../../geometry/angle.ts';
import { moved, type RigidMotion } from '../../geometry/rigid-motion.ts';
import { add, cross, dot, length, rotate, subtract, type Vector3 } from '../../geometry/vector.ts';
import type { LaidHinge } from '../laid-site.ts';
import { riseOf } from '../rise.ts';
import { heightOf, type AskedHeight } from './asked-height.ts';
import type { AskedSlope } from './asked-slopes.ts';
import { turnTo, type TurnEquation } from './turn-to.ts';

type Asked = { readonly slopes: readonly AskedSlope[]; readonly height: AskedHeight | null };

/**
 * How far the frame turns about its hinge [rad], right-handed: to its first slope, and without one to its height. What
 * else is asked for is what follows, and a finding says what it becomes.
 *
 * @param motion the frame as it was placed
 */
export function hingeTurn(
  hinge: LaidHinge,
  { slopes, height }: Asked,
  motion: RigidMotion,
): { turn: number; findings: Finding[] } {
  const [slope, second] = slopes;
  if (slope !== undefined) {
    const found = toSlope(hinge, slope);
    if (found.turn === undefined) return { turn: 0, findings: found.findings };
    return {
      turn: found.turn,
      findings: [
        ...found.findings,
        ...(second === undefined ? [] : [secondFollows(hinge, second, found.turn)]),
        ...(height === null ? [] : [heightFollows(hinge, height, motion, found.turn)]),
      ],
    };
  }
  if (height === null) return { turn: 0, findings: [] };
  const { turn = 0, findings } = toHeight(hinge, height, motion);
  return { turn, findings };
}

/** How a vector that turns about an axis rises: its part along the axis stays, the rest goes round. */
export function equationOf(axis: Vector3, arm: Vector3, up: Vector3): TurnEquation {
  const still = dot(axis, arm) * dot(axis, up);
  return { still, along: dot(arm, up) - still, across: dot(cross(axis, arm), up) };
}

/** How the place whose height is asked for rises while the frame turns [mm]. */
export function heightEquation({ at, axis }: LaidHinge, height: AskedHeight, motion: RigidMotion): TurnEquation {
  const equation = equationOf(axis, subtract(moved(motion, height.place), at), height.along);
  return { ...equation, still: equation.still + heightOf(height, at) };
}

type Turning = { readonly turn?: number; readonly findings: Finding[] };

function toSlope({ axis }: LaidHinge, { along, sine, up, angle, index }: AskedSlope): Turning {
  const field = `/site/standing/slopes/${String(index)}/angle`;
  const found = turnTo(equationOf(axis, along, up), sine, 1);
  if ('turn' in found) return { turn: found.turn, findings: eitherWay(found, field) };
  const degrees = (rise: number): number => Math.asin(Math.min(1, Math.max(-1, rise))) * DEGREES;
  const range = { value: angle, low: degrees(found.low), high: degrees(found.high) };
  return { findings: [finding('slope-not-reached', 'stop', field, range)] };
}

function toHeight({ at, axis }: LaidHinge, height: AskedHeight, motion: RigidMotion): Turning {
  const field = '/site/standing/height/value';
  const arm = subtract(moved(motion, height.place), at);
  const size = length(arm) + Math.abs(heightOf(height, at));
  const found = turnTo(heightEquation({ at, axis }, height, motion), height.value, size);
  if ('turn' in found) return { turn: found.turn, findings: eitherWay(found, field) };
  const { low, high } = found;
  return { findings: [finding('height-not-reached', 'stop', field, { value: height.value, low, high })] };
}

const eitherWay = ({ eitherWay: either, other }: { eitherWay: boolean; other: number }, field: string): Finding[] =>
  either ? [finding('standing-either-way', 'caution', field, { value: other * DEGREES })] : [];

/** The second slope, with what it becomes [degrees]. */
function secondFollows({ axis }: LaidHinge, { along, up, index }: AskedSlope, turn: number): Finding {
  const value = riseOf(rotate(along, axis, turn), up) * DEGREES;
  return finding('slope-needs-no-second', 'caution', `/site/standing/slopes/${String(index)}`, { value });
}

/** The height, with what it becomes [mm]. */
function heightFollows({ at, axis }: LaidHinge, height: AskedHeight, motion: RigidMotion, turn: number): Finding {
  const arm = subtract(moved(motion, height.place), at);
  const becomes = heightOf(height, add(at, rotate(arm, axis, turn)));
  return finding('height-follows', 'caution', '/site/standing/height', { value: becomes });
}
