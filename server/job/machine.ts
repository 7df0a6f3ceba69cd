import { Type, type Static } from 'typebox';
import { LengthOrZero, PositiveLength, ShortText } from './quantities.ts';

const MeasuredLength = (maximum: number, title: string) =>
  Type.Union([PositiveLength(maximum, title), Type.Null()], { title });

/** One test bend: what the machine was told, and what was measured after release, on which tube and die. */
export const TestBend = Type.Object(
  {
    commandedAngle: Type.Number({ exclusiveMinimum: 0, maximum: 360, title: 'commanded angle', unit: 'deg' }),
    /** Null until it is measured: then the bend does not count yet. */
    measuredAngle: Type.Union(
      [Type.Number({ exclusiveMinimum: 0, maximum: 360, title: 'measured angle', unit: 'deg' }), Type.Null()],
      { title: 'measured angle' },
    ),
    /** Centreline radius after release, or null where nobody measured it. */
    measuredRadius: MeasuredLength(20_000, 'measured radius'),
    /** Two lines scribed on the straight tube, one before and one after the bend: how far apart they were … */
    scribedBefore: MeasuredLength(20_000, 'between the scribed lines before'),
    /** … and how far apart along the centreline they are after it; both null where nobody scribed. */
    scribedAfter: MeasuredLength(20_000, 'between the scribed lines after'),
    tubeDiameter: PositiveLength(400, 'tube diameter'),
    wall: PositiveLength(40, 'wall'),
    dieRadius: PositiveLength(5000, 'die radius'),
    /** Heat of the material from its certificate; empty where it is not known. */
    heat: ShortText('heat', 40),
  },
  { title: 'test bend', additionalProperties: false },
);
export type TestBend = Static<typeof TestBend>;

/** The springback record, and whether it is used; theory is used too where the record has too little to say. */
export const Springback = Type.Object(
  {
    method: Type.Union([Type.Literal('theory'), Type.Literal('test-bends')], { title: 'springback from' }),
    bends: Type.Array(TestBend, { maxItems: 60, title: 'test bends' }),
  },
  { title: 'springback', additionalProperties: false },
);
export type Springback = Static<typeof Springback>;

/** A bend die with what belongs to it. */
export const Die = Type.Object(
  {
    name: ShortText('die name', 40),
    /** Outside diameter of the tube that its groove is for [mm]. */
    tubeDiameter: PositiveLength(400, 'tube diameter'),
    /** Centreline radius of the groove [mm]. */
    radius: PositiveLength(5000, 'die radius'),
    /** Straight that the clamp must hold before the first bend [mm]. */
    gripLength: LengthOrZero(2000, 'grip length'),
    /** Straight behind the start of a bend that the pressure die lies on [mm]. */
    pressureDieLength: LengthOrZero(5000, 'pressure die length'),
    /** Largest angle that the machine can bend to with this die [degrees]. */
    largestAngle: Type.Number({ minimum: 1, maximum: 360, title: 'largest angle', unit: 'deg' }),
    /** What holds the tube round from inside. */
    tooling: Type.Union(
      [
        Type.Literal('none'),
        Type.Literal('plug'),
        Type.Literal('mandrel'),
        Type.Literal('mandrel-and-wiper'),
        Type.Literal('unknown'),
      ],
      { title: 'mandrel and wiper' },
    ),
  },
  { title: 'die', additionalProperties: false },
);
export type Die = Static<typeof Die>;

/** What stands round the tube on the machine: a bed and three blocks, as a check before the first tube is spoilt. */
export const Surroundings = Type.Object(
  {
    /** From the tube's centreline down to the bed or the floor [mm]; null: not known, not checked. */
    bedBelow: Type.Union([LengthOrZero(5000, 'bed below the tube'), Type.Null()], { title: 'bed below the tube' }),
    /** Whole height of the die block and of the clamp [mm]. */
    dieHeight: LengthOrZero(2000, 'height of the die'),
    /** How far clamp and pressure die reach out from the tube's centreline, away from the die [mm]. */
    clampReach: LengthOrZero(2000, 'reach of the clamp'),
    /** Which side the die lies on, looking from behind the tube towards the clamp. */
    side: Type.Union([Type.Literal('right'), Type.Literal('left'), Type.Literal('both')], { title: 'die lies' }),
  },
  { title: 'surroundings of the tube', additionalProperties: false },
);
export type Surroundings = Static<typeof Surroundings>;

/** How far what is made may stand off what is planned, each ±. */
export const Accuracy = Type.Object(
  {
    /** Single bends about the commanded result [degrees]. */
    angleScatter: Type.Number({ minimum: 0, maximum: 10, title: 'angle scatter', unit: 'deg' }),
    /** The turn of the tube between two bends [degrees]. */
    planeScatter: Type.Number({ minimum: 0, maximum: 10, title: 'rotation scatter', unit: 'deg' }),
    /** A mark laid out by tape and set in the machine, and the sawn length [mm]. */
    markAccuracy: Type.Number({ minimum: 0, maximum: 20, title: 'mark accuracy', unit: 'mm' }),
  },
  { title: 'accuracy', additionalProperties: false },
);
export type Accuracy = Static<typeof Accuracy>;

/** The bending machine with its dies and its record. */
export const Machine = Type.Object(
  {
    name: ShortText('machine name', 60),
    dies: Type.Array(Die, { minItems: 1, maxItems: 60, title: 'dies' }),
    /** Which of the dies is set up, counted from 0. */
    die: Type.Integer({ minimum: 0, maximum: 59, title: 'die set up' }),
    springback: Springback,
    /** Least straight between two bends that the machine can clamp [mm]. */
    leastStraight: LengthOrZero(2000, 'least straight between bends'),
    /** Extra length left on the last end and trimmed after bending [mm]. */
    trimAllowance: LengthOrZero(2000, 'trim allowance'),
    /** Growth of the centreline in each bend where the record has no scribed lines to say it [mm]. */
    stretchPerBend: Type.Number({ minimum: -50, maximum: 50, title: 'stretch for each bend', unit: 'mm' }),
    /** +1: rotations count right-handed about the feed direction; -1: the machine counts the other way. */
    rotationSign: Type.Union([Type.Literal(1), Type.Literal(-1)], { title: 'rotation sign' }),
    accuracy: Accuracy,
    surroundings: Surroundings,
  },
  { title: 'bending machine', additionalProperties: false },
);
export type Machine = Static<typeof Machine>;
