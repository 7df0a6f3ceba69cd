import type { TubePlace } from '../../../job/tube-place.ts';
import type { FrameGeometry } from '../../frame/frame-geometry.ts';
import { spotAt } from '../../frame/tube-place-spot.ts';
import { placeAt, type Centreline } from '../../geometry/centreline.ts';
import { closestStation } from '../../geometry/closest-station.ts';
import { keptPlace, keptStation } from '../../geometry/kept-place.ts';
import { moved, UNMOVED } from '../../geometry/rigid-motion.ts';
import { length, subtract, type Vector3 } from '../../geometry/vector.ts';
import type { LaidFrame, MadeLine } from '../laid-site.ts';

/** A place on the frame's centreline: the station on the made line [mm], its point and the unit way the tube goes. */
export type FramePlace = {
  readonly member: string;
  readonly station: number;
  readonly point: Vector3;
  readonly tangent: Vector3;
};

/** The made line runs through the wanted place within this: rounding of two lines laid alike [mm]. */
const SAME = 1e-6;

/**
 * A place that is named on the wanted frame, on the frame as it is made: the place on the same member's made line that
 * is nearest to the wanted one. Where the two lines are one there, the station stays, so that neither the two ends of a
 * ring nor a tube that crosses itself are mixed up. A corner is the middle of its bend: the apex is not on the tube.
 *
 * @param lines the made lines, in the axes that the answer is wanted in
 * @param motion from the frame's axes to those
 * @returns undefined where the frame has no such member, bend or piece
 */
export function madePlace(
  at: TubePlace,
  wanted: FrameGeometry,
  lines: readonly MadeLine[],
  motion = UNMOVED,
): FramePlace | undefined {
  const spot = spotAt(at, wanted);
  const asked = wanted.members.find(({ name }) => name === at.member);
  const line = lines.find(({ name }) => name === at.member);
  if (spot === undefined || asked === undefined || line === undefined) return undefined;
  const goal = placeAt(asked.centreline, spot.station)?.point;
  if (goal === undefined) return undefined;
  const { centreline, offFrom } = line;
  const station =
    offFrom === undefined
      ? stationNear(centreline, spot.station, moved(motion, goal))
      : keptFrom(offFrom, stationNear(offFrom, spot.station, goal), centreline);
  const place = station === undefined ? undefined : placeAt(centreline, station);
  return station === undefined || place === undefined
    ? undefined
    : { member: at.member, station, point: place.point, tangent: place.tangent };
}

function stationNear(line: Centreline, station: number, point: Vector3): number | undefined {
  const same = placeAt(line, station);
  const stays = same !== undefined && length(subtract(same.point, point)) < SAME;
  return stays ? station : closestStation(line, point)?.station;
}

/** A place of the made line on one that is off from it: a person marks it with a tape from the same end. */
function keptFrom(made: Centreline, station: number | undefined, line: Centreline): number | undefined {
  const kept =
    station === undefined || made.pieces.length !== line.pieces.length ? undefined : keptPlace(made, station);
  return kept === undefined ? station : keptStation(kept, line);
}

/** Places of the frame as it stands, in the structure's axes [mm]; none of a frame that does not stand. */
export const framePlace =
  (frame: LaidFrame | null, wanted: FrameGeometry) =>
  (at: TubePlace): FramePlace | undefined =>
    frame === null ? undefined : madePlace(at, wanted, frame.lines, frame.motion);
