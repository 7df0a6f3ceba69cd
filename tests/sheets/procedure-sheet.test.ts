import { describe, expect, it } from 'vitest';
import { HEIGHTS } from '../../server/sheets/ink.ts';
import type { Page } from '../../server/sheets/page.ts';
import { planWith, planWithSleeve } from './fixture-set-ups.ts';
import { chamber } from './fixture-gas.ts';
import { weld, welds } from './fixture-weld.ts';
import { makeJob, makePlan } from './fixture.ts';
import { lines, texts } from './layout-faults.ts';
import { saidOn, pagesOf as laidPages } from './laid-pages.ts';

const pad = weld({
  name: 'P1',
  kind: 'pad',
  form: 'pad',
  member: 'hoop',
  station: 0,
  onto: 'left pad',
  point: { x: -487, y: -600, z: 0 },
});

const pagesOf = laidPages('procedure');

const cases = (['a4', 'letter'] as const).flatMap((paper) =>
  (['mm', 'inch'] as const).map((length) => ({ paper, length })),
);

describe('the draft procedure', () => {
  it.each(cases)('is one page for each form of weld that occurs, on $paper in $length', ({ paper, length }) => {
    const job = makeJob(38.1, paper);
    const typed = { ...job, units: { ...job.units, length } };
    expect(pagesOf(makePlan(), typed)).toHaveLength(2);
    const [butt, saddle] = pagesOf(makePlan(), typed).map(saidOn);
    expect(butt).toContain('Butt round the tube: weld 1, 2');
    expect(saddle).toContain('Saddle on a tube: weld S1, S2');
    const padded = pagesOf(planWith([chamber()], [...welds(), pad]), typed);
    expect(padded).toHaveLength(3);
    expect(saidOn(padded[2]!)).toContain('Tube on a plate: weld P1');
  });

  it('says in big words on every page that it is a draft and no qualified procedure', () => {
    for (const page of pagesOf()) {
      const draft = texts(page.items).find(({ text }) => text.startsWith('DRAFT'));
      expect(draft!.text).toBe('DRAFT: not a qualified procedure');
      expect(draft!.height).toBe(HEIGHTS.big);
      expect(saidOn(page)).toContain('until a qualified person has proved it');
    }
  });

  it('has the headings of ISO 15609-1 in their order', () => {
    const [page] = pagesOf();
    const heads = [
      'Maker',
      'Parent material',
      'Dimensions',
      'Welding process',
      'Joint design',
      'Welding position',
      'Joint preparation',
      'Welding technique',
      'Back gouging',
      'Backing',
      'Welding consumables',
      'Electrical parameters',
      'Preheat',
      'Interpass temperature',
      'Post-heat and heat treatment',
      'Shielding gas',
      'Heat input',
      'Tungsten electrode',
      'Nozzle',
      'Gas flow at the torch',
      'Remarks',
      'Test record',
    ];
    const said = texts(page!.items).map(({ text }) => text);
    const places = heads.map((head) => said.indexOf(head));
    expect(places.every((place) => place >= 0)).toBe(true);
    expect(places.toSorted((a, b) => a - b)).toEqual(places);
  });

  it('says what the plan knows under them', () => {
    const [butt, saddle] = pagesOf().map(saidOn);
    for (const said of [
      'tube Ø 38.1 mm × 1.65 mm to the same',
      '142 (ISO 4063): TIG without filler, by hand',
      'square, tight, gap 0 mm, faces out of parallel by 0.25 mm at most',
      'weld 1 in quarters 2 4 3 1',
      '52 A, to be tried from 41 to 64 A; arc 10.5 V; travel 1.5 mm/s',
      '150 °C at most',
      '0.218 kJ/mm by EN 1011-1 with k = 0.6; arc energy 0.364 kJ/mm by ISO/TR 18491, without k',
      'WLa 15 (ISO 6848), Ø 1.6 mm',
      'Not proved on anything yet.',
    ]) {
      expect(butt!.replace(/\s+/g, ' ')).toContain(said);
    }
    expect(saddle).toContain('ER316LSi / W 19 12 3 L Si, Ø 1.6 mm');
    expect(saddle).toContain('make and batch');
    expect(butt).not.toContain('make and batch');
  });

  it('leaves lines to write on for what nobody knows', () => {
    const rules = (page: Page): number => lines(page.items).filter(({ role }) => role === 'log').length;
    const [butt, saddle] = pagesOf();
    // maker, numbers, heat, gas and remarks; the filler's batch where there is one
    expect(rules(butt!)).toBe(5);
    expect(rules(saddle!)).toBe(6);
  });

  it('says the heat where it is typed, what the settings were proved on, and the sleeve', () => {
    const job = makeJob();
    const typed = { ...job, tube: { ...job.tube, heat: 'H 4711' } };
    expect(saidOn(pagesOf(makePlan(), typed)[0]!)).toContain('316L, heat H 4711');
    const plan = makePlan();
    const procedures = plan.welding!.procedures.map((one) => ({ ...one, proved: 'test piece 7' }));
    const [proved] = pagesOf({ ...plan, welding: { ...plan.welding!, procedures } });
    expect(saidOn(proved!)).toContain('Settings said to be proved on: test piece 7.');
    const sleeved = planWithSleeve();
    const backed = sleeved.welding!.welds.map((one) => ({ ...one, backing: 'sleeve' as const }));
    const [page] = pagesOf({ ...sleeved, welding: { ...sleeved.welding!, welds: backed } });
    expect(saidOn(page!)).toContain('sleeve that stays inside, wall 1.5 mm');
  });

  it('draws the section of a butt to scale: wall, gap, bevel and land', () => {
    const [base] = welds();
    const bevelled = {
      ...base!,
      preparation: 'bevel' as const,
      gap: { ...base!.gap, value: 2 },
      bevel: { ...base!.gap, value: 30, unit: 'deg' as const },
      land: { ...base!.gap, value: 1 },
    };
    const job = makeJob();
    const [page] = pagesOf(planWith([chamber()], [bevelled]), { ...job, tube: { ...job.tube, wall: 4 } });
    const factor = Number(/section, scale (\d+):1/.exec(saidOn(page!))?.[1]);
    const walls = lines(page!.items).filter(
      ({ role, points, closed }) => role === 'edge' && closed && points.length === 5,
    );
    expect(walls).toHaveLength(2);
    const [left, right] = walls.map(({ points }) => points);
    const [root, land, top] = left!;
    expect((right![0]![0] - root![0]) / factor).toBeCloseTo(2, 6);
    expect((root![1] - top![1]) / factor).toBeCloseTo(4, 6);
    expect((root![1] - land![1]) / factor).toBeCloseTo(1, 6);
    expect((land![0] - top![0]) / (land![1] - top![1])).toBeCloseTo(Math.tan(Math.PI / 6), 6);
  });
});
