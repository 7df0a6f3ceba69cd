import type { Piece } from '../../geometry/centreline.ts';
import type { Vector3 } from '../../geometry/vector.ts';
import type { LaidFrame, LaidLeg } from '../laid-site.ts';

/** A leg under its frame, on one laying of the site. */
type Under = { readonly laid: LaidLeg; readonly frame: LaidFrame };

/** Whether a leg and the tube that it carries stand where they do on another laying of the same site, to the last digit. */
export function isSameLeg(one: Under, other: Under): boolean {
  if (one.laid.station !== other.laid.station || one.laid.member !== other.laid.member) return false;
  if (!(['foot', 'head', 'surface'] as const).every((key) => same(one.laid[key], other.laid[key]))) return false;
  const [pieces, others] = [piecesOf(one), piecesOf(other)];
  return pieces.length === others.length && pieces.every((piece, index) => isSamePiece(piece, others[index] ?? piece));
}

const piecesOf = ({ laid, frame }: Under): readonly Piece[] =>
  frame.lines.find(({ name }) => name === laid.member)?.centreline.pieces ?? [];

function isSamePiece(one: Piece, other: Piece): boolean {
  if (one.length !== other.length || !same(one.start, other.start) || !same(one.direction, other.direction))
    return false;
  if (one.kind === 'straight' || other.kind === 'straight') return one.kind === other.kind;
  return one.radius === other.radius && same(one.normal, other.normal);
}

const same = (a: Vector3, b: Vector3): boolean => a.x === b.x && a.y === b.y && a.z === b.z;
