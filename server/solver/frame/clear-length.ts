import { placeAt, type Centreline } from '../geometry/centreline.ts';
import { closestStation } from '../geometry/closest-station.ts';
import { stretches, type Stretch } from '../geometry/least-distance.ts';
import { pieceStations, sliceCentreline } from '../geometry/slice.ts';
import { LEAST_AXIS_ANGLE } from '../joints/saddle-cut.ts';
import type { EndGeometry, MemberGeometry } from './frame-geometry.ts';

/** How far beyond the point where two straight axes are a diameter apart a curved partner is followed, in steps. */
const MOST_STEPS = 12;

/**
 * The stretches of a member whose metal must keep clear of others, each with its first station [mm].
 *
 * A free end is left out by half a diameter, so that the round tip of what is left just reaches the cut. A saddle end
 * is left out to its partner's surface, and against the partner itself to where the axes are a diameter apart.
 */
export function clearStretches(
  member: MemberGeometry,
  outsideDiameter: number,
  partner: MemberGeometry | null = null,
): { station: number; stretch: Stretch }[] {
  const { centreline, closed } = member;
  const cut = (end: 'start' | 'finish') =>
    closed ? 0 : leftOut(member[end], { centreline, end, outsideDiameter, partner });
  const from = cut('start');
  const to = centreline.length - cut('finish');
  if (to - from <= 0) return [];
  const part = closed ? centreline : sliceCentreline(centreline, from, to);
  const begins = pieceStations(part);
  return part.pieces.flatMap((piece, index) => {
    let station = from + (begins[index] ?? 0);
    return stretches(piece).map((stretch) => {
      const at = { station, stretch };
      station += stretch.piece.length;
      return at;
    });
  });
}

function leftOut(
  seat: EndGeometry,
  at: {
    centreline: Centreline;
    end: 'start' | 'finish';
    outsideDiameter: number;
    partner: MemberGeometry | null;
  },
): number {
  const { outsideDiameter } = at;
  if (seat.kind !== 'saddle') return outsideDiameter / 2;
  const apart = outsideDiameter / Math.sin(Math.max(seat.axisAngle, LEAST_AXIS_ANGLE));
  if (at.partner?.name !== seat.onto) return apart / 2;
  // a partner that curves towards the member leaves it later
  let along = apart;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const station = at.end === 'start' ? along : at.centreline.length - along;
    const point = placeAt(at.centreline, station)?.point;
    const near = point === undefined ? undefined : closestStation(at.partner.centreline, point);
    if (near === undefined || near.distance >= outsideDiameter * (1 - 1e-9)) break;
    along += apart / 4;
  }
  return along;
}
