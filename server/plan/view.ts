import { Type, type Static } from 'typebox';
import { Point, literals } from './figure.ts';

/** A point on the drawing [mm at full size], y up. */
export const FlatPoint = Type.Tuple([Type.Number(), Type.Number()]);
export type FlatPoint = Static<typeof FlatPoint>;

/** One member as drawn: the two edges of the tube, its ends, and its centreline. */
export const ViewMember = Type.Object({
  member: Type.String(),
  edges: Type.Array(Type.Array(FlatPoint)),
  centreline: Type.Array(FlatPoint),
  /** How far along the member from its datum end each point of the centreline stands [mm], where one can point at it. */
  stations: Type.Optional(Type.Array(Type.Number())),
});
export type ViewMember = Static<typeof ViewMember>;

/** wanted: ink line. came-back: as the tape found it. corrected: after the chosen way. scrap: what is cut out. */
export const ViewLayer = Type.Object({
  role: literals(['wanted', 'came-back', 'corrected', 'scrap'], 'layer'),
  members: Type.Array(ViewMember),
});
export type ViewLayer = Static<typeof ViewLayer>;

/** A dimension line. `from` and `to` are the measured points, `line` the ends of the dimension line itself. */
export const ViewDimension = Type.Object({
  /** Job field that a person types it in; empty: derived. */
  field: Type.String(),
  /** Language key of its name, with an index where there are several. */
  key: Type.String(),
  index: Type.Integer(),
  layer: literals(['wanted', 'came-back', 'corrected'], 'layer'),
  from: FlatPoint,
  to: FlatPoint,
  line: Type.Tuple([FlatPoint, FlatPoint]),
  value: Type.Number(),
  unit: literals(['mm', 'deg'], 'unit'),
  radius: Type.Boolean(),
});
export type ViewDimension = Static<typeof ViewDimension>;

/** A marked spot: a foot, an end, a joint, feed, vent, dam or plug. */
export const ViewMark = Type.Object({
  kind: literals(['end', 'bend', 'joint', 'feed', 'vent', 'dam', 'plug'], 'mark'),
  label: Type.String(),
  layer: literals(['wanted', 'came-back', 'corrected'], 'layer'),
  at: FlatPoint,
  /** Direction out of the tube, unit vector. */
  towards: FlatPoint,
});
export type ViewMark = Static<typeof ViewMark>;

/** A way of the gas through a chamber, from the feed on; or bore that no gas runs through. */
export const ViewGas = Type.Object({
  chamber: Type.Integer(),
  flows: Type.Boolean(),
  layer: literals(['wanted', 'came-back'], 'layer'),
  line: Type.Array(FlatPoint),
});
export type ViewGas = Static<typeof ViewGas>;

export const View = Type.Object({
  key: literals(['face', 'top', 'side', 'pictorial'], 'view'),
  /** Unit vectors of the frame's own axes that run to the right and up on the drawing; right × up points at the reader. */
  right: Point,
  up: Point,
  /** left, bottom, right, top of everything drawn [mm]. */
  bounds: Type.Tuple([Type.Number(), Type.Number(), Type.Number(), Type.Number()]),
  layers: Type.Array(ViewLayer),
  dimensions: Type.Array(ViewDimension),
  marks: Type.Array(ViewMark),
  gas: Type.Array(ViewGas),
});
export type View = Static<typeof View>;
