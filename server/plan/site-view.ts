import { Type, type Static } from 'typebox';
import { Point, literals } from './figure.ts';
import { FlatPoint, ViewMember } from './view.ts';

/**
 * The site as seen square to the structure's axes, and from one corner. from-starboard looks to port (ahead is right),
 * from-back looks ahead (port is left), from-above looks down (ahead is up).
 */
export const SiteView = Type.Object({
  key: literals(['from-starboard', 'from-back', 'from-above', 'pictorial'], 'site view'),
  /** Unit vectors of the structure's axes that run to the right and up on the drawing; right × up points at the reader. */
  right: Point,
  up: Point,
  /** left, bottom, right, top of everything drawn [mm]. */
  bounds: Type.Tuple([Type.Number(), Type.Number(), Type.Number(), Type.Number()]),
  members: Type.Array(ViewMember),
  /** In the order of the legs of the Job; a leg that cannot be told is left out, so that each bears its Job field. */
  legs: Type.Array(Type.Object({ ...ViewMember.properties, field: Type.String() })),
  /**
   * Outline of what stands there, closed where its first point is its last; a swung end position is drawn too. What has
   * no end, or a far one, is cut a little beyond the frame, and ends in a break mark. A swung tube of the frame has no field.
   */
  things: Type.Array(
    Type.Object({
      name: Type.String(),
      field: Type.String(),
      swung: Type.Boolean(),
      lines: Type.Array(Type.Array(FlatPoint)),
    }),
  ),
  points: Type.Array(Type.Object({ name: Type.String(), field: Type.String(), at: FlatPoint })),
  /** Where each leg stands, by the leg's field: a short line in its surface. */
  feet: Type.Array(Type.Object({ field: Type.String(), at: FlatPoint, surface: Type.Tuple([FlatPoint, FlatPoint]) })),
  hinge: Type.Union([Type.Tuple([FlatPoint, FlatPoint]), Type.Null()]),
  /** What is level now, across the drawing; null where one looks along it from above. */
  level: Type.Union([Type.Tuple([FlatPoint, FlatPoint]), Type.Null()]),
  /** The least gap to each thing, surface to surface. */
  gaps: Type.Array(
    Type.Object({
      thing: Type.String(),
      /** Of the thing. */
      field: Type.String(),
      from: FlatPoint,
      to: FlatPoint,
      value: Type.Number(),
    }),
  ),
});
export type SiteView = Static<typeof SiteView>;
