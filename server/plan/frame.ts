import { Type, type Static } from 'typebox';
import { BendRow } from './bending.ts';
import { Figure, Point, literals } from './figure.ts';
import { MemberMaking } from './making.ts';
import { ReadingCheck } from './reading-check.ts';

/** A piece of a member's centreline, for drawing in space. Arcs turn right-handed about `normal` at `centre`. */
export const PlanPiece = Type.Union([
  Type.Object({ kind: Type.Literal('straight'), from: Point, to: Point, length: Type.Number() }),
  Type.Object({
    kind: Type.Literal('arc'),
    from: Point,
    to: Point,
    centre: Point,
    normal: Point,
    radius: Type.Number(),
    /** Degrees. */
    angle: Type.Number(),
    length: Type.Number(),
    made: literals(['die', 'rolled'], 'made'),
  }),
]);
export type PlanPiece = Static<typeof PlanPiece>;

/** A template's stations: angle round the tube, girth on the outside, ordinates of the outer and inner surface. */
export const TemplateStation = Type.Object({
  /** Degrees from the named generator; for a hole round the branch, from the side of the acute angle. */
  angle: Type.Number(),
  /** Along the paper [mm]; the paper's thickness is in it. */
  girth: Type.Number(),
  /** From the reference ring along the tube, positive towards the far end [mm]. */
  outer: Type.Number(),
  inner: Type.Number(),
  /** The line to cut to. */
  cut: Type.Number(),
  /** The second line to cut to: face B of a wedge or a dart; null for the others. */
  second: Type.Union([Type.Number(), Type.Null()]),
});
export type TemplateStation = Static<typeof TemplateStation>;

/** A plane, a saddle, the two planes of a wedge or a dart on one wrap, and the hole in a main under a saddle. */
const WRAP_KINDS = ['plane', 'saddle', 'plane-on-arc', 'wedge', 'dart', 'hole'] as const;

/** A wrap for one tube end or face, for both faces of a joint, or for a hole, at 1:1. */
export const WrapTemplate = Type.Object({
  key: Type.String(),
  kind: literals(WRAP_KINDS, 'cut'),
  member: Type.String(),
  /** start, finish; joint number with side A or B; 'joint 1' alone for a wedge or a dart; 'hole 1' on the main. */
  place: Type.String(),
  /** Circumference of the paper [mm]. */
  wrapLength: Type.Number(),
  /** Lowest and highest ordinate [mm]. */
  low: Type.Number(),
  high: Type.Number(),
  /** Distance of the reference ring (ordinate 0) from the member's datum end along the centreline [mm]. */
  ringStation: Type.Number(),
  /** Where the scrap is: on one side of the line, between the two lines, or inside the closed line of a hole. */
  scrap: literals(['start', 'finish', 'between', 'inside'], 'scrap side'),
  /** Generator of the tube that the left edge of the paper lies on [degrees from the outside]; not 0 for a hole alone. */
  edge: Type.Number(),
  /** The coarse table that is printed (16 or 24 stations). */
  stations: Type.Array(TemplateStation),
  /** The fine curve that is drawn: pairs of girth and ordinate. Closed for a hole. */
  curve: Type.Array(Type.Tuple([Type.Number(), Type.Number()])),
  /** The other line of a wedge or a dart, face B; null for the others. */
  second: Type.Union([Type.Array(Type.Tuple([Type.Number(), Type.Number()])), Type.Null()]),
  /** A dart's wall that is not cut: its middle and width along the girth [mm]; null for the others. */
  hinge: Type.Union([Type.Object({ girth: Type.Number(), width: Type.Number() }), Type.Null()]),
});
export type WrapTemplate = Static<typeof WrapTemplate>;

export const MemberEndPlan = Type.Object({
  kind: literals(['free', 'saddle', 'closed'], 'end'),
  onto: Type.Union([Type.String(), Type.Null()]),
  point: Point,
  /** Saddle: angle between the two axes and offset of the axes. */
  angle: Type.Union([Type.Number(), Type.Null()]),
  offset: Type.Union([Type.Number(), Type.Null()]),
});

export const MemberPlan = Type.Object({
  name: Type.String(),
  closed: Type.Boolean(),
  start: MemberEndPlan,
  finish: MemberEndPlan,
  pieces: Type.Array(PlanPiece),
  developedLength: Figure,
  cutLength: Figure,
  mass: Figure,
  bends: Type.Array(BendRow),
  lastStraight: Figure,
  making: MemberMaking,
  templates: Type.Array(WrapTemplate),
});
export type MemberPlan = Static<typeof MemberPlan>;

/** A size of the whole frame that a tape can check; `key` names it in the language catalogue. */
export const CheckDimension = Type.Object({
  key: Type.String(),
  /** Which one where there are several (inner crossbar 1, 2 …); 0 where there is one. */
  index: Type.Integer(),
  /** Job field that it answers, or empty. */
  field: Type.String(),
  /** How the size was typed. */
  reference: literals(['outside', 'centre', 'inside'], 'reference'),
  outside: Figure,
  centre: Figure,
  inside: Figure,
  /** ± that the tolerance class of the job allows; null where it has no row for the size. */
  allowed: Type.Union([Figure, Type.Null()]),
  /** Over the outside with the thinnest and the thickest tube of its tolerance; null where the tolerance is not known. */
  worstTube: Type.Union([Type.Object({ least: Figure, most: Figure }), Type.Null()]),
});
export type CheckDimension = Static<typeof CheckDimension>;

export const FramePlan = Type.Object({
  members: Type.Array(MemberPlan),
  checks: Type.Array(CheckDimension),
  readingCheck: Type.Union([ReadingCheck, Type.Null()]),
  mass: Figure,
  tubeLength: Figure,
  planar: Type.Boolean(),
});
export type FramePlan = Static<typeof FramePlan>;
