import type { Centreline, Piece } from './centreline.ts';

/** Rounding of stations [mm]. */
const NOTHING = 1e-6;

/**
 * A place on a piece of a centreline that keeps its meaning where the tube is bent otherwise: counted from the start of
 * the piece [mm], from its end [mm], or as a share of its length.
 */
export type KeptPlace = {
  readonly piece: number;
  readonly by: 'from-start' | 'from-end' | 'share';
  readonly amount: number;
};

/**
 * What a person with a tape means by a station: on the first straight the distance from the start of the member, on the
 * last straight the distance from its finish, on every other piece its share. Stations beyond the ends count on from
 * them. Undefined for a centreline without pieces.
 */
export function keptPlace({ pieces }: Centreline, station: number): KeptPlace | undefined {
  let begin = 0;
  for (const [piece, { kind, length }] of pieces.entries()) {
    const end = begin + length;
    const last = piece === pieces.length - 1;
    if (station <= end + NOTHING || last) {
      const straight = kind === 'straight';
      if (straight && piece === 0 && station < end - NOTHING) return { piece, by: 'from-start', amount: station };
      if (straight && last) return { piece, by: 'from-end', amount: end - station };
      return { piece, by: 'share', amount: length > 0 ? (station - begin) / length : 0 };
    }
    begin = end;
  }
  return undefined;
}

/** How far from the start of its piece a kept place is [mm]. */
export const alongPiece = ({ by, amount }: KeptPlace, { length }: Piece): number =>
  by === 'from-start' ? amount : by === 'from-end' ? length - amount : amount * length;

/** Station at which a piece of a centreline begins [mm]. */
export function stationOfPiece({ pieces }: Centreline, piece: number): number {
  let begin = 0;
  for (let index = 0; index < piece; index += 1) begin += pieces[index]?.length ?? 0;
  return begin;
}

/** Station of a kept place on a centreline with the same pieces [mm]. */
export function keptStation(place: KeptPlace, line: Centreline): number {
  const piece = line.pieces[place.piece];
  const begin = stationOfPiece(line, place.piece);
  return piece === undefined ? begin : begin + alongPiece(place, piece);
}
