import { cornerTangent } from '../geometry/bend-table.ts';
import { isDieBend, type Centreline, type Piece } from '../geometry/centreline.ts';
import { relay } from '../geometry/slice.ts';

/**
 * A member whose apex distances were laid along the straight tube and taken for the start, or the middle, of each
 * bend. The last straight is what is left of the bar. Null where bends stand at an end or follow each other at once.
 */
export function wrongMarks(planned: Centreline, mark: 'start' | 'middle', spareLength: number): Centreline | null {
  const { pieces } = planned;
  const bends = dieBends(pieces);
  if (!haveTubeBetween(pieces, bends)) return null;
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
    if (bends.includes(index)) {
      order += 1;
      return asPlanned(piece);
    }
    if (index === last) return { length: piece.length - grown + spareLength, angle: 0 };
    const isLastBefore = bends[order] === index + 1;
    if (!isLastBefore) return asPlanned(piece);
    const more = growth(order);
    grown += more;
    return lengthened(piece, more);
  });
}

/**
 * A member told other angles than it ought to be, from the planned start marks. Bent to the wanted angles instead of
 * further, each bend opens by its springback and uses less tube; overbent twice over it closes and uses more.
 *
 * @param made angle that comes out where one is wanted [rad]
 */
export function withAngles(planned: Centreline, made: (wanted: number) => number): Centreline {
  let left = 0;
  return relay(planned, (piece) => {
    if (isDieBend(piece)) {
      const angle = Math.max(0, made(piece.angle));
      left += piece.radius * (piece.angle - angle);
      return { length: piece.radius * angle, angle };
    }
    const length = piece.length + left;
    left = 0;
    return { length, angle: piece.kind === 'arc' ? length / piece.radius : 0 };
  });
}

/**
 * A member whose bends were made on the other side of their marks: each ends where it ought to begin, so that the first
 * leg is shorter by an arc and the last one longer.
 *
 * @returns null where a bend stands at an end or bends follow each other at once
 */
export function startsAsEnds(planned: Centreline): Centreline | null {
  const { pieces } = planned;
  const bends = dieBends(pieces);
  if (!haveTubeBetween(pieces, bends)) return null;
  let order = 0;
  return relay(planned, (piece, index) => {
    if (bends.includes(index)) order += 1;
    const [before, after] = [bends[order - 1], bends[order]];
    const isLastBefore = after === undefined ? index === pieces.length - 1 : after === index + 1;
    if (bends.includes(index) || !isLastBefore) return asPlanned(piece);
    const arc = (bend: number | undefined): number => (bend === undefined ? 0 : (pieces[bend]?.length ?? 0));
    return lengthened(piece, arc(before) - arc(after));
  });
}

/**
 * A member marked and sawn as if its bends did not grow, or grew twice over: each bend is followed by so much more tube,
 * or less, than wanted.
 *
 * @param growth what a bend of an angle [rad] is longer by than the tube that it takes [mm]; negative: counted twice
 */
export function withStretch(planned: Centreline, growth: (angle: number) => number): Centreline {
  let owed = 0;
  return relay(planned, (piece) => {
    if (isDieBend(piece)) {
      owed += growth(piece.angle);
      return asPlanned(piece);
    }
    const more = owed;
    owed = 0;
    return lengthened(piece, more);
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

type Laid = { readonly length: number; readonly angle: number };

const asPlanned = (piece: Piece): Laid => ({ length: piece.length, angle: piece.kind === 'arc' ? piece.angle : 0 });

/** A piece between bends made longer [mm]: a rolled one keeps its radius. */
const lengthened = (piece: Piece, more: number): Laid => ({
  length: piece.length + more,
  angle: piece.kind === 'arc' ? piece.angle + more / piece.radius : 0,
});

/** Without tube between two bends, or before the first, or after the last, there is nothing that a slip could take it from. */
const haveTubeBetween = (pieces: readonly Piece[], bends: readonly number[]): boolean =>
  !bends.some((bend) => bends.includes(bend + 1)) && bends.at(-1) !== pieces.length - 1 && bends[0] !== 0;

const dieBends = (pieces: readonly Piece[]): number[] =>
  pieces.flatMap((piece, index) => (isDieBend(piece) ? [index] : []));

/** R tan(θ/2) of a die bend that has a corner [mm], else 0. */
const tangentOf = (piece: Piece | undefined): number => (piece?.kind === 'arc' ? cornerTangent(piece) : 0);
