import { newJob } from '../../../server/job/default-job.ts';
import type { Frame } from '../../../server/job/frame.ts';
import type { Site } from '../../../server/job/site.ts';
import type { Placing, Slope, Standing } from '../../../server/job/standing.ts';
import type { TubePlace } from '../../../server/job/tube-place.ts';
import { drawFrame } from '../../../server/solver/frame/expand-frame.ts';
import type { Vector3 } from '../../../server/solver/geometry/vector.ts';
import { EXACT, type LaidLeg, type LaidThing, type SiteSource } from '../../../server/solver/site/laid-site.ts';
import type { SiteStudy } from '../../../server/solver/site/site-study.ts';
import { standFrame } from '../../../server/solver/site/standing/stand-frame.ts';
import { resolveGrade } from '../../../server/solver/tube/grades.ts';

export const UPRIGHT = { x: 0, y: 0, z: 1 };
export const at = (x: number, y: number, z: number): Vector3 => ({ x, y, z });

/** A place on a tube; `number` and `distance` only where they count. */
export const place = (spot: TubePlace['spot'], of: Partial<TubePlace> = {}): TubePlace => ({
  member: 'hoop',
  spot,
  number: 1,
  distance: 0,
  ...of,
});

/** A hoop of the starting values on a site of the starting values with some parts changed. */
export function sourceOf(change: Partial<Site> = {}, frame?: Frame): SiteSource {
  const job = newJob('hoop');
  const context = { outsideDiameter: job.tube.outsideDiameter, cornerRadius: 76.2, root: '/frame' } as const;
  const { geometry } = drawFrame(frame ?? job.frame, context);
  if (geometry === null) throw new Error('the frame of a test is not drawn');
  return {
    site: { ...job.site, placing: AXES, ...change },
    wanted: geometry,
    made: geometry.members.map(({ name, closed, centreline }) => ({ name, closed, centreline })),
    tube: job.tube,
    grade: resolveGrade(job.tube.grade),
    gap: 0,
    shrinkage: 0,
    paperThickness: 0,
    templateStations: 16,
  };
}

export type Around = {
  readonly up?: Vector3;
  readonly points?: Readonly<Record<string, Vector3>>;
  readonly things?: readonly LaidThing[];
  readonly legs?: readonly LaidLeg[];
};

/** The frame as it stands with what is around it given. */
export const stand = (source: SiteSource, { up = UPRIGHT, points = {} }: Around = {}) =>
  standFrame(source, { levels: [], up, points: new Map(Object.entries(points)), off: EXACT });

/** A study of one site, laid with everything around the frame given; nothing in doubt. */
export function studyOf(source: SiteSource, around: Around = {}): SiteStudy {
  const { up = UPRIGHT, points = {}, things = [], legs = [] } = around;
  const { frame } = stand(source, around);
  const laid = { levels: [], up, points: new Map(Object.entries(points)), frame, things, legs };
  return { source, laid, varied: [] };
}

export const AXES: Extract<Placing, { by: 'axes' }> = {
  by: 'axes',
  origin: at(0, 0, 0),
  x: at(1, 0, 0),
  y: at(0, 1, 0),
};
export const HINGE = { from: place('start'), to: place('finish') };
export const standing = (change: Partial<Standing>): { standing: Standing } => ({
  standing: { hinge: null, slopes: [], height: null, swing: null, ...change },
});
export const slope = (along: Vector3, angle: number, to: Slope['to'] = 'structure'): Slope => ({ along, angle, to });
const plain = (x: number, y: number, z: number) => ({ ...at(x, y, z), radius: null });
const tube = (name: string, from: Vector3, to: Vector3) => ({
  name,
  path: {
    by: 'points' as const,
    points: [plain(from.x, from.y, from.z), plain(to.x, to.y, to.z)],
    closed: false,
  },
  start: { end: 'free' as const },
  finish: { end: 'free' as const },
});
/** A tube along y to hinge on, and one that ends where a leg's head is. */
export const EDGE: Frame = {
  shape: 'members',
  members: [tube('edge', at(0, -500, 0), at(0, 500, 0)), tube('arm', at(0, 380, -19.05), at(-480, 380, -19.05))],
};
export const EDGE_HINGE = { from: place('start', { member: 'edge' }), to: place('finish', { member: 'edge' }) };
export const codes = (source: ReturnType<typeof sourceOf>, around: Around = {}) =>
  stand(source, around).findings.map(({ code, grade, field }) => [code, grade, field]);
