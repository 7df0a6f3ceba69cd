import { describe, expect, it } from 'vitest';
import type { Plan } from '../../server/plan/plan.ts';
import type { SitePlan } from '../../server/plan/site.ts';
import { plan } from '../../server/solver/plan.ts';
import { freshSet, SET_KINDS } from '../../web/state/level-readings.ts';
import { isSiteEmpty } from '../../web/state/site-state.ts';
import { stageFigure, stageOf } from '../../web/state/stages.ts';
import { FIRST_ANGLE, levelBegun, NOON, withSets } from './level-read.ts';
import { degrees, hoop, millimetres, withSite } from './made-up-site.ts';

describe('the stage in the index', () => {
  const level: SitePlan['level'] = {
    known: true,
    up: { x: 0, y: 0, z: 1 },
    trim: degrees(-0.8),
    list: degrees(1.7),
    tilt: degrees(1.9),
    set: 1,
    waiting: 0,
    taken: NOON,
    goodFor: 2,
    residuals: [],
    drift: null,
  };
  const withPlan = (site: Partial<SitePlan>): Plan => ({
    ...plan(hoop),
    site: {
      level,
      rows: [],
      points: [],
      standing: null,
      legs: [],
      gaps: [],
      views: [],
      ...site,
    } as unknown as SitePlan,
  });
  const leg = (cut: number) => ({ cutLength: millimetres(cut) }) as SitePlan['legs'][number];

  it('shows the length of the leg that is cut first, else how the structure lies', () => {
    expect(stageFigure('level', hoop, withPlan({ legs: [leg(741.26), leg(500)] }))).toBe('741.3 mm');
    const legs = [leg(741.26), { ...leg(500), order: 1 }];
    expect(stageFigure('level', hoop, withPlan({ legs }))).toBe('500.0 mm');
    expect(stageFigure('level', hoop, withPlan({}))).toBe('\u22120.8 / 1.7°');
    const unknown = withPlan({ level: { ...level, known: false } });
    expect([stageFigure('level', hoop, unknown), stageFigure('level', levelBegun, unknown)]).toEqual(['', 'not read']);
    expect(stageFigure('level', hoop, { ...plan(hoop), site: null })).toBe('');
    expect(stageOf(FIRST_ANGLE)).toBe('level');
  });

  it('is empty until anything of the site is typed', () => {
    expect(SET_KINDS.map((kind) => isSiteEmpty(withSets(freshSet(kind)).site))).toEqual([false, false, false]);
    expect(isSiteEmpty(hoop.site)).toBe(true);
    expect([isSiteEmpty({ ...hoop.site, load: 900 }), isSiteEmpty(withSite({ tapeAccuracy: 3 }).site)]).toEqual([
      false,
      true,
    ]);
  });
});
