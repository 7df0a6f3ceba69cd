import { Type, type Static } from 'typebox';
import { Coordinate, LengthOrZero, PositiveLength, ShortText } from './quantities.ts';
import { TubePlace } from './tube-place.ts';

/** A vector or a point, in the axes of the wanted frame. */
export const Vector = (title: string) =>
  Type.Object({ x: Coordinate('x'), y: Coordinate('y'), z: Coordinate('z') }, { title, additionalProperties: false });

/** How near a fixing point must come, ± [mm]; null: the tolerance of the whole frame. */
const Tolerance = Type.Union([PositiveLength(500, 'tolerance'), Type.Null()], { title: 'tolerance' });

/** The plate of a pad that is welded to an open end of a tube: its thickness, and the hole through it into the bore. */
export const Plate = Type.Object(
  { thickness: PositiveLength(100, 'thickness of the plate'), hole: LengthOrZero(200, 'hole through the plate') },
  { title: 'plate', additionalProperties: false },
);

/** A foot, a pad or a hole: a place of the frame, and where it must land in the axes of the wanted frame. */
export const LandingPoint = Type.Object(
  {
    fixing: Type.Union([Type.Literal('foot'), Type.Literal('pad'), Type.Literal('hole')], { title: 'fixing' }),
    name: ShortText('name', 40),
    at: TubePlace,
    /** From the centreline to the point, on the wanted frame, in its axes. */
    off: Vector('from the centreline'),
    /** Null: where the wanted frame has it. */
    lands: Type.Union([Vector('where it lands'), Type.Null()], { title: 'where it lands' }),
    tolerance: Tolerance,
    /** Of a pad at an end of a tube; null: nothing is welded there. */
    plate: Type.Union([Plate, Type.Null()], { title: 'plate welded on' }),
  },
  { title: 'fixing point', additionalProperties: false },
);

/** A pile or a post that must pass: a round thing through the wanted frame that no tube may come near. */
export const PassingPost = Type.Object(
  {
    fixing: Type.Literal('post'),
    name: ShortText('name', 40),
    /** A point of its axis, and the way the axis goes. */
    at: Vector('a point of its axis'),
    axis: Vector('direction of its axis'),
    diameter: PositiveLength(5000, 'diameter'),
    /** Room between the post and every tube. */
    clearance: LengthOrZero(1000, 'clearance'),
  },
  { title: 'post that must pass', additionalProperties: false },
);

export const FixingPoint = Type.Union([LandingPoint, PassingPost], { title: 'fixing point' });
export type FixingPoint = Static<typeof FixingPoint>;

/** What the frame is fastened to; none: its free ends are the fixing points, where the wanted frame has them. */
export const Fixing = Type.Array(FixingPoint, { maxItems: 60, title: 'fixing points' });
export type Fixing = Static<typeof Fixing>;
