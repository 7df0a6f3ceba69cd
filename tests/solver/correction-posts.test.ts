import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import type { SiteThing } from '../../server/job/site-thing.ts';
import type { Way, WayKey } from '../../server/plan/correction.ts';
import { plan } from '../../server/solver/plan.ts';

const demo = landingStage();

function corrected(job: Job) {
  const { correction, findings } = plan(job);
  if (correction === null) throw new Error('no correction');
  const way = (key: WayKey): Way => correction.ways.find((one) => one.key === key)!;
  return { way, findings };
}

describe('a post that must pass', () => {
  const post = (x: number, y: number): SiteThing => ({
    name: 'pile',
    shape: {
      shape: 'cylinder',
      at: { x, y, z: 0 },
      axis: { by: 'axes', vector: { x: 0, y: 0, z: 1 } },
      diameter: 200,
      ends: null,
    },
    clearance: 10,
    swing: null,
  });
  const among = (...things: SiteThing[]): Job => ({ ...demo, site: { ...newJob('hoop').site, things } });
  const roomOf = (way: Way) => way.fixings.find(({ fixing }) => fixing === 'post')!.misfit.value;

  it('that stands clear of every tube changes nothing', () => {
    const plain = corrected(demo).way('splice-fewest');
    const clear = corrected(among(post(0, -150))).way('splice-fewest');
    expect(clear.joints.map(({ place }) => place)).toEqual(plain.joints.map(({ place }) => place));
    expect(roomOf(clear)).toBeGreaterThan(20);
  });

  it('that the wanted frame itself runs into is told, and no correction is bent out of shape for it', () => {
    // 3 mm too near to the right leg, whose inside stands at 475 − 38.1 mm
    const { way, findings } = corrected(among(post(475 - 38.1 - 110 + 3, -200)));
    const told = findings.find(({ code }) => code === 'post-struck');
    expect(told).toMatchObject({ grade: 'stop', field: '/site/things/0' });
    expect(Number(told!.data['value'])).toBeCloseTo(3, 6);
    expect(way('splice-fewest').fixings.some(({ fixing }) => fixing === 'post')).toBe(false);
    expect(way('splice-fewest').joints.map(({ place }) => Math.round(place))).toEqual(
      corrected(demo)
        .way('splice-fewest')
        .joints.map(({ place }) => Math.round(place)),
    );
  });

  it('is kept clear of where the cuts would otherwise bring a leg too near', () => {
    // the post has a hundredth of a millimetre more than it asks for beside the wanted leg
    const tight = corrected(among(post(475 - 38.1 - 110 - 0.01, -200))).way('splice-fewest');
    expect(roomOf(tight)).toBeGreaterThan(-0.5);
  });
});
