import { centrelineFromChain, type Centreline, type Link } from './centreline.ts';
import { cross, dot, type Vector3 } from './vector.ts';

/** Where a chain is laid from: a point [mm], a unit direction, and the axis that the first arc turns about. */
export type ChainStart = { readonly point: Vector3; readonly direction: Vector3; readonly normal: Vector3 };

/** A centreline as what is laid on, one after the other; the first arc's rotation is nothing. */
export type Chain = { readonly start: ChainStart; readonly links: readonly Link[] };

/** Takes a centreline apart; undefined for one without pieces. */
export function linksOf({ pieces }: Centreline): Chain | undefined {
  const [first] = pieces;
  if (first === undefined) return undefined;
  const normal = firstNormal(pieces) ?? anySquare(first.direction);
  let before = normal;
  const links = pieces.map((piece): Link => {
    if (piece.kind === 'straight') return { kind: 'straight', length: piece.length };
    const { radius, angle, made } = piece;
    const across = dot(cross(before, piece.normal), piece.direction);
    const rotation = Math.atan2(across, dot(before, piece.normal));
    before = piece.normal;
    return { kind: 'arc', radius, angle, rotation, made };
  });
  return { start: { point: first.start, direction: first.direction, normal }, links };
}

/** Lays a chain that was taken apart with other links in its place. */
export const laidAgain = ({ start }: Chain, links: readonly Link[]): Centreline => centrelineFromChain(start, links);

function firstNormal(pieces: Centreline['pieces']): Vector3 | undefined {
  for (const piece of pieces) if (piece.kind === 'arc') return piece.normal;
  return undefined;
}

/** Any direction square to another: only needed where a centreline has no arc. */
const anySquare = (direction: Vector3): Vector3 =>
  Math.abs(direction.z) < 0.9 ? cross({ x: 0, y: 0, z: 1 }, direction) : cross({ x: 1, y: 0, z: 0 }, direction);
