import type { Fixing, FixingPoint } from '../../job/fixing.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import type { FrameGeometry, MemberGeometry, Spot } from '../frame/frame-geometry.ts';
import { spotAt } from '../frame/tube-place-spot.ts';
import { isDieBend, placeAt } from '../geometry/centreline.ts';
import { turned, UNMOVED, type RigidMotion } from '../geometry/rigid-motion.ts';
import { pieceStations } from '../geometry/slice.ts';
import { add, ORIGIN, type Vector3 } from '../geometry/vector.ts';
import { motionBetween } from '../geometry/laid-line.ts';
import type { CorrectionTarget } from './corrected.ts';
import { tubeStand } from '../geometry/tube-stand.ts';

/** What the targets of a correction are read from [mm]. */
export type TargetInput = {
  readonly fixing: Fixing;
  readonly wanted: FrameGeometry;
  /** Of the same members and pieces as the wanted one; feet that are too long are cut back already. */
  readonly actual: FrameGeometry;
  readonly outsideDiameter: number;
  /** ± of a tape. */
  readonly tape: number;
  /** ± that the whole frame may miss by. */
  readonly tolerance: number;
};

/** A guide may be so many accuracies of the tape off before it counts: it follows, it does not decide; our own choice. */
const GUIDE_TAPES = 10;
/** A tape read to better than this is not believed [mm]: common practice, no source. */
export const LEAST_TAPE = 0.1;
/** A straight between two bends is followed from so many diameters on; our own choice. */
const LONG_STRAIGHT = 10;

/**
 * What a correction must bring where: the job's fixing points, or where it names none the free ends; every corner, at
 * the middle of its bend on the tube; and as guides the middles of rolled crowns and of long straights between bends.
 * Where fixing points are named, free ends count as corners do.
 *
 * @returns targets on the frame as it came back, and a stop for each fixing point that the frame has no place for
 */
export function correctionTargets(source: TargetInput): {
  targets: CorrectionTarget[];
  findings: Finding[];
} {
  const findings: Finding[] = [];
  const landings: CorrectionTarget[] = [];
  for (const [index, point] of source.fixing.entries()) {
    const field = `/fixing/${String(index)}`;
    const target = landing(point, field, source);
    if (target === undefined) findings.push(finding('fixing-no-place', 'stop', `${field}/at`, missing(point)));
    else landings.push(target);
  }
  const named = source.fixing.length > 0;
  const targets = [
    ...landings,
    ...feet(source, named ? 'corner' : 'fixing'),
    ...corners(source),
    ...seats(source),
    ...guides(source),
  ];
  return { targets, findings };
}

const missing = ({ name, at }: FixingPoint) => ({ name, member: at.member, place: at.spot, number: at.number });

function landing(point: FixingPoint, field: string, source: TargetInput): CorrectionTarget | undefined {
  const { wanted, actual, tolerance } = source;
  const goal = spotAt(point.at, wanted);
  const found = spotAt(point.at, actual, wanted);
  if (goal === undefined || found === undefined) return undefined;
  // an end that was cut back is where its foot is
  const atEnd = point.at.spot === 'start' || point.at.spot === 'finish';
  const spot = (atEnd ? actual.feet.find((foot) => isSameEnd(foot, found, actual)) : undefined) ?? found;
  return {
    spot,
    off: turned(tubeMotion(wanted, goal, actual, found), point.off),
    wanted: point.lands ?? add(goal.point, point.off),
    along: null,
    tolerance: point.tolerance ?? tolerance,
    kind: 'fixing',
    field,
    name: point.name,
    fixing: point.fixing,
  };
}

/** How the tube's own axes at a place of one frame lie on another one, as a turn. */
function tubeMotion(from: FrameGeometry, fromSpot: Spot, to: FrameGeometry, toSpot: Spot): RigidMotion {
  const [one, other] = [memberOf(from, fromSpot), memberOf(to, toSpot)];
  const own = one === undefined ? undefined : tubeStand(one.centreline, fromSpot.station);
  const now =
    other === undefined || own === undefined ? undefined : tubeStand(other.centreline, toSpot.station, own.normal);
  return own === undefined || now === undefined ? UNMOVED : motionBetween(own, now);
}

