// One joint of a plan: cut as its two faces say, closed as its bodies move, and measured by the kernel.
import type { Shape3D } from 'replicad';
import type { Joint, JointFace } from '../../server/plan/joint.ts';
import type { PlanPiece } from '../../server/plan/frame.ts';
import type { MemberGeometry } from '../../server/solver/frame/frame-geometry.ts';
import {
  arcPiece,
  placeAt,
  straightPiece,
  type Centreline,
  type Piece,
} from '../../server/solver/geometry/centreline.ts';
import { planPieces } from '../../server/solver/geometry/plan-pieces.ts';
import { moved, turned, UNMOVED, type RigidMotion } from '../../server/solver/geometry/rigid-motion.ts';
import { partOf, pieceEnd, pieceStations } from '../../server/solver/geometry/slice.ts';
import {
  add,
  cross,
  dot,
  length,
  rotate,
  scale,
  subtract,
  unit,
  type Vector3,
} from '../../server/solver/geometry/vector.ts';
import { outsideOf, type FrameSides } from '../../server/solver/joints/outside.ts';
import { motionBetween } from '../../server/solver/geometry/laid-line.ts';
import { axisNear, cutOff, faceNear, movedBody, overlap, tubeAlong, type Plane, type Tube } from './cut-tube.ts';

const DEGREES = 180 / Math.PI;

/** Tube kept behind a face, and tube that must be there to be cut off, beyond what the lean of the face takes [mm]. */
const KEPT = 15;
const CUT_AWAY = 3;

/** One weld as the kernel finds it, and what the plan says of it [mm, degrees, mm³]. */
export type Weld = {
  /** Angle between the planes of the two faces. */
  readonly lean: number;
  /** Distance between the two planes where the bodies end up, less what gap and shrinkage ask for. */
  readonly apart: number;
  readonly hiLo: number;
  readonly plannedHiLo: number;
  readonly kink: number;
  readonly plannedKink: number;
  /** What the two solids have in common while the weld has not pulled them together yet. */
  readonly overlap: number;
};

/** The tube, and how its welds close [mm]. */
type Welding = { readonly tube: Tube; readonly gap: number; readonly shrinkage: number };

const planned = (piece: Piece): PlanPiece => planPieces({ pieces: [piece], length: piece.length })[0]!;

/** How the bodies before and behind a joint move. */
type Motions = { readonly before: RigidMotion; readonly behind: RigidMotion };

/** A cut end where it ends up: its solid, the same tube before the cut, where that begins, and the cut face's middle. */
type CutEnd = { readonly body: Shape3D; readonly whole: Shape3D; readonly start: Vector3; readonly at: Vector3 };

/** Where a face stands on the tube: generator 0 is the outside there, a quarter turn on is tangent × outside. */
type Stand = { readonly point: Vector3; readonly tangent: Vector3; readonly outside: Vector3 };

/** The plane that is longest on the generator `direction` and leans by `tilt` [rad]; its normal goes with the tube. */
function planeOf({ point, tangent, outside }: Stand, tilt: number, direction: number): Plane {
  const quarter = cross(tangent, outside);
  const longest = add(scale(outside, Math.cos(direction)), scale(quarter, Math.sin(direction)));
  return { point, normal: subtract(scale(tangent, Math.cos(tilt)), scale(longest, Math.sin(tilt))) };
}

function standOn(member: MemberGeometry, face: JointFace, sides: FrameSides): Stand {
  const { point, tangent } = placeAt(member.centreline, face.station.value)!;
  return { point, tangent, outside: outsideOf(member, face.station.value, sides)! };
}

/** A short piece of tube on both sides of a station, cut by a plane, then moved. */
function cutEnd(
  line: Centreline,
  station: number,
  plane: Plane,
  side: 'before' | 'behind',
  motion: RigidMotion,
  tube: Tube,
): CutEnd {
  const { tangent } = placeAt(line, station)!;
  const ahead = dot(plane.normal, tangent);
  const lean = ((tube.outsideDiameter / 2) * Math.sqrt(Math.max(0, 1 - ahead ** 2))) / ahead;
  const [less, more] = side === 'before' ? [KEPT, CUT_AWAY] : [CUT_AWAY, KEPT];
  const part = pieceAround(line, station, { from: station - less - lean, to: station + more + lean });
  const whole = tubeAlong(planned(part), tube);
  const scrap = side === 'before' ? plane.normal : scale(plane.normal, -1);
  const body = cutOff(whole, { point: plane.point, normal: scrap });
  return {
    body: movedBody(body, motion),
    whole: movedBody(whole, motion),
    start: moved(motion, part.start),
    at: moved(motion, plane.point),
  };
}

/**
 * The piece of a centreline between two stations round another one. What is kept lies on one straight or arc; tube that
 * is sawn away may stand for its neighbour beyond a tangent point.
 */
function pieceAround(line: Centreline, station: number, { from, to }: { from: number; to: number }): Piece {
  const stations = pieceStations(line);
  const index = Math.max(
    0,
    line.pieces.findIndex((_, place) => station <= stations[place + 1]!),
  );
  const [begin, end] = [stations[index]!, stations[index + 1]!];
  if (station - from > to - station ? from < begin : to > end) throw new Error('a joint beside a tangent point');
  return partOf(line.pieces[index]!, from - begin, to - from);
}

