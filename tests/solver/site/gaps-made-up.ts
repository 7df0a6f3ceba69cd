import { newJob } from '../../../server/job/default-job.ts';
import type { Site } from '../../../server/job/site.ts';
import type { Frame } from '../../../server/job/frame.ts';
import { frameGeometry } from '../../../server/solver/frame/expand-frame.ts';
import { movedLine } from '../../../server/solver/geometry/moved-centreline.ts';
import { UNMOVED } from '../../../server/solver/geometry/rigid-motion.ts';
import type { RoundBar } from '../../../server/solver/geometry/solid.ts';
import type { Vector3 } from '../../../server/solver/geometry/vector.ts';
import type {
  LaidFrame,
  LaidLeg,
  LaidSite,
  LaidThing,
  SiteDoubt,
  SiteSource,
} from '../../../server/solver/site/laid-site.ts';
import { planGaps } from '../../../server/solver/site/gaps/plan-gaps.ts';
import type { SiteStudy } from '../../../server/solver/site/site-study.ts';
import { resolveGrade } from '../../../server/solver/tube/grades.ts';

/** Diameter of the frame's tube [mm]. */
export const D = 40;

export const at = (x: number, y: number, z: number): Vector3 => ({ x, y, z });

type Made = {
  readonly things?: readonly LaidThing[];
  readonly legs?: readonly LaidLeg[];
  readonly frame?: Partial<LaidFrame>;
  readonly site?: Partial<Site>;
  readonly shape?: Frame;
  /** Other places of the same things, one for each doubtful value. */
  readonly varied?: readonly { readonly doubt: SiteDoubt; readonly things: readonly LaidThing[] }[];
};

/** A site that is laid already: a frame, things and legs in the structure's axes. */
export function madeUp({ things = [], legs = [], frame = {}, site = {}, shape, varied = [] }: Made = {}): SiteStudy {
  const job = newJob('straight');
  const { geometry } = frameGeometry(shape ?? job.frame, {
    outsideDiameter: D,
    cornerRadius: 80,
    root: '/frame',
    closingStraight: () => null,
  });
  if (geometry === null) throw new Error('the frame of a test is not drawn');
  const made = geometry.members.map(({ name, closed, centreline }) => ({ name, closed, centreline }));
  const motion = frame.motion ?? UNMOVED;
  const laidFrame: LaidFrame = {
    motion,
    placed: motion,
    hinge: null,
    turn: 0,
    misfits: [],
    lines: made.map((line) => ({ ...line, centreline: movedLine(motion, line.centreline) })),
    ...frame,
  };
  const source: SiteSource = {
    site: { ...job.site, ...site },
    wanted: geometry,
    made,
    tube: { ...job.tube, outsideDiameter: D },
    grade: resolveGrade(job.tube.grade),
    gap: 0,
    shrinkage: 0,
    paperThickness: 0.1,
    templateStations: 16,
  };
  const laid: LaidSite = { levels: [], up: at(0, 0, 1), points: new Map(), frame: laidFrame, things, legs };
  return {
    source,
    laid,
    varied: varied.map(({ doubt, things: other }) => ({
      doubt,
      off: doubt.plusMinus,
      laid: { ...laid, things: other },
    })),
  };
}

/** A thing with 10 mm of room. */
export const thing = (body: LaidThing['body'], more: Partial<LaidThing> = {}): LaidThing => ({
  field: '/site/things/0',
  name: 'post',
  clearance: 10,
  body,
  swing: null,
  ...more,
});

/** An upright cylinder of 60 mm. */
export const bar = (place: Vector3, more: Partial<RoundBar> = {}): RoundBar => ({
  shape: 'cylinder',
  at: place,
  axis: at(0, 0, 1),
  radius: 30,
  ends: null,
  ...more,
});

/** What is told of each thing; the one tube of these frames runs from the origin 1000 mm along x. */
export const rowsOf = (things: readonly LaidThing[], more: Parameters<typeof madeUp>[0] = {}) =>
  planGaps(madeUp({ things, ...more })).gaps.map(({ rows }) => rows);
export const gapOf = (one: LaidThing, more: Parameters<typeof madeUp>[0] = {}) => rowsOf([one], more)[0]![0]!;
export const DEGREE = Math.PI / 180;

export const leg = (
  foot: { x: number; y: number; z: number },
  head: typeof foot,
  more: Partial<LaidLeg> = {},
): LaidLeg => ({
  field: '/site/legs/0',
  name: 'leg',
  foot,
  surface: at(0, 0, 1),
  head,
  member: 'tube',
  station: 0,
  outsideDiameter: 30,
  wall: 1.5,
  ...more,
});
