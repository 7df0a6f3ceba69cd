import type { Leg } from '../../../job/leg.ts';
import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import { dot, length, scale, subtract } from '../../geometry/vector.ts';
import type { LaidLeg, LaidSite, Off, SiteSource } from '../laid-site.ts';
import { directionOf, type DirectionContext } from '../level/directions.ts';
import { laidContext } from '../level/laid-context.ts';
import { namedTwice } from '../points/named.ts';
import { sitePlace } from '../points/site-places.ts';
import { framePlace } from '../standing/frame-place.ts';
import { headPlace, type HeadContext } from './head-place.ts';
import { legWay } from './leg-way.ts';

/** What legs are laid on. */
type Known = Pick<LaidSite, 'levels' | 'points' | 'frame' | 'things'> & { readonly off: Off };

/**
 * Every leg in the structure's axes: its foot, the way out of its surface on the leg's side, its head on the axis of a tube.
 * Two of one name are both laid; the second is told of, as sheets and labels tell legs by their names. Without a frame there are no heads; why there is no frame is told where it stands.
 */
export function layLegs(
  source: SiteSource,
  known: Known,
): { legs: readonly (LaidLeg | null)[]; findings: readonly Finding[] } {
  const { frame, points, off } = known;
  const { legs } = source.site;
  const twice = namedTwice(legs, '/site/legs');
  if (frame === null) return { legs: legs.map(() => null), findings: twice };
  const heads = { source, frame, points, placeOnFrame: framePlace(frame, source.wanted), off };
  const directions = laidContext(known, source, off);
  const laid = legs.map((leg, index) => layLeg(leg, `/site/legs/${String(index)}`, heads, directions));
  return {
    legs: laid.map((one) => ('leg' in one ? one.leg : null)),
    findings: [...twice, ...laid.flatMap((one) => ('leg' in one ? [] : one.findings))],
  };
}

function layLeg(
  { name, foot, head, tube }: Leg,
  field: string,
  heads: HeadContext,
  directions: DirectionContext,
): { readonly leg: LaidLeg } | { readonly findings: Finding[] } {
  const at = sitePlace(foot.at, `${field}/foot/at`, heads.points, heads.off);
  const faces = directionOf(foot.surface, `${field}/foot/surface`, directions);
  const top = headPlace({ name, at: head.at, field: `${field}/head/at` }, heads);
  if ('finding' in at || 'finding' in faces || 'finding' in top)
    return { findings: [at, faces, top].flatMap((one) => ('finding' in one ? [one.finding] : [])) };
  const way = legWay({ foot: at.point, head: top.point });
  if (way === undefined) {
    const value = length(subtract(top.point, at.point));
    return { findings: [finding('leg-no-length', 'stop', field, { name, value })] };
  }
  const { outsideDiameter, wall } = tube ?? heads.source.tube;
  return {
    leg: {
      field,
      name,
      foot: at.point,
      surface: dot(faces.direction, way.along) < 0 ? scale(faces.direction, -1) : faces.direction,
      head: top.point,
      member: top.member,
      station: top.station,
      outsideDiameter,
      wall,
    },
  };
}
