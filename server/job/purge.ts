import { Type, type Static } from 'typebox';
import { PositiveLength, ShortText, Vector } from './quantities.ts';
import { TubePlace } from './tube-place.ts';

/** One end of one member. */
export const EndOfMember = Type.Object(
  {
    member: ShortText('member', 40),
    end: Type.Union([Type.Literal('start'), Type.Literal('finish')], { title: 'end' }),
  },
  { title: 'end of a member', additionalProperties: false },
);
export type EndOfMember = Static<typeof EndOfMember>;

/** Where gas goes in or comes out: an open end, or a vent hole to the air by its place in the list (1 is the first). */
export const GasPlace = Type.Union(
  [
    EndOfMember,
    Type.Object(
      { hole: Type.Integer({ minimum: 1, maximum: 40, title: 'vent hole' }) },
      { title: 'vent hole', additionalProperties: false },
    ),
  ],
  { title: 'where gas passes' },
);
export type GasPlace = Static<typeof GasPlace>;

/** A vent hole through the wall of a tube to the air. */
export const AirHole = Type.Object(
  { at: TubePlace, bore: PositiveLength(50, 'bore') },
  { title: 'vent hole to the air', additionalProperties: false },
);
export type AirHole = Static<typeof AirHole>;

/** Holes that gas passes through beside the open ends of the tubes. */
const Holes = Type.Object(
  {
    /** Through the wall of the tube under each saddle end, so that its bore opens into that tube's bore. */
    underSaddles: Type.Union([Type.Literal('none'), Type.Literal('all')], { title: 'vent holes under saddle ends' }),
    /** Saddle ends that are the other way round than that. */
    except: Type.Array(EndOfMember, { maxItems: 80, title: 'except these saddle ends' }),
    bore: PositiveLength(50, 'bore of holes under saddle ends'),
    toAir: Type.Array(AirHole, { maxItems: 40, title: 'vent holes to the air' }),
  },
  { title: 'vent holes', additionalProperties: false },
);

const Flow = (title: string) => Type.Number({ exclusiveMinimum: 0, maximum: 100, title, unit: 'L/min' });

/** What an oxygen meter at the vent of a chamber showed after the gas had run for a while. */
export const MeterReading = Type.Object(
  {
    chamber: Type.Integer({ minimum: 1, maximum: 200, title: 'chamber' }),
    minutes: Type.Number({ minimum: 0, maximum: 1440, title: 'after', unit: 'min' }),
    oxygen: Type.Number({ minimum: 0, maximum: 250_000, title: 'oxygen on the meter', unit: 'ppm' }),
  },
  { title: 'meter reading', additionalProperties: false },
);
export type MeterReading = Static<typeof MeterReading>;

/** Where the argon ends up, and what air comes in. */
const Room = Type.Object(
  {
    volume: Type.Number({ exclusiveMinimum: 0, maximum: 1_000_000, title: 'room volume', unit: 'm3' }),
    /** The lowest part of it, a bilge, a pit, a locker, where argon gathers; null: none. */
    lowVolume: Type.Union(
      [Type.Number({ exclusiveMinimum: 0, maximum: 1_000_000, title: 'low space', unit: 'm3' }), Type.Null()],
      { title: 'low space' },
    ),
    fanFlow: Type.Number({ minimum: 0, maximum: 1_000_000, title: 'fresh air', unit: 'L/min' }),
    fanWay: Type.Union([Type.Literal('in'), Type.Literal('out')], { title: 'fan blows' }),
    /** All gas, or the torch's alone where a hose leads the vent outside. */
    receives: Type.Union([Type.Literal('all'), Type.Literal('torch')], { title: 'gas that stays in the room' }),
  },
  { title: 'room', additionalProperties: false },
);

const Gauge = (title: string) => Type.Number({ minimum: 0, maximum: 300, title, unit: 'bar' });

const Bottle = Type.Object(
  {
    waterVolume: Type.Number({ exclusiveMinimum: 0, maximum: 500, title: 'bottle water volume', unit: 'L' }),
    gaugePressure: Gauge('bottle gauge pressure'),
    temperature: Type.Number({ minimum: 5, maximum: 35, title: 'bottle temperature', unit: 'degC' }),
    /** What stays in it [bar gauge]. */
    reserve: Gauge('reserve'),
    /** The gauge read again, settled and as warm as before; null: not read. */
    gaugeNow: Type.Union([Gauge('gauge now'), Type.Null()], { title: 'gauge now' }),
  },
  { title: 'bottle', additionalProperties: false },
);

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
    /** The direction that points up while the frame is held for welding, in the frame's own axes; its length is of no use. */
    up: Vector('up, as held'),
    /** null: the plan's own choice. */
    feed: Type.Union([GasPlace, Type.Null()], { title: 'feed' }),
    vent: Type.Union([GasPlace, Type.Null()], { title: 'vent' }),
    ventBore: PositiveLength(200, 'vent bore'),
    holes: Holes,
    /** Which time the sheets print: the long-tube estimate, or the cautious well-mixed one. */
    model: Type.Union([Type.Literal('well-mixed'), Type.Literal('long-tube')], { title: 'purge time model' }),
    /** Gas kept flowing after the arc stops [s]; null: until the root has cooled, as reckoned. */
    hold: Type.Union([Type.Number({ minimum: 0, maximum: 3600, title: 'hold', unit: 's' }), Type.Null()], {
      title: 'hold',
    }),
    meter: Type.Array(MeterReading, { maxItems: 60, title: 'meter readings' }),
    room: Room,
    bottle: Bottle,
  },
  { title: 'purge', additionalProperties: false },
);
export type Purge = Static<typeof Purge>;
