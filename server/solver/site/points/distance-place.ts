import type { TOWARDS } from '../../../job/site-point.ts';
import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import { atLeast, atMost, wayOut } from '../../frame/way-out.ts';
import { dot, length, subtract, type Vector3 } from '../../geometry/vector.ts';
import { changesThatMeet, mostAtOdds, type NamedDistance, type NamedPlane, type Odds } from './distance-odds.ts';
import { meeting, needed } from './meeting.ts';
import { solvingAxes } from './solving-axes.ts';

/** A distance as typed; `off` is how far it is taken off that [mm]. */
export type MeasuredDistance = NamedDistance & { readonly off: number };

type Towards = (typeof TOWARDS)[number];
const WAYS: Readonly<Record<Towards, Vector3>> = {
  ahead: { x: 1, y: 0, z: 0 },
  back: { x: -1, y: 0, z: 0 },
  port: { x: 0, y: 1, z: 0 },
  starboard: { x: 0, y: -1, z: 0 },
  up: { x: 0, y: 0, z: 1 },
  down: { x: 0, y: 0, z: -1 },
};

/**
 * Distances nearly meet where what they lack is within three of their accuracies (root of the sum of squares): then the
 * place nearest to all is taken. Three deviations are common practice; that the known points are not exact either is
 * left out, so that it errs on the side of measuring again.
 */
const NEARLY = 3;
/** Two places are told apart by a side where they differ that way by this share of what they are apart: our own choice. */
const CLEARLY = 0.1;
/** One change is the way out where the next one would be so many times as large: our own choice. */
const SINGLE = 2;
/** The longest distance that can be typed [mm]. */
const LONGEST = 50_000;

/**
 * The place at measured distances from known points [mm]: from three or more, or from two or more and a plane that it
 * lies on. Of two places that fit, the one further `towards`. Distances that are taken off are taken off from what they
 * are at the place as typed, so that where they lack a little, and the place lies at the end of its reach, the change is
 * seen all the same: large, because such a place is badly fixed.
 *
 * @param plane counts as exact
 * @param field JSON pointer of the way the point was found
 */
export function distancePlace(
  measured: readonly MeasuredDistance[],
  plane: NamedPlane | null,
  towards: Towards,
  field: string,
): { place: Vector3 } | { finding: Finding } {
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
  if (spare ? (odds?.off ?? 0) > NEARLY : typed.misfit > NEARLY) {
    return { finding: cannotMeet(measured, plane, odds, field) };
  }
  const [first, second] = typed.places;
  if (second !== undefined && !isTold(first, second, towards, measured)) {
    const value = length(subtract(first, second));
    return { finding: finding('point-either-side', 'stop', `${field}/towards`, { value }) };
  }
  const place = further(typed.places, towards);
  if (measured.every(({ off }) => off === 0)) return { place };
  const taken = measured.map((one) => ({ ...one, distance: length(subtract(place, one.from)) + one.off }));
  const { places } = meeting(taken, plane, axes);
  return { place: second === undefined ? nearest(places, place) : further(places, towards) };
}

/** Whether a side tells two places apart, or they are one within the accuracy of the tape. */
function isTold(one: Vector3, other: Vector3, towards: Towards, measured: readonly MeasuredDistance[]): boolean {
  const apart = subtract(one, other);
  const accuracy = Math.max(...measured.map((distance) => distance.accuracy));
  return length(apart) <= NEARLY * accuracy || Math.abs(dot(apart, WAYS[towards])) >= CLEARLY * length(apart);
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
