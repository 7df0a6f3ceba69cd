import { Type, type Static } from 'typebox';

/** How far a weld is taken, as agreed with the customer. */
export const TREATMENTS = ['none', 'colour', 'ripple', 'flush', 'pit-free'] as const;
/** The surface that the joint is blended into. */
export const SURFACES = ['as-delivered', 'brushed', 'satin', 'mirror'] as const;
/** What takes off oxide and iron: a pickle, or one of the baths of ASTM A967. */
export const CLEANINGS = [
  'none',
  'pickle-paste',
  'pickle-bath',
  'citric-1',
  'citric-2',
  'citric-3',
  'nitric-1',
  'nitric-2',
  'nitric-3',
  'nitric-4',
] as const;

const Minutes = (title: string) =>
  Type.Union([Type.Number({ minimum: 0, maximum: 1000, title, unit: 'min' }), Type.Null()], { title });

/** How the welds are ground, polished and cleaned. */
export const Finish = Type.Object(
  {
    treatment: Type.Enum<[...typeof TREATMENTS]>([...TREATMENTS], { title: 'weld is taken to' }),
    surface: Type.Enum<[...typeof SURFACES]>([...SURFACES], { title: 'surface' }),
    /** Minutes of the shop for one butt; null: what practice says. A saddle takes `saddleTimes` as long. */
    minutes: Type.Object(
      {
        flush: Minutes('grind one joint flush'),
        surface: Minutes('blend one joint in'),
        saddleTimes: Type.Union(
          [Type.Number({ minimum: 1, maximum: 10, title: 'a saddle takes so many times' }), Type.Null()],
          {
            title: 'a saddle takes so many times',
          },
        ),
      },
      { title: 'minutes', additionalProperties: false },
    ),
    cleaning: Type.Enum<[...typeof CLEANINGS]>([...CLEANINGS], { title: 'cleaning' }),
    nearSea: Type.Boolean({ title: 'stands near the sea' }),
  },
  { title: 'finish', additionalProperties: false },
);
export type Finish = Static<typeof Finish>;
