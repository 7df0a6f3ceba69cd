import { Type, type Static } from 'typebox';
import { Coordinate, PositiveLength, Reference, ShortText } from './quantities.ts';
import { TubePlace } from './tube-place.ts';

/** How well one reading was taken, ± [mm, or degrees for an angle]; null: as well as the others of its kind. */
const OwnAccuracy = (unit: 'mm' | 'deg') =>
  Type.Union([Type.Number({ exclusiveMinimum: 0, maximum: 50, title: 'accuracy', unit }), Type.Null()], {
    title: 'accuracy',
  });

/** A length that a tape found; null: not measured yet. */
const Length = Type.Union([PositiveLength(50_000, 'reading'), Type.Null()], { title: 'reading' });

const Angle = (minimum: number, maximum: number) =>
  Type.Union([Type.Number({ minimum, maximum, title: 'reading', unit: 'deg' }), Type.Null()], { title: 'reading' });

const CoordinateRead = (title: string) => Type.Union([Coordinate(title), Type.Null()], { title });

/** One of the sizes that the frame has by itself: a width, a leg, a diagonal. `check` and `index` are the plan's. */
export const SizeReading = Type.Object(
  {
    reading: Type.Literal('size'),
    check: ShortText('size', 40),
    index: Type.Integer({ minimum: 0, maximum: 200, title: 'which one' }),
    reference: Reference,
    value: Length,
    accuracy: OwnAccuracy('mm'),
  },
  { title: 'size', additionalProperties: false },
);

/** From one place of the frame straight to another. */
export const DistanceReading = Type.Object(
  {
    reading: Type.Literal('distance'),
    from: TubePlace,
    to: TubePlace,
    reference: Reference,
    value: Length,
    accuracy: OwnAccuracy('mm'),
  },
  { title: 'distance', additionalProperties: false },
);

/** Pieces are counted from a member's start, straights and arcs alike. */
const pieceOf = {
  member: ShortText('member', 40),
  piece: Type.Integer({ minimum: 1, maximum: 240, title: 'piece' }),
};

/** The length of a straight between two tangent points, or the radius of an arc to its centreline. */
export const PieceReading = Type.Object(
  {
    reading: Type.Literal('piece'),
    ...pieceOf,
    what: Type.Union([Type.Literal('length'), Type.Literal('radius')], { title: 'what was measured' }),
    value: Type.Union([PositiveLength(1_000_000, 'reading'), Type.Null()], { title: 'reading' }),
    accuracy: OwnAccuracy('mm'),
  },
  { title: 'length or radius of a piece', additionalProperties: false },
);

/** What an arc turns by, or how far its plane is turned about the tube since the arc before it. */
export const TurnReading = Type.Object(
  {
    reading: Type.Literal('turn'),
    ...pieceOf,
    what: Type.Union([Type.Literal('angle'), Type.Literal('rotation')], { title: 'what was measured' }),
    value: Angle(-360, 3600),
    accuracy: OwnAccuracy('deg'),
  },
  { title: 'angle or rotation of a bend', additionalProperties: false },
);

/** A bevel between the tube at two places: the angle between their directions from start to finish. */
export const BevelReading = Type.Object(
  {
    reading: Type.Literal('bevel'),
    from: TubePlace,
    to: TubePlace,
    value: Angle(0, 180),
    accuracy: OwnAccuracy('deg'),
  },
  { title: 'angle by a bevel', additionalProperties: false },
);

/** A level laid along the tube: how much it rises from start to finish, while the frame stands as it was measured. */
export const LevelReading = Type.Object(
  { reading: Type.Literal('level'), at: TubePlace, value: Angle(-90, 90), accuracy: OwnAccuracy('deg') },
  { title: 'angle by a level', additionalProperties: false },
);

/** A point of the centreline in space, in axes of the person who measured (z up where a level is used too). */
export const PointReading = Type.Object(
  {
    reading: Type.Literal('point'),
    at: TubePlace,
    x: CoordinateRead('x'),
    y: CoordinateRead('y'),
    z: CoordinateRead('z'),
    accuracy: OwnAccuracy('mm'),
  },
  { title: 'point in space', additionalProperties: false },
);

export const Reading = Type.Union(
  [SizeReading, DistanceReading, PieceReading, TurnReading, BevelReading, LevelReading, PointReading],
  { title: 'reading' },
);
export type Reading = Static<typeof Reading>;

/** Far beyond what anybody measures on one frame; our own choice. */
export const MOST_READINGS = 400;

/** The frame as it came back: what was measured on it, as many readings as there are. */
export const CameBack = Type.Object(
  {
    /** How well a tape was read, ± [mm], and a level or a bevel [degrees]; each reading may have its own. */
    tapeAccuracy: Type.Number({ minimum: 0, maximum: 50, title: 'tape accuracy', unit: 'mm' }),
    angleAccuracy: Type.Number({ minimum: 0, maximum: 20, title: 'level accuracy', unit: 'deg' }),
    readings: Type.Array(Reading, { maxItems: MOST_READINGS, title: 'readings' }),
  },
  { title: 'frame as it came back', additionalProperties: false },
);
export type CameBack = Static<typeof CameBack>;
