import { describe, expect, it } from 'vitest';
import type { Leg } from '../../../server/job/leg.ts';
import type { Site } from '../../../server/job/site.ts';
import type { LegPlan } from '../../../server/plan/leg.ts';
import { faultsOf } from '../figures-in.ts';
import { formulaValue } from '../formula-value.ts';
import { along, HINGE, hinged, legOf, planned, sourceOf } from './legs-made-up.ts';

type Slope = Site['standing']['slopes'][number];
const STANDING: Site['standing'] = { hinge: HINGE, slopes: [], height: null, swing: null };

/** A line across the hinge, and one athwart it that a turn about the hinge hardly lifts. */
const SLANTED: Slope = { along: { x: -1, y: 2, z: 0 }, angle: 3, to: 'level' };
const ALONG_X: Slope = { along: { x: 1, y: 0, z: 0 }, angle: 2, to: 'level' };
const ALONG_Y: Slope = { along: { x: 0.2, y: 1, z: 0 }, angle: -1.5, to: 'structure' };

/** The structure lies down by the bow and to starboard. */
const level: Partial<Site> = {
  level: {
    ...sourceOf(hinged, {}).site.level,
    sets: [
      {
        taken: '',
        note: '',
        readings: [
          { reading: 'incline', along: { x: 1, y: 0, z: 0 }, angle: -0.8, accuracy: null },
          { reading: 'incline', along: { x: 0, y: 1, z: 0 }, angle: 1.7, accuracy: null },
        ],
      },
    ],
  },
};

const at = (x: number, y: number, z: number, station: number, changes: Partial<Leg> = {}): Leg =>
  legOf({
    name: String(station),
    foot: { ...legOf().foot, at: { x, y, z } },
    head: { ...legOf().head, at: along('rail', station) },
    ...changes,
  });
const legs = [at(0, 420, -610, 780), at(-300, -350, -500, 80), at(-700, 60, -540, 430)];

const plansOf = (standing: Partial<Site['standing']>, own: readonly Leg[] = legs): readonly LegPlan[] => {
  const { legs: plans } = planned(
    sourceOf(hinged, { ...level, legs: [...own], standing: { ...STANDING, ...standing } }),
  );
  expect(plans).toHaveLength(own.length);
  expect(faultsOf(plans)).toEqual([]);
  return plans;
};

/** How much longer each leg is with the first slope half a degree up than with it half a degree down. */
function measured(standing: Partial<Site['standing']>): number[] {
  const lengths = (change: number): number[] => {
    const [first, ...rest] = standing.slopes!;
    const slopes = [{ ...first!, angle: first!.angle + change }, ...rest];
    return plansOf({ ...standing, slopes }).map(({ centreLength }) => centreLength.value);
  };
  const [down, up] = [lengths(-0.5), lengths(0.5)];
  return up.map((one, index) => one - down[index]!);
}

describe('leg for a degree on a hinge', () => {
  it('is for a degree of the slope that is asked for, whichever way that runs', () => {
    const slopes = [SLANTED];
    const plans = plansOf({ slopes });
    for (const [index, change] of measured({ slopes }).entries()) {
      const [slope, ...none] = plans[index]!.slopes;
      expect(none).toEqual([]);
      expect(slope).toMatchObject({ axis: 'asked', field: '/site/standing/slopes/0' });
      expect(slope!.perDegree.value).toBeCloseTo(change, 2);
      expect(plans[index]!.perDegree!.value).toBeCloseTo(Math.abs(change), 2);
      // the line lies 63 degrees from square to the hinge: a degree of it is more than two of turn
      const turn = plansOf({})[index]!.perDegree!.value;
      expect(plans[index]!.perDegree!.value / turn).toBeGreaterThan(2);
      expect(slope!.perDegree.working.sources).toEqual(['leg-slope']);
      expect(formulaValue(slope!.perDegree)).toBeCloseTo(slope!.perDegree.value, 9);
    }
  });

  it('is for a degree of turn where none is asked for, or the hinge does not give it, and says so', () => {
    for (const slopes of [[], [{ ...SLANTED, along: { x: 0.01, y: 1, z: 0 }, angle: 1.7 }]]) {
      const [leg] = plansOf({ slopes });
      expect(leg!.slopes.map(({ axis, field }) => [axis, field])).toEqual([['turn', '']]);
      expect(leg!.slopes[0]!.perDegree.working.sources).toEqual(['leg-turn']);
    }
  });
});

