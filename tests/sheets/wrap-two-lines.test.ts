import { describe, expect, it } from 'vitest';
import type { WrapTemplate } from '../../server/plan/frame.ts';
import type { Plan } from '../../server/plan/plan.ts';
import { STROKES } from '../../server/sheets/ink.ts';
import { renderSheet } from '../../server/sheets/render-sheet.ts';
import { planOf, planWithHole, wayOfEverything } from './fixture-cases.ts';
import { makeJob } from './fixture.ts';
import { ofWidth, readPdf, type PaintedPath, type ReadPage } from './read-pdf.ts';

/** What the vectors may be off by [mm]: a quarter of what a steel rule reads. */
const TRUE = 0.05;
const PAPERS = ['a4', 'letter'] as const;

async function pagesOf(plan: Plan, title: string, diameter: number, paper: 'a4' | 'letter'): Promise<ReadPage[]> {
  const sheet = await renderSheet('cut-and-purge', { plan, job: makeJob(diameter, paper), revision: null });
  if (!sheet.ok) throw new Error(sheet.reason);
  return (await readPdf(sheet.pdf)).filter(
    (page) => page.texts.some((text) => text.startsWith(title)) && ofWidth(page, STROKES.template.width).length > 0,
  );
}

const xs = ({ points }: PaintedPath): number[] => points.map(([x]) => x);
const wide = (path: PaintedPath): number => Math.max(...xs(path)) - Math.min(...xs(path));

/** Page coordinates of girth 0 and of the ring, from the strip's own frame and its dashed line; each tile has its part. */
function origin(page: ReadPage, begin: number): { left: number; ring: number } {
  const level = ofWidth(page, STROKES.hidden.width).filter(
    ({ points }) => points.length === 2 && Math.abs(points[0]![1] - points[1]![1]) < 1e-3,
  );
  // the strip's own edges above and below are as long where a tile cuts them off, and as wide
  const longest = Math.max(...level.map(wide));
  const candidates = level
    .filter((path) => wide(path) > longest - 1e-3)
    .toSorted((one, other) => one.points[0]![1] - other.points[0]![1]);
  const ring = candidates[Math.floor(candidates.length / 2)]!;
  return { left: Math.min(...xs(ring)) - begin, ring: ring.points[0]![1] };
}

/** Girth and ordinate of everything drawn to cut to, in the wrap's own millimetres, line by line. */
function measured(pages: readonly ReadPage[]): (readonly [number, number])[][] {
  const found: (readonly [number, number])[][] = [];
  let begin = 0;
  for (const page of pages) {
    const { left, ring } = origin(page, begin);
    const cut = ofWidth(page, STROKES.template.width);
    for (const [index, { points }] of cut.entries()) {
      (found[index] ??= []).push(...points.map(([x, y]) => [x - left, ring - y] as const));
    }
    begin += Math.max(...cut.map(wide)) - 10;
  }
  return found;
}

/** The farthest that measured points lie off a line of the plan, square to the tube's own way. */
function farthest(points: readonly (readonly [number, number])[], curve: WrapTemplate['curve']): number {
  const last = curve.length - 1;
  const at = (girth: number): number => {
    const found = curve.findIndex(([x]) => x >= girth);
    const next = found === -1 ? last : Math.max(1, found);
    const [[x0, y0], [x1, y1]] = [curve[next - 1]!, curve[next]!];
    return y0 + ((y1 - y0) * (girth - x0)) / (x1 - x0);
  };
  return Math.max(...points.map(([girth, ordinate]) => Math.abs(ordinate - at(girth))));
}

describe.each(PAPERS)('wraps with two lines on %s paper', (paper) => {
  it.each([
    { diameter: 38.1, tiles: 1 },
    { diameter: 114.3, tiles: 2 },
  ])('are true at both lines of a wedge for a tube of $diameter mm', async ({ diameter, tiles }) => {
    const one = wayOfEverything(diameter);
    const template = one.joints[1]!.faceA.template!;
    const pages = await pagesOf(planOf([one], {}, diameter), 'Joint 2, faces A and B', diameter, paper);
    expect(pages).toHaveLength(tiles);
    const [a, b, ...others] = measured(pages);
    expect(others).toEqual([]);
    for (const points of [a!, b!]) {
      const girths = points.map(([girth]) => girth);
      expect(Math.abs(Math.max(...girths) - template.wrapLength)).toBeLessThan(TRUE);
      expect(points.length).toBeGreaterThanOrEqual(181);
    }
    expect(farthest(a!, template.curve)).toBeLessThan(TRUE);
    expect(farthest(b!, template.second!)).toBeLessThan(TRUE);
    expect(farthest(b!, template.curve)).toBeGreaterThan(1);
  });

  it('leave the hinge of a dart uncut, exactly as wide as the plan says', async () => {
    const one = wayOfEverything();
    const template = one.joints[2]!.faceA.template!;
    const [page] = await pagesOf(planOf([one]), 'Joint 3, faces A and B', 38.1, paper);
    const { girth, width } = template.hinge!;
    const { left } = origin(page!, 0);
    const girths = ofWidth(page!, STROKES.template.width).flatMap((path) => xs(path).map((x) => x - left));
    const step = template.wrapLength / 180;
    const beside = girths.map((one_) => Math.abs(one_ - girth)).filter((off) => off < width);
    expect(Math.min(...beside)).toBeGreaterThan(width / 2 - step);
    expect(Math.min(...beside)).toBeLessThan(width / 2 + step);
    expect(page!.texts).toContain('hinge');
  });

  it('say both lines in the table, and which line is which', async () => {
    const one = wayOfEverything();
    const [page] = await pagesOf(planOf([one]), 'Joint 2, faces A and B', 38.1, paper);
    const text = page!.texts.join(' ');
    for (const { cut, second } of one.joints[1]!.faceA.template!.stations) {
      expect(text.replaceAll('−', '-')).toContain(`${cut.toFixed(2)} ${second!.toFixed(2)}`);
    }
    expect(page!.texts).toContain('A');
    expect(page!.texts).toContain('B');
  });
});

describe.each(PAPERS)('the wrap of a hole on %s paper', (paper) => {
  it('is a closed line, true in both directions, with its generators where its edge says', async () => {
    const diameter = 60.3;
    const plan = planWithHole(diameter);
    const template = plan.frame!.members[0]!.templates[0]!;
    const pages = await pagesOf(plan, 'hoop, hole 1', diameter, paper);
    expect(pages).toHaveLength(1);
    const [points, ...others] = measured(pages);
    expect(others).toEqual([]);
    const off = points!.map(([girth, ordinate]) =>
      Math.min(...template.curve.map(([x, y]) => Math.hypot(x - girth, y - ordinate))),
    );
    expect(Math.max(...off)).toBeLessThan(TRUE);
    expect(Math.hypot(points![0]![0] - points!.at(-1)![0], points![0]![1] - points!.at(-1)![1])).toBeLessThan(TRUE);
    const said = pages[0]!.texts.filter((text) => ['outside', 'top', 'inside', 'bottom'].includes(text));
    expect(said).toHaveLength(4);
    expect(pages[0]!.texts.join(' ')).toContain('cut inside it');
  });
});
