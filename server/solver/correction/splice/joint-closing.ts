import { placeAt, type Centreline, type Piece } from '../../geometry/centreline.ts';
import { moved, turned, type RigidMotion } from '../../geometry/rigid-motion.ts';
import {
  add,
  cross,
  dot,
  length,
  rotate,
  scale,
  subtract,
  unit,
  ORIGIN,
  squareTo,
  type Vector3,
} from '../../geometry/vector.ts';

/** Two faces that are to meet: the member's own line, the middle between them, and how new tube is let in, if it is. */
export type JointToClose = {
  readonly line: Centreline;
  readonly middle: number;
  /** Half of the old tube that is taken out where new tube is let in [mm]; null: the faces are brought together. */
  readonly takenOut: number | null;
};

/**
 * The two sides of a joint after the bodies have moved. `half` is half of the old tube between them [mm], negative where
 * there is not enough; `gap` leads from side A to side B; `square` are two unit vectors square to the tube there.
 */
export type ClosedSides = {
  readonly half: number;
  readonly a: Side;
  readonly b: Side;
  readonly gap: Vector3;
  readonly along: Vector3;
  readonly square: readonly [Vector3, Vector3];
  /** Direction of new tube at either side; null where the faces meet. */
  readonly letIn: { readonly atA: Vector3; readonly atB: Vector3 } | null;
};

/** One side: where it is after its body moved, which way the tube goes, and how it curves [1/mm, towards its centre]. */
export type Side = {
  readonly point: Vector3;
  readonly tangent: Vector3;
  readonly bend: Vector3;
  readonly piece: Piece;
};

/** Steps at the most: a straight is met in one, an arc in three or four. */
const MOST_STEPS = 12;
const SETTLED = 1e-10;

/** The side of a joint at a station of a moved member. */
function sideAt(line: Centreline, station: number, motion: RigidMotion): Side | undefined {
  const place = placeAt(line, station);
  if (place === undefined) return undefined;
  const { piece } = place;
  const tangent = turned(motion, place.tangent);
  return {
    point: moved(motion, place.point),
    tangent,
    bend: piece.kind === 'arc' ? scale(cross(turned(motion, piece.normal), tangent), 1 / piece.radius) : ORIGIN,
    piece,
  };
}

/**
 * Brings the two sides of a joint together along the tube: equal lengths are taken from both, until nothing is left
 * between them along their common direction. What is left across it is the hi-lo. Where new tube is let in the lengths
 * are given, and the new tube leads from one side to the other: straight, or with the radius of the arc that is cut.
 *
 * @param planeNormal of a frame in one plane: the first of the two directions square to the tube
 * @returns undefined for a member without pieces
 */
export function closeSides(
  joint: JointToClose,
  motionA: RigidMotion,
  motionB: RigidMotion,
  planeNormal: Vector3 | null = null,
): ClosedSides | undefined {
  const { line, middle, takenOut } = joint;
  let half = takenOut ?? 0;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const a = sideAt(line, middle - half, motionA);
    const b = sideAt(line, middle + half, motionB);
    if (a === undefined || b === undefined) return undefined;
    const gap = subtract(b.point, a.point);
    const both = add(a.tangent, b.tangent);
    if (takenOut !== null) return sidesOf({ half, a, b, gap }, both, planeNormal, true);
    // both faces move by `change`, each along its own tangent: the gap closes by |both|² of it along `both`
    const change = -dot(gap, both) / dot(both, both);
    if (Math.abs(change) < SETTLED || step === MOST_STEPS - 1)
      return sidesOf({ half, a, b, gap }, both, planeNormal, false);
    half += change;
  }
  return undefined;
}

function sidesOf(
  { half, a, b, gap }: Pick<ClosedSides, 'half' | 'a' | 'b' | 'gap'>,
  both: Vector3,
  planeNormal: Vector3 | null,
  isLetIn: boolean,
): ClosedSides | undefined {
  const along = unit(both);
  if (along === undefined) return undefined;
  const normal = a.piece.kind === 'arc' ? normalOf(a, along) : undefined;
  const one = planeNormal ?? normal ?? squareTo(along);
  return {
    half,
    a,
    b,
    gap,
    along,
    square: [one, cross(along, one)],
    letIn: isLetIn ? newTube(a, b, gap) : null,
  };
}

/** The axis of the bend that a side lies in, square to the tube. */
function normalOf({ bend, tangent }: Side, along: Vector3): Vector3 | undefined {
  const axis = cross(tangent, bend);
  return unit(subtract(axis, scale(along, dot(axis, along))));
}

/** Radius of new tube: that of the arc that is cut; null on a straight. */
export const letInRadius = ({ piece }: Side): number | null => (piece.kind === 'arc' ? piece.radius : null);

/**
 * Directions of new tube at its ends. Its ends lie on both sides; it is straight, or an arc of the same radius that goes
 * on in the plane of side A: its outside is the outside there, which is how it is marked and laid on.
 */
function newTube(a: Side, b: Side, gap: Vector3): { atA: Vector3; atB: Vector3 } {
  const chord = unit(gap) ?? a.tangent;
  const radius = letInRadius(a);
  const axis = radius === null ? undefined : normalOf(a, chord);
  const size = length(gap);
  if (radius === null || axis === undefined || size >= 2 * radius) return { atA: chord, atB: chord };
  const half = Math.asin(size / 2 / radius);
  return { atA: rotate(chord, axis, -half), atB: rotate(chord, axis, half) };
}
