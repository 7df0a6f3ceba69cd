import { Type, type Static } from 'typebox';
import { SiteName, SitePlace } from './direction.ts';
import { Coordinate, Vector } from './quantities.ts';
import { TubePlace } from './tube-place.ts';

/** Where the frame stands in the structure's axes, by its own axes, or by places of it that lie on points of the site. */
export const Placing = Type.Union(
  [
    Type.Object(
      {
        by: Type.Literal('axes'),
        /** Where the frame's origin lies. */
        origin: SitePlace,
        /** Which way its x and y run; y is squared to x. */
        x: Vector('x of the frame'),
        y: Vector('y of the frame'),
      },
      { title: 'by its axes', additionalProperties: false },
    ),
    Type.Object(
      {
        by: Type.Literal('points'),
        pairs: Type.Array(
          Type.Object(
            { at: TubePlace, point: SiteName('lies on point') },
            { title: 'place and point', additionalProperties: false },
          ),
          { minItems: 3, maxItems: 20, title: 'places and points' },
        ),
      },
      { title: 'by points', additionalProperties: false },
    ),
  ],
  { title: 'placing' },
);
export type Placing = Static<typeof Placing>;

const To = Type.Union([Type.Literal('level'), Type.Literal('structure')], { title: 'against' });

/** How far a direction of the frame rises. */
export const Slope = Type.Object(
  {
    /** In the frame's own axes. */
    along: Vector('along'),
    angle: Type.Number({ minimum: -89, maximum: 89, title: 'slope', unit: 'deg' }),
    /** Against what is level now, or against the structure's own x-y plane. */
    to: To,
  },
  { title: 'slope', additionalProperties: false },
);
export type Slope = Static<typeof Slope>;

const Turn = (title: string) => Type.Number({ minimum: -360, maximum: 360, title, unit: 'deg' });

/** How the frame is to stand: what holds it, at what slope, how high. What is not asked for stays as placed. */
export const Standing = Type.Object(
  {
    /** Two places of the frame on the line that it turns about; null: it is carried by its legs alone. */
    hinge: Type.Union(
      [Type.Object({ from: TubePlace, to: TubePlace }, { title: 'hinge', additionalProperties: false }), Type.Null()],
      { title: 'hinge' },
    ),
    slopes: Type.Array(Slope, { maxItems: 2, title: 'slopes' }),
    height: Type.Union(
      [
        Type.Object(
          { at: TubePlace, over: SitePlace, value: Coordinate('height'), to: To },
          { title: 'height', additionalProperties: false },
        ),
        Type.Null(),
      ],
      { title: 'height' },
    ),
    /** How far the frame swings on its hinge, from where it stands. */
    swing: Type.Union(
      [
        Type.Object({ from: Turn('from'), to: Turn('to') }, { title: 'swing', additionalProperties: false }),
        Type.Null(),
      ],
      { title: 'swing' },
    ),
  },
  { title: 'standing', additionalProperties: false },
);
export type Standing = Static<typeof Standing>;
