import { placeAt, type Centreline } from '../../geometry/centreline.ts';
import { sliceCentreline } from '../../geometry/slice.ts';
import { clearOf, type RoundBar } from '../../geometry/solid.ts';
import { length, subtract } from '../../geometry/vector.ts';
import type { MadeLine } from '../laid-site.ts';
import type { LegBar } from './leg-bar.ts';

/** Steps along a tube are never shorter than this share of what it must be off by; our own choice. */
const STEP = 0.125;

/**
 * What of a tube counts as another one for the leg that sits on it: all but the stretch round the head that is no further
 * off the leg than a limit. Where the tube comes back to the leg further on, that is in it.
 *
 * @param apart off the leg's surface [mm]
 */
export function besideHead({ centreline, closed }: MadeLine, { leg, solid }: LegBar, apart: number): Centreline[] {
  const toHead: RoundBar = { ...solid, ends: { from: 0, to: length(subtract(leg.head, leg.foot)) } };
  const whole = centreline.length;
  /** How far from the head the tube leaves the leg. */
  const leaves = (way: 1 | -1): number => {
    const most = closed ? whole : way > 0 ? whole - leg.station : leg.station;
    for (let along = 0; along < most;) {
      const station = leg.station + way * along;
      const point = placeAt(centreline, closed ? within(station, whole) : station)?.point;
      const off = point === undefined ? apart : clearOf(toHead, point).distance;
      if (off >= apart) return along;
      // no tube gets away faster than it is long
      along += Math.max(STEP * apart, apart - off);
    }
    return most;
  };
  const [before, after] = [leg.station - leaves(-1), leg.station + leaves(1)];
  if (!closed) return parts(centreline, [0, before], [after, whole]);
  if (after - before >= whole) return [];
  return after > whole
    ? parts(centreline, [after - whole, before])
    : before < 0
      ? parts(centreline, [after, before + whole])
      : parts(centreline, [0, before], [after, whole]);
}

const within = (station: number, whole: number): number => ((station % whole) + whole) % whole;

const parts = (line: Centreline, ...ranges: readonly (readonly [number, number])[]): Centreline[] =>
  ranges.flatMap(([from, to]) => (to > from ? [sliceCentreline(line, from, to)] : []));
