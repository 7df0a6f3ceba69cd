import { describe, expect, it } from 'vitest';
import type { LegPlan } from '../../server/plan/leg.ts';
import type { Plan } from '../../server/plan/plan.ts';
import { STROKES, type Drawn } from '../../server/sheets/ink.ts';
import type { Page } from '../../server/sheets/page.ts';
import { renderSheet } from '../../server/sheets/render-sheet.ts';
import { figure } from './fixture-figure.ts';
import { makePlan } from './fixture.ts';
import { ofRole, pagesOf, saidOn } from './laid-pages.ts';
import { texts } from './layout-faults.ts';
import { ofWidth, readPdf } from './read-pdf.ts';
import { siteJob } from './site-fixture.ts';

const legOf = (plan: Plan, name: string): LegPlan => plan.site!.legs.find((one) => one.name === name)!;

const pageOf = (name: string, plan: Plan = makePlan()): Page =>
  pagesOf('legs')(plan, siteJob()).find((page) =>
    saidOn(page).includes(`Leg ${String(legOf(plan, name).number)}: ${name}`),
  )!;

const withLeg = (name: string, change: Partial<LegPlan>): Plan => {
  const plan = makePlan();
  const legs = plan.site!.legs.map((one) => (one.name === name ? { ...one, ...change } : one));
  return { ...plan, site: { ...plan.site!, legs } };
};

/** How many millimetres one on the paper stands for, of the leg's own picture: the first that the title block says. */
const scaleOf = (page: Page): number =>
  Number(texts(page.items).flatMap(({ text }) => /^1:([\d.]+)(?:, |$)/.exec(text)?.[1] ?? [])[0]);

/** Both edges of the leg: the two longest lying lines that edges are drawn with. */
const tubeEdges = (page: Page): Drawn[] =>
  ofRole(page, 'edge')
    .filter(({ points, stroke }) => points.length === 2 && points[0]![1] === points[1]![1] && stroke === STROKES.edge)
    .toSorted((one, other) => lengthOf(other) - lengthOf(one))
    .slice(0, 2)
    .toSorted((one, other) => one.points[0]![1] - other.points[0]![1]);

const lengthOf = ({ points }: Drawn): number => Math.abs(points[1]![0] - points[0]![0]);

describe('the picture of a leg', () => {
  it.each(['port strut', 'middle post'])('of %s is as thick as its scale says, with a break in its middle', (name) => {
    const page = pageOf(name);
    const [top, bottom] = tubeEdges(page);
    expect((bottom!.points[0]![1] - top!.points[0]![1]) * scaleOf(page)).toBeCloseTo(38.1, 6);
    expect(ofRole(page, 'edge').filter(({ points, closed }) => closed && points.length === 12)).toHaveLength(1);
  });

  it('shows its ends as the wraps have them', () => {
    const page = pageOf('port strut');
    const leg = legOf(makePlan(), 'port strut');
    const scale = scaleOf(page);
    const [top, bottom] = tubeEdges(page);
    const ordinate = (scrap: 'start' | 'finish', turn: number): number => {
      const { curve } = leg.templates.find((one) => one.scrap === scrap)!;
      return curve[Math.round(turn * (curve.length - 1))]![1];
    };
    // the scribed line is the upper edge, half a turn from it the lower one
    const [footTop, headTop] = top!.points.map(([x]) => x);
    const [footBottom, headBottom] = bottom!.points.map(([x]) => x);
    expect((footTop! - footBottom!) * scale).toBeCloseTo(ordinate('start', 0) - ordinate('start', 0.5), 6);
    expect((headTop! - headBottom!) * scale).toBeCloseTo(ordinate('finish', 0) - ordinate('finish', 0.5), 6);
  });

  it('of a short leg is whole and to scale from end to end', () => {
    const plan = withLeg('middle post', { cutLength: figure(120, 'mm', 1) });
    const page = pageOf('middle post', plan);
    expect(lengthOf(tubeEdges(page)[0]!) * scaleOf(page)).toBeCloseTo(120, 6);
    expect(ofRole(page, 'edge').filter(({ points, closed }) => closed && points.length === 12)).toEqual([]);
  });

  it('is drawn at one scale with all legs of its job, the site too', () => {
    const plan = withLeg('starboard strut', { outsideDiameter: 60.3 });
    const scales = ['port strut', 'starboard strut', 'middle post'].map(
      (name) => texts(pageOf(name, plan).items).find(({ text }) => /^1:[\d.]+, 1:[\d.]+$/.test(text))?.text,
    );
    expect(scales[0]).toMatch(/^1:/);
    expect(new Set(scales).size).toBe(1);
  });

  it('stands in a picture of the site where it alone is thick', () => {
    const thick = ofRole(pageOf('port strut'), 'edge').filter(({ stroke }) => stroke?.width === 1);
    expect(thick).toHaveLength(2);
  });
});

describe.each(['a4', 'letter'] as const)('wraps of a leg on %s', (paper) => {
  it('are true to 0.05 mm and speak of its foot and its line', async () => {
    const plan = makePlan();
    const sheet = await renderSheet('legs', { plan, job: siteJob(paper), revision: null });
    if (!sheet.ok) throw new Error(sheet.reason);
    const pages = await readPdf(sheet.pdf);
    for (const [end, scrap] of [
      ['foot', 'start'],
      ['head', 'finish'],
    ] as const) {
      const page = pages.find(({ texts: said }) => said.includes(`port strut, ${end}`))!;
      const template = legOf(plan, 'port strut').templates.find((one) => one.scrap === scrap)!;
      const [drawn] = ofWidth(page, STROKES.template.width);
      expect(drawn!.points).toHaveLength(template.curve.length);
      const [x0, y0] = drawn!.points[0]!;
      const off = template.curve.map(([girth, ordinate], index) => {
        const [x, y] = drawn!.points[index]!;
        return Math.hypot(x - x0 - girth, y0 - y - (ordinate - template.curve[0]![1]));
      });
      expect(Math.max(...off)).toBeLessThan(0.05);
      const said = page.texts.join(' ');
      expect(said).toContain('towards the foot of port strut');
      expect(said).toContain('The dashed ring lies on the sawn end.');
      expect(said).toContain('printed side out');
      for (const name of ['scribed line', 'cut curve', 'sawn end']) expect(page.texts).toContain(name);
      expect(said).not.toMatch(/outside|acute|datum/);
    }
  });
});
