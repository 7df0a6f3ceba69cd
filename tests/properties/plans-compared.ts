import fc from 'fast-check';
import type { Frame } from '../../server/job/frame.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import type { Die } from '../../server/job/machine.ts';
import type { FramePlan } from '../../server/plan/frame.ts';
import { plan } from '../../server/solver/plan.ts';
import { withDie } from '../solver/made-up-shop.ts';

/** A number of a range, without the odd values that no tape shows. */
export const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

export const isPlain = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * The first place at which two plain values differ, as 'path: one ≠ other'; undefined where they do not. Numbers may
 * be apart by `tolerance`, and where they are larger than 1 by that share of themselves.
 */
export function firstDifference(one: unknown, other: unknown, tolerance: number, path = ''): string | undefined {
  if (typeof one === 'number' && typeof other === 'number') {
    const apart = Math.abs(one - other);
    if (Number.isFinite(apart) && apart <= tolerance * Math.max(1, Math.abs(one))) return undefined;
  } else if (Array.isArray(one) && Array.isArray(other) && one.length === other.length) {
    for (const [index, item] of one.entries()) {
      const found = firstDifference(item, other[index], tolerance, `${path}/${String(index)}`);
      if (found !== undefined) return found;
    }
    return undefined;
  } else if (isPlain(one) && isPlain(other)) {
    for (const name of new Set([...Object.keys(one), ...Object.keys(other)])) {
      const found = firstDifference(one[name], other[name], tolerance, `${path}/${name}`);
      if (found !== undefined) return found;
    }
    return undefined;
  } else if (one === other) return undefined;
  return `${path}: ${JSON.stringify(one)} ≠ ${JSON.stringify(other)}`;
}

/** What a job has otherwise than a new one; `die` is the one that is set up. */
export type JobChange = {
  readonly tube?: Partial<Job['tube']>;
  readonly machine?: Partial<Job['machine']>;
  readonly die?: Partial<Die>;
  readonly bending?: Partial<Job['bending']>;
};

/** A job with a frame and, where wanted, another tube, machine and die; the die is for its tube. */
export function jobWith(frame: Frame, change: JobChange = {}): Job {
  const job = newJob(frame.shape);
  const tube = { ...job.tube, ...change.tube };
  const machine = { ...job.machine, ...change.machine };
  const die = { tubeDiameter: tube.outsideDiameter, ...change.die };
  return { ...job, frame, tube, machine: withDie(machine, die), bending: { ...job.bending, ...change.bending } };
}

/** The frame of a job's plan; throws with the codes of the stops where there is none. */
export function plannedFrame(job: Job): FramePlan {
  const { frame, findings } = plan(job);
  if (frame === null) throw new Error(findings.map(({ code, field }) => `${code} ${field}`).join(', '));
  return frame;
}
