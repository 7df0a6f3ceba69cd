import { Type, type Static } from 'typebox';
import { LengthOrZero, PositiveLength, ShortText, Vector } from './quantities.ts';
import { TubePlace } from './tube-place.ts';

/** How near a fixing point must come, ± [mm]; null: the tolerance of the whole frame. */
const Tolerance = Type.Union([PositiveLength(500, 'tolerance'), Type.Null()], { title: 'tolerance' });

/** The plate of a pad that is welded to an open end of a tube: its thickness, and the hole through it into the bore. */
export const Plate = Type.Object(
  { thickness: PositiveLength(100, 'thickness of the plate'), hole: LengthOrZero(200, 'hole through the plate') },
  { title: 'plate', additionalProperties: false },
);

/** A foot, a pad or a hole: a place of the frame, and where it must land in the axes of the wanted frame. */
export const FixingPoint = Type.Object(
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

export type FixingPoint = Static<typeof FixingPoint>;

/** What the frame is fastened to; none: its free ends are the fixing points, where the wanted frame has them. */
export const Fixing = Type.Array(FixingPoint, { maxItems: 60, title: 'fixing points' });
export type Fixing = Static<typeof Fixing>;
