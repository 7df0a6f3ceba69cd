// A site with a value off must be the same site: laid the other way where it is not, left out where neither way is.
import { describe, expect, it } from 'vitest';
import { newJob } from '../../../server/job/default-job.ts';
import { describeFinding } from '../../../server/language/finding-words.ts';
import type { Finding } from '../../../server/plan/finding.ts';
import { finding } from '../../../server/solver/finding.ts';
import { EXACT, type Off, type SiteDoubt } from '../../../server/solver/site/laid-site.ts';
import { laySite } from '../../../server/solver/site/lay-site.ts';
import { planSite } from '../../../server/solver/site/plan-site.ts';
import { siteDoubts } from '../../../server/solver/site/site-doubts.ts';
import { isTyped } from '../../../server/solver/site/typed-site.ts';
import { planStanding } from '../../../server/solver/site/standing/plan-standing.ts';
import { variedSites } from '../../../server/solver/site/varied-sites.ts';
import { levelOf, incline, X, Y } from './level-study.ts';
import { at, EDGE, EDGE_HINGE, HINGE, place, slope, sourceOf, standing, studyOf } from './standing-site.ts';

const doubt: SiteDoubt = { field: '/it', plusMinus: 2, from: 'point', name: 'A' };
const { laid } = studyOf(sourceOf());

/** Sites of which those stop whose value is off by so much. */
const laying =
  (stops: (off: number) => readonly Finding[]) =>
  (off: Off): { laid: typeof laid; findings: readonly Finding[] } => ({
    laid: { ...laid },
    findings: stops(off('/it')),
  });
const stop = finding('slope-not-reached', 'stop', '/site/standing/slopes/0/angle');
const vary = (stops: (off: number) => readonly Finding[]) => {
  const lay = laying(stops);
  return variedSites(lay, [doubt], lay(EXACT));
};

describe('a site with a value off', () => {
  it('has it off by its accuracy', () => {
    const { varied, findings } = vary(() => []);
    expect(varied).toMatchObject([{ doubt, off: 2 }]);
    expect(varied[0]!.otherWay!()).toMatchObject({ off: -2 });
    expect(findings).toEqual([]);
  });

  it('has it off downwards where upwards something else stops', () => {
    expect(vary((off) => (off > 0 ? [stop] : [])).varied).toMatchObject([{ off: -2 }]);
    // as many as before, but others
    const other = { ...stop, field: '/site/standing/slopes/1/angle' };
    expect(vary((off) => (off > 0 ? [other] : [stop])).varied).toMatchObject([{ off: -2 }]);
    // what stops as typed must not come to stand
    expect(vary((off) => (off > 0 ? [] : [stop])).varied).toMatchObject([{ off: -2 }]);
    const either = { ...stop, code: 'standing-either-way' as const, grade: 'caution' as const };
    expect(vary((off) => (off > 0 ? [either] : [])).varied).toMatchObject([{ off: -2 }]);
  });

  it('is left out where neither way is the same site, and that is said', () => {
    const { varied, findings } = vary((off) => (off === 0 ? [] : [stop]));
    expect(varied).toEqual([]);
    expect(findings).toMatchObject([{ code: 'band-left-out', grade: 'caution', field: '/it', data: { value: 1 } }]);
    expect(describeFinding({ ...findings[0]!, field: '' }, newJob('hoop').units)).toContain('is left out of them');
  });
});

describe('a frame near the end of what its hinge lets it reach', () => {
  // hinge 30° over level along its own length: a rail square to it reaches 60 less what the level is off
  const hinged = (angle: number) => {
    const placing = {
      by: 'axes' as const,
      origin: at(0, 0, 0),
      x: at(Math.cos(Math.PI / 6), 0, Math.sin(Math.PI / 6)),
      y: at(0, 1, 0),
    };
    return sourceOf({
      level: levelOf([incline(X, 0), incline(Y, 0)]),
      placing,
      ...standing({ hinge: HINGE, slopes: [slope(at(0, 1, 0), angle, 'level')] }),
    });
  };

  it('has a turn whose ± is no turn to how it was placed', () => {
    const { site, findings } = planSite(hinged(59.95));
    expect(findings.filter(({ grade }) => grade === 'stop')).toEqual([]);
    const { value, band } = site.standing!.turn!;
    expect(Math.abs(value)).toBeGreaterThan(80);
    expect(band!.plusMinus).toBeLessThan(5);
    for (const { toLevel } of site.standing!.slopes.slice(0, 1)) expect(toLevel.band).toBeNull();
  });
});

describe('a height that is asked for', () => {
  it('is as high whichever way what it counts from is off', () => {
    const height = { at: place('start'), over: at(0, 0, 0), value: 100, to: 'structure' as const };
    const source = sourceOf({ ...standing({ height }) });
    const exact = laySite(source, EXACT);
    const field = '/site/standing/height/over/z';
    const off = laySite(source, (one) => (one === field ? -2 : 0)).laid;
    const varied = [{ doubt: { field, plusMinus: 2, from: 'placing' as const, name: '' }, off: -2, laid: off }];
    const planned = planSite(source).site.standing!.height!;
    expect(planned.value).toBeCloseTo(100, 9);
    expect(planned.band).toBeNull();
    expect(planStanding({ source, laid: exact.laid, varied }).standing!.height!.band).toBeNull();
  });
});

