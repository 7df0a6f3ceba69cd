import type { HeadPlace } from '../../../job/leg.ts';
import type { TubePlace } from '../../../job/tube-place.ts';
import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import { placeAt } from '../../geometry/centreline.ts';
import { closestStation } from '../../geometry/closest-station.ts';
import { keptPlace, keptStation } from '../../geometry/kept-place.ts';
import { turned } from '../../geometry/rigid-motion.ts';
import { add, cross, scale, squareTo, type Vector3 } from '../../geometry/vector.ts';
import { EXACT, type LaidFrame, type Off, type SiteSource } from '../laid-site.ts';
import { sitePlace } from '../points/site-places.ts';
import type { FramePlace } from '../standing/frame-place.ts';
import { placeMissing } from '../standing/place-missing.ts';

/** Where a head is: on the axis of its tube [mm]. */
type PlacedHead = { readonly member: string; readonly station: number; readonly point: Vector3 };

/** What heads are placed on. */
export type HeadContext = {
  readonly source: SiteSource;
  readonly frame: LaidFrame;
  readonly points: ReadonlyMap<string, Vector3>;
  readonly placeOnFrame: (at: TubePlace) => FramePlace | undefined;
  readonly off: Off;
};

/**
 * The head of a leg: a place of the frame, or the place of a tube that is nearest to a point of the site.
 *
 * @param asked the leg's name, and the pointer and value of its head's place
 * @returns site-place-missing, site-name-missing or leg-head-off-tube where it is none
 */
export function headPlace(
  asked: { readonly name: string; readonly at: HeadPlace; readonly field: string },
  context: HeadContext,
): PlacedHead | { readonly finding: Finding } {
  const { at, field } = asked;
  return 'named' in at ? atPoint({ name: asked.name, field, point: at }, context) : onTube(at, field, context);
}

/**
 * A place along a tube, off by what a tape may be off along it, and by as much square to it: in the frame's plane, or, where
 * it has none, any one way.
 */
function onTube(
  at: TubePlace,
  field: string,
  { source, frame, placeOnFrame, off }: HeadContext,
): PlacedHead | { readonly finding: Finding } {
  const place = placeOnFrame(at);
  const line = frame.lines.find(({ name }) => name === place?.member)?.centreline;
  if (place === undefined || line === undefined) return { finding: placeMissing(at, field) };
  const station = place.station + off(field);
  const { point, tangent } = placeAt(line, station) ?? place;
  const { planeNormal } = source.wanted;
  const across = planeNormal === null ? squareTo(tangent) : cross(turned(frame.motion, planeNormal), tangent);
  return { member: place.member, station, point: add(point, scale(across, off(`${field}/across`))) };
}

/** A point of the site lies on a tube, give or take a tape: no further from its axis than its surface. */
function atPoint(
  { name, field, point: at }: { readonly name: string; readonly field: string; readonly point: { named: string } },
  { source, frame, points, off }: HeadContext,
): PlacedHead | { readonly finding: Finding } {
  const asked = sitePlace(at, field, points, off);
  if ('finding' in asked) return asked;
  let best: (PlacedHead & { readonly distance: number }) | undefined;
  for (const { name: member, centreline } of frame.lines) {
    const closest = closestStation(centreline, asked.point);
    if (closest !== undefined && (best === undefined || closest.distance < best.distance))
      best = { member, ...closest };
  }
  if (best === undefined) return { finding: finding('site-place-missing', 'stop', field) };
  const { member, station, point, distance } = best;
  const high = source.tube.outsideDiameter / 2;
  // asked of what was typed alone: a doubtful value may carry it over the limit
  if (off !== EXACT || distance <= high + source.site.tapeAccuracy) return { member, station, point };
  const value = wantedPlace(best, source, frame);
  const data = { name, member, value: distance, high };
  return { finding: finding('leg-head-off-tube', 'stop', field, data, value && { field, value }) };
}

/** A place of the made line as it is typed: a distance along the wanted member. */
function wantedPlace({ member, station }: PlacedHead, { wanted }: SiteSource, { lines }: LaidFrame): TubePlace | null {
  const line = wanted.members.find(({ name }) => name === member)?.centreline;
  const made = lines.find(({ name }) => name === member)?.centreline;
  if (line === undefined || made === undefined) return null;
  const kept = made.pieces.length === line.pieces.length ? keptPlace(made, station) : undefined;
  const along = kept === undefined ? station : keptStation(kept, line);
  return { member, spot: 'along', number: 1, distance: Math.min(line.length, Math.max(0, along)) };
}
