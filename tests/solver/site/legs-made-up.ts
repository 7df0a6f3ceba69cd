// Legs under made-up frames: a site with everything typed by hand, laid as typed and with each doubtful value off.
import { newJob } from '../../../server/job/default-job.ts';
import type { Leg } from '../../../server/job/leg.ts';
import type { Site } from '../../../server/job/site.ts';
import type { TubePlace } from '../../../server/job/tube-place.ts';
import type { FrameGeometry, MemberGeometry } from '../../../server/solver/frame/frame-geometry.ts';
import { centrelineFromChain, type Link } from '../../../server/solver/geometry/centreline.ts';
import { squareTo, unit, type Vector3 } from '../../../server/solver/geometry/vector.ts';
import { EXACT, type SiteSource } from '../../../server/solver/site/laid-site.ts';
import { laySite } from '../../../server/solver/site/lay-site.ts';
import { planLegs } from '../../../server/solver/site/legs/plan-legs.ts';
import { siteDoubts } from '../../../server/solver/site/site-doubts.ts';
import type { SiteStudy } from '../../../server/solver/site/site-study.ts';
import { variedSites } from '../../../server/solver/site/varied-sites.ts';
import { resolveGrade } from '../../../server/solver/tube/grades.ts';

export const RADIANS = Math.PI / 180;
const FREE = { kind: 'free' } as const;

/** A tube of the frame from a point on, towards somewhere. */
export function tubeOf(name: string, from: Vector3, towards: Vector3, links: readonly Link[]): MemberGeometry {
  const direction = unit(towards)!;
  return {
    name,
    centreline: centrelineFromChain({ point: from, direction, normal: squareTo(direction) }, links),
    closed: false,
    closing: null,
    start: FREE,
    finish: FREE,
  };
}

export const frameOf = (members: readonly MemberGeometry[], planeNormal: Vector3 | null = null): FrameGeometry => ({
  members,
  checks: [],
  feet: [],
  corners: [],
  planeNormal,
});

export const along = (member: string, distance: number): TubePlace => ({
  member,
  spot: 'along',
  number: 1,
  distance,
});

/** A leg on its own pad that lies level, mitred, its saddle on the rail. */
export const legOf = (changes: Partial<Leg> = {}): Leg => ({
  name: 'leg',
  foot: {
    at: { x: 0, y: 420, z: -610 },
    surface: { by: 'axes', vector: { x: 0, y: 0, z: 1 } },
    end: { end: 'mitre', plate: 0 },
    held: 'pinned',
  },
  head: { at: along('rail', 780), end: { end: 'saddle' }, held: 'pinned' },
  tube: null,
  adjust: null,
  ...changes,
});

/** A hinge on the y axis and a rail that runs beside it, 480 astern and 19.05 down; legs are to stand under the rail. */
export const hinged = frameOf(
  [
    tubeOf('hinge', { x: 0, y: -400, z: 0 }, { x: 0, y: 1, z: 0 }, [{ kind: 'straight', length: 800 }]),
    tubeOf('rail', { x: -480, y: -400, z: -19.05 }, { x: 0, y: 1, z: 0 }, [{ kind: 'straight', length: 900 }]),
  ],
  { x: 0, y: 0, z: 1 },
);
export const HINGE = {
  from: { ...along('hinge', 0), spot: 'start' },
  to: { ...along('hinge', 0), spot: 'finish' },
} as const;

const PLACED: Site['placing'] = {
  by: 'axes',
  origin: { x: 0, y: 0, z: 0 },
  x: { x: 1, y: 0, z: 0 },
  y: { x: 0, y: 1, z: 0 },
};

export function sourceOf(wanted: FrameGeometry, site: Partial<Site>, changes: Partial<SiteSource> = {}): SiteSource {
  const job = newJob('hoop');
  return {
    // the frame's axes are the structure's
    site: { ...job.site, placing: PLACED, ...site },
    wanted,
    made: wanted.members.map(({ name, closed, centreline }) => ({ name, closed, centreline })),
    tube: { ...job.tube, outsideDiameter: 38.1, wall: 1.65 },
    grade: resolveGrade(job.tube.grade),
    gap: 0,
    shrinkage: 0,
    paperThickness: 0.1,
    templateStations: 16,
    ...changes,
  };
}

export function studyOf(source: SiteSource): SiteStudy & { readonly findings: readonly { code: string }[] } {
  const exact = laySite(source, EXACT);
  const { varied } = variedSites((off) => laySite(source, off, exact), siteDoubts(source), exact);
  return { source, laid: exact.laid, varied, findings: exact.findings };
}

/** The legs of a site, and the codes of everything that is said of it. */
export function planned(source: SiteSource) {
  const study = studyOf(source);
  const { legs, findings } = planLegs(study);
  const all = [...laySite(source, EXACT).findings, ...findings];
  return { study, legs, findings: all, codes: all.map(({ code }) => code) };
}
