import { Type, type Static } from 'typebox';
import { Direction, SiteName, SitePlace } from './direction.ts';
import { LengthOrZero, PositiveLength } from './quantities.ts';
import { TubePlace } from './tube-place.ts';

/** A plate under the foot, welded to the leg, that lies flat on the surface; 0: none. */
const PlateUnder = LengthOrZero(100, 'plate under the foot');

/**
 * mitre: cut along the surface. square: cut square, so that it touches a surface that is not square to it with one side
 * only. socket: it goes into something by so much beyond the foot point.
 */
export const FootEnd = Type.Union(
  [
    Type.Object({ end: Type.Literal('mitre'), plate: PlateUnder }, { title: 'mitred', additionalProperties: false }),
    Type.Object({ end: Type.Literal('square'), plate: PlateUnder }, { title: 'square', additionalProperties: false }),
    Type.Object(
      { end: Type.Literal('socket'), depth: LengthOrZero(1000, 'depth of the socket') },
      { title: 'in a socket', additionalProperties: false },
    ),
  ],
  { title: 'foot end' },
);
export type FootEnd = Static<typeof FootEnd>;

/** saddle: shaped to sit on the tube. eye: a fitting takes so much of the leg from the tube's centreline. */
export const HeadEnd = Type.Union(
  [
    Type.Object({ end: Type.Literal('saddle') }, { title: 'saddle', additionalProperties: false }),
    Type.Object(
      { end: Type.Literal('eye'), takes: LengthOrZero(1000, 'fitting takes') },
      { title: 'fitting', additionalProperties: false },
    ),
  ],
  { title: 'head end' },
);
export type HeadEnd = Static<typeof HeadEnd>;

/** A place on a tube of the frame, or a point of the site that must lie on one. */
const HeadPlace = Type.Union(
  [TubePlace, Type.Object({ named: SiteName('point') }, { title: 'named point', additionalProperties: false })],
  { title: 'place on the frame' },
);
export type HeadPlace = Static<typeof HeadPlace>;

const Held = (title: string) => Type.Union([Type.Literal('pinned'), Type.Literal('fixed')], { title });

/** A straight tube that carries the frame. */
export const Leg = Type.Object(
  {
    name: SiteName('name'),
    foot: Type.Object(
      { at: SitePlace, surface: Direction, end: FootEnd, held: Held('foot held') },
      { title: 'foot', additionalProperties: false },
    ),
    head: Type.Object(
      { at: HeadPlace, end: HeadEnd, held: Held('head held') },
      { title: 'head', additionalProperties: false },
    ),
    /** null: as the frame's. */
    tube: Type.Union(
      [
        Type.Object(
          { outsideDiameter: PositiveLength(500, 'outside diameter'), wall: PositiveLength(50, 'wall') },
          { title: 'tube of the leg', additionalProperties: false },
        ),
        Type.Null(),
      ],
      { title: 'tube of the leg' },
    ),
    /** A thread or a slip piece in the leg: what it adds in its middle position, and its travel either way. */
    adjust: Type.Union(
      [
        Type.Object(
          {
            by: Type.Union([Type.Literal('thread'), Type.Literal('slip')], { title: 'adjusted by' }),
            adds: LengthOrZero(2000, 'adds in the middle'),
            travel: PositiveLength(2000, 'travel either way'),
          },
          { title: 'adjustment', additionalProperties: false },
        ),
        Type.Null(),
      ],
      { title: 'adjustment' },
    ),
  },
  { title: 'leg', additionalProperties: false },
);
export type Leg = Static<typeof Leg>;
