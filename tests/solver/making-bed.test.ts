import { describe, expect, it } from 'vitest';
import type { Frame } from '../../server/job/frame.ts';
import type { MemberPlan } from '../../server/plan/frame.ts';
import { plan } from '../../server/solver/plan.ts';
import { jobWith } from '../properties/plans-compared.ts';
import { BENCH } from '../properties/walked-runs.ts';

describe('the bed', () => {
  const at = (x: number, y: number, z: number) => ({ x, y, z, radius: null });
  const flat: Frame = { shape: 'run', points: [at(0, 0, 0), at(600, 0, 0), at(600, 600, 0), at(0, 600, 0)] };
  const step: Frame = { shape: 'run', points: [at(0, 0, 0), at(600, 0, 0), at(600, 600, 0), at(1200, 600, 0)] };
  const space: Frame = { shape: 'run', points: [at(0, 0, 0), at(600, 0, 0), at(600, 600, 0), at(600, 600, 600)] };
  const bedOf = (frame: Frame, bedBelow: number | null): MemberPlan['making']['bed'] => {
    const { surroundings } = jobWith(frame, BENCH).machine;
    const machine = { ...BENCH.machine, surroundings: { ...surroundings, bedBelow } };
    return plan(jobWith(frame, { ...BENCH, machine })).frame!.members[0]!.making.bed;
  };

  it('is looked at where the tube is turned and somebody has said where it is', () => {
    expect([bedOf(space, 900), bedOf(space, null)]).toEqual(['checked', 'not-known']);
    // a half turn between two bends swings the first leg under the tube, though the frame is flat
    expect([bedOf(step, 900), bedOf(step, null)]).toEqual(['checked', 'not-known']);
    expect([bedOf(flat, 900), bedOf(flat, null)]).toEqual(['not-needed', 'not-needed']);
  });
});
