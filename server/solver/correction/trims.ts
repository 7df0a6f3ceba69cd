import type { Way } from '../../plan/correction.ts';
import type { Finding } from '../../plan/finding.ts';
import { band, figure, input } from '../figure.ts';
import { finding } from '../finding.ts';
import type { FrameGeometry, MemberGeometry, Spot } from '../frame/frame-geometry.ts';
import { length, subtract } from '../geometry/vector.ts';
import { placeAt, type Centreline } from '../geometry/centreline.ts';
import { sliceCentreline } from '../geometry/slice.ts';

/** A foot of the frame as it came back: how much longer its leg is than wanted (negative: shorter) [mm]. */
export type FootExcess = { readonly foot: Spot; readonly atFinish: boolean; readonly excess: number };

/** Lengths below this are rounding [mm]. */
const NOTHING = 1e-6;

/**
 * How much each foot stands beyond where it is wanted, along the tube from the middle of the bend beside it, in space as
 * in a plane. A member without a bend is compared end to end, and what it is too long by stands at its finish alone.
 */
export function footExcesses(wanted: FrameGeometry, cameBack: FrameGeometry): FootExcess[] {
  return cameBack.feet.flatMap((foot, index) => {
    const goal = wanted.feet[index];
    if (goal === undefined || goal.member !== foot.member) return [];
    const own = reachToCorner(cameBack, foot);
    const asked = reachToCorner(wanted, goal);
    const { atFinish } = own;
    const otherEnd = cameBack.feet.some((one) => one !== foot && one.member === foot.member);
    if (own.toOtherEnd && otherEnd && !atFinish) return [];
    return [{ foot, atFinish, excess: own.reach - asked.reach }];
  });
}

type Reach = { readonly reach: number; readonly atFinish: boolean; readonly toOtherEnd: boolean };

function reachToCorner(frame: FrameGeometry, foot: Spot): Reach {
  const whole = memberOf(frame, foot.member)?.centreline.length ?? 0;
  const atFinish = foot.station > whole / 2;
  const corners = frame.corners.filter((corner) => corner.member === foot.member);
  const distances = corners.map((corner) => Math.abs(corner.station - foot.station));
  const toOtherEnd = distances.length === 0;
  return { reach: toOtherEnd ? whole : Math.min(...distances), atFinish, toOtherEnd };
}

const memberOf = (frame: FrameGeometry, name: string): MemberGeometry | undefined =>
  frame.members.find((member) => member.name === name);

/**
 * The frame with every foot that is too long cut back; feet that are too short stay. The tubes keep their stations: what
 * is cut off is still on their centrelines.
 *
 * @param excesses of this frame, or of one with the same members, which is then cut back by as much
 */
export function trimmedFeet(frame: FrameGeometry, excesses: readonly FootExcess[]): FrameGeometry {
  const cuts = excesses.filter(({ excess }) => excess > 0);
  if (cuts.length === 0) return frame;
  const feet = frame.feet.map((foot) => ({ foot, now: cutBack(frame, foot, cuts) }));
  const cut = (spot: Spot): Spot =>
    feet.find(
      ({ foot }) => foot.member === spot.member && Math.abs(foot.station - spot.station) < NOTHING && isAt(foot, spot),
    )?.now ?? spot;
  return {
    members: frame.members,
    corners: frame.corners,
    planeNormal: frame.planeNormal,
    feet: feet.map(({ now }) => now),
    checks: frame.checks.map((check) => ({ ...check, from: cut(check.from), to: cut(check.to) })),
  };
}

/** A size that is taken beside the tube does not end at its foot. */
const isAt = (foot: Spot, spot: Spot): boolean => length(subtract(foot.point, spot.point)) < NOTHING;

function cutBack(frame: FrameGeometry, foot: Spot, cuts: readonly FootExcess[]): Spot {
  const member = memberOf(frame, foot.member);
  if (member === undefined) return foot;
  const atFinish = foot.station > member.centreline.length / 2;
  const cut = cuts.find((one) => one.foot.member === foot.member && one.atFinish === atFinish);
  if (cut === undefined) return foot;
  const station = foot.station + (atFinish ? -cut.excess : cut.excess);
  const point = placeAt(member.centreline, station)?.point;
  return point === undefined ? foot : { member: foot.member, station, point };
}

/** A member's line between its feet, without what is cut off; `line` is the member's own, or as it lies after bending. */
export function betweenFeet(
  { feet }: FrameGeometry,
  { name, centreline }: MemberGeometry,
  line: Centreline,
): Centreline {
  const own = feet.filter((foot) => foot.member === name).map(({ station }) => station);
  const half = centreline.length / 2;
  const from = Math.max(0, ...own.filter((station) => station <= half));
  const off = Math.max(0, ...own.filter((station) => station > half).map((station) => centreline.length - station));
  return from < NOTHING && off < NOTHING ? line : sliceCentreline(line, from, line.length - off);
}

/** Feet that are cut back, where the tape finds them too long. */
export const trimsOf = (excesses: readonly FootExcess[], tape: number): Way['trims'] =>
  excesses
    .filter(({ excess }) => excess > tape)
    .map(({ foot, atFinish, excess }) => ({
      member: foot.member,
      end: atFinish ? 'finish' : 'start',
      length: figure(
        excess,
        'mm',
        't = reach − reach of the wanted leg',
        [input('t', 'leg-excess', excess, 'mm')],
        ['geometry'],
        // two ends of a tape
        band(Math.SQRT2 * tape, 'tape'),
      ),
    }));

/**
 * What there is to say about legs that are too long or too short.
 *
 * @param field JSON pointer of what the legs were read from
 */
export function footFindings(excesses: readonly FootExcess[], tape: number, field: string): Finding[] {
  return excesses.flatMap(({ foot, atFinish, excess }) => {
    const data = { member: foot.member, end: atFinish ? 'finish' : 'start', value: Math.abs(excess) };
    if (excess > tape) return [finding('leg-to-be-trimmed', 'note', field, data)];
    if (excess < -tape) return [finding('leg-too-short', 'caution', field, data)];
    return [];
  });
}

/** What stands under a foot. */
export const packingOf = (
  foot: Pick<Spot, 'member'>,
  atFinish: boolean,
  height: number,
  tape: number,
): Way['packing'][number] => ({
  member: foot.member,
  end: atFinish ? 'finish' : 'start',
  height: figure(
    height,
    'mm',
    'h = (q − L(p)) · out',
    [input('h', 'short-of-landing', height, 'mm')],
    ['geometry'],
    band(Math.SQRT2 * tape, 'tape'),
  ),
});
