import type { Reading } from '../../server/job/came-back.ts';
import type { FixingPoint } from '../../server/job/fixing.ts';
import type { TubePlace } from '../../server/job/tube-place.ts';

/** A member that is now counted from its other end. */
export type TurnedTube = {
  readonly member: string;
  /** Which one it is among the members, from 1. */
  readonly index: number;
  readonly closed: boolean;
  readonly bends: number;
  /** True for an arc, false for a straight, from the old start. */
  readonly arcs: readonly boolean[];
  /** Length as wanted [mm]; null where it is not known. */
  readonly length: number | null;
};

/** A place that is the same spot of the tube, named from the other end. */
export function placeReversed(place: TubePlace, tube: TurnedTube): TubePlace {
  if (place.member !== tube.member) return place;
  const bend = tube.bends + 1 - place.number;
  switch (place.spot) {
    case 'start':
      return tube.closed ? place : { ...place, spot: 'finish' };
    case 'finish':
      return tube.closed ? place : { ...place, spot: 'start' };
    case 'corner':
      return bend < 1 ? place : { ...place, number: bend };
    case 'bend-start':
      return bend < 1 ? place : { ...place, spot: 'bend-end', number: bend };
    case 'bend-end':
      return bend < 1 ? place : { ...place, spot: 'bend-start', number: bend };
    case 'middle':
      return { ...place, number: pieceReversed(place.number, tube) };
    case 'along':
      return tube.length === null ? place : { ...place, distance: Math.max(0, tube.length - place.distance) };
  }
}

const pieceReversed = (piece: number, { arcs }: TurnedTube): number =>
  piece > arcs.length ? piece : arcs.length + 1 - piece;

/** The first leg of a tube is its last one from the other end. */
const LEGS: Readonly<Record<string, string>> = {
  'first-leg': 'last-leg',
  'last-leg': 'first-leg',
  'first-leg-of': 'last-leg-of',
  'last-leg-of': 'first-leg-of',
};

/** A reading of the same thing, named from the other end of a tube. */
export function readingReversed(reading: Reading, tube: TurnedTube): Reading {
  switch (reading.reading) {
    case 'size': {
      const ofTube = !reading.check.endsWith('-of') || reading.index === tube.index;
      return ofTube ? { ...reading, check: LEGS[reading.check] ?? reading.check } : reading;
    }
    case 'distance':
      return { ...reading, from: placeReversed(reading.from, tube), to: placeReversed(reading.to, tube) };
    case 'piece':
      return reading.member === tube.member ? { ...reading, piece: pieceReversed(reading.piece, tube) } : reading;
    case 'turn': {
      if (reading.member !== tube.member) return reading;
      // a rotation stands at the later of its two arcs, which is the other one now; its sign stays
      const before = tube.arcs.slice(0, reading.piece - 1).lastIndexOf(true) + 1;
      const arc = reading.what === 'rotation' && before > 0 ? before : reading.piece;
      return { ...reading, piece: pieceReversed(arc, tube) };
    }
    case 'bevel': {
      // where one of the two directions is turned round, the angle between them is what was left to a straight line
      const isOne = (reading.from.member === tube.member) !== (reading.to.member === tube.member);
      const value = isOne && reading.value !== null ? 180 - reading.value : reading.value;
      return { ...reading, from: placeReversed(reading.from, tube), to: placeReversed(reading.to, tube), value };
    }
    case 'level': {
      const turned = reading.at.member === tube.member && reading.value !== null && reading.value !== 0;
      return { ...reading, at: placeReversed(reading.at, tube), value: turned ? -(reading.value ?? 0) : reading.value };
    }
    case 'point':
      return { ...reading, at: placeReversed(reading.at, tube) };
  }
}

export const fixingReversed = (fixing: FixingPoint, tube: TurnedTube): FixingPoint => ({
  ...fixing,
  at: placeReversed(fixing.at, tube),
});
