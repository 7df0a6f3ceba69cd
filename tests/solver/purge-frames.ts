import { newJob } from '../../server/job/default-job.ts';
import type { EndGeometry, MemberGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { centrelineFromChain } from '../../server/solver/geometry/centreline.ts';
import { planPurge } from '../../server/solver/purge/plan-purge.ts';

const job = newJob('straight');

const FREE: EndGeometry = { kind: 'free' };

/** A straight member along x. */
export const tube = (name: string, length: number, ends: Partial<MemberGeometry> = {}): MemberGeometry => ({
  name,
  centreline: centrelineFromChain(
    { point: { x: 0, y: 0, z: 0 }, direction: { x: 1, y: 0, z: 0 }, normal: { x: 0, y: 0, z: 1 } },
    [{ kind: 'straight', length }],
  ),
  closed: false,
  closing: null,
  start: FREE,
  finish: FREE,
  ...ends,
});

export const onto = (station: number): EndGeometry => ({
  kind: 'saddle',
  onto: 'main',
  station,
  axisAngle: Math.PI / 2,
  offset: 0,
});

/** 38.1 × 1.65: a bore of 34.8 mm, and 3 m of it. */
export const MAIN = tube('main', 3000);
export const CROSSBAR = tube('crossbar', 800, { start: onto(1000), finish: onto(2000) });

type Work = Parameters<typeof planPurge>[0];

/** The default job's purge of some members, with what a test changes. */
export const purged = (
  members: readonly MemberGeometry[],
  joints: readonly { member: string; station: number }[],
  changes: Partial<Work['purge']> = {},
  more: Partial<Work> = {},
) =>
  planPurge({
    purge: { ...job.purge, ...changes },
    welding: job.welding,
    tube: job.tube,
    members,
    joints: joints.map((joint, index) => ({ ...joint, number: index + 1, arcTime: 76 })),
    ...more,
  });

export const SPLICE = [{ member: 'main', station: 1500 }];
