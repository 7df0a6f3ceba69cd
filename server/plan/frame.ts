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
  /** Degrees from the named generator. */
  angle: Type.Number(),
  /** Along the paper [mm]; the paper's thickness is in it. */
  girth: Type.Number(),
  /** From the reference ring along the tube, positive towards the far end [mm]. */
  outer: Type.Number(),
  inner: Type.Number(),
  /** The line to cut to. */
  cut: Type.Number(),
});
export type TemplateStation = Static<typeof TemplateStation>;

/** A wrap for one tube end or face, at 1:1. */
export const WrapTemplate = Type.Object({
  key: Type.String(),
  kind: literals(['plane', 'saddle', 'plane-on-arc'], 'cut'),
  member: Type.String(),
  /** Which end or face: start, finish, or joint number with side A or B. */
  place: Type.String(),
  /** Circumference of the paper [mm]. */
  wrapLength: Type.Number(),
  /** Lowest and highest ordinate [mm]. */
  low: Type.Number(),
  high: Type.Number(),
  /** Distance of the reference ring (ordinate 0) from the member's datum end along the centreline [mm]. */
  ringStation: Type.Number(),
  /** On which side of the line the scrap is. */
  scrap: literals(['start', 'finish'], 'scrap side'),
  /** The coarse table that is printed (16 or 24 stations). */
  stations: Type.Array(TemplateStation),
  /** The fine curve that is drawn: pairs of girth and ordinate. */
  curve: Type.Array(Type.Tuple([Type.Number(), Type.Number()])),
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
