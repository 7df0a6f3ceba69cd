import { RADIANS } from '../geometry/angle.ts';
import type { ArcPiece, Piece } from '../geometry/centreline.ts';

/** In what a frame can have come back otherwise. All are deviations from the wanted frame [mm, rad]. */
export type Parameter = {
  readonly member: number;
  readonly what:
    | 'length'
    | 'angle'
    | 'bow'
    | 'rotation'
    | 'radius'
    | 'along-partner'
    | 'out-of-level'
    | 'turn-x'
    | 'turn-y'
    | 'turn-z'
    | 'shift-x'
    | 'shift-y'
    | 'shift-z';
  readonly piece: number;
  /** How far off it may be before a reading is needed to say so; a reading outweighs it [mm, rad]. */
  readonly size: number;
  /** How far off it is where no reading says anything about it [mm, rad]. */
  readonly scatter: number;
  /** No smaller than this. */
  readonly low: number;
};

/** What is known of the shop: scatter of angles and of planes [rad], of lengths [mm]. */
export type Scatter = { readonly angle: number; readonly plane: number; readonly length: number };

/**
 * A machine holds its angles far better than people lay out lengths, so where readings leave the choice a length is
 * doubted first: a die bend counts as 1 degree off where a length counts as 100 mm off. Our own choice.
 */
const BEND = RADIANS;

/** Our own choice for all of these: wide enough not to hold a reading. */
const WIDE = { length: 100, angle: 10 * RADIANS, radius: 50 } as const;

/**
 * A rolled tube keeps its radius unless a reading says otherwise: its bow counts as this much off [mm] where a die bend
 * counts as 1 degree off, so that legs that splay are put down to the bends. Our own choice.
 */
const BOW = 1;

/** A saddle member set down somewhere else is set down level to the eye: out of it by this [mm]; our own choice. */
const LEVEL = 10;

/** An arc never turns by less than this [rad]: it would be a straight. */
const LEAST_ANGLE = 1e-4;

const make = (
  member: number,
  what: Parameter['what'],
  piece: number,
  size: number,
  scatter: number,
  low = Number.NEGATIVE_INFINITY,
): Parameter => ({ member, what, piece, size, scatter, low });

/** Lengths, angles and rotations of a chain of pieces. */
export function chainParameters(
  member: number,
  pieces: readonly Piece[],
  of: { scatter: Scatter; closed: boolean; flat: boolean; freeRadii: ReadonlySet<number> },
): Parameter[] {
  const { scatter } = of;
  const firstArc = pieces.findIndex(({ kind }) => kind === 'arc');
  return pieces.flatMap((piece, index): Parameter[] => {
    if (piece.kind === 'straight') {
      // a closed tube begins and ends within one straight: both halves are one length
      const second = of.closed && index === pieces.length - 1 && pieces[0]?.kind === 'straight';
      return second ? [] : [make(member, 'length', index, WIDE.length, scatter.length)];
    }
    const turn = of.flat || index === firstArc ? [] : [make(member, 'rotation', index, WIDE.angle, scatter.plane)];
    return [...turn, ...arcParameters(member, index, piece, scatter, of.freeRadii.has(index))];
  });
}

function arcParameters(
  member: number,
  index: number,
  arc: ArcPiece,
  scatter: Scatter,
  freeRadius: boolean,
): Parameter[] {
  const low = LEAST_ANGLE - arc.angle;
  if (arc.made === 'die') {
    const angle = make(member, 'angle', index, BEND, scatter.angle, low);
    return freeRadius ? [angle, make(member, 'radius', index, WIDE.radius, scatter.length, 1 - arc.radius)] : [angle];
  }
  // bow of a flat arc: L θ / 8
  const bow = Math.min((8 * BOW) / arc.length, WIDE.angle);
  return [
    make(member, 'length', index, WIDE.length, scatter.length, 1 - arc.length),
    make(member, 'bow', index, bow, Math.min(scatter.angle, bow), low),
  ];
}

/** Where a member stands that sits on no other: shifts and turns, in the plane where the frame is flat. */
export function standParameters(member: number, flat: boolean, scatter: Scatter): Parameter[] {
  const shifts = flat ? (['shift-x', 'shift-y'] as const) : (['shift-x', 'shift-y', 'shift-z'] as const);
  return [
    ...shifts.map((what) => make(member, what, 0, WIDE.length, scatter.length)),
    ...turnParameters(member, flat, scatter),
  ];
}

/** How a member leans that sits on one other: turns about its seat. */
export const turnParameters = (member: number, flat: boolean, scatter: Scatter): Parameter[] =>
  (flat ? (['turn-z'] as const) : (['turn-x', 'turn-y', 'turn-z'] as const)).map((what) =>
    make(member, what, 0, WIDE.angle, scatter.angle),
  );

/** Where its seats stand on the partners; a member between two of them stays level unless a reading says otherwise. */
export function seatParameters(member: number, two: boolean, level: boolean, scatter: Scatter): Parameter[] {
  const along = make(member, 'along-partner', 0, WIDE.length, scatter.length);
  return two ? [along, make(member, 'out-of-level', 0, level ? LEVEL : WIDE.length, scatter.length)] : [along];
}
