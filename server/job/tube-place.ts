import { Type, type Static } from 'typebox';
import { LengthOrZero, ShortText } from './quantities.ts';

/** Where on a member: its two ends, the corner, start and end of a bend, the middle of a piece, or a distance along it. */
export const PLACES = ['start', 'finish', 'corner', 'bend-start', 'bend-end', 'middle', 'along'] as const;

/**
 * A place on a tube of the frame, by what a person can find there. `number` counts the die bends from the start for
 * corner, bend-start and bend-end, and the straights and arcs for middle; nothing else looks at it. `distance` is along
 * the centreline from the start of the member as wanted, for along alone.
 */
export const TubePlace = Type.Object(
  {
    member: ShortText('member', 40),
    spot: Type.Enum<[...typeof PLACES]>([...PLACES], { title: 'place' }),
    number: Type.Integer({ minimum: 1, maximum: 120, title: 'which one' }),
    distance: LengthOrZero(50_000, 'distance along'),
  },
  { title: 'place on a tube', additionalProperties: false },
);
export type TubePlace = Static<typeof TubePlace>;
