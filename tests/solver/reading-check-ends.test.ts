import { describe, expect, it } from 'vitest';
import type { Job } from '../../server/job/job.ts';
import type { SlipKey } from '../../server/plan/slip.ts';
import { plan } from '../../server/solver/plan.ts';
import { jobWith } from '../properties/plans-compared.ts';
import { BENDER, testBend } from './made-up-shop.ts';

const at = (x: number, y: number) => ({ x, y, z: 0, radius: null });

/** A step with a long first leg and a short last one. */
const step = jobWith({ shape: 'run', points: [at(0, 0), at(700, 0), at(700, 500), at(1100, 500)] }, {});
const bentFrom = (from: 'start' | 'finish'): Job => ({
  ...step,
  bending: { ...step.bending, members: [{ member: 'run', from, side: 'usual', closingStraight: null }] },
});

/** By how much one slip puts off a size of a job's frame [mm]. */
function offBy(job: Job, slip: SlipKey, key: string): number {
  const check = plan(job).frame!.readingCheck!;
  const place = check.dimensions.findIndex((dimension) => dimension.key === key);
  return check.rows.find((row) => row.slip === slip)!.off[place]!;
}

describe('the slips at the marks', () => {
  it('run on from the end that is bent first', () => {
    const [first, last] = [
      offBy(bentFrom('start'), 'apex-as-start', 'first-leg'),
      offBy(bentFrom('start'), 'apex-as-start', 'last-leg'),
    ];
    // the straight at the datum end grows by T, and the far one takes what is left of the bar
    expect(first).toBeGreaterThan(50);
    expect(last).toBeLessThan(-50);
    expect(offBy(bentFrom('finish'), 'apex-as-start', 'last-leg')).toBeCloseTo(first, 6);
    expect(offBy(bentFrom('finish'), 'apex-as-start', 'first-leg')).toBeCloseTo(last, 6);
  });

  it('without overbending lose what the line through the test bends says, at small angles too', () => {
    // s = 1.24° + 0.043 c, as the worked example of the line has it
    const bends = [20, 70, 120].map((told) => testBend(told, told - 1.24 - 0.043 * told));
    const kinked = jobWith(
      { shape: 'run', points: [at(0, 0), at(900, 0), at(1800, 240)] },
      { machine: { ...BENDER, springback: { method: 'test-bends', bends } } },
    );
    const wanted = (Math.atan2(240, 900) * 180) / Math.PI;
    const left = wanted - (1.24 + 0.043 * wanted);
    const [one, other] = [900, Math.hypot(900, 240)];
    const apart = (angle: number) =>
      Math.sqrt(one ** 2 + other ** 2 + 2 * one * other * Math.cos((angle * Math.PI) / 180));
    // the straights keep their lengths to within what the smaller bend does not draw in
    expect(offBy(kinked, 'springback-left-out', 'end-to-end')).toBeCloseTo(apart(left) - apart(wanted), 0);
    expect(apart(left) - apart(wanted)).toBeGreaterThan(3);
  });
});
