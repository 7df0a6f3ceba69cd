import type { Fixing } from '../../server/job/fixing.ts';
import type { Frame, Hoop } from '../../server/job/frame.ts';
import type { Post } from '../../server/solver/correction/corrected.ts';
import { correctionWork, type CorrectionWork } from '../../server/solver/correction/correction-work.ts';
import type { CutLengthOn } from '../../server/solver/correction/rebend-way.ts';
import type { RebendShop } from '../../server/solver/correction/turn-limits.ts';
import { figure } from '../../server/solver/figure.ts';
import { drawFrame } from '../../server/solver/frame/expand-frame.ts';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';

export const D = 38.1;
export const DEGREE = Math.PI / 180;

const outside = (value: number) => ({ value, reference: 'outside' as const });

/** A hoop with one inner crossbar [mm over the outside]. */
export const HOOP: Hoop = {
  shape: 'hoop',
  width: outside(900),
  widthAtFeet: null,
  leftLeg: outside(1000),
  rightLeg: outside(1000),
  crossbar: { form: 'straight' },
  innerCrossbars: [{ fromFoot: outside(400) }],
};

/** One tube with three bends in space. */
export const RUN: Frame = {
  shape: 'run',
  points: [
    [0, 0, 0],
    [800, 0, 0],
    [800, 700, 200],
    [300, 900, 900],
    [300, 1700, 900],
  ].map(([x = 0, y = 0, z = 0]) => ({ x, y, z, radius: null })),
};

export function drawn(frame: Frame): FrameGeometry {
  const { geometry } = drawFrame(frame, {
    outsideDiameter: D,
    cornerRadius: 115,
    root: '/frame',
    closingStraight: () => null,
  });
  if (geometry === null) throw new Error('this frame cannot be drawn');
  return geometry;
}

/** A bender whose machine misses nothing and holds everything. */
export const EASY: RebendShop & { readonly cutLengthOn: CutLengthOn } = {
  machine: { gripLength: 0, leastStraight: 0, largestAngle: 180, angleScatter: 0 },
  fromFinish: new Set(),
  cutLengthOn: ({ centreline: { length } }) => figure(length, 'mm', 'L', [], ['geometry']),
};

/** What the ways work on, for a frame that came back as `actual`. */
export function workOn(
  wanted: FrameGeometry,
  actual: FrameGeometry,
  more: { fixing?: Fixing; posts?: readonly Post[]; tape?: number; variations?: readonly FrameGeometry[] } = {},
): CorrectionWork {
  return correctionWork({
    fixing: more.fixing ?? [],
    posts: more.posts ?? [],
    wanted,
    returned: { geometry: actual, variations: more.variations ?? [] },
    outsideDiameter: D,
    tape: more.tape ?? 1,
    tolerance: 3,
  }).work;
}
