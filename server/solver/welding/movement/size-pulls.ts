import type { Check, FrameGeometry, Spot } from '../../frame/frame-geometry.ts';
import { placeAt } from '../../geometry/centreline.ts';
import { pieceStations } from '../../geometry/slice.ts';
import { dot, scale, subtract, unit, type Vector3 } from '../../geometry/vector.ts';

/**
 * A point that is held by a place of the frame, and how much a size grows for each mm that it moves along x, y and z.
 */
export type Pull = { readonly spot: Spot; readonly along: Vector3 };

/** A size with the pulls that make it grow; rigid motions of the frame leave it as it is. */
export type PulledSize = { readonly check: Check; readonly pulls: readonly Pull[] };

/**
 * How the sizes of a frame follow small moves of its places: two spots of a check from each other, but reach and the
 * rise of a crown as they are measured. A size without length has no direction and is left out.
 */
export function sizePulls(frame: FrameGeometry): PulledSize[] {
  return frame.checks.flatMap((check): PulledSize[] => {
    const along = unit(subtract(check.to.point, check.from.point));
    if (along === undefined) return [];
    const own = check.key === 'reach' ? reach : check.key === 'crown-rise' ? crownRise : undefined;
    const pulls = own?.(check, along, frame) ?? [
      { spot: check.to, along },
      { spot: check.from, along: scale(along, -1) },
    ];
    return [{ check, pulls }];
  });
}

/** From a foot to the far edge, square to a line across both legs where they are level. */
function reach({ from, to }: Check, along: Vector3, frame: FrameGeometry): Pull[] | undefined {
  const level = frame.checks.find(({ key }) => key === 'width-at-feet');
  const middle = spotOn(frame, to);
  if (level === undefined || middle === undefined) return undefined;
  const across = subtract(level.to.point, level.from.point);
  const share = dot(subtract(middle.point, from.point), across) / dot(across, across);
  if (!Number.isFinite(share)) return undefined;
  return [
    { spot: middle, along },
    { spot: from, along: scale(along, -1) },
    { spot: level.to, along: scale(along, -share) },
    { spot: level.from, along: scale(along, share) },
  ];
}

/** From the middle of the chord between the two ends of a crown to its own middle. */
function crownRise({ to }: Check, along: Vector3, frame: FrameGeometry): Pull[] | undefined {
  const line = frame.members.find(({ name }) => name === to.member)?.centreline;
  const stations = line === undefined ? [] : pieceStations(line);
  const ends = stations.findIndex((end) => end > to.station);
  const chord = [stations[ends - 1], stations[ends]].flatMap((station) => {
    const spot = station === undefined ? undefined : spotOn(frame, { member: to.member, station });
    return spot === undefined ? [] : [{ spot, along: scale(along, -1 / 2) }];
  });
  return chord.length === 2 ? [{ spot: to, along }, ...chord] : undefined;
}

function spotOn(frame: FrameGeometry, { member, station }: Pick<Spot, 'member' | 'station'>): Spot | undefined {
  const line = frame.members.find(({ name }) => name === member)?.centreline;
  const point = line === undefined ? undefined : placeAt(line, station)?.point;
  return point === undefined ? undefined : { member, station, point };
}
