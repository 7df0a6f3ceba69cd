import { newJob } from '../../server/job/default-job.ts';
import type { FixingPoint } from '../../server/job/fixing.ts';
import type { Frame } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import type { AirHole, EndOfMember, Purge } from '../../server/job/purge.ts';
import { newFrameWelds } from '../../server/solver/correction/new-frame-welds.ts';
import { drawFrame } from '../../server/solver/frame/expand-frame.ts';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { purgeContext, type PurgeContext } from '../../server/solver/purge/purge-context.ts';
import { weldSites, type WeldPlace } from '../../server/solver/welding/weld-sites.ts';
import type { WeldWork } from '../../server/solver/welding/weld-work.ts';

/** A place where a tube of the frame is cut and welded. */
export type Cut = { readonly member: string; readonly station: number };

/** A frame with its holes, pads and cuts: what a purge is planned for. */
export type PurgeCase = {
  readonly frame: Frame;
  readonly purge?: Partial<Purge>;
  readonly fixing?: readonly FixingPoint[];
  readonly cuts?: readonly Cut[];
  readonly job?: Partial<Job>;
};

export type PurgeWorkload = {
  readonly job: Job;
  readonly frame: FrameGeometry;
  readonly welds: WeldWork[];
  readonly context: PurgeContext;
};

/** Welds of ordinary sizes: how long each takes is no matter of the bores. */
function workOf(job: Job, frame: FrameGeometry, places: readonly WeldPlace[]): WeldWork[] {
  const length = Math.PI * (job.tube.outsideDiameter - job.tube.wall);
  const arcTime = length / 1.5;
  return weldSites(places, frame, job.fixing).map((site) => ({
    site,
    length,
    arcTime,
    fillerMass: 2.7,
    fillerLength: 170,
    torchFlow: 7,
    torchGas: (7 * arcTime) / 60,
    heat: 220,
  }));
}

/** The purge of a case as the solver is given it; undefined for a frame that cannot be drawn. */
export function workloadOf({
  frame: typed,
  purge,
  fixing = [],
  cuts = [],
  job: more = {},
}: PurgeCase): PurgeWorkload | undefined {
  const start = newJob(typed.shape);
  const job: Job = { ...start, frame: typed, ...more, fixing: [...fixing], purge: { ...start.purge, ...purge } };
  const { geometry } = drawFrame(typed, {
    outsideDiameter: job.tube.outsideDiameter,
    cornerRadius: Math.max(115, 2 * job.tube.outsideDiameter),
    root: '/frame',
  });
  if (geometry === null) return undefined;
  const spliced = cuts.map((cut, index): WeldPlace => ({ kind: 'splice', joint: index + 1, side: '', ...cut }));
  const welds = workOf(job, geometry, [...spliced, ...newFrameWelds(geometry)]);
  return workload(job, geometry, welds);
}

export const workload = (job: Job, frame: FrameGeometry, welds: WeldWork[]): PurgeWorkload => ({
  job,
  frame,
  welds,
  context: purgeContext(job, frame, welds),
});

export const pad = (member: string, end: EndOfMember['end'], hole: number): FixingPoint => ({
  fixing: 'pad',
  name: `pad ${member} ${end}`,
  at: { member, spot: end, number: 1, distance: 0 },
  off: { x: 0, y: 0, z: 0 },
  lands: null,
  tolerance: null,
  plate: { thickness: 6, hole },
});

export const airHole = (member: string, distance: number, bore = 4): AirHole => ({
  at: { member, spot: 'along', number: 1, distance },
  bore,
});
