import { Type, type Static } from 'typebox';
import { Direction, SiteName, SitePlace } from './direction.ts';
import { Coordinate, LengthOrZero, PositiveLength } from './quantities.ts';

const Turn = (title: string) => Type.Number({ minimum: -360, maximum: 360, title, unit: 'deg' });

/** A turn about an axis, right-handed, from where a thing stands as typed. */
const Swing = Type.Object(
  { about: SitePlace, axis: Direction, from: Turn('from'), to: Turn('to') },
  { title: 'swing', additionalProperties: false },
);

const Plane = Type.Union(
  [
    Type.Object(
      { by: Type.Literal('normal'), at: SitePlace, normal: Direction },
      { title: 'point and normal', additionalProperties: false },
    ),
    Type.Object(
      {
        by: Type.Literal('points'),
        /** The plane's free side is where these run anticlockwise. */
        points: Type.Array(SiteName('point'), { minItems: 3, maxItems: 3, title: 'three points' }),
      },
      { title: 'through three points', additionalProperties: false },
    ),
  ],
  { title: 'plane by' },
);

/** point: a ball round a place (radius 0: the place alone). plane: solid behind its normal. cylinder: a round thing. */
export const ThingShape = Type.Union(
  [
    Type.Object(
      { shape: Type.Literal('point'), at: SitePlace, radius: LengthOrZero(5000, 'radius') },
      { title: 'point', additionalProperties: false },
    ),
    Type.Object({ shape: Type.Literal('plane'), plane: Plane }, { title: 'plane', additionalProperties: false }),
    Type.Object(
      {
        shape: Type.Literal('cylinder'),
        at: SitePlace,
        axis: Direction,
        diameter: PositiveLength(5000, 'diameter'),
        /** Its ends along the axis, counted from `at`; null: it goes on without end. */
        ends: Type.Union(
          [
            Type.Object(
              { from: Coordinate('from'), to: Coordinate('to') },
              { title: 'ends', additionalProperties: false },
            ),
            Type.Null(),
          ],
          { title: 'ends' },
        ),
      },
      { title: 'cylinder', additionalProperties: false },
    ),
  ],
  { title: 'shape' },
);
export type ThingShape = Static<typeof ThingShape>;

/** Something of the site that tubes stand on, lean against or must keep clear of: a pad, a wall, a post, a rudder head. */
export const SiteThing = Type.Object(
  {
    name: SiteName('name'),
    shape: ThingShape,
    /** Room between it and every tube; null: nothing keeps clear of it (a wall that a leg stands on). */
    clearance: Type.Union([LengthOrZero(1000, 'clearance'), Type.Null()], { title: 'clearance' }),
    swing: Type.Union([Swing, Type.Null()], { title: 'swing' }),
  },
  { title: 'thing', additionalProperties: false },
);
export type SiteThing = Static<typeof SiteThing>;
