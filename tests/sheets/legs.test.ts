import { describe, expect, it } from 'vitest';
import { formatBand, formatFigure } from '../../server/language/quantity-format.ts';
import type { Plan } from '../../server/plan/plan.ts';
import { layoutSheet } from '../../server/sheets/render-sheet.ts';
import { figure } from './fixture-figure.ts';
import { makePlan } from './fixture.ts';
import { saidOn } from './laid-pages.ts';
import { legOf, legPages, pageOf, usualPages, withLeg } from './leg-pages.ts';
import { covered, crossed, outside, texts } from './layout-faults.ts';
import { siteJob } from './site-fixture.ts';

describe('leg sheet', () => {
  it('has all legs on one page in front, then a page for each in the order of cutting, with its wraps behind it', () => {
    const heads = legPages().map((page) => texts(page.items).find(({ height }) => height === 5)!.text);
    expect(heads).toEqual([
      'All legs, in the order of cutting',
      'Leg 3: middle post, in the middle',
      'Leg 1: port strut, port side',
      'port strut, foot',
      'port strut, head',
      'Leg 2: starboard strut, starboard side',
      'starboard strut, foot',
      'starboard strut, head',
    ]);
    const front = saidOn(usualPages[0]!);
    expect(front).toContain(
      '1 middle post in the middle 38.1 mm × 1.65 mm 543.2 mm ± 1.40 mm hoop 2 port strut port side',
    );
    expect(saidOn(pageOf('middle post'))).toContain('Cut and set up this one first of 3.');
    expect(saidOn(pageOf('port strut'))).toContain('Number 2 of 3 in the order of cutting');
  });

  it('calls the sides left and right on shore', () => {
    const job = siteJob();
    const shore = { ...job, site: { ...job.site, sides: 'shore' as const } };
    const said = legPages(makePlan(), shore).map(saidOn).join(' ');
    expect(said).toContain('Leg 1: port strut, left side');
    expect(said).toContain('Seen from the right: front is on the right');
    expect(said).not.toMatch(/athwart|trim|\(list\)/);
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
    expect(whole).toContain(unit === 'mm' ? '20.7 mm clockwise (62.3°)' : '13/16 in clockwise (62.3°)');
    expect(whole).toContain(unit === 'mm' ? 'leg for 1° of slope 6.70 mm/°' : 'leg for 1° of slope 0.264 in/°');
    expect(whole).toContain('head on hoop, from left foot (black dot)');
    expect(whole).toContain(unit === 'mm' ? 'foot plate, welded on 6 mm' : 'foot plate, welded on 0.236 in');
  });

  it('says which way the roll goes', () => {
    const said = saidOn(pageOf('starboard strut'));
    expect(said).toContain('62.3° anticlockwise');
    expect(said).not.toContain('−62.3°');
    expect(saidOn(pageOf('middle post'))).not.toContain('Seen from the foot');
    expect(saidOn(pageOf('port strut'))).toContain('foot: long side, 62.3° anticlockwise from the scribed line');
  });

  it.each([
    [0.04, null, 'in line'],
    [-0.15, 0.2, 'in line'],
    [179.9, 0.2, '20.7 mm, half round (179.9°)'],
    [0.15, 0.1, '20.7 mm clockwise (0.15°)'],
  ])('says of a roll of %d° that is known to %s: %s', (roll, plusMinus, words) => {
    const change = { roll: figure(roll, 'deg', plusMinus ?? undefined), rollRound: figure(20.7, 'mm') };
    expect(saidOn(pageOf('port strut', withLeg('port strut', change)))).toContain(`acute side ${words}`);
  });

  it('gives the adjustment with what it does to the slope', () => {
    expect(saidOn(pageOf('starboard strut'))).toContain(
      'with slip piece 742.4 mm to 782.4 mm that is, of slope −2.98° to 2.98°',
    );
  });

  it('goes through the work in its order, and leaves out what an end does not need', () => {
    const said = saidOn(pageOf('port strut'));
    const steps = [
      '1. Saw off 771.8 mm',
      '2. Scribe one straight line',
      '3. Foot wrap, printed side out: left edge on the scribed line, ring on the sawn',
      '4. Head wrap in the same way, its ring on the other sawn end',
      '5. Check: middle',
      '6. Weld the 6 mm plate under the mitre',
      '7. Set up frame, then leg by level sheet, scribed line up',
      '8. Read the level again',
      '9. Tack, read once more, weld',
    ].map((step) => said.indexOf(step));
    expect(Math.min(...steps)).toBeGreaterThan(0);
    expect(steps.toSorted((a, b) => a - b)).toEqual(steps);
    const bare = saidOn(pageOf('middle post'));
    expect(bare).not.toMatch(/wrap|Scribe|plate/);
    expect(bare).toContain('5. Fasten the head');
  });

  it('says what its doubt is made of, the largest first, and what to measure again', () => {
    const said = saidOn(pageOf('port strut'));
    expect(said).toContain('the ± 1.40 mm is made of the level ± 1.02 mm the point transom port ± 0.61 mm');
    expect(said).toContain('The level accounts for 1.02 mm of it: measure that again.');
    expect(said).toContain('Set up under the frame that the legs before it hold, it fits to ± 0.90 mm there.');
    const more = withLeg('port strut', { bandThen: figure(1.9, 'mm') });
    expect(saidOn(pageOf('port strut', more))).toContain('± 1.90 mm there: more than its own ±');
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

describe.each(['a4', 'letter'] as const)('on %s', (paper) => {
  it.each([20, 60.3])('a leg of %d mm has one page, with nothing over another, nothing left to fill in', (diameter) => {
    const plan = makePlan(diameter);
    for (const unit of ['mm', 'inch'] as const) {
      const pages = legPages({ ...plan, findings: [] }, siteJob(paper, unit));
      for (const page of pages) {
        expect([outside(page), covered(page), crossed(page)]).toEqual([[], [], []]);
        expect(saidOn(page)).not.toMatch(/[{}]|undefined|NaN|Infinity/);
      }
      expect(pages.filter((page) => /Leg \d: /.test(saidOn(page)))).toHaveLength(3);
      expect(pages.some((page) => saidOn(page).includes('continued'))).toBe(false);
    }
  });
});
