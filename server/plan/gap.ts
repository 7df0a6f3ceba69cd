import { Type, type Static } from 'typebox';
import { Figure, Point, literals } from './figure.ts';

/** Room between a thing of the site and one tube, where it is least over all that swings; negative: they overlap. */
export const GapRow = Type.Object({
  of: literals(['member', 'leg'], 'of'),
  name: Type.String(),
  /** Job field of a leg, which may share its name with another; empty for a member. */
  field: Type.String(),
  /** Surface to surface. */
  gap: Figure,
  /** On the tube's centreline, from its datum end (a leg's: from its foot), and the nearest place of the thing (its axis, its centre, its plane). */
  station: Figure,
  onTube: Point,
  onThing: Point,
  /** How far the thing and the frame have swung there; null where they do not. */
  thingSwing: Type.Union([Figure, Type.Null()]),
  frameSwing: Type.Union([Figure, Type.Null()]),
});
export type GapRow = Static<typeof GapRow>;

export const GapPlan = Type.Object({
  thing: Type.String(),
  field: Type.String(),
  /** Room that is asked for. */
  clearance: Figure,
  /** Least gap first. */
  rows: Type.Array(GapRow),
  /** A cylinder through the frame's plane: the ellipse that it makes there; null where it makes none. */
  ellipse: Type.Union([Type.Object({ long: Figure, short: Figure, tilt: Figure }), Type.Null()]),
  /** Kept clear of by the ways to put the frame right, where it stands and where it comes nearest. */
  keptClear: Type.Boolean(),
});
export type GapPlan = Static<typeof GapPlan>;
