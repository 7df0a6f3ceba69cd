import { Type, type Static } from 'typebox';
import { LengthOrZero, PositiveLength, ShortText } from './quantities.ts';

/** One test bend: what the machine was told, and what was measured after release. */
export const TestBend = Type.Object(
  {
    commandedAngle: Type.Number({ exclusiveMinimum: 0, maximum: 360, title: 'commanded angle', unit: 'deg' }),
    measuredAngle: Type.Number({ exclusiveMinimum: 0, maximum: 360, title: 'measured angle', unit: 'deg' }),
    /** Centreline radius after release, or null where nobody measured it. */
    measuredRadius: Type.Union([PositiveLength(20_000, 'measured radius'), Type.Null()], {
      title: 'measured radius',
    }),
  },
  { title: 'test bend', additionalProperties: false },
);
export type TestBend = Static<typeof TestBend>;

/** Where the springback comes from: computed, or from the shop's own test bends. */
export const Springback = Type.Union(
  [
    Type.Object({ method: Type.Literal('theory') }, { title: 'springback by theory', additionalProperties: false }),
    Type.Object(
      { method: Type.Literal('test-bends'), bends: Type.Array(TestBend, { maxItems: 60, title: 'test bends' }) },
      { title: 'springback from test bends', additionalProperties: false },
    ),
  ],
  { title: 'springback' },
);
export type Springback = Static<typeof Springback>;

/** The bending machine with the die that is set up for this tube. */
export const Machine = Type.Object(
  {
    name: ShortText('machine name', 60),
    /** Centreline radius of the die [mm]. */
    dieRadius: PositiveLength(5000, 'die radius'),
    springback: Springback,
    /** Straight that the clamp must hold before the first bend [mm]. */
    gripLength: LengthOrZero(2000, 'grip length'),
    /** Least straight between two bends that the machine can clamp [mm]. */
    leastStraight: LengthOrZero(2000, 'least straight between bends'),
    /** Extra length left on the last end and trimmed after bending [mm]. */
    trimAllowance: LengthOrZero(2000, 'trim allowance'),
    /** Growth of the centreline in each bend, scribed before and after [mm]. */
    stretchPerBend: Type.Number({ minimum: -50, maximum: 50, title: 'stretch for each bend', unit: 'mm' }),
    /** +1: rotations count right-handed about the feed direction; -1: the machine counts the other way. */
    rotationSign: Type.Union([Type.Literal(1), Type.Literal(-1)], { title: 'rotation sign' }),
    /** How far single bends scatter about the commanded result, ± [degrees]. */
    angleScatter: Type.Number({ minimum: 0, maximum: 10, title: 'angle scatter', unit: 'deg' }),
    /** Largest angle that the machine can bend to [degrees]. */
    largestAngle: Type.Number({ minimum: 1, maximum: 360, title: 'largest angle', unit: 'deg' }),
  },
  { title: 'bending machine', additionalProperties: false },
);
export type Machine = Static<typeof Machine>;