const memberOf = (frame: FrameGeometry, spot: Spot): MemberGeometry | undefined =>
  frame.members.find(({ name }) => name === spot.member);

function isSameEnd(foot: Spot, end: Spot, frame: FrameGeometry): boolean {
  const half = (memberOf(frame, end)?.centreline.length ?? 0) / 2;
  return foot.member === end.member && foot.station > half === end.station > half;
}

/** A target that no fixing point of the job stands behind. */
const unnamed = (
  spot: Spot,
  wanted: Vector3,
  kind: CorrectionTarget['kind'],
  tolerance: number,
  name = '',
  along: Vector3 | null = null,
): CorrectionTarget => ({ spot, off: ORIGIN, wanted, along, tolerance, kind, field: '', name, fixing: 'foot' });

/** The free ends, counted in the order of the frame. */
const feet = ({ wanted, actual, tolerance }: TargetInput, kind: 'fixing' | 'corner'): CorrectionTarget[] =>
  actual.feet.flatMap((spot, index) => {
    const goal = wanted.feet[index];
    return goal === undefined ? [] : [unnamed(spot, goal.point, kind, tolerance, String(index + 1))];
  });

/** The middles of the die bends. */
const corners = ({ wanted, actual, tolerance }: TargetInput): CorrectionTarget[] =>
  actual.corners.flatMap((corner, index) => {
    const like = wanted.corners[index];
    const spot = onTube(actual, corner);
    const goal = like === undefined ? undefined : onTube(wanted, like);
    return spot === undefined || goal === undefined ? [] : [unnamed(spot, goal.point, 'corner', tolerance)];
  });

/** Where tubes sit on straight ones: a ladder has no other corners. */
const seats = ({ wanted, actual, tolerance }: TargetInput): CorrectionTarget[] =>
  wanted.members.flatMap((member) => {
    const own = actual.members.find(({ name }) => name === member.name);
    return (['start', 'finish'] as const).flatMap((end) => {
      const seat = member[end];
      const main = seat.kind === 'saddle' ? wanted.members.find(({ name }) => name === seat.onto) : undefined;
      const bent = main?.centreline.pieces.some(isDieBend);
      if (own === undefined || main === undefined || bent === true) return [];
      const at = (of: MemberGeometry): Spot => ({
        member: of.name,
        station: end === 'start' ? 0 : of.centreline.length,
        point: ORIGIN,
      });
      const [spot, goal] = [onTube(actual, at(own)), onTube(wanted, at(member))];
      return spot === undefined || goal === undefined ? [] : [unnamed(spot, goal.point, 'corner', tolerance)];
    });
  });

function onTube(frame: FrameGeometry, { member, station }: Spot): Spot | undefined {
  const line = frame.members.find(({ name }) => name === member)?.centreline;
  const point = line === undefined ? undefined : placeAt(line, station)?.point;
  return point === undefined ? undefined : { member, station, point };
}

function guides({ wanted, actual, outsideDiameter, tape }: TargetInput): CorrectionTarget[] {
  const tolerance = GUIDE_TAPES * Math.max(tape, LEAST_TAPE);
  return wanted.members.flatMap((member) => {
    const own = actual.members.find(({ name }) => name === member.name);
    if (own === undefined) return [];
    const { pieces } = member.centreline;
    const [goals, stations] = [pieceStations(member.centreline), pieceStations(own.centreline)];
    const middle = (of: readonly number[], index: number) => ((of[index] ?? 0) + (of[index + 1] ?? 0)) / 2;
    return pieces.flatMap((piece, index) => {
      const between = member.closed || (index > 0 && index < pieces.length - 1);
      const followed =
        piece.kind === 'arc' ? piece.made === 'rolled' : between && piece.length > LONG_STRAIGHT * outsideDiameter;
      if (!followed) return [];
      const spot = onTube(actual, { member: member.name, station: middle(stations, index), point: ORIGIN });
      const goal = placeAt(member.centreline, middle(goals, index));
      if (spot === undefined || goal === undefined) return [];
      return [unnamed(spot, goal.point, 'guide', tolerance, '', goal.tangent)];
    });
  });
}
