import { describe, expect, it } from 'vitest';
import { Job as JobSchema } from '../../server/job/job.ts';
import { Direction, SiteName } from '../../server/job/direction.ts';
import { Level, LevelReading, LevelSet } from '../../server/job/level.ts';
import { Site } from '../../server/job/site.ts';
import { Placing, Slope, Standing } from '../../server/job/standing.ts';
import {
  LONGEST_SITE_NAME,
  MOST_DIRECTIONS,
  MOST_LEAN,
  MOST_LEGS,
  MOST_LEVEL_READINGS,
  MOST_LEVEL_SETS,
  MOST_PAIRS,
  MOST_SHOWN,
  MOST_SITE_DISTANCES,
  MOST_SITE_POINTS,
  MOST_SLOPES,
  MOST_THINGS,
} from '../../web/state/limits.ts';

const most = (list: unknown): unknown => (list as { maxItems?: number }).maxItems;

const bounds = (schema: unknown) => schema as { maxLength?: number; minimum?: number; maximum?: number };

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

  it('is what the job takes of names and of angles to either side', () => {
    expect(bounds(SiteName('name')).maxLength).toBe(LONGEST_SITE_NAME);
    const [shown] = LevelReading.anyOf[0].properties.angle.anyOf;
    const lean = Direction.anyOf[1].properties;
    expect(bounds(shown)).toMatchObject({ minimum: -MOST_SHOWN, maximum: MOST_SHOWN });
    for (const angle of [lean.ahead, lean.port, Slope.properties.angle])
      expect(bounds(angle)).toMatchObject({ minimum: -MOST_LEAN, maximum: MOST_LEAN });
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
