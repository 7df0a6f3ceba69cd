import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Reading } from '../../server/job/came-back.ts';
import { newJob } from '../../server/job/default-job.ts';
import { cutJoints } from '../../server/solver/correction/splice/cut-joints.ts';
import { searchSplices } from '../../server/solver/correction/splice/search-splices.ts';
import { leastLetIn } from '../../server/solver/correction/splice/splice-problem.ts';
import { UNMOVED } from '../../server/solver/geometry/rigid-motion.ts';
import { length } from '../../server/solver/geometry/vector.ts';
import { plan } from '../../server/solver/plan.ts';
import { hoopOf, misfitOf, OUTSIDE_DIAMETER, removedAt, splicedAt, taskOf } from './spliced-frames.ts';

const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('a frame that is as wanted', () => {
  it('gains nothing by any splice', () => {
    fc.assert(
      fc.property(range(800, 1200), fc.constantFrom(null, 2400), (width, crown) => {
        const frame = hoopOf({ width, legs: [600, 650], crown, bars: [200] });
        const { best, candidates } = searchSplices(taskOf(frame, frame));
        expect(candidates.length).toBeGreaterThan(0);
        expect(best).toEqual([]);
        for (const one of candidates) {
          // the saw and the weld take their share, and that is all that happens
          expect(misfitOf(one)).toBeLessThan(2.5);
          expect(one.largestKink).toBeLessThan(0.02);
          expect(one.largestHiLo).toBeLessThan(0.5);
          for (const removed of removedAt(one)) expect(Math.abs(removed)).toBeLessThan(2.5);
        }
      }),
      { numRuns: 10 },
    );
  });

  it.each(['hoop', 'ring', 'offset'] as const)('is left as it is: %s', (shape) => {
    const job = newJob(shape);
    const sizes = plan(job).frame!.checks.map(({ key, index, centre }): Reading => {
      const size = { reading: 'size' as const, check: key, index, reference: 'centre' as const };
      return { ...size, value: centre.value, accuracy: null };
    });
    const { correction } = plan({ ...job, cameBack: { tapeAccuracy: 1, angleAccuracy: 0.2, readings: sizes } });
    expect(correction!.recommended).toBe('leave');
    const leave = correction!.ways.find(({ key }) => key === 'leave')!;
    expect(leave.fixingMisfit.value).toBeLessThan(0.01);
    expect(leave.cornerMisfit.value).toBeLessThan(0.01);
    for (const way of correction!.ways)
      expect(way.fixingMisfit.value).toBeGreaterThanOrEqual(leave.fixingMisfit.value - 1e-6);
  });
});

describe('a straight hoop that is narrowed in two goes', () => {
  it('loses as much at each place as in one', () => {
    fc.assert(
      fc.property(range(700, 1200), range(4, 40), range(4, 40), range(-120, 120), (width, first, second, aside) => {
        const hoop = (more: number) => hoopOf({ width: width + more, legs: [600, 600], bars: [200] });
        const narrowed = (from: number, to: number) => {
          const actual = hoop(from);
          const joints = actual.members.map(({ name, centreline }): [string, number] => [
            name,
            centreline.length / 2 + aside,
          ]);
          return removedAt(splicedAt(taskOf(hoop(to), actual), joints)!);
        };
        const whole = narrowed(first + second, 0);
        const [one, other] = [narrowed(first + second, second), narrowed(second, 0)];
        for (const [index, removed] of whole.entries())
          expect(Math.abs(one[index]! + other[index]! - removed)).toBeLessThan(1e-6);
        expect(whole[0]).toBeCloseTo(first + second, 5);
      }),
      { numRuns: 40 },
    );
  });
});

describe('a straight hoop that is widened', () => {
  it.each([
    [0, 0],
    [1.5, 0.5],
  ])('has as much new tube as old came out and it opens, never less than can be welded (gap %d)', (gap, shrinkage) => {
    fc.assert(
      fc.property(range(700, 1200), range(2, 90), (width, wider) => {
        const hoop = (more: number) => hoopOf({ width: width + more, legs: [600, 600], bars: [200] });
        const actual = hoop(0);
        const joints = actual.members.map(({ name, centreline }): [string, number] => [name, centreline.length / 2]);
        const { splice, possible } = splicedAt(taskOf(hoop(wider), actual, { closing: { gap, shrinkage } }), joints)!;
        expect(possible).toBe(true);
        for (const { sides } of splice.joints) {
          expect(sides.letIn).not.toBeNull();
          expect(length(sides.gap)).toBeCloseTo(2 * sides.half + wider, 5);
          // the tape's worth either way: how far it opens is settled before the bodies stand to the last hundredth
          expect(length(sides.gap)).toBeGreaterThan(leastLetIn(OUTSIDE_DIAMETER) - 1);
          const least = Math.max(2 * 1.2, leastLetIn(OUTSIDE_DIAMETER) + gap - shrinkage - wider);
          expect(Math.abs(2 * sides.half - least)).toBeLessThan(1);
        }
        // between the finished faces stand the new tube and two gaps, less what two welds pull in
        for (const { letIn, stationA, stationB } of cutJoints(splice, actual, UNMOVED))
          expect(letIn!.length + 2 * (gap - shrinkage)).toBeCloseTo(stationB - stationA + wider, 5);
      }),
      { numRuns: 25 },
    );
  });
});
