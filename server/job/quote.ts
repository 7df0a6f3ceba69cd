import { Type, type Static } from 'typebox';
import { WAY_KEYS } from './closing.ts';
import { ShortText } from './quantities.ts';
import { Day } from './rates.ts';

/** What is agreed with the customer beside the rates. */
export const Quote = Type.Object(
  {
    reference: ShortText('quote number', 40),
    date: Day('date of the quote'),
    /** How many days it stands. */
    validDays: Type.Integer({ minimum: 0, maximum: 730, title: 'valid for', unit: 'd' }),
    terms: ShortText('terms', 2000),
    /** How many frames each price is for; the first is the one that is asked for. */
    quantities: Type.Array(Type.Integer({ minimum: 1, maximum: 1000, title: 'how many frames' }), {
      minItems: 1,
      maxItems: 6,
      title: 'quantities',
    }),
    bending: Type.Union([Type.Literal('own'), Type.Literal('outside')], { title: 'bent by' }),
    /** What the bender asks for all bending of one frame [minor units]; null: reckoned by the rates. */
    bendersOffer: Type.Union(
      [
        Type.Integer({ minimum: 0, maximum: 1_000_000_000, title: "bender's offer for a frame", unit: 'minor' }),
        Type.Null(),
      ],
      { title: "bender's offer for a frame" },
    ),
    travel: Type.Object(
      {
        trips: Type.Integer({ minimum: 0, maximum: 200, title: 'trips' }),
        /** There and back. */
        kilometres: Type.Number({ minimum: 0, maximum: 10_000, title: 'kilometres of a trip', unit: 'km' }),
        hours: Type.Number({ minimum: 0, maximum: 200, title: 'hours of a trip', unit: 'h' }),
      },
      { title: 'travel', additionalProperties: false },
    ),
    /** Ways that the customer is offered; none: the one that is shown, and the cheapest of each other sort. */
    offered: Type.Array(Type.Enum<[...typeof WAY_KEYS]>([...WAY_KEYS]), {
      maxItems: WAY_KEYS.length,
      title: 'ways offered',
    }),
  },
  { title: 'quote', additionalProperties: false },
);
export type Quote = Static<typeof Quote>;
