import type { Leg } from '../../../job/leg.ts';
import type { Figure } from '../../../plan/figure.ts';
import type { LegPlan } from '../../../plan/leg.ts';
import { figure, input } from '../../figure.ts';
import { RADIANS } from '../../geometry/angle.ts';
import { cross, dot, subtract } from '../../geometry/vector.ts';
import type { LaidSite } from '../laid-site.ts';
import { siteBand, type SiteStudy } from '../site-study.ts';
import type { LegStudy } from './leg-study.ts';

/** A leg that moves its frame's hinge side less than this does not set its slope [mm a degree]: our own choice. */
const LEAST_PER_DEGREE = 0.01;

/**
 * How much longer a leg gets while the frame turns about its hinge, right-handed [mm a degree]: (h × (H − A)) · d per
 * radian, H the head, A a point of the hinge, h and d unit directions of hinge and leg. Derived: the change of |H − F|
 * where H moves with the frame.
 *
 * @returns undefined without a hinge, or where the leg does not set the slope: its line meets the hinge or runs along it.
 *   Legs that carry a frame without a hinge set its slope together, so that no one of them has a length for a degree
 */
export function signedPerDegree({ frame, legs }: LaidSite, index: number): number | undefined {
  const leg = legs[index];
  const hinge = frame?.hinge ?? null;
  if (hinge === null || leg === undefined || leg === null) return undefined;
  const way = subtract(leg.head, leg.foot);
  const moves = cross(hinge.axis, subtract(leg.head, hinge.at));
  const perDegree = (dot(moves, way) / Math.hypot(way.x, way.y, way.z)) * RADIANS;
  return Math.abs(perDegree) < LEAST_PER_DEGREE ? undefined : perDegree;
}

/** Leg for one degree of slope; null where the leg does not set it. */
export function perDegree(study: SiteStudy, { index }: LegStudy): Figure | null {
  const size = (site: LaidSite): number | undefined => {
    const signed = signedPerDegree(site, index);
    return signed === undefined ? undefined : Math.abs(signed);
  };
  const value = size(study.laid);
  if (value === undefined) return null;
  return figure(
    value,
    'mm/deg',
    'p = |(h × (H − A)) · d| π / 180',
    [input('|(h × (H − A)) · d|', 'leg-per-radian', value / RADIANS, 'mm')],
    ['leg-slope'],
    siteBand(study, size),
  );
}

/** What an adjustment can do: to the leg from foot point to head, and to the slope. */
export function adjustPlan({ adjust }: Leg, centre: Figure, slope: Figure | null): LegPlan['adjust'] {
  if (adjust === null) return null;
  const { by, travel } = adjust;
  const inputs = [input('L', 'centre-length', centre.value, 'mm'), input('w', 'travel-either-way', travel, 'mm')];
  const typed = ['leg-length', 'typed'] as const;
  return {
    by,
    least: figure(centre.value - travel, 'mm', 'L − w', inputs, typed, centre.band),
    most: figure(centre.value + travel, 'mm', 'L + w', inputs, typed, centre.band),
    slope:
      slope &&
      figure(
        travel / slope.value,
        'deg',
        'w / p',
        [input('w', 'travel-either-way', travel, 'mm'), input('p', 'leg-for-a-degree', slope.value, 'mm/deg')],
        ['leg-slope', 'typed'],
      ),
  };
}
