import { describe, expect, it } from 'vitest';
import { flatteningGuidance } from '../../server/solver/bending/forming.ts';
import { centrelineFromChain, type Centreline } from '../../server/solver/geometry/centreline.ts';
import { leastRadius, radiiThatFit, type RadiusInput } from '../../server/solver/making/radii-that-fit.ts';
import { DIAMETER, member, RADIUS } from '../properties/bent-members.ts';

describe('centreline radii that fit', () => {
  const input = (line: Centreline, more: Partial<RadiusInput> = {}): RadiusInput => ({
    centreline: line,
    outsideDiameter: DIAMETER,
    elongation: 40,
    flattening: 10,
    leastStraight: 80,
    growth: 1,
    ...more,
  });

  it('reach from what the tube takes to what the straights leave', () => {
    const range = radiiThatFit(
      input(
        member(
          [
            [200, 0, 90],
            [200, 30, 60],
          ],
          300,
        ),
      ),
    )!;
    // 20 D/R = 10 %: 2 D; D/(2R) = 40 % would be 1.25 D
    expect(range.low).toBeCloseTo(2 * DIAMETER, 9);
    // corners R tan 45° + 200 + R tan 30° apart, 80 left between
    const tangents = 1 + Math.tan(Math.PI / 6);
    expect(range.high).toBeCloseTo((200 + RADIUS * tangents - 80) / tangents, 9);
    const again = radiiThatFit(
      input(
        member(
          [
            [200, 0, 90],
            [200, 30, 60],
          ],
          300,
        ),
        { elongation: 20, growth: 1.02 },
      ),
    )!;
    expect(again.low).toBeCloseTo(1.02 * 2.5 * DIAMETER, 9);
  });

  it('end at a first or last straight of nothing', () => {
    const range = radiiThatFit(
      input(
        member(
          [
            [50, 0, 90],
            [900, 0, 90],
          ],
          20,
        ),
      ),
    )!;
    expect(range.high).toBeCloseTo(RADIUS + 20, 9);
  });

  it('are none where they do not meet, without a die bend, and without a corner', () => {
    expect(
      radiiThatFit(
        input(
          member(
            [
              [200, 0, 90],
              [60, 30, 60],
            ],
            300,
          ),
          { leastStraight: 80 },
        ),
      ),
    ).toBeNull();
    expect(radiiThatFit(input(member([[200, 0, 171]], 300)))).toBeNull();
    const start = { point: { x: 0, y: 0, z: 0 }, direction: { x: 1, y: 0, z: 0 }, normal: { x: 0, y: 0, z: 1 } };
    expect(radiiThatFit(input(centrelineFromChain(start, [{ kind: 'straight', length: 900 }])))).toBeNull();
    expect(leastRadius({ outsideDiameter: DIAMETER, elongation: 40, flattening: 4.9 })).toBeNull();
  });

  it('begin where the rules for stretch and flattening do', () => {
    for (const [elongation, flattening] of [
      [40, 5],
      [40, 8],
      [10, 10],
      [90, 40],
    ] as const) {
      const least = leastRadius({ outsideDiameter: DIAMETER, elongation, flattening })!;
      expect(DIAMETER / (2 * least)).toBeLessThanOrEqual(elongation / 100 + 1e-12);
      expect(flatteningGuidance(least / DIAMETER)).toBeLessThanOrEqual(flattening + 1e-9);
      const tighter = least * 0.999;
      const breaks =
        DIAMETER / (2 * tighter) > elongation / 100 ||
        flatteningGuidance(tighter / DIAMETER) > flattening ||
        tighter < DIAMETER / 2;
      expect(breaks).toBe(true);
    }
  });
});
