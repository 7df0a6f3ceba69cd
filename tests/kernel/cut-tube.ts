// Tube as the kernel's own solids: made, cut by a plane, moved and measured. Nothing here knows of the plan.
import {
  assembleWire,
  basicFaceExtrusion,
  cast,
  getOC,
  makeCircle,
  makeFace,
  makePolygon,
  measureVolume,
  revolution,
  Vector,
  type Face,
  type Shape3D,
} from 'replicad';
import type { PlanPiece } from '../../server/plan/frame.ts';
import { axesOf } from '../../server/solver/correction/splice/splice-problem.ts';
import type { RigidMotion } from '../../server/solver/geometry/rigid-motion.ts';
import { add, cross, dot, length, scale, subtract, unit, type Vector3 } from '../../server/solver/geometry/vector.ts';

export type Tube = { readonly outsideDiameter: number; readonly wall: number };
export type Plane = { readonly point: Vector3; readonly normal: Vector3 };

/** A flat face of a solid: its centre of mass, its normal out of the solid. */
type FlatFace = { readonly centre: Vector3; readonly normal: Vector3 };

const triple = ({ x, y, z }: Vector3): [number, number, number] => [x, y, z];

/** Objects of the kernel live until they are given back. */
type Kept = { delete: () => void };
const kept: Kept[] = [];

function keep<T extends Kept>(one: T): T {
  kept.push(one);
  return one;
}

/** Gives back everything that was made since the last time. */
export function giveBack(): void {
  for (const one of kept.splice(0).reverse()) one.delete();
}

/** A tube of even wall along a straight or an arc: a ring drawn along, or turned about the arc's axis. */
export function tubeAlong(piece: PlanPiece, { outsideDiameter, wall }: Tube): Shape3D {
  const along = subtract(piece.to, piece.from);
  const direction = piece.kind === 'straight' ? along : cross(piece.normal, subtract(piece.from, piece.centre));
  const circle = (radius: number, way: Vector3) =>
    keep(assembleWire([keep(makeCircle(radius, triple(piece.from), triple(way)))]));
  // the hole runs the other way round
  const hole = circle(outsideDiameter / 2 - wall, scale(direction, -1));
  const ring = keep(makeFace(circle(outsideDiameter / 2, direction), [hole]));
  if (piece.kind === 'straight') return keep(basicFaceExtrusion(ring, keep(new Vector(triple(along)))));
  return keep(revolution(ring, triple(piece.centre), triple(piece.normal), piece.angle));
}

/** Reach of a cut across its plane [mm]: any tube of these tests is thinner. */
const ACROSS = 200;

/** Takes away everything on the side of a plane that its normal points to. */
export function cutOff(body: Shape3D, { point, normal }: Plane): Shape3D {
  const [one, other] = axesOf(normal);
  const corner = (a: number, b: number) => triple(add(point, add(scale(one, a * ACROSS), scale(other, b * ACROSS))));
  const sheet = keep(makePolygon([corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)]));
  const oc = getOC();
  const beyond = keep(new oc.gp_Pnt(...triple(add(point, scale(normal, 10)))));
  const half = keep(cast(keep(new oc.BRepPrimAPI_MakeHalfSpace(sheet.wrapped, beyond)).Solid()));
  return keep(body.cut(half as Shape3D));
}

/** A copy of a body after a rigid motion. */
export function movedBody(body: Shape3D, { x, y, z, shift }: RigidMotion): Shape3D {
  const oc = getOC();
  const motion = keep(new oc.gp_Trsf());
  motion.SetValues(x.x, x.y, x.z, shift.x, y.x, y.y, y.z, shift.y, z.x, z.y, z.z, shift.z);
  return keep(cast(keep(new oc.BRepBuilderAPI_Transform(body.wrapped, motion, true, false)).Shape()) as Shape3D);
}

const vector = (one: { x: number; y: number; z: number; delete: () => void }): Vector3 => {
  const { x, y, z } = keep(one);
  return { x, y, z };
};

/** The flat faces of a body. */
const flatFaces = (body: Shape3D): FlatFace[] =>
  body.faces
    .map((face: Face) => keep(face))
    .filter(({ geomType }) => geomType === 'PLANE')
    .map((face) => ({ centre: vector(face.center), normal: vector(face.normalAt()) }));

/** The flat face that lies nearest to a point. */
export function faceNear(body: Shape3D, point: Vector3): FlatFace {
  const away = (face: FlatFace) => length(subtract(face.centre, point));
  const [nearest] = flatFaces(body).sort((a, b) => away(a) - away(b));
  if (nearest === undefined) throw new Error('a body without a flat face');
  return nearest;
}

/**
 * Volume that two bodies have in common [mm³]. The other lies behind its own flat face, so that only what of the first
 * reaches beyond that face can be in both: nothing at all is found without cutting two bent tubes with each other.
 */
export function overlap(one: Shape3D, other: Shape3D, { centre, normal }: FlatFace): number {
  const reaching = cutOff(one, { point: centre, normal });
  return measureVolume(reaching) === 0 ? 0 : measureVolume(keep(reaching.intersect(other)));
}

/** Below this a tube between two square ends is straight [rad]. */
const STRAIGHT = 1e-9;

/**
 * Direction of a tube's axis at a point near it, from nothing but the two square ends of the tube.
 *
 * @param whole one straight or one arc of tube, sawn square at both ends, along the way from `start`
 */
export function axisNear(whole: Shape3D, start: Vector3, point: Vector3): Vector3 {
  const first = faceNear(whole, start);
  const last = flatFaces(whole).find(({ centre }) => length(subtract(centre, first.centre)) > 1);
  if (last === undefined) throw new Error('a tube with one end');
  const [from, to] = [scale(first.normal, -1), last.normal];
  const axis = unit(cross(from, to));
  const angle = Math.atan2(length(cross(from, to)), dot(from, to));
  if (axis === undefined || angle < STRAIGHT) return from;
  // both ends lie on a circle: chord = 2 R sin(θ / 2)
  const radius = length(subtract(last.centre, first.centre)) / (2 * Math.sin(angle / 2));
  const centre = add(first.centre, scale(cross(axis, from), radius));
  const along = unit(cross(axis, subtract(point, centre)));
  if (along === undefined) throw new Error('a point on the axis of a bend');
  return along;
}
