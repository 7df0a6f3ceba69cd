import { Type, type Static } from 'typebox';
import { Figure, literals } from './figure.ts';

/** What a piece is for: a whole member, one of the lengths that a long member is joined from, a let-in piece, a leg. */
export const PIECE_KINDS = ['member', 'length', 'let-in', 'leg'] as const;

/** A piece that is sawn off a bar: as cut, with all that machine, trim and dressing need, never its finished length. */
export const CutPiece = Type.Object({
  kind: literals(PIECE_KINDS, 'kind of piece'),
  /** Member, leg, or number of the joint of a let-in piece; `part` of `parts` where a member is joined. */
  of: Type.String(),
  part: Type.Integer(),
  parts: Type.Integer(),
  /** As page, sheets and layouts call it; no two pieces of a cut list alike. */
  name: Type.String(),
  field: Type.String(),
  outsideDiameter: Type.Number(),
  wall: Type.Number(),
  grade: Type.String(),
  length: Figure,
  /** How many of it, for one frame. */
  count: Type.Integer(),
});
export type CutPiece = Static<typeof CutPiece>;

/** A piece where it lies on its bar: from the end of the bar as it comes, before it is trimmed [mm]. */
export const PieceOnBar = Type.Object({
  name: Type.String(),
  /** Title of another job; empty: this one. */
  job: Type.String(),
  from: Type.Number(),
  to: Type.Number(),
});
export type PieceOnBar = Static<typeof PieceOnBar>;

/** Bars that are cut alike, with their pieces. The length of each is end trim + pieces + kerfs + offcut. */
export const BarPlan = Type.Object({
  /** Number of the first of them, and how many there are. */
  number: Type.Integer(),
  times: Type.Integer(),
  /** Place in the shop's stock; empty: to be bought. */
  stock: Type.String(),
  name: Type.String(),
  remnant: Type.Boolean(),
  length: Type.Number(),
  heat: Type.String(),
  price: Type.Union([Type.Integer(), Type.Null()]),
  endTrim: Type.Number(),
  pieces: Type.Array(PieceOnBar),
  /** What is left, and whether it is long enough to keep. */
  offcut: Figure,
  kept: Type.Boolean(),
});
export type BarPlan = Static<typeof BarPlan>;

/** The bars for all pieces of one size and grade. */
export const SizeLayout = Type.Object({
  outsideDiameter: Type.Number(),
  wall: Type.Number(),
  grade: Type.String(),
  pieces: Figure,
  /** All cut lengths together [m], and their mass. */
  metres: Figure,
  mass: Figure,
  /**
   * kept: the layout that the job keeps. first-fit: reckoned by laying the longest first into bars as they are bought;
   * none: no bar is known, or a piece is longer than any.
   */
  from: literals(['kept', 'first-fit', 'none'], 'layout'),
  /** Whether no fewer bars (no cheaper ones) can do; for first-fit: as many as the least that could. */
  proven: Type.Boolean(),
  bars: Type.Array(BarPlan),
  /** Fewest bars of that length that could ever do; null for a kept layout. */
  least: Type.Union([Figure, Type.Null()]),
  /** Of all bars: what is cut into pieces, what is kept, what is scrap [percent of length]. */
  used: Figure,
  keptShare: Figure,
  scrap: Figure,
  /** What of the bars' price is this job's, offcuts credited; null while a price is open or by the metre. */
  cost: Type.Union([Figure, Type.Null()]),
});
export type SizeLayout = Static<typeof SizeLayout>;

/** A piece that is longer than any bar there is, and where a joint may stand in it. */
export const OverlongPiece = Type.Object({
  name: Type.String(),
  member: Type.String(),
  length: Figure,
  longest: Figure,
  /** Stretches of straights where a joint may stand, in stations of the frame as wanted; empty: nowhere. */
  joints: Type.Array(Type.Object({ from: Type.Number(), to: Type.Number() })),
  /** The joint that is offered; null where none helps. */
  offered: Type.Union([Type.Number(), Type.Null()]),
  /** Whether that one does: both lengths fit on a bar. Else one does, and what is left is joined again. */
  enough: Type.Boolean(),
});
export type OverlongPiece = Static<typeof OverlongPiece>;

/** Where a joint between bars that the job has may stand, the others staying where they are. */
export const BarJointPlan = Type.Object({
  member: Type.String(),
  field: Type.String(),
  ranges: Type.Array(Type.Object({ from: Type.Number(), to: Type.Number() })),
});
export type BarJointPlan = Static<typeof BarJointPlan>;

/** What is sawn off which bars, for the frame or way that is shown with the legs of the job. */
export const StockPlan = Type.Object({
  pieces: Type.Array(CutPiece),
  sizes: Type.Array(SizeLayout),
  overlong: Type.Array(OverlongPiece),
  /** In the order of the job; a joint on no member is left out. */
  joints: Type.Array(BarJointPlan),
});
export type StockPlan = Static<typeof StockPlan>;
