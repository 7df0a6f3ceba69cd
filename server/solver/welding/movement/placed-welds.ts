import type { Joint } from '../../../plan/joint.ts';
import type { FrameGeometry, MemberGeometry } from '../../frame/frame-geometry.ts';
import { closestStation } from '../../geometry/closest-station.ts';
import { placeAt } from '../../geometry/centreline.ts';
import { cross, type Vector3 } from '../../geometry/vector.ts';
import { outsideOf, sidesOf } from '../../joints/outside.ts';
import { offMiddle, type WeldSite } from '../weld-sites.ts';

/** A weld on the wanted frame. */
export type PlacedWeld = {
  readonly name: string;
  readonly kind: WeldSite['kind'];
  /** What it pulls in [mm]. */
  readonly shrinkage: number;
  readonly member: string;
  readonly station: number;
  readonly point: Vector3;
  /** Along the member's run, and the outside and the top generator square to it. */
  readonly tangent: Vector3;
  readonly outside: Vector3;
  readonly top: Vector3;
};

/** Welds of the frame that is welded, found on the wanted one; those whose member it does not have are left out. */
export function placedWelds(
  welds: readonly { readonly site: WeldSite; readonly shrinkage: number }[],
  wanted: FrameGeometry,
  joints: readonly Joint[],
): PlacedWeld[] {
  const sides = sidesOf(wanted);
  return welds.flatMap(({ site, shrinkage }): PlacedWeld[] => {
    const member = wanted.members.find(({ name }) => name === site.member);
    if (member === undefined) return [];
    const station = stationOn(member, site, joints);
    const place = placeAt(member.centreline, station);
    const outside = outsideOf(member, station, sides);
    if (place === undefined || outside === undefined) return [];
    const { point, tangent } = place;
    const { name, kind } = site;
    return [
      { name, kind, shrinkage, member: member.name, station, point, tangent, outside, top: cross(tangent, outside) },
    ];
  });
}

/**
 * Ends stay ends; a cut joint is where it stands on the corrected frame, which lies on the wanted one, and the two
 * welds of a let-in piece half its length from there.
 */
function stationOn(
  member: MemberGeometry,
  { end, joint: number, kind, name, station }: WeldSite,
  joints: readonly Joint[],
): number {
  const { centreline, closed } = member;
  if (end !== null) return end === 'start' ? 0 : centreline.length;
  const joint = joints.find((one) => one.number === number);
  const near = number === 0 || joint === undefined ? undefined : closestStation(centreline, joint.point)?.station;
  const at = near === undefined || joint === undefined ? station : near + offMiddle({ kind, name }, joint.letIn);
  if (closed && centreline.length > 0) return ((at % centreline.length) + centreline.length) % centreline.length;
  return Math.min(centreline.length, Math.max(0, at));
}
