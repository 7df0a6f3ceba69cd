import type { Reading } from '../../server/job/came-back.ts';
import type { BarredStretch, PlacedJoint } from '../../server/job/closing.ts';
import type { FixingPoint } from '../../server/job/fixing.ts';
import type { Job } from '../../server/job/job.ts';
import type { AirHole, EndOfMember, GasPlace } from '../../server/job/purge.ts';
import type { MemberPlan } from '../../server/plan/frame.ts';
import type { Plan } from '../../server/plan/plan.ts';
import { AIR_HOLES } from './air-holes.ts';
import { FIXING } from './fixings.ts';
import { differences, valueAt, withValue } from './pointer.ts';
import { READINGS } from './readings.ts';
import { fixingReversed, placeReversed, readingReversed, type TurnedTube } from './reversed-places.ts';
import { orderReversed } from './reversed-order.ts';
import { rowsAt, withRowsReversed } from './rows.ts';
import { tubesOf } from './tubes.ts';

/** What the solver calls the one member of a frame of this shape. */
const RUN = 'run';

const MEMBER = /^(.*\/members\/\d+)\/path\/points$/;

const otherEnd = (end: EndOfMember['end']): EndOfMember['end'] => (end === 'start' ? 'finish' : 'start');

/** Gas goes in and out where it did, and the same holes are drilled: the tube's start is now its finish. */
function withEndsOfGas(job: Job, member: string): Job {
  const turned = <Place extends GasPlace>(place: Place): Place =>
    'hole' in place || place.member !== member ? place : { ...place, end: otherEnd(place.end) };
  const { feed, vent, holes } = job.purge;
  const purge = {
    ...job.purge,
    feed: feed === null ? null : turned(feed),
    vent: vent === null ? null : turned(vent),
    holes: { ...holes, except: holes.except.map(turned) },
  };
  return { ...job, purge };
}

/** The closing weld stays where it is: straight s leaves from point s, which is point n + 1 − s now. */
function withClosingKept(job: Job, member: string, points: number): Job {
  const members = job.bending.members.map((one) => {
    const { closingStraight: straight } = one;
    if (one.member !== member || straight === null) return one;
    return { ...one, closingStraight: straight < points ? points - straight : straight };
  });
  return { ...job, bending: { ...job.bending, members } };
}

/** The points of one list reversed, with the ends of the member that they belong to. */
function withListReversed(job: Job, pointer: string): Job {
  const next = withRowsReversed(job, pointer);
  const member = MEMBER.exec(pointer)?.[1];
  if (member === undefined) return next;
  const start = valueAt(next, `${member}/start`);
  const finish = valueAt(next, `${member}/finish`);
  return withValue(withValue(next, `${member}/start`, finish), `${member}/finish`, start);
}

/** The tube as the plan has it; without a plan every point between two others is taken for a bend. */
function tubeTurned(job: Job, member: string, pointer: string, plan: Plan | null): TurnedTube {
  const index = job.frame.shape === 'members' ? job.frame.members.findIndex(({ name }) => name === member) + 1 : 1;
  const tube = tubesOf(plan).find(({ name }) => name === member);
  if (tube !== undefined) {
    const length = tube.pieces.reduce((sum, piece) => sum + piece.length, 0);
    const arcs = tube.pieces.map(({ kind }) => kind !== 'straight');
    return { member, index, closed: tube.closed, bends: tube.bends, arcs, length };
  }
  const closed = valueAt(job, pointer.replace(/points$/, 'closed')) === true;
  const bends = Math.max(0, rowsAt(job, pointer).length - (closed ? 0 : 2));
  const arcs = Array.from({ length: 2 * bends + 1 }, (_, piece) => piece % 2 === 1);
  return { member, index, closed, bends, arcs, length: null };
}

/** Rows changed one by one; a text as typed goes where the value beside it has changed. */
function withRowsChanged<Row>(job: Job, pointer: string, change: (row: Row) => Row): Job {
  const rows = rowsAt(job, pointer) as readonly Row[];
  const next = rows.map(change);
  const changed = new Set(rows.flatMap((row, index) => differences(row, next[index], `${pointer}/${String(index)}`)));
  const asTyped = Object.fromEntries(Object.entries(job.asTyped).filter(([key]) => !changed.has(key)));
  return changed.size === 0 ? job : { ...withValue(job, pointer, next), asTyped };
}

const lengthIn = (
  members: readonly Pick<MemberPlan, 'name' | 'developedLength'>[] | undefined,
  member: string,
): number | undefined => members?.find(({ name }) => name === member)?.developedLength.value;

/** Joints on a member that is so long, counted from its other end; as they are where nobody knows how long. */
const withJointsBack = (job: Job, pointer: string, member: string, length: number | undefined): Job =>
  length === undefined
    ? job
    : withRowsChanged<PlacedJoint>(job, pointer, (one) =>
        one.member === member ? { ...one, station: Math.max(0, length - one.station) } : one,
      );

/** Readings, fixing points, vent holes and cuts stay on the spots of the tube where they were. */
function withPlacesKept(job: Job, tube: TurnedTube, plan: Plan | null): Job {
  const readings =
    job.cameBack === null ? job : withRowsChanged<Reading>(job, READINGS, (one) => readingReversed(one, tube));
  const fast = withRowsChanged<FixingPoint>(readings, FIXING, (one) => fixingReversed(one, tube));
  const fixed = withRowsChanged<AirHole>(fast, AIR_HOLES, (one) => ({ ...one, at: placeReversed(one.at, tube) }));
  // joints between bars stand on the frame as wanted, cuts on the one that came back
  const anew = withJointsBack(fixed, '/stock/joints', tube.member, lengthIn(plan?.frame?.members, tube.member));
  const length = lengthIn(plan?.correction?.members, tube.member);
  if (length === undefined) return anew;
  const back = (station: number): number => Math.max(0, length - station);
  const joints = withJointsBack(anew, '/closing/joints', tube.member, length);
  return withRowsChanged<BarredStretch>(joints, '/closing/barred', (one) =>
    one.member === tube.member ? { ...one, from: back(one.to), to: back(one.from) } : one,
  );
}

/**
 * The job with a run typed from its other end: the tube stays the same and where it was, and is marked from its other
 * end. What speaks of its ends and places goes along: on what they sit, where gas is fed and vented, the straight that a
 * closed tube is closed in, the order of welding, what was measured where, what it is fastened to, and where it is cut.
 *
 * @param pointer JSON pointer of the list of points
 * @param plan the plan of the job, where there is one: it knows which points are bends, and the lengths
 */
export function withRunReversed(job: Job, pointer: string, plan: Plan | null = null): Job {
  const found = MEMBER.exec(pointer)?.[1];
  const name = found === undefined ? RUN : valueAt(job, `${found}/name`);
  const next = withListReversed(job, pointer);
  if (typeof name !== 'string') return next;
  const gas = withClosingKept(withEndsOfGas(next, name), name, rowsAt(job, pointer).length);
  const order = [...orderReversed(job.welding.order, plan?.welding?.welds ?? [], name)];
  const welded = { ...gas, welding: { ...gas.welding, order } };
  return withPlacesKept(welded, tubeTurned(job, name, pointer, plan), plan);
}
