import type { Reading } from '../../server/job/came-back.ts';
import type { Reference } from '../../server/job/quantities.ts';
import type { TubePlace } from '../../server/job/tube-place.ts';
import { cornersInOrder, diagonalsOf, firstPlace, lastPlace, samePlace } from './tube-places.ts';
import type { Tube } from './tubes.ts';

/** What can be measured beside the sizes that a frame has by itself. */
export const READING_KINDS = ['distance', 'length', 'radius', 'angle', 'rotation', 'bevel', 'level', 'point'] as const;
export type ReadingKind = (typeof READING_KINDS)[number];

/** What a person calls the kind of a reading. */
export const kindOf = (reading: Reading): ReadingKind | 'size' =>
  reading.reading === 'piece' || reading.reading === 'turn' ? reading.what : reading.reading;

/** Whether a piece of a tube can be measured so: a straight has a length, an arc an angle, a radius and a turn before it. */
export function measurable(kind: 'length' | 'radius' | 'angle' | 'rotation', tube: Tube, piece: number): boolean {
  const { pieces } = tube;
  const arc = pieces[piece - 1]?.kind !== 'straight';
  if (kind === 'length') return !arc;
  if (kind !== 'rotation') return arc;
  return arc && pieces.slice(0, piece - 1).some((one) => one.kind !== 'straight');
}

type PieceOf = { readonly member: string; readonly piece: number };

/** The first piece of the frame that can be measured so and is not yet; null where there is none. */
function freshPiece(
  kind: 'length' | 'radius' | 'angle' | 'rotation',
  tubes: readonly Tube[],
  readings: readonly Reading[],
): PieceOf | null {
  const all = tubes.flatMap((tube) =>
    tube.pieces
      .map((_, index) => index + 1)
      .filter((piece) => measurable(kind, tube, piece))
      .map((piece) => ({ member: tube.name, piece })),
  );
  const measured = (one: PieceOf): boolean =>
    readings.some(
      (other) =>
        (other.reading === 'piece' || other.reading === 'turn') &&
        other.what === kind &&
        other.member === one.member &&
        other.piece === one.piece,
    );
  return all.find((one) => !measured(one)) ?? all[0] ?? null;
}

/** Diagonals are measured where a tape hooks on; from end to end of a tube there is nothing to hook it over. */
const distance = (from: TubePlace, to: TubePlace, reference: Reference): Reading => ({
  reading: 'distance',
  from,
  to,
  reference,
  value: null,
  accuracy: null,
});

/** Two distances that are equal where the frame is square; none where no tube has such a pair. */
export const freshDiagonals = (tubes: readonly Tube[]): readonly Reading[] =>
  tubes
    .map(diagonalsOf)
    .find((pair) => pair !== null)
    ?.map(([from, to]) => distance(from, to, 'outside')) ?? [];

/**
 * A reading of a kind still to be typed, at a place that is not measured yet where there is one; null where the frame
 * has nothing of that kind.
 */
export function freshReading(kind: ReadingKind, tubes: readonly Tube[], readings: readonly Reading[]): Reading | null {
  const [tube] = tubes;
  if (tube === undefined) return null;
  const nothing = { value: null, accuracy: null };
  switch (kind) {
    case 'distance':
      return distance(firstPlace(tube), lastPlace(tube), 'centre');
    case 'bevel':
      return { reading: 'bevel', from: firstPlace(tube), to: lastPlace(tube), ...nothing };
    case 'level':
      return { reading: 'level', at: { member: tube.name, spot: 'middle', number: 1, distance: 0 }, ...nothing };
    case 'point': {
      const places = cornersInOrder(tubes);
      const taken = (place: TubePlace): boolean =>
        readings.some((one) => one.reading === 'point' && samePlace(one.at, place));
      const at = places.find((place) => !taken(place)) ?? firstPlace(tube);
      return { reading: 'point', at, x: null, y: null, z: null, accuracy: null };
    }
    case 'length':
    case 'radius': {
      const piece = freshPiece(kind, tubes, readings);
      return piece === null ? null : { reading: 'piece', ...piece, what: kind, ...nothing };
    }
    case 'angle':
    case 'rotation': {
      const piece = freshPiece(kind, tubes, readings);
      return piece === null ? null : { reading: 'turn', ...piece, what: kind, ...nothing };
    }
  }
}
