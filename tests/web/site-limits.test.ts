import { describe, expect, it } from 'vitest';
import { Job as JobSchema } from '../../server/job/job.ts';
import { Level, LevelSet } from '../../server/job/level.ts';
import { Site } from '../../server/job/site.ts';
import { Placing, Standing } from '../../server/job/standing.ts';
import {
  MOST_DIRECTIONS,
  MOST_LEGS,
  MOST_LEVEL_READINGS,
  MOST_LEVEL_SETS,
  MOST_PAIRS,
  MOST_SITE_DISTANCES,
  MOST_SITE_POINTS,
  MOST_SLOPES,
  MOST_THINGS,
} from '../../web/state/limits.ts';

const most = (list: unknown): unknown => (list as { maxItems?: number }).maxItems;

describe('how much of the site there may be', () => {
  it('is what the job takes of legs, things, slopes and pairs', () => {
    const byPoints = Placing.anyOf[1];
    expect([
      most(Site.properties.legs),
      most(Site.properties.things),
      most(Standing.properties.slopes),
      most(byPoints.properties.pairs),
    ]).toEqual([MOST_LEGS, MOST_THINGS, MOST_SLOPES, MOST_PAIRS]);
  });

  it('is what the job takes of levels, points and directions', () => {
    const found = JobSchema.properties.site.properties.points.items.properties.at.anyOf[2];
    expect([
      most(Level.properties.sets),
      most(LevelSet.properties.readings),
      most(Site.properties.points),
      most(Site.properties.directions),
      most(found.properties.distances),
    ]).toEqual([MOST_LEVEL_SETS, MOST_LEVEL_READINGS, MOST_SITE_POINTS, MOST_DIRECTIONS, MOST_SITE_DISTANCES]);
  });
});
