import { fromOtherEnd, wayToBend, type MakingInput, type WayToBend } from './way-to-bend.ts';

/** The member as it is planned: from its datum end, on the side that the machine is set up for. */
export const plannedWay = (input: MakingInput): WayToBend => wayToBend('as-planned', input);

/**
 * The other ways to bend a member whole: from its other end, and both with the die on the other side of the tube where
 * the machine can be set up so.
 *
 * Lengths [mm], angles [rad], bends in the order of each way.
 */
export function otherWays(input: MakingInput): WayToBend[] {
  const back = fromOtherEnd(input);
  const ways = [wayToBend('other-end', back)];
  if (!input.machine.bothSides) return ways;
  return [...ways, wayToBend('other-side', input), wayToBend('other-end-other-side', back)];
}

/** Two lengths that differ by rounding only [mm]. */
const NOTHING = 1e-6;

/**
 * The way to take: one that can be done, with the least length left on, then the one that comes least near to anything;
 * of equal ones the first, so that rounding does not choose.
 */
export function bestWay(ways: readonly WayToBend[]): WayToBend | undefined {
  const leftOn = (way: WayToBend): number => way.extraAtStart + way.extraAtEnd;
  const room = (way: WayToBend): number => way.nearest?.clearance ?? Infinity;
  let best: WayToBend | undefined;
  for (const way of ways) {
    if (!way.possible) continue;
    if (best === undefined || leftOn(way) < leftOn(best) - NOTHING) best = way;
    else if (leftOn(way) <= leftOn(best) + NOTHING && room(way) > room(best) + NOTHING) best = way;
  }
  return best;
}
