import type { TubePlace } from '../../server/job/tube-place.ts';
import { words, wordsOf } from '../../server/language/words.ts';
import type { Tube, TubePiece } from './tubes.ts';

type Spot = TubePlace['spot'];

/** A place that can be chosen on a tube. */
export type PlaceOption = { readonly spot: Spot; readonly number: number; readonly words: string };
export type PlaceGroup = { readonly title: string; readonly options: readonly PlaceOption[] };

const place = (member: string, spot: Spot, number = 1): TubePlace => ({ member, spot, number, distance: 0 });

const numbers = (count: number): number[] => Array.from({ length: count }, (_, index) => index + 1);

/** A piece in words: 'bend 2', 'straight 3'. */
export const pieceWords = ({ kind, number }: TubePiece): string => words(`piece.${kind}`, { number });

/** The member of a hoop that goes round it has a left and a right; so does no other. */
const isHoop = (tube: Tube | undefined): boolean => tube?.name === 'hoop' && tube.bends === 2;

/** What a place is called. A piece that the tube does not have is called by its number alone. */
export function placeWords({ spot, number }: Pick<TubePlace, 'spot' | 'number'>, tube: Tube | undefined): string {
  if (isHoop(tube) && (spot === 'start' || spot === 'finish')) return words(`place.hoop.${spot}`);
  if (isHoop(tube) && spot === 'corner' && (number === 1 || number === 2)) return words(`place.hoop.corner.${number}`);
  if (tube?.closed === true && spot === 'start') return words('place.weld');
  const piece = tube?.pieces[number - 1];
  const named = piece === undefined ? words('piece.number', { number }) : pieceWords(piece);
  return wordsOf('place', spot, { number, piece: named });
}

/** Whether a tube has this place. */
export function hasPlace({ spot, number }: Pick<TubePlace, 'spot' | 'number'>, tube: Tube): boolean {
  if (spot === 'corner' || spot === 'bend-start' || spot === 'bend-end') return number <= tube.bends;
  if (spot === 'middle') return number <= tube.pieces.length;
  return spot !== 'finish' || !tube.closed;
}

/** Every place of a tube by name, in groups. A closed tube has no finish: its start is the closing weld. */
export function placeGroups(tube: Tube): readonly PlaceGroup[] {
  const named = (spot: Spot, number = 1): PlaceOption => ({ spot, number, words: placeWords({ spot, number }, tube) });
  const bends = numbers(tube.bends);
  const groups: readonly PlaceGroup[] = [
    {
      title: words('place.group.ends'),
      options: tube.closed ? [named('start')] : [named('start'), named('finish')],
    },
    { title: words('place.group.corners'), options: bends.map((number) => named('corner', number)) },
    {
      title: words('place.group.bends'),
      options: bends.flatMap((number) => [named('bend-start', number), named('bend-end', number)]),
    },
    {
      title: words('place.group.pieces'),
      options: [...numbers(tube.pieces.length).map((number) => named('middle', number)), named('along')],
    },
  ];
  return groups.filter(({ options }) => options.length > 0);
}

/** The places that a list of points goes through, tube by tube: its ends and corners in order. */
export const cornersInOrder = (tubes: readonly Tube[]): readonly TubePlace[] =>
  tubes.flatMap(({ name, closed, bends }) => {
    const corners = numbers(bends).map((number) => place(name, 'corner', number));
    return closed ? corners : [place(name, 'start'), ...corners, place(name, 'finish')];
  });

/**
 * Two ways across a frame that are equal where it is square: from each end to the far corner of a hoop, from corner to
 * corner of a ring; null for a tube that has no such pair.
 */
export function diagonalsOf(tube: Tube): readonly (readonly [TubePlace, TubePlace])[] | null {
  const corner = (number: number): TubePlace => place(tube.name, 'corner', number);
  if (tube.closed && tube.bends === 4)
    return [
      [corner(1), corner(3)],
      [corner(2), corner(4)],
    ];
  if (!tube.closed && tube.bends === 2)
    return [
      [place(tube.name, 'start'), corner(2)],
      [corner(1), place(tube.name, 'finish')],
    ];
  return null;
}

/** A place to begin with on a tube, where none is chosen yet. */
export const firstPlace = (tube: Tube): TubePlace => place(tube.name, tube.closed ? 'corner' : 'start');

/** Another place of the same tube, as far off as it goes. */
export const lastPlace = (tube: Tube): TubePlace =>
  tube.closed ? place(tube.name, 'corner', Math.max(1, Math.ceil(tube.bends / 2) + 1)) : place(tube.name, 'finish');

export const samePlace = (one: TubePlace, other: TubePlace): boolean =>
  one.member === other.member &&
  one.spot === other.spot &&
  (one.spot === 'start' || one.spot === 'finish' || one.spot === 'along' || one.number === other.number) &&
  (one.spot !== 'along' || one.distance === other.distance);
