import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import type { Finding } from '../../server/plan/finding.ts';
import { makePlan } from './fixture.ts';
import { saidOn } from './laid-pages.ts';
import { legPages, pageOf, withLeg } from './leg-pages.ts';
import { covered, crossed, outside } from './layout-faults.ts';
import { siteJob } from './site-fixture.ts';

const about = (code: Finding['code'], field: string, grade: Finding['grade'], data: Finding['data'] = {}): Finding => ({
  code,
  grade,
  field,
  data,
  wayOut: null,
});

describe('findings of a leg', () => {
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

  it('of grade caution stand in the frame of cautions, before where it is signed', () => {
    const rocks = about('leg-square-rocks', '/site/legs/2/foot/end/end', 'caution', {
      name: 'middle post',
      value: 1.4,
    });
    const said = saidOn(pageOf('middle post', { ...plan, findings: [rocks] }));
    const places = ['Cautions', 'Cut square, this foot touches the surface on one side only', 'cut and checked: name'];
    const at = places.map((place) => said.indexOf(place));
    expect(Math.min(...at)).toBeGreaterThan(0);
    expect(at.toSorted((one, other) => one - other)).toEqual(at);
  });

  it('of the level stand on every leg that rests on it, with the readings that it rests on', () => {
    const said = saidOn(pageOf('port strut'));
    expect(said).toContain('Rests on level set 2, taken 2026-11-26 23:10, believed until 2026-11-27 01:10: lengthwise');
    expect(said).not.toContain('level not read');
    const drift = about('level-drift', '/site/level/sets/1', 'caution', { value: 0.4 });
    expect(saidOn(pageOf('port strut', { ...plan, findings: [drift] }))).toContain('CAUTION: ');
    const free = withLeg('port strut', { doubts: [] });
    expect(saidOn(pageOf('port strut', { ...free, findings: [drift] }))).not.toMatch(/CAUTION:|Rests on/);
  });

  it('say beside the ± that the level is not read, where the length is asked for against level', () => {
    const job = siteJob();
    const slopes = [{ along: { x: 0, y: 1, z: 0 }, angle: 0, to: 'level' as const }];
    const asked = { ...job, site: { ...job.site, standing: { ...job.site.standing, slopes } } };
    const level = { ...plan.site!.level, known: false, set: 0, taken: '' };
    const unread = about('level-not-read', '/site/level/sets', 'note');
    const site = { ...plan.site!, level, legs: plan.site!.legs.map((leg) => ({ ...leg, doubts: [] })) };
    const said = saidOn(pageOf('port strut', { ...plan, site, findings: [unread] }, asked));
    expect(said).toContain('sure to; level not read: not in the ± ± 1.40 mm');
    expect(said).toContain('The level is not read: this length takes');
    expect(said.indexOf('Nobody has read a level')).toBeGreaterThan(said.indexOf('Cautions'));
    expect(said.indexOf('Nobody has read a level')).toBeLessThan(said.indexOf('cut and checked'));
  });

  it('say of a typed leg that cannot be cut that it is missing, and why', () => {
    const job = landingStage();
    const legs = plan.site!.legs.slice(1, 2).map((leg) => ({ ...leg, order: 1 }));
    const short = about('leg-no-length', '/site/legs/0', 'stop', { name: 'starboard leg', value: 0 });
    const pages = legPages({ ...plan, site: { ...plan.site!, legs }, findings: [short] }, job);
    const said = saidOn(pages[0]!);
    expect(said).toContain('Number 1 of 2 typed.');
    expect(said).toContain('Leg 1, starboard leg, cannot be cut: ');
    expect(said).toContain('The foot and the head of this leg are one place');
    expect(said).not.toContain('The only leg');
  });

  it.each(['a4', 'letter'] as const)('run over to a page that says so on %s, where they are many', (paper) => {
    const many = Array.from({ length: 14 }, (_, index) =>
      about('leg-slender', '/site/legs/0', 'caution', { name: `port strut ${String(index)}`, value: 180, high: 150 }),
    );
    const pages = legPages({ ...plan, findings: many }, siteJob(paper, 'inch'));
    const over = pages.filter((page) => saidOn(page).includes('port strut, continued'));
    expect(over).toHaveLength(1);
    expect(saidOn(over[0]!).match(/CAUTION:/g)).toHaveLength(14);
    expect(saidOn(over[0]!)).toContain('cut and checked: name, date');
    expect(saidOn(pageOf('port strut', { ...plan, findings: many }, siteJob(paper, 'inch')))).toContain(
      'Cautions for this leg stand on the next page: read them before you cut.',
    );
    for (const page of pages) {
      expect([outside(page), covered(page), crossed(page)]).toEqual([[], [], []]);
    }
  });
});
