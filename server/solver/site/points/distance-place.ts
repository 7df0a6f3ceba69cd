import type { TOWARDS } from '../../../job/site-point.ts';
import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import { atLeast, atMost, wayOut } from '../../frame/way-out.ts';
import { dot, length, scale, subtract, type Vector3 } from '../../geometry/vector.ts';
import { MOST_DEVIATIONS } from '../deviations.ts';
import { AHEAD, PORT, UPRIGHT } from '../structure-axes.ts';
import { changesThatMeet, mostAtOdds, type NamedDistance, type NamedPlane, type Odds } from './distance-odds.ts';
import { meeting, needed } from './meeting.ts';
import { solvingAxes, type SolvingAxes } from './solving-axes.ts';

/** A distance as typed, at its pointer; `off` is how far it is taken off that [mm]. */
type MeasuredDistance = NamedDistance & { readonly field: string; readonly off: number };

type Towards = (typeof TOWARDS)[number];
const WAYS: Readonly<Record<Towards, Vector3>> = {
  ahead: AHEAD,
  back: scale(AHEAD, -1),
  port: PORT,
  starboard: scale(PORT, -1),
  up: UPRIGHT,
  down: scale(UPRIGHT, -1),
};

/** Two places are told apart by a side where they differ that way by this share of what they are apart: our own choice. */
const CLEARLY = 0.1;
/** One change is the way out where the next one would be so many times as large: our own choice. */
const SINGLE = 2;
/** The longest distance that can be typed [mm], as the job's schema has it. */
const LONGEST = 50_000;

/** The place that distances fix as typed; `two` where another fits as well and lies less far that way. */
type Fixed = { readonly place: Vector3; readonly two: boolean; readonly axes: SolvingAxes };

/** Distances, what they were solved with, and what came of it. */
export type FixedDistances = {
  readonly measured: readonly MeasuredDistance[];
  readonly plane: NamedPlane | null;
  readonly told: Fixed | { readonly finding: Finding };
};

/**
 * What measured distances from known points fix, without what they are taken off by: from three or more, or from two or
 * more and a plane that the place lies on. Of two places that fit, the one further `towards`.
 *
 * Distances nearly meet where what they lack is within three of their deviations (root of the sum of squares): then the
 * place nearest to all is taken. That the known points are not exact either is left out, so that it errs on the side of
 * measuring again.
 *
 * @param plane counts as exact
 * @param field JSON pointer of the way the point was found
 */
export function fixedByDistances(
  measured: readonly MeasuredDistance[],
  plane: NamedPlane | null,
  towards: Towards,
  field: string,
): FixedDistances {
  return { measured, plane, told: toldBy(measured, plane, towards, field) };
}

function toldBy(
  measured: readonly MeasuredDistance[],
  plane: NamedPlane | null,
  towards: Towards,
  field: string,
): FixedDistances['told'] {
  const stop = (code: Finding['code'], value: number): { finding: Finding } => ({
    finding: finding(code, 'stop', `${field}/distances`, { value }),
  });
  const from = new Set(measured.map(({ name }) => name)).size;
  if (from < needed(plane)) return stop('distances-too-few', from);
  const axes = solvingAxes(
    measured.map((one) => one.from),
    plane,
  );
  if ('offLine' in axes) return stop('points-in-line', axes.offLine);
  const typed = meeting(measured, plane, axes);
  const odds = mostAtOdds(measured, plane);
  const spare = measured.length > needed(plane);
  if (spare ? (odds?.off ?? 0) > MOST_DEVIATIONS : typed.misfit > MOST_DEVIATIONS) {
    return { finding: cannotMeet(measured, plane, odds, field) };
  }
  const [first, second] = typed.places;
  if (second !== undefined && !isTold(first, second, towards, measured)) {
    const value = length(subtract(first, second));
    return { finding: finding('point-either-side', 'stop', `${field}/towards`, { value }) };
  }
  return { place: further(typed.places, towards), two: second !== undefined, axes };
}

/** Whether the same distances from the same places, on the same plane, were solved before; but for what they are off. */
export const isSolved = (
  { measured, plane }: FixedDistances,
  now: Pick<FixedDistances, 'measured' | 'plane'>,
): boolean =>
  measured.every(({ from, distance }, index) => {
    const other = now.measured[index];
    return other !== undefined && other.distance === distance && isSamePlace(other.from, from);
  }) &&
  (plane === null
    ? now.plane === null
    : now.plane !== null && isSamePlace(plane.at, now.plane.at) && isSamePlace(plane.normal, now.plane.normal));

export const isSamePlace = (one: Vector3, other: Vector3): boolean =>
  one.x === other.x && one.y === other.y && one.z === other.z;

/**
 * The place at measured distances from known points, with what they are taken off by [mm]. They are taken off from what
 * they are at the place as typed, so that where they lack a little, and the place lies at the end of its reach, the change
 * is seen all the same: large, because such a place is badly fixed.
 */
export function placeAtDistances(
  { plane, told }: FixedDistances,
  measured: readonly MeasuredDistance[],
  towards: Towards,
): Vector3 | { readonly finding: Finding } {
  if ('finding' in told) return told;
  const { place, two, axes } = told;
  if (measured.every(({ off }) => off === 0)) return place;
  const taken = measured.map((one) => ({ ...one, distance: length(subtract(place, one.from)) + one.off }));
  const { places } = meeting(taken, plane, axes);
  return two ? further(places, towards) : nearest(places, place);
}

/** Whether a side tells two places apart, or they are one within the accuracy of the tape. */
function isTold(one: Vector3, other: Vector3, towards: Towards, measured: readonly MeasuredDistance[]): boolean {
  const apart = subtract(one, other);
  const accuracy = Math.max(...measured.map((distance) => distance.accuracy));
  return length(apart) <= MOST_DEVIATIONS * accuracy || Math.abs(dot(apart, WAYS[towards])) >= CLEARLY * length(apart);
}

const further = (places: readonly [Vector3, ...Vector3[]], towards: Towards): Vector3 =>
  places.reduce((best, one) => (dot(one, WAYS[towards]) > dot(best, WAYS[towards]) ? one : best));

const nearest = (places: readonly [Vector3, ...Vector3[]], to: Vector3): Vector3 =>
  places.reduce((best, one) => (length(subtract(one, to)) < length(subtract(best, to)) ? one : best));

/** What they lack is the least change of one of them that makes them meet; without one, what the worst two lack. */
function cannotMeet(
  measured: readonly MeasuredDistance[],
  plane: NamedPlane | null,
  odds: Odds | null,
  field: string,
): Finding {
  const changes = measured.length === needed(plane) ? changesThatMeet(measured, plane) : [];
  const [least, next] = changes.map(({ from, to }) => Math.abs(to - from));
  const [change] = changes;
  const single = least !== undefined && (next === undefined || next > SINGLE * least);
  return finding(
    'distances-cannot-meet',
    'stop',
    `${field}/distances`,
    {
      value: least ?? odds?.lack ?? 0,
      ...(odds === null ? {} : { one: odds.one, other: odds.other }),
    },
    single && change !== undefined
      ? wayOut(
          `${field}/distances/${String(change.index)}/distance`,
          change.to > change.from ? atLeast(change.to) : atMost(change.to),
          LONGEST,
        )
      : null,
  );
}