describe('what an adjustment does to the slope', () => {
  it.each([[SLANTED], [ALONG_X]])('is the slope with which the leg is so long, on both ends', (slope) => {
    const travel = 60;
    const adjusted = legs.map((leg) => ({ ...leg, adjust: { by: 'thread', adds: 80, travel } }) as const);
    const plans = plansOf({ slopes: [slope] }, adjusted);
    for (const [index, { adjust, centreLength }] of plans.entries()) {
      const { least, most } = adjust!.slope!;
      for (const [end, change] of [
        [least, -travel],
        [most, travel],
      ] as const) {
        const there = plansOf({ slopes: [{ ...slope, angle: slope.angle + end.value }] })[index]!;
        expect(there.centreLength.value).toBeCloseTo(centreLength.value + change, 6);
        expect(end.band!.plusMinus).toBeGreaterThan(0);
        expect(formulaValue(end)).toBeUndefined();
      }
      // it is no straight line
      expect(Math.abs(least.value + most.value)).toBeGreaterThan(1e-3);
    }
  });

  it('is the turn where no slope is asked for, and is not told where the leg cannot be so long or short', () => {
    const [leg] = plansOf({}, [at(0, 420, -610, 780, { adjust: { by: 'slip', adds: 30, travel: 12 } })]);
    const { least, most } = leg!.adjust!.slope!;
    expect((least.value - most.value) / 2).toBeCloseTo(Math.sign(least.value) * (12 / 6.703), 3);
    const far = at(0, 420, -610, 780, { adjust: { by: 'slip', adds: 400, travel: 390 } });
    expect(plansOf({}, [far])[0]!.adjust!.slope).toBeNull();
  });
});

describe('leg for a degree on legs alone', () => {
  const free = { hinge: null } as const;

  it('is for each slope that is asked for, all legs changed together, the other slope kept', () => {
    const slopes = [ALONG_X, ALONG_Y];
    const plans = plansOf({ ...free, slopes });
    const turned = [measured({ ...free, slopes }), measured({ ...free, slopes: [ALONG_Y, ALONG_X] })];
    for (const [index, plan] of plans.entries()) {
      expect(plan.slopes.map(({ axis, field }) => [axis, field])).toEqual([
        ['asked', '/site/standing/slopes/0'],
        ['asked', '/site/standing/slopes/1'],
      ]);
      for (const [which, { perDegree }] of plan.slopes.entries())
        // the frame is turned from where it was placed, not from there on: a little other turn about the plumb line
        expect(Math.abs(perDegree.value - turned[which]![index]!)).toBeLessThan(0.15);
      expect(plan.perDegree!.value).toBe(Math.abs(plan.slopes[0]!.perDegree.value));
      expect(plan.adjust).toBeNull();
    }
    // one side goes up while the other goes down
    expect(new Set(plans.map(({ slopes: [, athwart] }) => Math.sign(athwart!.perDegree.value))).size).toBe(2);
  });

  it('is for x and y of the frame where none is asked for', () => {
    const plans = plansOf(free);
    const asked = (first: Slope, second: Slope) => plansOf({ ...free, slopes: [first, second] });
    // asked for as they are, nothing is turned
    const rise = (x: number, y: number): Slope => ({ along: { x, y, z: 0 }, angle: x === 1 ? -0.8 : 1.7, to: 'level' });
    const same = asked(rise(1, 0), rise(0, 1));
    for (const [index, plan] of plans.entries()) {
      expect(plan.slopes.map(({ axis }) => axis)).toEqual(['x', 'y']);
      for (const which of [0, 1])
        expect(plan.slopes[which]!.perDegree.value).toBeCloseTo(same[index]!.slopes[which]!.perDegree.value, 6);
    }
  });

  it('puts first the leg that fixes the first slope best, the ± of each staying its own', () => {
    const plans = plansOf({ ...free, slopes: [ALONG_X] });
    const fixes = plans.map(({ cutLength, perDegree }) => cutLength.band!.plusMinus / perDegree!.value);
    const inOrder = [...plans.keys()].sort((a, b) => plans[a]!.order - plans[b]!.order).map((index) => fixes[index]!);
    expect(inOrder).toEqual([...fixes].sort((a, b) => a - b));
    for (const { bandThen, cutLength } of plans) expect(bandThen.value).toBeCloseTo(cutLength.band!.plusMinus, 9);
  });
});
