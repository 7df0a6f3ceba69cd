import { describe, expect, it } from 'vitest';
import { formatBand, formatFigure } from '../../server/language/quantity-format.ts';
import type { Finding } from '../../server/plan/finding.ts';
import type { LegPlan } from '../../server/plan/leg.ts';
import type { Plan } from '../../server/plan/plan.ts';
import type { Page } from '../../server/sheets/page.ts';
import { layoutSheet } from '../../server/sheets/render-sheet.ts';
import { makePlan } from './fixture.ts';
import { pagesOf, saidOn } from './laid-pages.ts';
import { covered, crossed, outside, texts } from './layout-faults.ts';
import { siteJob } from './site-fixture.ts';

const legPages = (plan: Plan = makePlan(), job = siteJob()): readonly Page[] => pagesOf('legs')(plan, job);
const legOf = (plan: Plan, name: string): LegPlan => plan.site!.legs.find((one) => one.name === name)!;

const usual = makePlan();
const usualPages = legPages(usual);

/** The first page of a leg. */
const pageOf = (name: string, plan: Plan = usual, job?: ReturnType<typeof siteJob>): Page =>
  (plan === usual && job === undefined ? usualPages : legPages(plan, job)).find((page) =>
    saidOn(page).includes(`Leg ${String(legOf(plan, name).number)}: ${name}`),
  )!;

describe('leg sheet', () => {
  it('has a page for each leg in the order of cutting, each with its wraps behind it', () => {
    const heads = legPages().map((page) => texts(page.items).find(({ height }) => height === 5)!.text);
    expect(heads).toEqual([
      'Leg 3: middle post, in the middle',
      'Leg 1: port strut, port side',
      'port strut, foot',
      'port strut, head',
      'Leg 2: starboard strut, starboard side',
      'starboard strut, foot',
      'starboard strut, head',
    ]);
    expect(saidOn(pageOf('middle post'))).toContain('Cut and set up this one first of 3.');
    expect(saidOn(pageOf('port strut'))).toContain('Number 2 of 3 in the order of cutting');
  });

  it('calls the sides left and right on shore', () => {
    const job = siteJob();
    const shore = { ...job, site: { ...job.site, sides: 'shore' as const } };
    const said = legPages(makePlan(), shore).map(saidOn).join(' ');
    expect(said).toContain('Leg 1: port strut, left side');
    expect(said).toContain('Seen from right, front is right');
  });

  it.each(['mm', 'inch'] as const)('says in %s what the plan says, the length to saw off largest', (unit) => {
    const job = siteJob('a4', unit);
    const units = { ...job.units, fraction: 32 as const };
    const plan = makePlan();
    const leg = legOf(plan, 'port strut');
    const page = pageOf('port strut', plan, job);
    const said = texts(page.items);
    const largest = said.reduce((best, one) => (one.height > best.height ? one : best));
    expect(largest.text).toBe(formatFigure(leg.cutLength, units));
    for (const one of [leg.foot.rise!, leg.foot.tilt, leg.head.axisAngle, leg.middleLength]) {
      expect(said.map(({ text }) => text)).toContain(formatFigure(one, units));
    }
    const whole = saidOn(page);
    expect(whole).toContain(`sure to ${formatBand(leg.cutLength.band!, 'mm', units)}`);
    expect(whole.split(`saw off ${formatFigure(leg.cutLength, units)}`)).toHaveLength(2);
    expect(whole).toContain(`${formatFigure(leg.shortest, units)}; ${formatFigure(leg.longest, units)}`);
    expect(whole).toContain('62.3° clockwise');
    expect(whole).toContain(unit === 'mm' ? 'leg for 1° of slope 6.703 mm' : 'leg for 1° of slope 0.264 in');
  });

  it('says which way the roll goes', () => {
    const said = saidOn(pageOf('starboard strut'));
    expect(said).toContain('62.3° anticlockwise');
    expect(said).not.toContain('−62.3°');
    expect(saidOn(pageOf('middle post'))).not.toContain('Seen from the foot');
  });

  it('gives the adjustment with what it does to the slope', () => {
    expect(saidOn(pageOf('starboard strut'))).toContain(
      'with slip piece 742.4 mm to 782.4 mm that is, of slope ± 2.98°',
    );
  });

  it('goes through the work in its order, and leaves out what an end does not need', () => {
    const said = saidOn(pageOf('port strut'));
    const leg = legOf(makePlan(), 'port strut');
    const foot = leg.templates.find(({ scrap }) => scrap === 'start')!;
    const steps = [
      '1. Saw off 771.8 mm',
      '2. Scribe one straight line',
      `3. Foot wrap, ring ${foot.ringStation.toFixed(1)} mm from the foot`,
      '4. Head wrap, ring',
      '5. Check: middle',
      '6. Set up frame, then leg, by the level sheet',
      '7. Read the level again',
      '8. Tack, read once more, weld',
    ].map((step) => said.indexOf(step));
    expect(Math.min(...steps)).toBeGreaterThan(0);
    expect(steps.toSorted((a, b) => a - b)).toEqual(steps);
    const bare = saidOn(pageOf('middle post'));
    expect(bare).not.toMatch(/wrap|Scribe/);
    expect(bare).toContain('5. Fasten the head');
  });

  it('says what its doubt is made of, the largest first, and what to measure again', () => {
    const said = saidOn(pageOf('port strut'));
    expect(said).toContain('the ± 1.40 mm is made of the level ± 1.02 mm transom port (a point of the site) ± 0.61 mm');
    expect(said).toContain('The level accounts for 1.02 mm of it: measure that again.');
    expect(said).toContain('Once the legs before it stand, ± 0.90 mm is left.');
    expect(saidOn(pageOf('starboard strut'))).not.toContain('measure that again');
  });

  it('gives strength as information, and defers to a qualified person', () => {
    const said = saidOn(pageOf('port strut'));
    expect(said).toContain('As a strut: information, no approval');
    expect(said).toContain('slenderness 59.2, Euler load 108400 N. Reduced for imperfections: 31500 N.');
    expect(said).toContain('2390 N (');
    expect(said).toContain('No number here is leave to stand on it: a qualified person decides');
    expect(saidOn(pageOf('middle post'))).toContain('108400 N (it yields first)');
  });

  it('says why it cannot be made', () => {
    const plan = makePlan();
    const refused = (change: Partial<Plan>) =>
      layoutSheet('legs', { plan: { ...plan, ...change }, job: siteJob(), revision: null });
    expect(refused({ site: { ...plan.site!, legs: [] } })).toEqual({ ok: false, reason: 'no-legs' });
    expect(refused({ site: null })).toEqual({ ok: false, reason: 'no-legs' });
    expect(refused({ frame: null })).toEqual({ ok: false, reason: 'frame-not-possible' });
  });
});

