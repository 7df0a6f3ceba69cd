import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Hoop } from '../../server/job/frame.ts';
import { flatFrame } from '../../server/solver/correction/flat-frame.ts';
import { jointPlaces, solveSplice, type SpliceStyle, type Target } from '../../server/solver/correction/splice.ts';
import { middleOf } from '../../server/solver/correction/splice-way.ts';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { hoopFrame } from '../../server/solver/frame/hoop-frame.ts';

const OUTSIDE_DIAMETER = 38.1;

function crownedHoop(width: number, crown: number, legs: readonly [number, number]): FrameGeometry {
  const centre = (value: number) => ({ value, reference: 'centre' as const });
  const hoop: Hoop = {
    shape: 'hoop',
    width: centre(width),
    widthAtFeet: null,
    leftLeg: centre(legs[0]),
    rightLeg: centre(legs[1]),
    crossbar: { form: 'crowned', radius: crown },
    innerCrossbars: [],
  };
  const made = hoopFrame(hoop, { outsideDiameter: OUTSIDE_DIAMETER, cornerRadius: 114.3, root: '/frame' });
  if ('failure' in made) throw new Error(made.failure);
  const flat = flatFrame(made);
  if (flat === undefined) throw new Error('a hoop is flat');
  return flat;
}

const STYLES: readonly (readonly [string, SpliceStyle])[] = [
  ['one joint', { two: false, turned: false, spread: 300 }],
  ['two joints', { two: true, turned: false, spread: 300 }],
  ['one joint and the side turned', { two: false, turned: true, spread: 300 }],
];

it.each(STYLES)('kinks and toe share the turn that is taken out of a crown: %s', (_, style) => {
  fc.assert(
    fc.property(
      fc.double({ min: 700, max: 1300, noNaN: true }),
      fc.double({ min: 1800, max: 6000, noNaN: true }),
      fc.double({ min: 5, max: 70, noNaN: true }),
      fc.double({ min: -15, max: 15, noNaN: true }),
      fc.double({ min: -40, max: 40, noNaN: true }),
      (width, crown, tooWide, longer, aside) => {
        const wanted = crownedHoop(width, crown, [600, 600]);
        const actual = crownedHoop(width + tooWide, crown, [600, 600 + longer]);
        const cutAt = middleOf(actual) + aside;
        const goals = [...wanted.feet, ...wanted.corners];
        const targets = [...actual.feet, ...actual.corners].map((spot, index): Target => ({
          spot,
          wanted: goals[index]!.point,
        }));
        const places = jointPlaces(actual, cutAt, style);
        const { joints, motions } = solveSplice({ targets, places, cutAt, tape: 1, style });
        expect(joints).toHaveLength(style.two ? 2 : 1);
        const removed = joints.reduce((sum, { closed }) => sum + closed.removed, 0);
        const kinks = joints.reduce((sum, { closed }) => sum + closed.kink, 0);
        const toe = motions.get('right')!.turn;
        expect(removed).toBeGreaterThan(0);
        // the crown turns clockwise from left to right, so a kink that closes it is negative
        expect(toe - kinks).toBeCloseTo(removed / crown, 9);
        if (!style.turned) expect(toe).toBe(0);
        for (const { closed } of joints) expect(Math.abs(closed.hiLo)).toBeLessThan(1e-6);
      },
    ),
    { seed: 38, numRuns: 60 },
  );
});
