import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import type { Leg } from '../../server/job/leg.ts';
import { parseJob } from '../../server/job/validate.ts';
import { plan } from '../../server/solver/plan.ts';
import { footEndAs, freshAdjust, FRESH_FITTING, freshLeg } from '../../web/state/leg-fresh.ts';
import { hoop, withSite } from './made-up-site.ts';
import { demo, demoPlan } from './planned-stage.ts';

/** The job with one leg more, as the button adds it. */
function withFreshLeg(job: Job): Job {
  const leg = freshLeg(job.site, plan(job));
  expect(leg).not.toBeNull();
  return withSite({ legs: [...job.site.legs, leg!] }, job);
}

describe('a fresh leg', () => {
  it('stands 600 below the end of the frame, goes to a bend and has a length at once', () => {
    const job = withFreshLeg(hoop);
    expect(parseJob(job).ok).toBe(true);
    const [leg] = job.site.legs;
    const [member] = plan(hoop).frame!.members;
    const start = member!.pieces[0]!.from;
    // x of a hoop runs to starboard, y ahead
    expect(leg!.foot.at).toEqual({ x: Math.round(start.y), y: Math.round(-start.x), z: -600 });
    expect(leg!.name).toBe('port leg');
    expect(leg!.head.at).toMatchObject({ spot: 'bend-start', number: 1 });
    const [cut] = plan(job).site!.legs;
    expect(cut!.cutLength.value).toBeGreaterThan(500);
  });

  it('is mirrored to the other side after the first, what was typed over with it', () => {
    const one = withFreshLeg(hoop);
    const first: Leg = {
      ...one.site.legs[0]!,
      name: 'left',
      foot: {
        ...one.site.legs[0]!.foot,
        at: { x: -400, y: 300, z: -550 },
        surface: { by: 'lean', ahead: 0, port: 4 },
      },
    };
    const two = withFreshLeg(withSite({ legs: [first] }));
    const [, second] = two.site.legs;
    expect(parseJob(two).ok).toBe(true);
    expect(second).toMatchObject({
      name: 'starboard leg',
      foot: { at: { x: -400, y: -300, z: -550 }, surface: { by: 'lean', ahead: 0, port: -4 } },
      head: { at: { spot: 'bend-end', number: 2 } },
    });
    const [left, right] = plan(two).site!.legs;
    expect(right!.cutLength.value).toBeCloseTo(left!.cutLength.value, 6);
    expect([left!.side, right!.side]).toEqual(['port', 'starboard']);
    expect(left!.headPoint.y * right!.headPoint.y).toBeLessThan(0);
  });

  it('goes to a place that no leg has yet, and never twice to one while there is another', () => {
    const four = [1, 2, 3, 4].reduce(withFreshLeg, hoop);
    const heads = four.site.legs.map(({ head }) => JSON.stringify(head.at));
    expect(new Set(heads).size).toBe(4);
    expect(new Set(four.site.legs.map(({ name }) => name)).size).toBe(4);
  });

  it('is offered for every shape that a frame can have, and not before there is one', () => {
    for (const shape of ['hoop', 'ring', 'offset', 'straight', 'run', 'members'] as const) {
      const job = withFreshLeg(newJob(shape));
      expect([shape, parseJob(job).ok, plan(job).site!.legs.length]).toEqual([shape, true, 1]);
    }
    expect(freshLeg(hoop.site, null)).toBeNull();
  });

  it('is put below the frame where that stands, not where it was drawn', () => {
    const job = withSite({ legs: [] }, demo);
    const leg = freshLeg(job.site, demoPlan)!;
    // its feet are at the after edge, x = 0 of the stage, and run along it; as drawn they lie along x
    const { x, y, z } = leg.foot.at as { x: number; y: number; z: number };
    expect([Math.abs(x) < 25, Math.abs(y + 456) < 1, z]).toEqual([true, true, -600]);
  });

  it('begins its ends and its adjustment with values that a job may hold', () => {
    const [leg] = demo.site.legs;
    const socket = footEndAs('socket', { end: 'mitre', plate: 6 });
    const legs: Leg[] = [
      {
        ...leg!,
        foot: { ...leg!.foot, end: socket },
        head: { ...leg!.head, end: FRESH_FITTING },
        adjust: freshAdjust('slip'),
      },
    ];
    expect(parseJob(withSite({ legs }, demo)).ok).toBe(true);
    expect(footEndAs('square', { end: 'mitre', plate: 6 })).toEqual({ end: 'square', plate: 6 });
    expect(footEndAs('mitre', socket)).toEqual({ end: 'mitre', plate: 0 });
  });
});
