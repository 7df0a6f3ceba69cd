import type { ChainPiece, MemberPath, RunPoint } from '../../job/frame.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import { RADIANS } from '../geometry/angle.ts';
import { centrelineFromChain, type Centreline, type Link } from '../geometry/centreline.ts';
import { pathThrough, type Closing, type PathPoint } from '../geometry/path-through.ts';
import { dot, length, scale, squareTo, subtract, unit, type Vector3 } from '../geometry/vector.ts';
import { pathFindings } from './path-findings.ts';
import type { ShapeContext } from './shape-context.ts';

/** A member's path: its centreline with the findings about it. */
export type DrawnPath = {
  readonly centreline: Centreline | null;
  readonly closed: boolean;
  readonly closing: Closing | null;
  readonly findings: readonly Finding[];
};

/** A typed radius of this many diameters or more is rolled, not bent on a die; common practice, no source. */
const ROLLED_FROM = 10;
/** Share of a typed normal that must stand square to the direction; below it the two are parallel. */
const LEAST_SQUARE = 1e-6;

/** A typed point, with the die's radius where none was typed. */
const pathPoint = ({ x, y, z, radius }: RunPoint, context: ShapeContext): PathPoint => ({
  point: { x, y, z },
  radius: radius ?? context.cornerRadius,
  made: radius !== null && radius >= ROLLED_FROM * context.outsideDiameter ? 'rolled' : 'die',
});

/** The path through typed points. */
export function pathByPoints(
  typed: { readonly points: readonly RunPoint[]; readonly closed: boolean },
  context: ShapeContext,
  field: string,
  named: { member?: string } = {},
): DrawnPath {
  const path = pathThrough(
    typed.points.map((point) => pathPoint(point, context)),
    typed.closed,
    askedFrom(context, named.member ?? ''),
  );
  const findings = pathFindings(path.problems, typed.points, field, named, context.outsideDiameter);
  return { centreline: path.centreline, closed: typed.closed, closing: path.closing, findings };
}

/** Index of the point that the wanted closing straight leaves from: straights count from 1 as the points do. */
export function askedFrom(context: ShapeContext, member: string): number | null {
  const straight = context.closingStraight?.(member) ?? null;
  return straight === null ? null : straight - 1;
}

/** A chain of pieces laid from its start; its direction and normal need not be unit vectors, nor square. */
function pathByChain(
  chain: Extract<MemberPath, { by: 'chain' }>,
  context: ShapeContext,
  field: string,
  named: { member: string },
): DrawnPath {
  const refused = (part: 'direction' | 'normal'): DrawnPath => ({
    centreline: null,
    closed: false,
    closing: null,
    findings: [finding('path-not-possible', 'stop', `${field}/${part}`, named)],
  });
  const direction = unit(chain.direction);
  if (direction === undefined) return refused('direction');
  const bends = chain.pieces.some(({ piece }) => piece === 'arc');
  const normal = squarePart(direction, chain.normal) ?? (bends ? undefined : squareTo(direction));
  if (normal === undefined) return refused('normal');
  const links = chain.pieces.map((piece) => link(piece, context));
  return {
    centreline: centrelineFromChain({ point: chain.start, direction, normal }, links),
    closed: false,
    closing: null,
    findings: [],
  };
}

const link = (piece: ChainPiece, context: ShapeContext): Link =>
  piece.piece === 'straight'
    ? { kind: 'straight', length: piece.length }
    : {
        kind: 'arc',
        radius: piece.radius ?? context.cornerRadius,
        angle: piece.angle * RADIANS,
        rotation: piece.rotation * RADIANS,
        made: piece.made,
      };

/** The part of a typed axis that stands square to a direction; undefined where it runs along it. */
function squarePart(direction: Vector3, axis: Vector3): Vector3 | undefined {
  const square = subtract(axis, scale(direction, dot(axis, direction)));
  return length(square) > LEAST_SQUARE * length(axis) ? unit(square) : undefined;
}

/** The path of a member, typed either way. */
export const memberPath = (
  path: MemberPath,
  context: ShapeContext,
  field: string,
  named: { member: string },
): DrawnPath =>
  path.by === 'points'
    ? pathByPoints(path, context, `${field}/points`, named)
    : pathByChain(path, context, field, named);
