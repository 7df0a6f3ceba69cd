import { describe, expect, it } from 'vitest';
import type { Obstacle } from '../../server/plan/making.ts';
import { reverseCentreline } from '../../server/solver/geometry/reverse-centreline.ts';
import { slack } from '../../server/solver/making/nearest-station.ts';
import { sweptCheck, type SweptInput } from '../../server/solver/making/swept-check.ts';
import { dieBends, DIAMETER, ENVELOPE, member, RADIUS, swept, type Step } from '../properties/bent-members.ts';

/** The clearance told for one bend, counted from 1. */
const told = (input: SweptInput, bend: number, obstacle: Obstacle, doing = 'bending') =>
  sweptCheck(input)
    .find((each) => each.bend === bend)
    ?.clearances.find((each) => each.obstacle === obstacle && each.while === doing);

/** Within what may be told less, never more. */
function expectTold(clearance: number | undefined, true_: number) {
  expect(clearance).toBeLessThanOrEqual(true_ + 1e-6);
  expect(clearance).toBeGreaterThanOrEqual(true_ - slack(true_, DIAMETER) - 1e-6);
}

const onBed = (bedBelow: number): Partial<SweptInput> => ({ machine: { ...ENVELOPE, bedBelow } });
const U: readonly Step[] = [
  [600, 0, 90],
  [400, 0, 90],
];

describe('over the bed', () => {
  it('a flat part stays at the height of the tube, however long', () => {
    for (const side of ['right', 'left'] as const) {
      for (const bend of [1, 2]) {
        expect(told(swept(member(U, 600), { ...onBed(20), side }), bend, 'bed')?.clearance).toBeCloseTo(1, 9);
        expect(told(swept(member(U, 600), { ...onBed(19), side }), bend, 'bed')?.clearance).toBeCloseTo(0, 9);
        expect(told(swept(member(U, 600), side === 'left' ? { side } : {}), bend, 'bed', 'turning')).toBeUndefined();
      }
    }
  });

  it('is not looked at where nobody measured it', () => {
    const input = swept(member(U, 600), { machine: { ...ENVELOPE, bedBelow: null } });
    expect(sweptCheck(input).flatMap(({ clearances }) => clearances.filter((each) => each.obstacle === 'bed'))).toEqual(
      [],
    );
  });

  /**
   * Bent by 90°, then turned by 90°: the first leg stands square to the die's plane, R + 500 long from the tube's axis
   * to its flat end. The feed is +x at first, the bend turns it to +y about +z, so the leg points to −x from the tube.
   * Turned right-handed about +y by 90°, the normal +z goes to +x, and up with it for a die on the right: the leg hangs.
   */
  it('a leg that hangs down strikes where it is longer than the bed is low, and not bent on the other side', () => {
    const leg = RADIUS + 500;
    const line = member(
      [
        [500, 0, 90],
        [400, 90, 90],
      ],
      400,
    );
    expect(told(swept(line, onBed(leg + 0.1)), 2, 'bed')?.clearance).toBeCloseTo(0.1, 9);
    expect(told(swept(line, onBed(leg - 0.1)), 2, 'bed')?.clearance).toBeCloseTo(-0.1, 9);
    expect(told(swept(line, onBed(leg)), 2, 'bed')?.station).toBeLessThanOrEqual(DIAMETER / 2);
    const other = told(swept(line, { ...onBed(leg - 0.1), side: 'left' }), 2, 'bed');
    // the leg stands up: what is lowest is the tube itself
    expect(other?.clearance).toBeCloseTo(leg - 0.1 - DIAMETER / 2, 9);
    // what is left on at the datum end hangs down as well
    expect(told(swept(line, { ...onBed(leg), extraAtStart: 30 }), 2, 'bed')?.clearance).toBeCloseTo(-30, 9);
  });

  it('a leg that is turned past hanging reaches lower on the way, by the corner of its end', () => {
    const leg = RADIUS + 500;
    const line = member(
      [
        [500, 0, 90],
        [400, 150, 90],
      ],
      400,
    );
    const turning = told(swept(line, onBed(700)), 2, 'bed', 'turning');
    const corner = Math.hypot(leg, DIAMETER / 2);
    expectTold(turning?.clearance, 700 - corner);
    expect(turning?.swing).toBeGreaterThan((80 * Math.PI) / 180);
    expect(turning?.swing).toBeLessThan((100 * Math.PI) / 180);
    // hanging 60° past the plumb line at the end of the turn: the end's lower rim
    const ends = leg * Math.cos(Math.PI / 3) + (DIAMETER / 2) * Math.sin(Math.PI / 3);
    expect(told(swept(line, onBed(700)), 2, 'bed')?.clearance).toBeCloseTo(700 - ends, 9);
    // turned the other way it goes over the top
    const over = member(
      [
        [500, 0, 90],
        [400, -150, 90],
      ],
      400,
    );
    expectTold(told(swept(over, onBed(700)), 2, 'bed', 'turning')?.clearance, 700 - DIAMETER / 2);
    expectTold(told(swept(over, { ...onBed(700), side: 'left' }), 2, 'bed', 'turning')?.clearance, 700 - corner);
  });
});

