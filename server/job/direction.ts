import { Type, type Static } from 'typebox';
import { ShortText, Vector } from './quantities.ts';
import { TubePlace } from './tube-place.ts';

/** Angle off upright [degrees]; flatter than this a thing is not said by how it leans. */
const OffUpright = (title: string) => Type.Number({ minimum: -89, maximum: 89, title, unit: 'deg' });

/** The name of a point, a thing or a leg of the site. */
export const SiteName = (title: string) => ShortText(title, 40);

/** Which set of level readings, counted from 1. */
export const WhichSet = Type.Integer({ minimum: 1, maximum: 12, title: 'set of level readings' });

/**
 * A direction, in the structure's own axes: x ahead, y to port (the left hand, looking ahead), z up.
 * axes: a vector, its length of no use. lean: so much off the structure's upright, towards ahead and towards port, each
 * as seen square to that plane. plumb: the same off plumb, as a level read it. tube: along a tube of the frame as it
 * stands. thing: along the axis of a cylinder, or out of a plane. points: from one point to another.
 */
export const Direction = Type.Union(
  [
    Type.Object(
      { by: Type.Literal('axes'), vector: Vector('vector') },
      { title: 'vector', additionalProperties: false },
    ),
    Type.Object(
      { by: Type.Literal('lean'), ahead: OffUpright('leans ahead'), port: OffUpright('leans to port') },
      { title: 'lean in the structure', additionalProperties: false },
    ),
    Type.Object(
      {
        by: Type.Literal('plumb'),
        ahead: OffUpright('off plumb, ahead'),
        port: OffUpright('off plumb, to port'),
        set: WhichSet,
      },
      { title: 'lean read by a level', additionalProperties: false },
    ),
    Type.Object({ by: Type.Literal('tube'), at: TubePlace }, { title: 'along a tube', additionalProperties: false }),
    Type.Object(
      { by: Type.Literal('thing'), thing: SiteName('thing') },
      { title: 'as a thing stands', additionalProperties: false },
    ),
    Type.Object(
      { by: Type.Literal('points'), from: SiteName('from point'), to: SiteName('to point') },
      { title: 'between two points', additionalProperties: false },
    ),
  ],
  { title: 'direction' },
);
export type Direction = Static<typeof Direction>;

/** A place of the site: a point by its name, or coordinates in the structure's own axes. */
export const SitePlace = Type.Union(
  [Type.Object({ named: SiteName('point') }, { title: 'named point', additionalProperties: false }), Vector('place')],
  { title: 'place' },
);
export type SitePlace = Static<typeof SitePlace>;