/** What the kernel finds where two cut ends meet. */
function weldOf(a: CutEnd, b: CutEnd, told: { kink: number; hiLo: number }, { gap, shrinkage }: Welding): Weld {
  const [one, other] = [faceNear(a.body, a.at), faceNear(b.body, b.at)];
  const between = subtract(other.centre, one.centre);
  const far = dot(between, one.normal);
  const closes = scale(add(one.centre, other.centre), 1 / 2);
  const [before, behind] = [axisNear(a.whole, a.start, closes), axisNear(b.whole, b.start, closes)];
  const apart = scale(one.normal, shrinkage);
  const notYet = movedBody(b.body, { ...UNMOVED, shift: apart });
  const angle = (u: Vector3, v: Vector3) => Math.atan2(length(cross(u, v)), dot(u, v)) * DEGREES;
  return {
    lean: angle(one.normal, scale(other.normal, -1)),
    apart: far - (gap - shrinkage),
    hiLo: length(subtract(between, scale(one.normal, far))),
    plannedHiLo: told.hiLo,
    kink: angle(before, behind),
    plannedKink: told.kink,
    overlap: overlap(a.body, notYet, { centre: add(other.centre, apart), normal: other.normal }),
  };
}

/** Cuts and closes a joint as the plan says; where new tube is let in there are two welds. */
export function weldsOfJoint(
  joint: Joint,
  member: MemberGeometry,
  sides: FrameSides,
  { before, behind }: Motions,
  welding: Welding,
): Weld[] {
  const { faceA, faceB, letIn } = joint;
  const end = (face: JointFace, side: 'before' | 'behind', motion: RigidMotion): CutEnd => {
    const plane = planeOf(standOn(member, face, sides), face.tilt.value / DEGREES, face.tiltDirection / DEGREES);
    return cutEnd(member.centreline, face.station.value, plane, side, motion, welding.tube);
  };
  const a = end(faceA, 'before', before);
  const b = end(faceB, 'behind', behind);
  if (letIn === null) return [weldOf(a, b, { kink: joint.kink.value, hiLo: joint.hiLo.value }, welding)];
  const outside = turned(before, standOn(member, faceA, sides).outside);
  const fitted = fittedPiece(joint, letIn, { a, outside }, welding);
  return [
    weldOf(a, fitted.start, { kink: 2 * letIn.tiltA.value, hiLo: joint.hiLo.value }, welding),
    weldOf(fitted.finish, b, { kink: 2 * letIn.tiltB.value, hiLo: joint.hiLo.value }, welding),
  ];
}

const AT_BENCH = { point: UNMOVED.shift, direction: UNMOVED.x, normal: UNMOVED.z } as const;

/**
 * New tube made on the bench from its own list (length, radius, tilts) and laid against the cut end before it. Its
 * generators count as those of the tube that it goes on from; at its far end those of the tube behind it are turned by
 * the joint's twist.
 */
function fittedPiece(
  { faceA, faceB, twist }: Joint,
  letIn: NonNullable<Joint['letIn']>,
  { a, outside }: { a: CutEnd; outside: Vector3 },
  { tube, gap, shrinkage }: Welding,
): { start: CutEnd; finish: CutEnd } {
  const { length: whole, radius } = letIn;
  const begin = { start: AT_BENCH.point, direction: AT_BENCH.direction };
  // a bend turns away from its outside: with generator 0 at +y it turns about −z
  const piece =
    radius === null
      ? straightPiece({ ...begin, length: whole.value })
      : arcPiece({
          ...begin,
          normal: scale(AT_BENCH.normal, -1),
          radius: radius.value,
          angle: whole.value / radius.value,
          made: 'rolled',
        });
  const line: Centreline = { pieces: [piece], length: piece.length };
  const generator = cross(AT_BENCH.normal, AT_BENCH.direction);
  const far = pieceEnd(piece);
  const farOutside = piece.kind === 'arc' ? rotate(generator, piece.normal, piece.angle) : generator;
  const planeA = planeOf(
    { point: piece.start, tangent: piece.direction, outside: generator },
    letIn.tiltA.value / DEGREES,
    faceA.tiltDirection / DEGREES + Math.PI,
  );
  const planeB = planeOf(
    { point: far.point, tangent: far.tangent, outside: farOutside },
    letIn.tiltB.value / DEGREES,
    (faceB.tiltDirection + twist.value) / DEGREES + Math.PI,
  );
  // laid on without a step: the old tube's axis is mirrored by the face, and generator 0 is carried over the edge
  const face = faceNear(a.body, a.at);
  const old = axisNear(a.whole, a.start, face.centre);
  const direction = subtract(scale(face.normal, 2 * dot(face.normal, old)), old);
  const edge = unit(cross(old, direction));
  const over = Math.atan2(length(cross(old, direction)), dot(old, direction));
  const carried = edge === undefined ? outside : rotate(outside, edge, over);
  const laid = motionBetween(AT_BENCH, {
    point: add(face.centre, scale(face.normal, gap - shrinkage)),
    direction,
    normal: cross(direction, carried),
  });
  const end = (station: number, plane: Plane, side: 'before' | 'behind') =>
    cutEnd(line, station, plane, side, laid, tube);
  return { start: end(0, planeA, 'behind'), finish: end(piece.length, planeB, 'before') };
}

/** Middle of the section through a tube at a station after a motion, found on the end of a tube that is sawn there. */
export function sectionAt(line: Centreline, station: number, motion: RigidMotion, tube: Tube): Vector3 {
  const atFinish = station > line.length / 2;
  const [from, to] = atFinish ? [station - KEPT, station] : [station, station + KEPT];
  const body = movedBody(tubeAlong(planned(pieceAround(line, station, { from, to })), tube), motion);
  return faceNear(body, moved(motion, placeAt(line, station)!.point)).centre;
}