const about = (code: Finding['code'], field: string, grade: Finding['grade'], data: Finding['data'] = {}): Finding => ({
  code,
  grade,
  field,
  data,
  wayOut: null,
});

describe('findings', () => {
  const plan = makePlan();
  const findings: Finding[] = [
    about('leg-slender', '/site/legs/0', 'caution', { name: 'port strut', value: 180, high: 150 }),
    about('leg-no-length', '/site/legs/1/foot', 'stop', { name: 'starboard strut', value: 0 }),
    about('gap-under', '/site/things/0', 'caution', { name: 'middle post', thing: 'rudder post', value: 3, low: 25 }),
  ];
  const found = { ...plan, findings };

  it('stand on the page of their own leg', () => {
    const [port, starboard, middle] = ['port strut', 'starboard strut', 'middle post'].map((name) =>
      saidOn(pageOf(name, found)),
    );
    expect(port!.match(/CAUTION|STOP/g)).toEqual(['CAUTION']);
    expect(starboard!.match(/CAUTION|STOP/g)).toEqual(['STOP']);
    expect(starboard!.indexOf('STOP')).toBeLessThan(starboard!.indexOf('saw off at'));
    expect(middle!.match(/CAUTION|STOP/g)).toEqual(['CAUTION']);
  });

  it.each(['a4', 'letter'] as const)('run over to a page that says so on %s, where they are many', (paper) => {
    const many = Array.from({ length: 14 }, (_, index) =>
      about('leg-slender', '/site/legs/0', 'caution', { name: `port strut ${String(index)}`, value: 180, high: 150 }),
    );
    const pages = legPages({ ...plan, findings: many }, siteJob(paper, 'inch'));
    const over = pages.filter((page) => saidOn(page).includes('port strut, continued'));
    expect(over).toHaveLength(1);
    expect(saidOn(over[0]!).match(/CAUTION/g)).toHaveLength(14);
    expect(saidOn(pageOf('port strut', { ...plan, findings: many }, siteJob(paper, 'inch')))).toContain(
      'Cautions or notes about this leg stand on the next page.',
    );
    for (const page of pages) {
      expect([outside(page), covered(page), crossed(page)]).toEqual([[], [], []]);
    }
  });
});

describe.each(['a4', 'letter'] as const)('on %s', (paper) => {
  it.each([20, 60.3])('a leg of %d mm has one page, with nothing over another, nothing left to fill in', (diameter) => {
    const plan = makePlan(diameter);
    for (const unit of ['mm', 'inch'] as const) {
      const pages = legPages({ ...plan, findings: [] }, siteJob(paper, unit));
      for (const page of pages) {
        expect([outside(page), covered(page), crossed(page)]).toEqual([[], [], []]);
        expect(saidOn(page)).not.toMatch(/[{}]|undefined|NaN|Infinity/);
      }
      expect(pages.filter((page) => saidOn(page).includes('saw off at'))).toHaveLength(3);
      expect(pages.some((page) => saidOn(page).includes('continued'))).toBe(false);
    }
  });
});
