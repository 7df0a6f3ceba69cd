import { centrelineFromChain, type Centreline, type Link } from './centreline.ts';
import { cross, dot, squareTo, type Vector3 } from './vector.ts';

/** A place with directions that go with the tube: along it, and square to it, carried from arc to arc. */
export type Stand = { readonly point: Vector3; readonly direction: Vector3; readonly normal: Vector3 };

/** A centreline as what is laid on, one after the other, and where from; the first arc's rotation is nothing. */
export type Chain = { readonly start: Stand; readonly links: readonly Link[] };

/**
 * Takes a centreline apart; undefined for one without pieces.
 *
 * @param like what the direction square to a centreline without arcs is to be as near to as it can
 */
export function chainOf({ pieces }: Centreline, like: Vector3 | null = null): Chain | undefined {
  const [first] = pieces;
  if (first === undefined) return undefined;
  const normal = firstNormal(pieces) ?? squareTo(first.direction, like);
  let before = normal;
  const links = pieces.map((piece): Link => {
    if (piece.kind === 'straight') return { kind: 'straight', length: piece.length };
    const { radius, angle, made } = piece;
    const rotation = Math.atan2(dot(cross(before, piece.normal), piece.direction), dot(before, piece.normal));
    before = piece.normal;
    return { kind: 'arc', radius, angle, rotation, made };
  });
  return { start: { point: first.start, direction: first.direction, normal }, links };
}

/** The axis that the first arc of some pieces turns about; undefined without arcs. */
export function firstNormal(pieces: Centreline['pieces']): Vector3 | undefined {
  for (const piece of pieces) if (piece.kind === 'arc') return piece.normal;
  return undefined;
}

/** Lays a chain that was taken apart with other links in its place. */
export const laidAgain = ({ start }: Chain, links: readonly Link[]): Centreline => centrelineFromChain(start, links);
