import type { PlacedJoint } from '../../job/closing.ts';
import type { Finding } from '../../plan/finding.ts';
import type { KeepOut } from '../../plan/joint.ts';
import type { BarJointPlan } from '../../plan/stock.ts';
import { clearOfWeld } from '../correction/splice/free-stretches.ts';
import { finding } from '../finding.ts';
import { atLeast, atMost, wayOut } from '../frame/way-out.ts';
import type { WeldPlace } from '../welding/weld-sites.ts';
import { without, type JointRoom, type StraightTubes } from './straight-tube.ts';

/** Joints between bars that can be made, by member: stations on the frame as wanted, in the order of the tube [mm]. */
export type BarJoints = ReadonlyMap<string, readonly number[]>;

/**
 * The joints between bars that a job asks for. One that stands where none may is told and left out: its member stays in one
 * piece there. Of two that are too near to each other the first typed stands.
 */
export function barJoints(
  asked: readonly PlacedJoint[],
  tubes: StraightTubes,
  outsideDiameter: number,
): { joints: BarJoints; findings: Finding[] } {
  const findings: Finding[] = [];
  const joints = new Map<string, number[]>();
  const rooms = new Map<string, JointRoom[]>();
  const clear = clearOfWeld(outsideDiameter);
  for (const [index, { member, station }] of asked.entries()) {
    const field = `/stock/joints/${String(index)}`;
    const tube = tubes.get(member);
    if (tube === undefined) {
      findings.push(finding('bar-joint-no-member', 'stop', `${field}/member`, { member }));
      continue;
    }
    const open = rooms.get(member) ?? [...tube.rooms];
    if (!open.some(({ from, to }) => from <= station && station <= to)) {
      findings.push(misplaced({ member, station }, open, `${field}/station`));
      continue;
    }
    rooms.set(member, without(open, station - clear, station + clear, 'weld'));
    const own = [...(joints.get(member) ?? []), station];
    joints.set(
      member,
      own.sort((a, b) => tube.placeOf(a) - tube.placeOf(b)),
    );
  }
  for (const [member, own] of joints)
    if (tubes.get(member)?.bent === true)
      findings.push(finding('bar-joint-bent-over', 'caution', '/stock/joints', { member, value: own.length }));
  return { joints, findings };
}

/** A joint outside every room; the way out is the nearest place that there is. */
function misplaced({ member, station }: PlacedJoint, rooms: readonly JointRoom[], field: string): Finding {
  let nearest: { room: JointRoom; away: number; rule: KeepOut } | undefined;
  for (const room of rooms) {
    const before = room.from - station;
    const away = before > 0 ? before : station - room.to;
    if (away < (nearest?.away ?? Infinity)) nearest = { room, away, rule: before > 0 ? room.startRule : room.endRule };
  }
  if (nearest === undefined) {
    const data = { member, value: station, keepOut: 'bend' };
    return finding('bar-joint-misplaced', 'stop', field, data);
  }
  const { room, rule } = nearest;
  const { from: low, to: high } = room;
  const easy = station < low ? Math.min(atLeast(low), high) : Math.max(atMost(high), low);
  const data = { member, value: station, keepOut: rule, low, high };
  return finding('bar-joint-misplaced', 'stop', field, data, wayOut(field, easy, MOST_STATION));
}

/** The furthest station that can be typed [mm]. */
export const MOST_STATION = 50_000;

/** Where each of the joints that are asked for may stand, the others staying where they are. */
export const roomsOfJoints = (
  asked: readonly PlacedJoint[],
  tubes: StraightTubes,
  outsideDiameter: number,
): BarJointPlan[] =>
  asked.flatMap(({ member }, index): BarJointPlan[] => {
    const tube = tubes.get(member);
    if (tube === undefined) return [];
    const clear = clearOfWeld(outsideDiameter);
    const rooms = asked.reduce<readonly JointRoom[]>(
      (left, other, at) =>
        at === index || other.member !== member
          ? left
          : without(left, other.station - clear, other.station + clear, 'weld'),
      tube.rooms,
    );
    const ranges = rooms.map(({ from, to }) => ({ from, to }));
    return [{ member, field: `/stock/joints/${String(index)}/station`, ranges }];
  });

/** The welds of joints between bars. */
export const barJointWelds = (joints: BarJoints): WeldPlace[] =>
  [...joints].flatMap(([member, stations]) =>
    stations.map((station): WeldPlace => ({ kind: 'bar-joint', joint: 0, side: '', member, station })),
  );
