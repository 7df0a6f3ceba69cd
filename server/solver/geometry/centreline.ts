import { add, cross, dot, rotate, scale, sineAndCosine, subtract, unit, type Vector3 } from './vector.ts';

/** A straight of a centreline [mm]. */
export type StraightPiece = {
  readonly kind: 'straight';
  readonly start: Vector3;
  readonly direction: Vector3;
  readonly length: number;
};

/** An arc that turns right-handed about `normal`, from `start` on, tangent to `direction` [mm, rad]. */
export type ArcPiece = {
  readonly kind: 'arc';
  readonly start: Vector3;
  readonly direction: Vector3;
  readonly normal: Vector3;
  readonly radius: number;
  readonly angle: number;
  readonly made: 'die' | 'rolled';
  readonly length: number;
};

export type Piece = StraightPiece | ArcPiece;

/** Whether a piece of a centreline or a link of a chain is bent on a die. */
export const isDieBend = <Part extends Pick<StraightPiece, 'kind'> | Pick<ArcPiece, 'kind' | 'made'>>(
  part: Part,
): part is Extract<Part, { kind: 'arc' }> & { made: 'die' } => part.kind === 'arc' && part.made === 'die';

/** Pieces are made here alone, so that all have one layout and reading them stays fast. */
export const straightPiece = ({ start, direction, length }: Omit<StraightPiece, 'kind'>): StraightPiece => ({
  kind: 'straight',
  start,
  direction,
  length,
});

/** An arc as long as its radius and angle say. */
export const arcPiece = ({
  start,
  direction,
  normal,
  radius,
  angle,
  made,
}: Omit<ArcPiece, 'kind' | 'length'>): ArcPiece => ({
  kind: 'arc',
  start,
  direction,
  normal,
  radius,
  angle,
  made,
  length: radius * angle,
});

/** A member's centreline: straights and arcs, each tangent to the next. */
export type Centreline = { readonly pieces: readonly Piece[]; readonly length: number };

/** Where the centreline stands and which way it goes at a station. */
export type Place = { readonly point: Vector3; readonly tangent: Vector3; readonly piece: Piece };

/** What is laid on next: a straight, or an arc after turning its plane about the tube by `rotation` [rad]. */
export type Link =
  | { readonly kind: 'straight'; readonly length: number }
  | {
      readonly kind: 'arc';
      readonly radius: number;
      readonly angle: number;
      readonly rotation: number;
      readonly made: 'die' | 'rolled';
    };

/** The place on a piece at a distance from its start [mm]; beyond either end the piece is carried on. */
export function placeOn(piece: Piece, distance: number): Place {
  if (piece.kind === 'straight') {
    return { point: add(piece.start, scale(piece.direction, distance)), tangent: piece.direction, piece };
  }
  // R sin θ along the start's direction, R (1 − cos θ) towards the centre
  const turn = distance / piece.radius;
  const { sine, cosine } = sineAndCosine(turn);
  const { start, direction, normal, radius } = piece;
  const inward = cross(normal, direction);
  const far = radius * sine;
  const deep = radius * (1 - cosine);
  return {
    point: {
      x: start.x + far * direction.x + deep * inward.x,
      y: start.y + far * direction.y + deep * inward.y,
      z: start.z + far * direction.z + deep * inward.z,
    },
    tangent: {
      x: cosine * direction.x + sine * inward.x,
      y: cosine * direction.y + sine * inward.y,
      z: cosine * direction.z + sine * inward.z,
    },
    piece,
  };
}

/**
 * Lays links end to end from a start.
 *
 * @param start point [mm], unit direction, and the unit axis that the first arc turns about before its rotation
 */
export function centrelineFromChain(
  start: { point: Vector3; direction: Vector3; normal: Vector3 },
  links: readonly Link[],
): Centreline {
  let { point, direction, normal } = start;
  let length = 0;
  const pieces: Piece[] = [];
  for (const link of links) {
    if (link.kind === 'arc') normal = rotate(normal, direction, link.rotation);
    const piece: Piece =
      link.kind === 'straight'
        ? straightPiece({ start: point, direction, length: link.length })
        : arcPiece({
            start: point,
            direction,
            normal,
            radius: link.radius,
            angle: link.angle,
            made: link.made,
          });
    const end = placeOn(piece, piece.length);
    pieces.push(piece);
    length += piece.length;
    point = end.point;
    // set square again after each piece: rounding would grow with every turn, and a hundred arcs would be nonsense
    direction = unit(end.tangent) ?? direction;
    normal = unit(subtract(normal, scale(direction, dot(normal, direction)))) ?? normal;
  }
  return { pieces, length };
}

/**
 * The place at a station [mm from the datum end]. Before the first and after the last piece the end piece is
 * carried on, so that a search may overshoot. Undefined for a centreline without pieces.
 */
export function placeAt(centreline: Centreline, station: number): Place | undefined {
  const { pieces } = centreline;
  const last = pieces.length - 1;
  let from = 0;
  // counted, not iterated: the correction asks for thousands of places
  for (let index = 0; index <= last; index += 1) {
    const piece = pieces[index];
    if (piece === undefined) continue;
    if (station <= from + piece.length || index === last) return placeOn(piece, station - from);
    from += piece.length;
  }
  return undefined;
}
