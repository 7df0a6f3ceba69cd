// What is in doubt of the frame as it will be made reaches what is cut and kept clear on site.
import { describe, expect, it } from 'vitest';
import { landingStage } from '../../../db/demo/landing-stage.ts';
import type { Job } from '../../../server/job/job.ts';
import type { Figure } from '../../../server/plan/figure.ts';
import { plan } from '../../../server/solver/plan.ts';

const stage = landingStage();

/** The stage with one leg under the middle of the crown and one under a corner, where the frame's own sizes count. */
function standing(change: { tape?: number; way?: Job['closing']['way']; cameBack?: Job['cameBack'] } = {}): Job {
  const cameBack = change.cameBack === undefined ? stage.cameBack : change.cameBack;
  const heads = [
    { member: 'hoop', spot: 'middle', number: 3, distance: 0 },
    { member: 'hoop', spot: 'corner', number: 2, distance: 0 },
  ] as const;
  const legs = stage.site.legs.map((leg, index) => ({ ...leg, head: { ...leg.head, at: heads[index]! } }));
  return {
    ...stage,
    site: { ...stage.site, legs },
    closing: { ...stage.closing, way: change.way ?? null },
    cameBack: cameBack && { ...cameBack, tapeAccuracy: change.tape ?? cameBack.tapeAccuracy },
  };
}

const siteOf = (job: Job) => plan(job).site!;
/** ± of each leg that comes from the frame itself [mm]. */
const madeParts = (job: Job) =>
  siteOf(job).legs.map(({ doubts }) => doubts.find(({ from }) => from === 'made')?.plusMinus.value ?? 0);
const bandOf = ({ band }: Figure): number => band?.plusMinus ?? 0;

describe('what is in doubt of the made frame', () => {
  it('widens legs and gaps where the readings of the frame are rougher, whatever the way', () => {
    for (const way of ['leave', 'splice-fewest'] as const) {
      const [fine, rough] = [1, 5].map((tape) => siteOf(standing({ way, tape })));
      for (const [index, leg] of fine!.legs.entries()) {
        const other = rough!.legs[index]!;
        expect(leg.cutLength.band!.from).toContain('site-made');
        expect(bandOf(other.cutLength)).toBeGreaterThan(bandOf(leg.cutLength) + 0.1);
      }
      const crossbar = (site: typeof fine) => site!.gaps[0]!.rows.find(({ name }) => name === 'crossbar 1')!.gap;
      expect(bandOf(crossbar(rough))).toBeGreaterThan(3 * bandOf(crossbar(fine)));
    }
  });

  it('is what other readings of the same frame would have made of its legs', () => {
    const asked = standing({ way: 'leave' });
    // nothing else is sought than how it is
    const job: Job = { ...asked, closing: { ...asked.closing, mostJoints: 1, cutMembers: ['crossbar 1'] } };
    let state = 4711;
    const uniform = (): number => {
      // Park & Miller's generator, Comm. ACM 31 (1988) 1192
      state = (state * 48_271) % 2_147_483_647;
      return state / 2_147_483_647;
    };
    // 12 uniform numbers less 6: near enough to a normal one
    const normal = (): number => Array.from({ length: 12 }, uniform).reduce((sum, one) => sum + one, -6);
    const drawn = Array.from({ length: 16 }, () => {
      const readings = job.cameBack!.readings.map((one) =>
        one.reading === 'size' && one.value !== null ? { ...one, value: one.value + normal() } : one,
      );
      return siteOf({ ...job, cameBack: { ...job.cameBack!, readings } }).legs.map(({ cutLength }) => cutLength.value);
    });
    for (const [index, part] of madeParts(job).entries()) {
      const lengths = drawn.map((one) => one[index]!);
      const middle = lengths.reduce((sum, one) => sum + one, 0) / lengths.length;
      const spread = Math.sqrt(lengths.reduce((sum, one) => sum + (one - middle) ** 2, 0) / (lengths.length - 1));
      expect(part / spread).toBeGreaterThan(1 / 1.5);
      expect(part / spread).toBeLessThan(1.5);
    }
  });

  it('is what bending scatters where the frame is made anew, or has not come back yet', () => {
    const anew = madeParts(standing({ way: 'new-frame' }));
    expect(Math.min(...anew)).toBeGreaterThan(0.3);
    const notYet = standing({ cameBack: null });
    for (const [index, part] of madeParts(notYet).entries()) expect(part).toBeCloseTo(anew[index]!, 6);
    const loose: Job = {
      ...notYet,
      machine: { ...notYet.machine, accuracy: { ...notYet.machine.accuracy, angleScatter: 6 } },
    };
    for (const [index, part] of madeParts(loose).entries()) expect(part).toBeGreaterThan(2 * anew[index]!);
    // and says so, where it is most of what is in doubt
    const { level } = loose.site;
    const { legs } = siteOf({ ...loose, site: { ...loose.site, level: { ...level, angleAccuracy: 0.01 } } });
    expect(legs[0]!.measureAgain).toMatchObject({ from: 'made', field: '/frame' });
  });

  it('sends back to the readings of the frame that came back', () => {
    const base = standing({ way: 'leave', tape: 5 });
    const { level } = base.site;
    const site = { ...base.site, tapeAccuracy: 0.1, level: { ...level, angleAccuracy: 0.01 } };
    const { site: planned, findings } = plan({ ...base, site });
    expect(planned!.legs[0]!.measureAgain).toMatchObject({ from: 'made', field: '/cameBack/readings' });
    expect(findings).toContainEqual(
      expect.objectContaining({
        code: 'leg-measure-again',
        data: expect.objectContaining({ doubt: 'made' }) as unknown,
      }),
    );
  });
});
