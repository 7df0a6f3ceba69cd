import { describe, expect, it } from 'vitest';
import type { Job } from '../../server/job/job.ts';
import { TOWARDS } from '../../server/job/site-point.ts';
import { parseJob } from '../../server/job/validate.ts';
import { foundOptions, freshFound, TOWARDS_WAYS } from '../../web/state/site-points.ts';
import { levelRead } from './level-read.ts';
import { hoop, withSite } from './made-up-site.ts';
import { namedSite, typedPoint } from './named-site.ts';

describe('ways to find a point', () => {
  it('are offered where there is something to find it by', () => {
    const options = (site: Job['site'], index: number): string[] =>
      foundOptions('typed', site, index).map(({ value }) => value);
    expect(options(withSite({ points: [{ name: 'A', at: typedPoint(0, 0, 0) }] }, levelRead).site, 0)).toEqual([
      'typed',
    ]);
    expect(options(namedSite.site, 0)).toEqual(['typed', 'plumb', 'distances']);
    expect(options({ ...namedSite.site, level: hoop.site.level }, 0)).toEqual(['typed', 'distances']);
  });

  it('begin as something that the job takes', () => {
    for (const by of ['typed', 'plumb', 'distances'] as const) {
      const points = namedSite.site.points.map((point, index) =>
        index === 2 ? { ...point, at: freshFound(by, namedSite.site, 2)! } : point,
      );
      expect(parseJob(withSite({ points }, namedSite)).ok, by).toBe(true);
    }
    expect([...TOWARDS_WAYS].sort()).toEqual([...TOWARDS].sort());
  });
});
