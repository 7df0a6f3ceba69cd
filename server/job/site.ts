import { Type, type Static } from 'typebox';
import { Direction, SiteName } from './direction.ts';
import { Leg } from './leg.ts';
import { Level } from './level.ts';
import { PositiveLength } from './quantities.ts';
import { SitePoint } from './site-point.ts';
import { SiteThing } from './site-thing.ts';
import { Placing, Standing } from './standing.ts';

/** A direction that a level is wanted for. */
export const NamedDirection = Type.Object(
  { name: SiteName('name'), direction: Direction },
  { title: 'direction for the level', additionalProperties: false },
);
export type NamedDirection = Static<typeof NamedDirection>;

/** What the frame stands on and among: a boat, a ramp, a pontoon, in axes fixed in it: x ahead, y to port, z up. */
export const Site = Type.Object(
  {
    /** What its sides are called: ahead, astern, port, starboard, or front, back, left, right (looking ahead). */
    sides: Type.Union([Type.Literal('boat'), Type.Literal('shore')], { title: 'names of the sides' }),
    level: Level,
    /** ± of a tape on site. */
    tapeAccuracy: PositiveLength(500, 'accuracy of the tape on site'),
    points: Type.Array(SitePoint, { maxItems: 60, title: 'site points' }),
    things: Type.Array(SiteThing, { maxItems: 60, title: 'things of the site' }),
    directions: Type.Array(NamedDirection, { maxItems: 40, title: 'directions for the level' }),
    placing: Placing,
    standing: Standing,
    legs: Type.Array(Leg, { maxItems: 24, title: 'legs' }),
    /** A point load of one's own beside the published ones [N]; null: none. */
    load: Type.Union([Type.Number({ minimum: 1, maximum: 1e6, title: 'load', unit: 'N' }), Type.Null()], {
      title: 'load',
    }),
  },
  { title: 'site', additionalProperties: false },
);
export type Site = Static<typeof Site>;
