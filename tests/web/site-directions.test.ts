import { describe, expect, it } from 'vitest';
import type { Job } from '../../server/job/job.ts';
import { parseJob } from '../../server/job/validate.ts';
import { plan } from '../../server/solver/plan.ts';
import { directionOptions, freshDirection, thingsWithDirection } from '../../web/state/site-directions.ts';
import { tubesOf } from '../../web/state/tubes.ts';
import { hoop, withSite } from './made-up-site.ts';
import { namedSite } from './named-site.ts';

const tubes = tubesOf(plan(hoop));

describe('ways to say a direction', () => {
  it('are offered where there is something to say them by', () => {
    const by = (site: Job['site'], withTubes = true): string[] =>
      directionOptions('lean', { site, tubes: withTubes ? tubes : [] }).map(({ value }) => value);
    expect(by(hoop.site, false)).toEqual(['lean', 'axes']);
    expect(by(namedSite.site)).toEqual(['lean', 'plumb', 'points', 'thing', 'tube', 'axes']);
    expect(thingsWithDirection({ site: namedSite.site, tubes, own: 'post' }).map(({ value }) => value)).toEqual([
      'wall',
    ]);
  });

  it('begin as something that the job takes', () => {
    for (const by of ['lean', 'plumb', 'points', 'thing', 'tube', 'axes'] as const) {
      const direction = freshDirection(by, { site: namedSite.site, tubes })!;
      expect(parseJob(withSite({ directions: [{ name: by, direction }] }, namedSite)).ok, by).toBe(true);
    }
  });
});
