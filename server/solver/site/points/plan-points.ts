import type { SitePoint } from '../../../job/site-point.ts';
import type { Figure } from '../../../plan/figure.ts';
import type { Finding } from '../../../plan/finding.ts';
import type { SitePointPlan } from '../../../plan/site.ts';
import { finding } from '../../finding.ts';
import type { Vector3 } from '../../geometry/vector.ts';
import { MOST_DEVIATIONS } from '../deviations.ts';
import { siteBand, type SiteStudy } from '../site-study.ts';
import { distanceResiduals, type DistanceResidual } from './distance-residuals.ts';
import { isFirst } from './named.ts';
import { coordinateFigure } from './point-figures.ts';

/**
 * A place is worth a word where its ± is over this [mm], what a clamp or a plate still takes up, and over three of its own
 * accuracies, as for readings that disagree: both our own choice.
 */
const DOUBTFUL = 10;

/** The points of the site that can be told, with their bands; which distances disagree, which places are badly fixed. */
export function planPoints(study: SiteStudy): { points: SitePointPlan[]; findings: Finding[] } {
  const { points } = study.source.site;
  const all = points.flatMap((point, index) => {
    const place = isFirst(points, index) ? study.laid.points.get(point.name) : undefined;
    return place === undefined ? [] : [planned(point, `/site/points/${String(index)}`, place, study)];
  });
  return { points: all.map(({ plan }) => plan), findings: all.flatMap(({ findings }) => findings) };
}

function planned({ name, at }: SitePoint, field: string, place: Vector3, study: SiteStudy) {
  const coordinate = (axis: keyof Vector3): Figure =>
    coordinateFigure(
      at,
      axis,
      place[axis],
      study,
      siteBand(study, ({ points }) => points.get(name)?.[axis]),
    );
  const [x, y, z] = [coordinate('x'), coordinate('y'), coordinate('z')];
  const told = at.by === 'distances' ? residualsOf(at, `${field}/at`, place, study) : [];
  const residuals = told.map(({ offOthers: _, ...residual }) => residual);
  const plan: SitePointPlan = { name, field, x, y, z, residuals };
  const disagreeing = told
    .filter(({ disagrees }) => disagrees)
    .map(({ field: one, offOthers }) => finding('distances-disagree', 'caution', one, { value: offOthers }));
  const band = Math.max(...[x, y, z].map((figure) => figure.band?.plusMinus ?? 0));
  const doubtful = band > Math.max(DOUBTFUL, MOST_DEVIATIONS * ownAccuracy(at, study.source.site.tapeAccuracy));
  const findings = doubtful
    ? [...disagreeing, finding('point-doubtful', 'caution', `${field}/at`, { value: band })]
    : disagreeing;
  return { plan, findings };
}

function residualsOf(
  at: Extract<SitePoint['at'], { by: 'distances' }>,
  field: string,
  place: Vector3,
  { source, laid }: SiteStudy,
): DistanceResidual[] {
  const index = source.site.things.findIndex(({ name }) => name === at.on);
  const plane = laid.things[index]?.body;
  const normal = plane?.shape === 'plane' ? plane.normal : null;
  return distanceResiduals(at, field, place, { points: laid.points, normal }, source.site.tapeAccuracy);
}

const ownAccuracy = (at: SitePoint['at'], tapeAccuracy: number): number =>
  at.by === 'distances'
    ? Math.max(...at.distances.map(({ accuracy }) => accuracy ?? tapeAccuracy))
    : (at.accuracy ?? tapeAccuracy);