describe('the tube against itself', () => {
  const quarters = (rotation: number, straight: number): Step[] =>
    Array.from({ length: 12 }, (_, index): Step => [index === 0 ? 300 : straight, index === 0 ? 0 : rotation, 90]);

  it('a flat coil of three turns meets its own beginning, one that rises passes over it', () => {
    const flat = sweptCheck(swept(member(quarters(0, 100), 300)));
    const struck = flat.filter(({ clearances }) =>
      clearances.some(({ obstacle, clearance }) => obstacle === 'tube' && clearance <= 0),
    );
    // the long first leg swings into the line of the tube in the third quarter
    expect(struck[0]?.bend).toBe(3);
    expect(struck.at(-1)?.bend).toBe(12);
    const rising = sweptCheck(swept(member(quarters(20, 100), 300)));
    const least = Math.min(
      ...rising.flatMap(({ clearances }) =>
        clearances.filter(({ obstacle }) => obstacle === 'tube').map(({ clearance }) => clearance),
      ),
    );
    expect(least).toBeGreaterThan(0);
  });

  it('a U stands as far from its other leg as it is wide, with legs of any length', () => {
    for (const leg of [30, 100, 1500]) {
      const line = member(
        [
          [leg, 0, 90],
          [400, 0, 90],
        ],
        leg,
      );
      expectTold(told(swept(line), 2, 'tube')?.clearance, 400 + 2 * RADIUS - DIAMETER);
    }
    expectTold(told(swept(member([[200, 0, 180]], 200)), 1, 'tube')?.clearance, 2 * RADIUS - DIAMETER);
  });

  /** Three quarters make a square; the first leg ends in the line of the last straight if it is as long as the side. */
  it('a long first leg swings into what is not yet bent, a short one does not, nor where the far end is past', () => {
    const side = 200 + 2 * RADIUS;
    const square = (leg: number, end: number) =>
      swept(
        member(
          [
            [leg, 0, 90],
            [200, 0, 90],
            [200, 0, 90],
          ],
          end,
        ),
      );
    const short = 200 - 2 * DIAMETER;
    expectTold(told(square(short, 400), 3, 'tube')?.clearance, side - RADIUS - short - DIAMETER);
    expect(told(square(400, 400), 3, 'tube')?.clearance).toBe(-DIAMETER);
    // the leg comes to the tube's line only where the swing has drawn all of the tube in
    const past = told(square(400, 0), 3, 'tube');
    expect(past?.clearance).toBeGreaterThan(0);
  });

  it('a ring may meet its own end in the last bend, and nothing else', () => {
    const steps: Step[] = [
      [100, 0, 90],
      [200, 0, 90],
      [200, 0, 90],
      [200, 0, 90],
    ];
    const line = member(steps, 100);
    const bends = dieBends(line, 0.03);
    expect(told(swept(line, { bends }), 4, 'tube')?.clearance).toBeLessThanOrEqual(0);
    const ring = told(swept(line, { bends, closed: true, extraAtEnd: 20 }), 4, 'tube');
    expect(ring?.clearance).toBeGreaterThan(0);
    const crossed = member(
      [
        [700, 0, 90],
        [200, 0, 90],
        [200, 0, 90],
        [200, 0, 90],
      ],
      700,
    );
    expect(told(swept(crossed, { closed: true }), 4, 'tube')?.clearance).toBe(-DIAMETER);
  });
});

describe('the machine', () => {
  /** Two quarters fold the first leg back beside the tube, 80 + 2R off; turned by 180° it lies away from the die. */
  it('a leg folded back on the outside strikes a pressure die that reaches so far', () => {
    const off = 80 + 2 * RADIUS;
    const back = (rotation: number, pressureDieReach: number) => {
      const line = member(
        [
          [400, 0, 90],
          [80, 0, 90],
          [150, rotation, 60],
        ],
        500,
      );
      return told(swept(line, { machine: { ...ENVELOPE, pressureDieReach } }), 3, 'pressure-die')?.clearance;
    };
    expectTold(back(180, 150), off - 150 - DIAMETER / 2);
    expect(back(180, off)).toBe(-DIAMETER / 2);
    // turned by 90° it lies above: nearest is the bend before, as far in front of the face as the straight is long
    expectTold(back(90, off), 150 - DIAMETER / 2);
  });

  it('a leg folded to the inside runs into the die where the straight between is short', () => {
    const folded = (straight: number) =>
      swept(
        member(
          [
            [400, 0, 140],
            [straight, 0, 60],
          ],
          500,
        ),
      );
    expect(told(folded(20), 2, 'die')?.clearance).toBeLessThanOrEqual(0);
    // in the plane of the die, U legs pass in front of it: the straight between, and the radius, off the die's front
    const square = swept(
      member(
        [
          [400, 0, 90],
          [150, 0, 90],
        ],
        500,
      ),
    );
    expectTold(told(square, 2, 'die')?.clearance, Math.hypot(150, RADIUS) - RADIUS - DIAMETER / 2);
  });

  it('is told the same of a member turned round twice', () => {
    const line = member(
      [
        [300, 0, 60],
        [150, 70, 100],
        [200, -40, 45],
      ],
      350,
    );
    const twice = swept(reverseCentreline(reverseCentreline(line)));
    for (const [index, { clearances }] of sweptCheck(swept(line)).entries()) {
      const again = sweptCheck(twice)[index]!.clearances;
      expect(again.length).toBe(clearances.length);
      for (const [which, each] of clearances.entries()) {
        expect(again[which]?.obstacle).toBe(each.obstacle);
        expect(again[which]?.clearance).toBeCloseTo(each.clearance, 6);
      }
    }
  });
});