describe('a site that was laid before', () => {
  const typedPoint = (name: string, x: number, y: number, z: number) => ({
    name,
    at: { by: 'typed' as const, point: at(x, y, z), accuracy: null },
  });
  const known = [
    typedPoint('A', 0, 0, 0),
    typedPoint('B', 900, 0, 10),
    typedPoint('C', 0, 800, 0),
    typedPoint('D', 700, 650, 300),
  ];
  const from = (...of: [string, number][]) => ({
    by: 'distances' as const,
    distances: of.map(([name, distance]) => ({ from: name, distance, accuracy: null })),
    on: null,
    towards: 'up' as const,
  });
  const wall = {
    name: 'wall',
    shape: {
      shape: 'plane' as const,
      plane: {
        by: 'normal' as const,
        at: { named: 'P' },
        normal: { by: 'plumb' as const, ahead: 80, port: 0, set: 1 },
      },
    },
    clearance: null,
    swing: null,
  };
  const source = sourceOf(
    {
      level: levelOf(
        [incline(X, 1), incline(Y, -2), incline({ x: 1, y: 1, z: 0 }, -0.5)],
        [incline(X, 1), incline(Y, 0)],
      ),
      points: [
        ...known,
        { name: 'P', at: from(['A', 700], ['B', 640], ['C', 690], ['D', 560]) },
        { name: 'Q', at: from(['P', 500], ['A', 620], ['B', 700]) },
        { name: 'R', at: { ...from(['A', 900], ['B', 800]), on: 'wall', towards: 'port' } },
        { name: 'S', at: { by: 'plumb' as const, from: 'Q', ahead: 10, port: 20, up: 30, set: 2, accuracy: null } },
      ],
      things: [wall],
      placing: { by: 'axes', origin: { named: 'Q' }, x: at(1, 0, 0), y: at(0, 1, 0) },
      ...standing({ hinge: EDGE_HINGE, slopes: [slope(at(1, 0, 0), 3, 'level')] }),
    },
    EDGE,
  );

  it('is laid with a value off as it would be anew', () => {
    const exact = laySite(source, EXACT);
    expect(exact.findings.filter(({ grade }) => grade === 'stop')).toEqual([]);
    const doubts = siteDoubts(source);
    expect(doubts.length).toBeGreaterThan(25);
    for (const { field, plusMinus } of doubts) {
      const off: Off = (one) => (one === field ? plusMinus : 0);
      const [again, anew] = [laySite(source, off, exact), laySite(source, off)];
      expect(again.laid).toEqual(anew.laid);
      expect(again.findings).toEqual(anew.findings);
    }
  });

  it('takes over what rests on nothing that is off', () => {
    const exact = laySite(source, EXACT);
    const off = (field: string) => laySite(source, (one) => (one === field ? 1 : 0), exact).laid;
    // S is measured from Q, and nothing stands on it
    const aside = off('/site/points/7/at/up');
    expect(aside.frame).toBe(exact.laid.frame);
    expect(aside.points.get('P')).toBe(exact.laid.points.get('P'));
    expect(off('/site/points/5/at/distances/0/distance').frame).not.toBe(exact.laid.frame);
    expect(off('/site/points/0/at/point/x').points.get('P')).not.toBe(exact.laid.points.get('P'));
    expect(off('/site/level/sets/0/readings/0').levels[1]).toBe(exact.laid.levels[1]);
  });
});

describe('names', () => {
  const codesOf = (named: string) => {
    const lost = {
      name: 'lost',
      at: { by: 'plumb' as const, from: 'A', ahead: 1, port: 1, up: 1, set: 1, accuracy: null },
    };
    const thing = {
      name: 'post',
      shape: { shape: 'point' as const, at: { named }, radius: 10 },
      clearance: null,
      swing: null,
    };
    const { findings } = planSite(sourceOf({ points: [lost], things: [thing] }));
    return findings.filter(({ field }) => field === '/site/things/0/shape/at/named');
  };

  it('of points that have no place are told from those that nothing has', () => {
    expect(codesOf('lost')).toMatchObject([{ code: 'site-name-no-place', grade: 'stop', data: { name: 'lost' } }]);
    expect(codesOf('nobody')).toMatchObject([{ code: 'site-name-missing', data: { name: 'nobody' } }]);
    expect(describeFinding(codesOf('lost')[0]!, newJob('hoop').units)).toContain('cannot be told: lost.');
  });
});

it('a swing alone is something of a site', () => {
  const { site } = newJob('hoop');
  expect(isTyped(site)).toBe(false);
  expect(isTyped({ ...site, standing: { ...site.standing, swing: { from: 0, to: 10 } } })).toBe(true);
});
