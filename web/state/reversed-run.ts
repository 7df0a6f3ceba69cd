import type { Frame } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import type { EndOfMember } from '../../server/job/purge.ts';
import { rowsAt, withRowsReversed } from './rows.ts';
import { valueAt, withValue } from './pointer.ts';

/** What the solver calls the one member of a frame of this shape. */
const RUN = 'run';

const MEMBER = /^(.*\/members\/\d+)\/path\/points$/;

const otherEnd = (end: EndOfMember['end']): EndOfMember['end'] => (end === 'start' ? 'finish' : 'start');

/** Gas goes in and out where it did: the tube's start is now its finish. */
function withEndsOfGas(job: Job, member: string): Job {
  let next = job;
  for (const side of ['feed', 'vent'] as const) {
    const place = next.purge[side];
    if (place?.member === member) next = withValue(next, `/purge/${side}`, { ...place, end: otherEnd(place.end) });
  }
  return next;
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

const sameShape = (one: Frame, other: Frame): boolean => one.shape === other.shape;

/**
 * The job with a run typed from its other end: the tube stays the same and where it was, and is marked from its other
 * end. What speaks of the two ends goes along: on what they sit, where gas is fed and vented, the straight that a closed
 * tube is closed in, and the frame as it came back, which is compared point by point.
 *
 * @param pointer JSON pointer of the list of points, in the frame as wanted or as it came back
 */
export function withRunReversed(job: Job, pointer: string): Job {
  const wanted = pointer.replace(/^\/cameBack(?=\/frame\/)/, '');
  const next = withListReversed(job, wanted);
  const found = MEMBER.exec(wanted)?.[1];
  const name = found === undefined ? RUN : valueAt(job, `${found}/name`);
  const points = rowsAt(job, wanted).length;
  const gas = typeof name === 'string' ? withClosingKept(withEndsOfGas(next, name), name, points) : next;
  const cameBack = `/cameBack${wanted}`;
  const both = job.cameBack !== null && sameShape(job.cameBack.frame, job.frame);
  return both && Array.isArray(valueAt(gas, cameBack)) ? withListReversed(gas, cameBack) : gas;
}
