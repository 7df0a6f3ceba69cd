import { Type, type Static } from 'typebox';
import { Coordinate, Dimension, PositiveLength, ShortText, Vector } from './quantities.ts';

/** Crown radius [mm], to the centreline. */
const CrownRadius = PositiveLength(1_000_000, 'crown radius');

/** Two legs and a crossbar, with any number of inner crossbars that sit on both legs. */
export const Hoop = Type.Object(
  {
    shape: Type.Literal('hoop'),
    /** Across the legs where the corner bends begin. */
    width: Dimension('width'),
    /** Across the legs at the feet; null: the legs are parallel. */
    widthAtFeet: Type.Union([Dimension('width at feet'), Type.Null()], { title: 'width at feet' }),
    /** From the foot along the leg to the corner, where the leg's line meets the crossbar's. */
    leftLeg: Dimension('left leg'),
    rightLeg: Dimension('right leg'),
    crossbar: Type.Union(
      [
        Type.Object({ form: Type.Literal('straight') }, { title: 'straight crossbar', additionalProperties: false }),
        Type.Object(
          { form: Type.Literal('crowned'), radius: CrownRadius },
          { title: 'crowned crossbar', additionalProperties: false },
        ),
      ],
      { title: 'crossbar' },
    ),
    /** Each sits on both legs; measured from the left foot: outside = far side, centre, inside = near side. */
    innerCrossbars: Type.Array(
      Type.Object(
        { fromFoot: Dimension('distance from the left foot') },
        { title: 'inner crossbar', additionalProperties: false },
      ),
      { maxItems: 12, title: 'inner crossbars' },
    ),
  },
  { title: 'hoop', additionalProperties: false },
);
export type Hoop = Static<typeof Hoop>;

/** A closed ring with four rounded corners. */
export const Ring = Type.Object(
  { shape: Type.Literal('ring'), width: Dimension('width'), height: Dimension('height') },
  { title: 'ring', additionalProperties: false },
);
export type Ring = Static<typeof Ring>;

/** Two equal and opposite bends. */
export const Offset = Type.Object(
  {
    shape: Type.Literal('offset'),
    /** Across the two parallel ends. */
    across: Dimension('offset'),
    angle: Type.Number({ exclusiveMinimum: 0, exclusiveMaximum: 180, title: 'offset angle', unit: 'deg' }),
    /** From each end to the corner of the bend beside it. */
    first: Dimension('first length'),
    last: Dimension('last length'),
  },
  { title: 'offset', additionalProperties: false },
);
export type Offset = Static<typeof Offset>;

export const StraightTube = Type.Object(
  { shape: Type.Literal('straight'), length: PositiveLength(50_000, 'length') },
  { title: 'straight tube', additionalProperties: false },
);
export type StraightTube = Static<typeof StraightTube>;

/** A corner of a run: where the two straights would meet; its radius, or null for what the die gives. */
export const RunPoint = Type.Object(
  {
    x: Coordinate('x'),
    y: Coordinate('y'),
    z: Coordinate('z'),
    radius: Type.Union([PositiveLength(1_000_000, 'radius'), Type.Null()], { title: 'radius' }),
  },
  { title: 'point', additionalProperties: false },
);
export type RunPoint = Static<typeof RunPoint>;

/** Points of one path at most: far beyond any tube; our own choice. */
export const MOST_POINTS = 120;

/** One tube through points in space; coordinates are on the centreline, in a right-handed frame. */
export const Run = Type.Object(
  {
    shape: Type.Literal('run'),
    points: Type.Array(RunPoint, { minItems: 2, maxItems: MOST_POINTS, title: 'points' }),
  },
  { title: 'run', additionalProperties: false },
);
export type Run = Static<typeof Run>;

/** One piece of a chain: a straight, or an arc whose plane is turned about the tube since the last arc. */
export const ChainPiece = Type.Union(
  [
    Type.Object(
      { piece: Type.Literal('straight'), length: PositiveLength(50_000, 'length') },
      { title: 'straight piece', additionalProperties: false },
    ),
    Type.Object(
      {
        piece: Type.Literal('arc'),
        angle: Type.Number({ exclusiveMinimum: 0, maximum: 3600, title: 'angle', unit: 'deg' }),
        radius: Type.Union([PositiveLength(1_000_000, 'radius'), Type.Null()], { title: 'radius' }),
        rotation: Type.Number({ minimum: -360, maximum: 360, title: 'rotation', unit: 'deg' }),
        made: Type.Union([Type.Literal('die'), Type.Literal('rolled')], { title: 'how the arc is made' }),
      },
      { title: 'arc piece', additionalProperties: false },
    ),
  ],
  { title: 'piece' },
);
export type ChainPiece = Static<typeof ChainPiece>;

export const MemberPath = Type.Union(
  [
    Type.Object(
      {
        by: Type.Literal('points'),
        points: Type.Array(RunPoint, { minItems: 2, maxItems: MOST_POINTS, title: 'points' }),
        /** True: the last point joins the first again. */
        closed: Type.Boolean({ title: 'closed' }),
      },
      { title: 'path through points', additionalProperties: false },
    ),
    Type.Object(
      {
        by: Type.Literal('chain'),
        start: Vector('start'),
        direction: Vector('direction at the start'),
        /** The axis that the first arc turns about (right-handed) before its rotation. */
        normal: Vector('normal at the start'),
        pieces: Type.Array(ChainPiece, { minItems: 1, maxItems: 120, title: 'pieces' }),
      },
      { title: 'chain of pieces', additionalProperties: false },
    ),
  ],
  { title: 'path' },
);
export type MemberPath = Static<typeof MemberPath>;

/** A member's end: free, or sitting as a saddle on another member. */
export const MemberEnd = Type.Union(
  [
    Type.Object({ end: Type.Literal('free') }, { title: 'free end', additionalProperties: false }),
    Type.Object(
      { end: Type.Literal('saddle'), onto: ShortText('member that the end sits on', 40) },
      { title: 'saddle end', additionalProperties: false },
    ),
  ],
  { title: 'end' },
);
export type MemberEnd = Static<typeof MemberEnd>;

export const Member = Type.Object(
  {
    name: Type.String({ minLength: 1, maxLength: 40, title: 'member name' }),
    path: MemberPath,
    start: MemberEnd,
    finish: MemberEnd,
  },
  { title: 'member', additionalProperties: false },
);
export type Member = Static<typeof Member>;

/** Any frame at all, member by member. */
export const MemberFrame = Type.Object(
  {
    shape: Type.Literal('members'),
    members: Type.Array(Member, { minItems: 1, maxItems: 40, title: 'members' }),
  },
  { title: 'frame by members', additionalProperties: false },
);
export type MemberFrame = Static<typeof MemberFrame>;

export const Frame = Type.Union([Hoop, Ring, Offset, StraightTube, Run, MemberFrame], { title: 'frame' });
export type Frame = Static<typeof Frame>;
