import type { Job } from '../../server/job/job.ts';
import type { AirHole, GasPlace, Purge } from '../../server/job/purge.ts';
import type { DeadLeg } from '../../server/plan/purge.ts';
import { withoutRow } from './rows.ts';
import type { Tube } from './tubes.ts';
import { withChoice } from './typed-text.ts';

export const AIR_HOLES = '/purge/holes/toAir';

/** From an end of a tube to a hole beside it [mm]; our own choice, clear of the heat of a weld there. */
const BESIDE_END = 100;

/** Two holes nearer than this along a tube are one place [mm]. */
const SAME = 1;

/**
 * A hole to begin with, to be typed over: near an end of an open tube, opposite the closing weld of a closed one, and
 * where no hole is yet; null without a tube.
 *
 * @param tubes the tubes that it may be drilled in, best first
 */
export function freshAirHole(tubes: readonly Tube[], { toAir, bore }: Purge['holes']): AirHole | null {
  const [tube] = tubes;
  if (tube === undefined) return null;
  const length = tube.pieces.reduce((sum, piece) => sum + piece.length, 0);
  const beside = Math.min(BESIDE_END, length / 2);
  const ends = [beside, length - beside];
  const places = tube.closed ? [length / 2, ...ends] : [...ends, length / 2];
  const isTaken = (distance: number): boolean =>
    toAir.some(({ at }) => at.member === tube.name && Math.abs(at.distance - distance) < SAME);
  const distance = Math.round(places.find((place) => !isTaken(place)) ?? beside);
  return { at: { member: tube.name, spot: 'along', number: 1, distance }, bore };
}

/** From the far end of a dead leg to a hole that gas is led out of it by [mm]; our own choice, clear of the weld itself. */
const FROM_FAR_END = 25;

/** A hole near the far end of bore that no gas runs through, so that gas does. */
export function holeInDeadLeg({ stretches }: Pick<DeadLeg, 'stretches'>, bore: number): AirHole | null {
  const far = stretches.at(-1);
  if (far === undefined) return null;
  const back = Math.min(FROM_FAR_END, Math.abs(far.to - far.from) / 2) * Math.sign(far.to - far.from);
  const distance = Math.max(0, Math.round(far.to - back));
  return { at: { member: far.member, spot: 'along', number: 1, distance }, bore };
}

/** The job without one of its vent holes to the air; feed and vent go on at the hole that they were at. */
export function withoutAirHole(job: Job, index: number): Job {
  const number = index + 1;
  const at = (place: GasPlace | null): GasPlace | null => {
    if (place === null || !('hole' in place) || place.hole < number) return place;
    return place.hole === number ? null : { hole: place.hole - 1 };
  };
  const { feed, vent } = job.purge;
  const left = withoutRow(job, AIR_HOLES, index);
  return withChoice(withChoice(left, '/purge/feed', at(feed)), '/purge/vent', at(vent));
}
