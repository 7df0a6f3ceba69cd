import { Type, type Static } from 'typebox';
import { Reading } from '../job/came-back.ts';
import { Figure, literals } from './figure.ts';
import { SlipKey } from './slip.ts';

/** A size that a tape can check after bending, as it ought to be. */
export const ReadingDimension = Type.Object({
  key: Type.String(),
  index: Type.Integer(),
  field: Type.String(),
  reference: literals(['outside', 'centre', 'inside'], 'reference'),
  wanted: Figure,
});
export type ReadingDimension = Static<typeof ReadingDimension>;

/** What one misreading or slip would give at each of the sizes; null where that frame could not be made at all. */
export const ReadingRow = Type.Object({
  slip: SlipKey,
  /** The typed sizes that are read another way; none for a slip at the marks. */
  fields: Type.Array(Type.String()),
  /** Radius of the other die; null for every other slip. */
  dieRadius: Type.Union([Type.Number(), Type.Null()]),
  gets: Type.Array(Type.Union([Figure, Type.Null()])),
  off: Type.Array(Type.Union([Type.Number(), Type.Null()])),
  /** The largest of them without its sign; null where there is none. */
  worst: Type.Union([Type.Number(), Type.Null()]),
  /** What a tape would find on the frame that would come back, to see what putting it right would cost; null: no frame. */
  readings: Type.Union([Type.Array(Reading), Type.Null()]),
});
export type ReadingRow = Static<typeof ReadingRow>;

/** Before anything is bent: what the frame becomes where the sketch is read another way. */
export const ReadingCheck = Type.Object({
  /** At most three: those that tell the misreadings apart best. */
  dimensions: Type.Array(ReadingDimension, { maxItems: 3 }),
  rows: Type.Array(ReadingRow),
});
export type ReadingCheck = Static<typeof ReadingCheck>;
