import { cornerTangent } from '../geometry/bend-table.ts';
import type { Centreline, Piece } from '../geometry/centreline.ts';
import { relay } from '../geometry/slice.ts';

/**
 * A member whose apex distances were laid along the straight tube and taken for the start, or the middle, of each
 * bend. The last straight is what is left of the bar. Null where bends stand at an end or follow each other at once.
 */
export function wrongMarks(planned: Centreline, mark: 'start' | 'middle', spareLength: number): Centreline | null {
  const { pieces } = planned;
  const bends = dieBends(pieces);
  // without tube between two bends, or after the last, there is nothing that the slip could take it from
  if (bends.some((bend) => bends.includes(bend + 1)) || bends.at(-1) === pieces.length - 1 || bends[0] === 0)
    return null;
  const tangent = (index: number | undefined) => (index === undefined ? 0 : tangentOf(pieces[index]));
  const half = (index: number | undefined) =>
    mark === 'middle' && index !== undefined ? (pieces[index]?.length ?? 0) / 2 : 0;
  // tube from one bend's end to the next one's start, between bend number `order − 1` and `order`
  const growth = (order: number) => {
    const before = bends[order - 1];
    const after = bends[order];
    const used = before === undefined ? 0 : (pieces[before]?.length ?? 0) - half(before);
    return tangent(before) + tangent(after) - half(after) - used;
  };
  let order = 0;
  let grown = 0;
  const last = pieces.length - 1;
  return relay(planned, (piece, index) => {
    const unchanged = { length: piece.length, angle: piece.kind === 'arc' ? piece.angle : 0 };
    if (bends.includes(index)) {
      order += 1;
      return unchanged;
    }
    if (index === last) return { length: piece.length - grown + spareLength, angle: 0 };
    const isLastBefore = bends[order] === index + 1;
    if (!isLastBefore) return unchanged;
    const more = growth(order);
    grown += more;
    if (piece.kind === 'arc') return { length: piece.length + more, angle: piece.angle + more / piece.radius };
    return { length: piece.length + more, angle: 0 };
  });
}

/**
 * A member bent to the wanted angles instead of further: each bend opens by its springback, and uses less tube.
 *
 * @param released what is left of an angle that the machine was told [rad]
 */
export function withoutOverbend(planned: Centreline, released: (told: number) => number): Centreline {
  let left = 0;
  return relay(planned, (piece) => {
    if (piece.kind === 'arc' && piece.made === 'die') {
      const angle = Math.max(0, released(piece.angle));
      left += piece.radius * (piece.angle - angle);
      return { length: piece.radius * angle, angle };
    }
    const length = piece.length + left;
    left = 0;
    return { length, angle: piece.kind === 'arc' ? length / piece.radius : 0 };
  });
}

/** A member sawn to the sum of its apex distances: all that a bend saves is left on the last leg. */
export function cutToApexes(planned: Centreline): Centreline {
  const { pieces } = planned;
  const spare = pieces.reduce((sum, piece) => sum + (isDieBend(piece) ? 2 * tangentOf(piece) - piece.length : 0), 0);
  return relay(planned, (piece, index) => ({
    length: piece.kind === 'straight' && index === pieces.length - 1 ? piece.length + spare : piece.length,
    angle: piece.kind === 'arc' ? piece.angle : 0,
  }));
}

/** A member bent with the planned start marks on a die that leaves another radius [mm]: each bend uses more tube or less. */
export function onOtherDie(planned: Centreline, radius: number, ofDie: (piece: Piece) => boolean): Centreline {
  let owed = 0;
  return relay(planned, (piece) => {
    if (piece.kind === 'arc' && ofDie(piece)) {
      owed += (radius - piece.radius) * piece.angle;
      return { length: radius * piece.angle, angle: piece.angle, radius };
    }
    const length = piece.length - owed;
    owed = 0;
    return { length, angle: piece.kind === 'arc' ? length / piece.radius : 0 };
  });
}

const isDieBend = (piece: Piece): boolean => piece.kind === 'arc' && piece.made === 'die';

const dieBends = (pieces: readonly Piece[]): number[] =>
  pieces.flatMap((piece, index) => (isDieBend(piece) ? [index] : []));

/** R tan(θ/2) of a die bend that has a corner [mm], else 0. */
const tangentOf = (piece: Piece | undefined): number => (piece?.kind === 'arc' ? cornerTangent(piece) : 0);
