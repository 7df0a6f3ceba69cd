import { describe, expect, it } from 'vitest';
import type { Plan } from '../../server/plan/plan.ts';
import type { SitePlan } from '../../server/plan/site.ts';
import { COLOURS } from '../../server/sheets/ink.ts';
import { layoutSheet } from '../../server/sheets/render-sheet.ts';
import { figure } from './fixture-figure.ts';
import { makePlan } from './fixture.ts';
import { ofRole, pagesOf, saidOn } from './laid-pages.ts';
import { covered, crossed, outside } from './layout-faults.ts';
import { siteJob } from './site-fixture.ts';

const planWith = (change: Partial<SitePlan>): Plan => {
  const plan = makePlan();
  return { ...plan, site: { ...plan.site!, ...change } };
};
const levelPages = (plan: Plan = makePlan(), job = siteJob()) => pagesOf('level')(plan, job);
const said = (plan: Plan = makePlan(), job = siteJob()): string => levelPages(plan, job).map(saidOn).join(' ');
const count = (text: string, part: string): number => text.split(part).length - 1;

describe('level sheet', () => {
  it('says how the structure lies, from when, and until when that is believed', () => {
    const text = said();
    for (const part of [
      'lengthwise (trim) 0.80° ± 0.07°, astern higher',
      'sideways (list) 1.70° ± 0.07°, port higher',
      'in all, off plumb 1.88°',
      'taken at 2026-11-26 23:10',
      'believed until 2026-11-27 01:10',
    ]) {
      expect(count(text, part), part).toBe(1);
    }
    expect(text).toContain('Since set 1 (taken 2026-11-26 18:00) it has turned by 0.40°');
    expect(text).toContain('reading 3 +0.45°, DISAGREES: measure again');
  });

  it('calls the sides of a ramp front, back, left and right', () => {
    const job = siteJob();
    const text = said(makePlan(), { ...job, site: { ...job.site, sides: 'shore' } });
    expect(text).toContain('0.80° ± 0.07°, back higher');
    expect(text).toContain('1.70° ± 0.07°, left higher');
    expect(text).not.toMatch(/astern|starboard higher|port higher|athwart|trim|Floats/);
    expect(text).toContain('held front to back, upright held side to side, upright');
    expect(text).toContain('9.20° off plumb, leans to the back');
  });

  it('says nothing of hours where no time was noted, and that nobody read a level', () => {
    const plan = makePlan();
    const level = { ...plan.site!.level, taken: '', known: false, drift: null, residuals: [] };
    const text = said(planWith({ level }));
    expect(text).toContain('lengthwise (trim) not read sideways (list) not read');
    expect(text).toContain('lengthwise: not read sideways: not read');
    expect(text).not.toMatch(/off plumb 0|0\.0°, /);
    expect(text).toContain('No level tells how it lies: its own axes are taken for level.');
    expect(text).not.toContain('readings of set');
  });

  it('has empty boxes for the readings that are taken again', () => {
    const [page] = levelPages();
    expect(saidOn(page!)).toContain('Read the level again just before you mark, and again before you drill.');
    const boxes = ofRole(page!, 'log');
    expect(boxes).toHaveLength(12);
    for (const { points } of boxes) {
      expect(points[2]![0] - points[0]![0]).toBeGreaterThan(35);
      expect(points[2]![1] - points[0]![1]).toBeCloseTo(7, 9);
    }
  });

  it('draws what is level as the plan has it, in both views', () => {
    const [page] = levelPages();
    const level = ofRole(page!, 'mark').filter(({ stroke }) => stroke?.colour === COLOURS.blue);
    const slopes = level.map(({ points }) => {
      const [[x0, y0], [x1, y1]] = [points[0]!, points.at(-1)!];
      return (y0 - y1) / (x1 - x0);
    });
    expect(slopes).toHaveLength(2);
    expect(slopes[0]).toBeCloseTo(0.01396, 9);
    expect(slopes[1]).toBeCloseTo(0.02967, 9);
  });

  it('says what the level must show, in each plane with its side, and marks where they differ', () => {
    const text = said();
    for (const part of [
      'raked post 80.6° 9.35° 80.8°: 9.20° off plumb, leans astern 88.3°: 1.70° off plumb, leans to starboard ± 0.07° differs',
      'hoop, tube 2.40° 87.6° 0.80°, astern higher 2.40°, port higher ± 0.07°',
      'port strut, leg 51.2° 38.8° 51.7°: 38.3° off plumb, leans astern — ± 0.07° differs',
      'hinge 1.70°',
    ]) {
      expect(count(text, part), part).toBe(1);
    }
    expect(count(text, ' differs')).toBe(2);
    const alike = said(planWith({ rows: makePlan().site!.rows.map((row) => ({ ...row, differs: false })) }));
    expect(alike).not.toMatch(/differs/i);
  });

  it('says where points are, how sure, and what their distances are off by', () => {
    const text = said();
    expect(text).toContain('transom port 0 420.0 −610.0 1.2 1.5 2.1');
    expect(text).toContain('pontoon pad −650.0 0 −612.4 1.2 1.5 2.1');
    expect(text).toContain(
      'from transom port +0.80 mm; from transom starboard −0.50 mm; from rail +7.20 mm, DISAGREES: measure again; from post foot −1.10 mm.',
    );
    expect(said(makePlan(), siteJob('a4', 'inch'))).toContain('0.047 0.059 0.083');
  });

  it('says the room to things, what is struck, and where', () => {
    const text = said();
    for (const part of [
      'rudder post middle post STRIKES −4.20 mm ± 2.30 mm 25.0 mm 612.5 mm from its foot thing 35.0°',
      'hoop TOO LITTLE 18.3 mm ± 2.30 mm 612.5 mm from its datum end thing 20.0°',
      'crossbar 1 61.0 mm ± 2.30 mm',
      'an ellipse of 61.2 mm by 60.3 mm, 9.70° off square.',
    ]) {
      expect(count(text, part), part).toBe(1);
    }
  });

  it('says how the frame stands against level and against the structure', () => {
    const text = said();
    expect(text).toContain('height of the place asked for 412.3 mm ± 1.90 mm');
    expect(text).toContain('y of the frame −1.47° ± 0.10° −2.27° ± 0.07°');
    expect(text).toContain('transom port 2.40 mm');
    expect(said(planWith({ standing: null }))).not.toContain('How the frame stands');
  });

  it('carries its cautions', () => {
    const text = said();
    expect(text).toContain('Floats move, and so does everything on them');
    expect(text).toContain('Nothing here is leave to stand on it');
    expect(saidOn(levelPages()[0]!)).toContain('Cautions');
  });

  it('tells what was found of the site, but not of a leg, which has its own page', () => {
    const plan = makePlan();
    const finding = { grade: 'caution', data: {}, wayOut: null } as const;
    const text = said({
      ...plan,
      findings: [
        { ...finding, code: 'level-no-time', field: '/site/level/sets/1/taken' },
        { ...finding, code: 'leg-slender', field: '/site/legs/0', data: { name: 'port strut' } },
      ],
    });
    expect(count(text, 'CAUTION:')).toBe(1);
    expect(text).toContain('When these readings were taken is not noted');
  });

  it('is refused where there is nothing of a site to tell', () => {
    const plan = makePlan();
    const job = siteJob();
    const level = { ...plan.site!.level, known: false };
    const nothing = planWith({ level, points: [] });
    const refusal = { ok: false, reason: 'nothing-of-the-site' };
    expect(layoutSheet('level', { plan: nothing, job, revision: null })).toEqual(refusal);
    expect(layoutSheet('level', { plan: { ...plan, site: null }, job, revision: null })).toEqual(refusal);
    const directions = [{ name: 'post', direction: { by: 'axes' as const, vector: { x: 0, y: 0, z: 1 } } }];
    const asked = { ...job, site: { ...job.site, directions } };
    expect(layoutSheet('level', { plan: nothing, job: asked, revision: null }).ok).toBe(true);
  });
});

describe.each(['a4', 'letter'] as const)('on %s', (paper) => {
  const times = <T>(list: readonly T[], by: number): T[] => Array.from({ length: by }, () => list).flat();
  const { rows, points, gaps } = makePlan().site!;
  const crowded = planWith({
    rows: times(rows, 8),
    points: times(points, 15).map((one, index) => ({
      ...one,
      name: `${one.name} ${String(index)}`,
      x: figure(-12_345.6, 'mm', 3),
    })),
    gaps: times(gaps, 12),
  });

  it.each([
    ['an ordinary site', makePlan()],
    ['a crowded one', crowded],
  ])('nothing lies over another with %s', (_, plan) => {
    for (const unit of ['mm', 'inch'] as const) {
      const pages = levelPages(plan, siteJob(paper, unit));
      for (const page of pages) {
        expect([outside(page), covered(page), crossed(page)]).toEqual([[], [], []]);
        expect(saidOn(page)).not.toMatch(/[{}]|undefined|NaN|Infinity/);
      }
    }
  });

  it('an ordinary site takes two pages', () => {
    expect(levelPages(makePlan(), siteJob(paper))).toHaveLength(2);
  });
});
