import { Type, type Static } from 'typebox';
import { Figure, Point, literals } from './figure.ts';
import { PlanPiece, WrapTemplate } from './frame.ts';
import { SlipKey } from './slip.ts';

/** A check dimension as wanted, as it came back, and after the correction, all with the reference it was typed in. */
export const Difference = Type.Object({
  key: Type.String(),
  index: Type.Integer(),
  field: Type.String(),
  reference: literals(['outside', 'centre', 'inside'], 'reference'),
  wanted: Figure,
  cameBack: Figure,
  difference: Figure,
});
export type Difference = Static<typeof Difference>;

/** A slip with what it would have made, and how far that is from the readings. */
export const SlipScore = Type.Object({
  key: SlipKey,
  /** Root mean square of (predicted − measured), in units of the tape's accuracy. */
  misfit: Figure,
  explains: Type.Boolean(),
  predicted: Type.Array(
    Type.Object({ key: Type.String(), index: Type.Integer(), value: Type.Number(), measured: Type.Number() }),
  ),
});
export type SlipScore = Static<typeof SlipScore>;

/** A cut face, measured on the tube as it is, from a point that a tape finds. */
export const JointFace = Type.Object({
  /** Station on the member's centreline from its datum end. */
  station: Figure,
  /** Tilt off square, and the direction (degrees from the outside of the curve) of the longest side. */
  tilt: Figure,
  tiltDirection: Type.Number(),
  /** What the distances start from: the datum end, the near side of the tube that a saddle sits on, or the closing weld. */
  measuredFrom: literals(['datum-end', 'saddle-face', 'closing-weld'], 'measured from'),
  /** Distance along four generators on the tube's surface. */
  generators: Type.Array(
    Type.Object({
      key: literals(['outside', 'top', 'inside', 'bottom'], 'generator'),
      angle: Type.Number(),
      distance: Figure,
    }),
  ),
  /** For the way that the sheets show; null for the others. */
  template: Type.Union([WrapTemplate, Type.Null()]),
});
export type JointFace = Static<typeof JointFace>;

export const Joint = Type.Object({
  number: Type.Integer(),
  member: Type.String(),
  on: literals(['straight', 'die', 'rolled'], 'stands on'),
  faceA: JointFace,
  faceB: JointFace,
  /** Centreline length between the two finished faces. */
  removed: Figure,
  /** Piece that falls out between two saw cuts; nothing where the cuts overlap. */
  scrap: Figure,
  kink: Figure,
  hiLo: Figure,
  hiLoGrade: literals(['good', 'practice', 'standard', 'over'], 'grade of hi-lo'),
  /** Where the closed joint stands in the corrected frame. */
  point: Point,
});
export type Joint = Static<typeof Joint>;

export const WAY_KEYS = ['leave', 'rebend', 'splice-one', 'splice-two', 'splice-turned', 'new-frame'] as const;
export const WayKey = literals(WAY_KEYS, 'way');
export type WayKey = (typeof WAY_KEYS)[number];

/** Turn of one existing bend. */
export const RebendRow = Type.Object({
  member: Type.String(),
  bend: Type.Integer(),
  turn: Figure,
  from: Figure,
  to: Figure,
});

/** A foot that is cut back so that its leg has the wanted length. */
export const Trim = Type.Object({ member: Type.String(), end: literals(['start', 'finish'], 'end'), length: Figure });

/** One way of putting the frame right. All ways have the same columns. */
export const Way = Type.Object({
  key: WayKey,
  possible: Type.Boolean(),
  /** Stops that keep it from being possible, by finding code. */
  reasons: Type.Array(Type.String()),
  /** Largest distance of a foot from where it is wanted, the frame laid on the wanted one as well as it goes. */
  footMisfit: Figure,
  /** Largest distance of a corner. */
  cornerMisfit: Figure,
  toe: Figure,
  largestKink: Figure,
  largestHiLo: Figure,
  welds: Figure,
  purgeSetups: Figure,
  purgeGas: Figure,
  minutes: Type.Union([Figure, Type.Null()]),
  /** Minor units; null while a rate that it needs is open. */
  cost: Type.Union([Figure, Type.Null()]),
  /** Sum of the lines that have a rate: what it costs at least while others stand open. */
  costAtLeast: Figure,
  /** Check dimensions after the correction. */
  after: Type.Array(Difference),
  joints: Type.Array(Joint),
  rebends: Type.Array(RebendRow),
  trims: Type.Array(Trim),
  /** The corrected frame, for drawing. */
  members: Type.Array(Type.Object({ name: Type.String(), pieces: Type.Array(PlanPiece) })),
  /** No other possible way is at least as good in every column and better in one. */
  unbeaten: Type.Boolean(),
});
export type Way = Static<typeof Way>;

/** A member as it came back. */
export const ReturnedMember = Type.Object({
  name: Type.String(),
  closed: Type.Boolean(),
  developedLength: Figure,
  pieces: Type.Array(PlanPiece),
});
export type ReturnedMember = Static<typeof ReturnedMember>;

export const CorrectionPlan = Type.Object({
  members: Type.Array(ReturnedMember),
  differences: Type.Array(Difference),
  slips: Type.Array(SlipScore),
  ways: Type.Array(Way),
  recommended: Type.Union([WayKey, Type.Null()]),
  /** Why, as a language key with its data. */
  reason: Type.Object({
    key: Type.String(),
    data: Type.Record(Type.String(), Type.Union([Type.Number(), Type.String()])),
  }),
  /** What the sheets show: the user's choice where it is possible, else the recommended way. */
  chosen: Type.Union([WayKey, Type.Null()]),
});
export type CorrectionPlan = Static<typeof CorrectionPlan>;
