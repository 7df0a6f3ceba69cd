import type { Centreline } from '../../geometry/centreline.ts';
import { leastGap, type LeastGap, type Search } from '../../geometry/least-gap.ts';
import type { Turning } from '../../geometry/turning.ts';
import { cross, dot, length, subtract } from '../../geometry/vector.ts';
import type { LaidThing } from '../laid-site.ts';

/** Gaps are told apart down to this [mm]. */
export const FINE = 0.005; // our own choice: far below a tape

/**
 * So many parts of one pair of tube and thing are looked at; what is not known then is said with the gap. Our own choice:
 * no pair tried that was not inside the other came near it.
 */
const MOST = 4000;

/** A turn over less than this is none [rad]; as much off an axis changes nothing [mm]; rounding. */
const NOTHING = 1e-9;

/**
 * All the turns that a swing goes through, what stands as typed among them: it is there, and it comes from there.
 *
 * @param swing first and last turn from where it stands [rad], in either order
 * @returns null where it does not move
 */
export function travelOf(swing: Turning | null): Turning | null {
  if (swing === null) return null;
  const from = Math.min(0, swing.from, swing.to);
  const to = Math.max(0, swing.from, swing.to);
  return to - from > NOTHING ? { ...swing, from, to } : null;
}

/** The swing of a thing, null as well where it turns on its own axis and looks the same everywhere. */
export function swingOf({ body, swing }: Pick<LaidThing, 'body' | 'swing'>): Turning | null {
  const travel = travelOf(swing);
  if (travel === null) return null;
  const { about, axis } = travel;
  const isOn = length(cross(subtract(body.at, about), axis)) < NOTHING;
  if (body.shape === 'point') return isOn ? null : travel;
  const own = body.shape === 'plane' ? body.normal : body.axis;
  const isAlong = length(cross(own, axis)) < NOTHING && dot(own, own) > 0;
  return isAlong && (isOn || body.shape === 'plane') ? null : travel;
}

/**
 * Where the centreline of a tube comes nearest to a thing over all that both swing through.
 *
 * @param lineTurns how the tube turns, null: it stays
 * @param search as finely as gaps are told apart where nothing else is asked for
 */
export const thingGap = (
  line: Centreline,
  thing: Pick<LaidThing, 'body' | 'swing'>,
  lineTurns: Turning | null,
  search: Partial<Search> = {},
): LeastGap | undefined =>
  leastGap({ line, solid: thing.body, lineTurns, solidTurns: swingOf(thing) }, { fine: FINE, most: MOST, ...search });
