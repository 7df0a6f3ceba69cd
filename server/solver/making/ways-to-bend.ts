import { fromOtherEnd, wayToBend, type MakingInput, type WayToBend } from './way-to-bend.ts';

/**
 * The ways to bend a member whole: as planned, from its other end, and both with the die on the other side of the tube
 * where the machine can be set up so.
 *
 * Lengths [mm], angles [rad], bends in the order of each way.
 */
export function waysToBend(input: MakingInput): WayToBend[] {
  const back = fromOtherEnd(input);
  const ways = [wayToBend('as-planned', input), wayToBend('other-end', back)];
  if (!input.machine.bothSides) return ways;
  return [...ways, wayToBend('other-side', input), wayToBend('other-end-other-side', back)];
}

/** The way to take: one that can be done, with the least length left on, then the one that comes least near to anything. */
export function bestWay(ways: readonly WayToBend[]): WayToBend | undefined {
  const leftOn = (way: WayToBend): number => way.extraAtStart + way.extraAtEnd;
  const room = (way: WayToBend): number => way.nearest?.clearance ?? Infinity;
  let best: WayToBend | undefined;
  for (const way of ways) {
    if (!way.possible) continue;
    if (best === undefined || leftOn(way) < leftOn(best)) best = way;
    else if (leftOn(way) === leftOn(best) && room(way) > room(best)) best = way;
  }
  return best;
}
