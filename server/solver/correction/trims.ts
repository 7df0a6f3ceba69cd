import type { FrameGeometry, Spot } from '../frame/frame-geometry.ts';
import { placeAt } from '../geometry/centreline.ts';

/** A foot of the frame as it came back: how much longer its leg is than wanted (negative: shorter) [mm]. */
export type FootExcess = { readonly foot: Spot; readonly atFinish: boolean; readonly excess: number };

/**
 * How much each foot stands beyond where it is wanted, along the tube from the middle of the bend beside it. A
 * member without a bend is compared end to end.
 */
export function footExcesses(wanted: FrameGeometry, cameBack: FrameGeometry): FootExcess[] {
  return cameBack.feet.flatMap((foot, index) => {
    const goal = wanted.feet[index];
    if (goal === undefined || goal.member !== foot.member) return [];
    const own = reachToCorner(cameBack, foot);
    const asked = reachToCorner(wanted, goal);
    return [{ foot, atFinish: own.atFinish, excess: own.reach - asked.reach }];
  });
}

/** Longest lever that a bend's scatter works on: from a foot along the tube to the bend beside it [mm]. */
export const longestLeg = (frame: FrameGeometry): number =>
  Math.max(0, ...frame.feet.map((foot) => reachToCorner(frame, foot).reach));

function reachToCorner(frame: FrameGeometry, foot: Spot): { reach: number; atFinish: boolean } {
  const whole = frame.members.find((member) => member.name === foot.member)?.centreline.length ?? 0;
  const atFinish = foot.station > whole / 2;
  const corners = frame.corners.filter((corner) => corner.member === foot.member);
  const distances = corners.map((corner) => Math.abs(corner.station - foot.station));
  return { reach: distances.length === 0 ? whole : Math.min(...distances), atFinish };
}

/** The frame with every foot that is too long cut back; feet that are too short stay. */
export function trimmedFeet(frame: FrameGeometry, excesses: readonly FootExcess[]): FrameGeometry {
  const cut = (spot: Spot): Spot => {
    const trim = excesses.find((one) => one.foot.member === spot.member && one.foot.station === spot.station);
    if (trim === undefined || trim.excess <= 0) return spot;
    const member = frame.members.find((one) => one.name === spot.member);
    const station = spot.station + (trim.atFinish ? -trim.excess : trim.excess);
    const point = member === undefined ? undefined : placeAt(member.centreline, station)?.point;
    return point === undefined ? spot : { ...spot, station, point };
  };
  return {
    ...frame,
    feet: frame.feet.map(cut),
    checks: frame.checks.map((check) => ({ ...check, from: cut(check.from), to: cut(check.to) })),
  };
}
