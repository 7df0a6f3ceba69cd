import { Type, type Static } from 'typebox';
import { PositiveLength, ShortText } from './quantities.ts';

/** One end of one member, where gas goes in or comes out. */
export const EndOfMember = Type.Object(
  {
    member: ShortText('member', 40),
    end: Type.Union([Type.Literal('start'), Type.Literal('finish')], { title: 'end' }),
  },
  { title: 'end of a member', additionalProperties: false },
);
export type EndOfMember = Static<typeof EndOfMember>;

const Flow = (title: string) => Type.Number({ exclusiveMinimum: 0, maximum: 100, title, unit: 'L/min' });

/** How the inside of the tube is filled with argon before and while it is welded. */
export const Purge = Type.Object(
  {
    /** Oxygen in the gas as supplied [ppm]. */
    gas: Type.Union(
      [
        Type.Object(
          {
            from: Type.Literal('grade'),
            key: Type.Union(
              [Type.Literal('4.5'), Type.Literal('4.6'), Type.Literal('4.8'), Type.Literal('5.0'), Type.Literal('6.0')],
              {
                title: 'gas grade',
              },
            ),
          },
          { title: 'gas by grade', additionalProperties: false },
        ),
        Type.Object(
          {
            from: Type.Literal('certificate'),
            oxygen: Type.Number({ minimum: 0, maximum: 10_000, title: 'oxygen in the gas', unit: 'ppm' }),
          },
          { title: 'gas by certificate', additionalProperties: false },
        ),
      ],
      { title: 'gas' },
    ),
    prePurgeFlow: Flow('pre-purge flow'),
    weldingFlow: Flow('welding flow'),
    /** Oxygen at the vent that must be reached before welding [ppm]. */
    targetOxygen: Type.Number({ exclusiveMinimum: 0, maximum: 100_000, title: 'target oxygen', unit: 'ppm' }),
    /** Fill the whole connected frame, or a short chamber between dams either side of each joint. */
    extent: Type.Union([Type.Literal('whole-frame'), Type.Literal('dams')], { title: 'purge extent' }),
    /** Distance of each dam from the joint [mm]. */
    damDistance: PositiveLength(5000, 'dam distance'),
    /** null: the plan's own choice. */
    feed: Type.Union([EndOfMember, Type.Null()], { title: 'feed' }),
    vent: Type.Union([EndOfMember, Type.Null()], { title: 'vent' }),
    ventBore: PositiveLength(200, 'vent bore'),
    /** Holes drilled through the wall under coped ends, so that a bore between two others can breathe. */
    ventHoles: Type.Union([Type.Literal('none'), Type.Literal('coped-ends')], { title: 'vent holes' }),
    /** Which time the sheets print: the long-tube estimate, or the cautious well-mixed one. */
    model: Type.Union([Type.Literal('well-mixed'), Type.Literal('long-tube')], { title: 'purge time model' }),
    /** Gas kept flowing after the arc stops [s]. */
    hold: Type.Number({ minimum: 0, maximum: 3600, title: 'hold', unit: 's' }),
    room: Type.Object(
      {
        volume: Type.Number({ exclusiveMinimum: 0, maximum: 1_000_000, title: 'room volume', unit: 'm3' }),
        fanFlow: Type.Number({ minimum: 0, maximum: 1_000_000, title: 'fresh air', unit: 'L/min' }),
      },
      { title: 'room', additionalProperties: false },
    ),
    bottle: Type.Object(
      {
        waterVolume: Type.Number({ exclusiveMinimum: 0, maximum: 500, title: 'bottle water volume', unit: 'L' }),
        gaugePressure: Type.Number({ minimum: 0, maximum: 300, title: 'bottle gauge pressure', unit: 'bar' }),
        temperature: Type.Number({ minimum: 5, maximum: 35, title: 'bottle temperature', unit: 'degC' }),
      },
      { title: 'bottle', additionalProperties: false },
    ),
  },
  { title: 'purge', additionalProperties: false },
);
export type Purge = Static<typeof Purge>;

/** What the torch does; starting values to be proved on a test piece. */
export const Welding = Type.Object(
  {
    travelSpeed: Type.Number({ exclusiveMinimum: 0, maximum: 50, title: 'travel speed', unit: 'mm/s' }),
    torchFlow: Flow('torch flow'),
    postFlow: Type.Number({ minimum: 0, maximum: 300, title: 'post-flow', unit: 's' }),
    fillerDiameter: Type.Number({ minimum: 0, maximum: 10, title: 'filler diameter (0: none)', unit: 'mm' }),
  },
  { title: 'welding', additionalProperties: false },
);
export type Welding = Static<typeof Welding>;
