import { Type, type Static } from 'typebox';
import { LengthOrZero, PositiveLength, ShortText } from './quantities.ts';

const Own = (title: string, unit: string, maximum: number, minimum = 0) =>
  Type.Union([Type.Number({ minimum, maximum, title, unit }), Type.Null()], { title });

/** Settings of one kind of weld; null each: the plan's own starting value. */
export const WeldSettings = Type.Object(
  {
    /** What they were proved on, a test piece or a procedure; empty: not proved. */
    provedOn: ShortText('proved on', 80),
    /** ISO 4063: 141 with filler, 142 without. */
    process: Type.Union([Type.Literal('141'), Type.Literal('142'), Type.Null()], { title: 'process' }),
    current: Own('current', 'A', 500, 1),
    voltage: Own('arc voltage', 'V', 40, 5),
    travelSpeed: Own('travel speed', 'mm/s', 50, 0.05),
    /** Diameter of the tungsten electrode [mm]. */
    electrode: Own('electrode', 'mm', 10, 0.3),
    /** Bore of the cup [mm]. */
    cup: Own('cup bore', 'mm', 40, 3),
    preFlow: Own('pre-flow', 's', 120),
    torchFlow: Own('torch flow', 'L/min', 100, 0.1),
    postFlow: Own('post-flow', 's', 300),
    /** Designation of the filler; empty: by grade. */
    filler: ShortText('filler', 60),
    fillerDiameter: Own('filler diameter', 'mm', 10, 0.3),
    runs: Type.Union([Type.Integer({ minimum: 1, maximum: 30, title: 'runs' }), Type.Null()], { title: 'runs' }),
    interpass: Own('interpass temperature at most', 'degC', 400, 10),
  },
  { title: 'weld settings', additionalProperties: false },
);
export type WeldSettings = Static<typeof WeldSettings>;

/** Kinds of weld that have settings of their own: round a tube, a saddle on a tube, a tube on a plate. */
export const WELD_FORMS = ['butt', 'saddle', 'pad'] as const;
export type WeldForm = (typeof WELD_FORMS)[number];

/** A weld in an order of one's own: by its name, the quarter that is welded first, and how the others follow. */
export const WeldTurn = Type.Object(
  {
    weld: ShortText('weld', 12),
    first: Type.Union([Type.Literal(1), Type.Literal(2), Type.Literal(3), Type.Literal(4)], { title: 'first quarter' }),
    way: Type.Union(
      [Type.Literal('opposed'), Type.Literal('opposed-back'), Type.Literal('round'), Type.Literal('round-back')],
      { title: 'then' },
    ),
  },
  { title: 'weld in order', additionalProperties: false },
);
export type WeldTurn = Static<typeof WeldTurn>;

/** How the welds are prepared and made; starting values to be proved on a test piece. */
export const Welding = Type.Object(
  {
    butt: WeldSettings,
    saddle: WeldSettings,
    pad: WeldSettings,
    /** Faces of a butt; form null: by the wall. Angle of each side off square [degrees], land [mm]. */
    groove: Type.Object(
      {
        form: Type.Union([Type.Literal('square'), Type.Literal('bevel'), Type.Null()], { title: 'faces' }),
        angle: Type.Number({ minimum: 5, maximum: 60, title: 'bevel of each side', unit: 'deg' }),
        land: LengthOrZero(20, 'land'),
      },
      { title: 'groove', additionalProperties: false },
    ),
    /** What keeps air from the root of a butt: gas alone, or gas and a sleeve inside that stays there. */
    backing: Type.Union([Type.Literal('purge'), Type.Literal('sleeve')], { title: 'backing' }),
    sleeve: Type.Object(
      {
        wall: PositiveLength(20, 'sleeve wall'),
        /** null: by the tube's diameter. */
        length: Type.Union([PositiveLength(1000, 'sleeve length'), Type.Null()], { title: 'sleeve length' }),
      },
      { title: 'sleeve', additionalProperties: false },
    ),
    /** Quality level of ISO 5817. */
    quality: Type.Union([Type.Literal('B'), Type.Literal('C'), Type.Literal('D')], { title: 'quality level' }),
    symbols: Type.Union([Type.Literal('iso-2553'), Type.Literal('aws-a2-4')], { title: 'weld symbols' }),
    /** How far one joint that is welded once round and not held pulls the tube over [degrees]; 0 in a stiff jig. */
    pull: Type.Number({ minimum: 0, maximum: 10, title: 'pull of one joint', unit: 'deg' }),
    /** An order of one's own; welds that it leaves out follow in the plan's order. Empty: the plan's order. */
    order: Type.Array(WeldTurn, { maxItems: 200, title: 'own order of welding' }),
  },
  { title: 'welding', additionalProperties: false },
);
export type Welding = Static<typeof Welding>;
