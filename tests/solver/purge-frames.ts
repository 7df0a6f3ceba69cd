import { newJob } from '../../server/job/default-job.ts';
import type { FixingPoint } from '../../server/job/fixing.ts';
import type { Hoop, Member, MemberEnd } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import type { AirHole, Purge } from '../../server/job/purge.ts';
import { newFrameWelds } from '../../server/solver/correction/new-frame-welds.ts';
import { drawFrame } from '../../server/solver/frame/expand-frame.ts';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { planPurge } from '../../server/solver/purge/plan-purge.ts';
import { purgeContext } from '../../server/solver/purge/purge-context.ts';
import { weldSites, type WeldPlace } from '../../server/solver/welding/weld-sites.ts';
import type { WeldWork } from '../../server/solver/welding/weld-work.ts';

/** Where a tube of the frame is cut and welded. */
export type Cut = { readonly member: string; readonly station: number };

type Point = readonly [number, number, number];

const FREE: MemberEnd = { end: 'free' };
export const seat = (onto: string): MemberEnd => ({ end: 'saddle', onto });

/** A member through points, or round them. */
export const member = (
  name: string,
  points: readonly Point[],
  {
    start = FREE,
    finish = FREE,
    closed = false,
  }: Partial<Pick<Member, 'start' | 'finish'>> & { closed?: boolean } = {},
): Member => ({
  name,
  path: { by: 'points', points: points.map(([x, y, z]) => ({ x, y, z, radius: null })), closed },
  start,
  finish,
});

/** 38.1 × 1.65: a bore of 34.8 mm, and 3 m of it along x. */
export const MAIN = member('main', [
  [0, 0, 0],
  [3000, 0, 0],
]);
/** A leg of 600 mm that sits on the main tube. */
export const LEG = member(
  'leg',
  [
    [500, 0, 0],
    [500, 600, 0],
  ],
  { start: seat('main') },
);

/** A new job of some members, with what a test changes in its purge. */
export const jobOf = (members: readonly Member[], purge: Partial<Purge> = {}, more: Partial<Job> = {}): Job =>
  withPurge({ ...newJob('members'), frame: { shape: 'members', members: [...members] }, ...more }, purge);

export const withPurge = (job: Job, purge: Partial<Purge>): Job => ({ ...job, purge: { ...job.purge, ...purge } });

export const holes = (change: Partial<Purge['holes']>): Pick<Purge, 'holes'> => ({
  holes: { ...newJob('hoop').purge.holes, ...change },
});

/** A new hoop with crossbars so far from its feet [mm]. */
export function hoopJob(bars: readonly number[], purge: Partial<Purge> = {}, more: Partial<Job> = {}): Job {
  const job = newJob('hoop');
  const innerCrossbars = bars.map((value) => ({ fromFoot: { value, reference: 'centre' as const } }));
  return withPurge({ ...job, frame: { ...(job.frame as Hoop), innerCrossbars }, ...more }, purge);
}

export const airHole = (member: string, distance: number, bore = 6): AirHole => ({
  at: { member, spot: 'along', number: 1, distance },
  bore,
});

/** A pad with a plate on an end of a member, with a hole through it or none. */
export const pad = (member: string, end: 'start' | 'finish', hole = 0): FixingPoint => ({
  fixing: 'pad',
  name: `pad at ${end}`,
  at: { member, spot: end, number: 1, distance: 0 },
  off: { x: 0, y: 0, z: 0 },
  lands: null,
  tolerance: null,
  plate: { thickness: 6, hole },
});

export const UP = { x: { x: 1, y: 0, z: 0 }, y: { x: 0, y: 1, z: 0 }, z: { x: 0, y: 0, z: 1 } };

/** What one weld takes in these tests: arc 76 s, 240 J/mm, 8 L/min for 84 s. */
const EACH = { length: 114.5, arcTime: 76, fillerMass: 0, fillerLength: 0, torchFlow: 8, torchGas: 11.2, heat: 240 };

export function geometryOf(job: Job): FrameGeometry {
  const { outsideDiameter } = job.tube;
  const { geometry, findings } = drawFrame(job.frame, { outsideDiameter, cornerRadius: 115, root: '/frame' });
  if (geometry === null) throw new Error(findings.map(({ code }) => code).join(', '));
  return geometry;
}

/** The welds of a frame: its cuts, and those of a new frame unless these were made long ago. */
export function weldsOf(job: Job, frame: FrameGeometry, cuts: readonly Cut[], cutsOnly: boolean): WeldWork[] {
  const spliced = cuts.map((cut, index): WeldPlace => ({ kind: 'splice', joint: index + 1, side: '', ...cut }));
  const places = [...spliced, ...(cutsOnly ? [] : newFrameWelds(frame))];
  return weldSites(places, frame, job.fixing).map((site) => ({ site, ...EACH }));
}

export function contextOf(job: Job, cuts: readonly Cut[] = [], cutsOnly = false) {
  const frame = geometryOf(job);
  return purgeContext(job, frame, weldsOf(job, frame, cuts, cutsOnly));
}

export const purged = (job: Job, cuts: readonly Cut[] = [], cutsOnly = false) =>
  planPurge(contextOf(job, cuts, cutsOnly));

export const SPLICE: readonly Cut[] = [{ member: 'main', station: 1500 }];
