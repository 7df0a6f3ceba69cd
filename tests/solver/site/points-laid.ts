import { newJob } from '../../../server/job/default-job.ts';
import type { PointFound, SiteDistance, SitePoint } from '../../../server/job/site-point.ts';
import type { SiteThing } from '../../../server/job/site-thing.ts';
import type { Site } from '../../../server/job/site.ts';
import type { Finding } from '../../../server/plan/finding.ts';
import { variedSites } from '../../../server/solver/site/varied-sites.ts';
import type { Vector3 } from '../../../server/solver/geometry/vector.ts';
import { EXACT, type LaidSite, type Off, type SolvedLevel } from '../../../server/solver/site/laid-site.ts';
import { layThings } from '../../../server/solver/site/points/lay-things.ts';
import { planPoints } from '../../../server/solver/site/points/plan-points.ts';
import { pointDoubts } from '../../../server/solver/site/points/point-doubts.ts';
import { sitePoints } from '../../../server/solver/site/points/site-points.ts';
import { thingDoubts } from '../../../server/solver/site/points/thing-doubts.ts';
import type { SiteStudy } from '../../../server/solver/site/site-study.ts';

export const UP: Vector3 = { x: 0, y: 0, z: 1 };

export const levelled = (up: Vector3 = UP): SolvedLevel => ({ up, residuals: [] });

export const siteWith = (points: SitePoint[], things: SiteThing[] = [], other: Partial<Site> = {}): Site => ({
  ...newJob('hoop').site,
  points,
  things,
  ...other,
});

export const typed = (name: string, x: number, y: number, z: number, accuracy: number | null = null): SitePoint => ({
  name,
  at: { by: 'typed', point: { x, y, z }, accuracy },
});

export const apart = (a: Vector3, b: Vector3): number => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);

type ByDistances = Extract<PointFound, { by: 'distances' }>;

/** A point by its distances from others: [name, distance, accuracy of its own]. */
export const byDistances = (
  name: string,
  distances: readonly (readonly [string, number, number?])[],
  towards: ByDistances['towards'] = 'up',
  on: string | null = null,
): SitePoint => ({
  name,
  at: {
    by: 'distances',
    distances: distances.map(([from, distance, accuracy]): SiteDistance => ({
      from,
      distance,
      accuracy: accuracy ?? null,
    })),
    on,
    towards,
  },
});

/** Exact distances of a place from points that are typed. */
export const distancesTo = (place: Vector3, known: readonly SitePoint[]): [string, number][] =>
  known.map(({ name, at }) => {
    if (at.by !== 'typed') throw new Error('a known point is typed');
    return [name, apart(place, at.point)];
  });

/** A wall or a deck through a place. */
export const plane = (name: string, at: Vector3, normal: Vector3): SiteThing => ({
  name,
  shape: { shape: 'plane', plane: { by: 'normal', at, normal: { by: 'axes', vector: normal } } },
  clearance: null,
  swing: null,
});

export const laidPoints = (site: Site, off: Off = EXACT, levels: readonly (SolvedLevel | null)[] = [levelled()]) =>
  sitePoints(site, { levels, off });

/** The plan of the points of a site, whose levels are known exactly. */
export function plannedPoints(site: Site, levels: readonly (SolvedLevel | null)[] = [levelled()]) {
  const lay = (off: Off): { laid: LaidSite; findings: Finding[] } => {
    const { points, findings } = laidPoints(site, off, levels);
    const things = layThings(site, { levels, points, frame: null, off });
    const laid = { levels, up: UP, points, frame: null, things: things.things, legs: [] };
    return { laid, findings: [...findings, ...things.findings] };
  };
  const exact = lay(EXACT);
  const { varied } = variedSites(lay, [...pointDoubts(site), ...thingDoubts(site)], exact);
  return planPoints({ source: { site } as SiteStudy['source'], laid: exact.laid, varied });
}
