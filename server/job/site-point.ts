import { Type, type Static } from 'typebox';
import { SiteName, WhichSet } from './direction.ts';
import { Coordinate, PositiveLength, Vector } from './quantities.ts';

/** One's own ± of a tape on site; null: that of all points. */
const TapeAccuracy = Type.Union([PositiveLength(500, 'accuracy'), Type.Null()], { title: 'accuracy' });

export const TOWARDS = ['ahead', 'back', 'port', 'starboard', 'up', 'down'] as const;
/** Of two places that fit, the one that lies further this way. */
const Towards = Type.Enum<[...typeof TOWARDS]>([...TOWARDS], { title: 'the one further' });

export const SiteDistance = Type.Object(
  { from: SiteName('from point'), distance: PositiveLength(50_000, 'distance'), accuracy: TapeAccuracy },
  { title: 'distance', additionalProperties: false },
);
export type SiteDistance = Static<typeof SiteDistance>;

/**
 * How a point was found. typed: coordinates in the structure's own axes. plumb: by tape and plumb line from another
 * point, while the structure lay as a set of level readings says: level distances ahead and to port as they are seen from
 * above, and up along the plumb line (down is negative). distances: by tape from known points, two of them with a plane
 * that the point lies on.
 */
export const PointFound = Type.Union(
  [
    Type.Object(
      { by: Type.Literal('typed'), point: Vector('point'), accuracy: TapeAccuracy },
      { title: 'coordinates', additionalProperties: false },
    ),
    Type.Object(
      {
        by: Type.Literal('plumb'),
        from: SiteName('from point'),
        ahead: Coordinate('ahead, level'),
        port: Coordinate('to port, level'),
        up: Coordinate('up the plumb line'),
        set: WhichSet,
        accuracy: TapeAccuracy,
      },
      { title: 'tape and plumb line', additionalProperties: false },
    ),
    Type.Object(
      {
        by: Type.Literal('distances'),
        distances: Type.Array(SiteDistance, { minItems: 2, maxItems: 12, title: 'distances' }),
        /** The plane among the things of the site that it lies on; null: none. */
        on: Type.Union([SiteName('lies on'), Type.Null()], { title: 'lies on' }),
        towards: Towards,
      },
      { title: 'distances from known points', additionalProperties: false },
    ),
  ],
  { title: 'how it was found' },
);
export type PointFound = Static<typeof PointFound>;

export const SitePoint = Type.Object(
  { name: SiteName('name'), at: PointFound },
  { title: 'site point', additionalProperties: false },
);
export type SitePoint = Static<typeof SitePoint>;
