import { describe, expect, it } from 'vitest';
import type { WrapTemplate } from '../../server/plan/frame.ts';
import { STROKES } from '../../server/sheets/ink.ts';
import { renderSheet } from '../../server/sheets/render-sheet.ts';
import { tilesOf } from '../../server/sheets/tiles.ts';
import { makeJob, makePlan } from './fixture.ts';
import { ofWidth, readPdf, type ReadPage } from './read-pdf.ts';

/** What the vectors may be off by [mm]: a quarter of what a steel rule reads. */
const TRUE = 0.05;

async function wrapPages(
  diameter: number,
  paper: 'a4' | 'letter',
): Promise<{ template: WrapTemplate; pages: ReadPage[] }> {
  const job = makeJob(diameter, paper);
  const plan = makePlan(diameter);
  const sheet = await renderSheet('cut-and-purge', { plan, job, revision: null });
  if (!sheet.ok) throw new Error(sheet.reason);
  const pages = (await readPdf(sheet.pdf)).filter(({ texts }) =>
    texts.some((text) => text.startsWith('Joint 1, face A, in hoop')),
  );
  return { template: plan.correction!.ways[2]!.joints[0]!.faceA.template!, pages };
}

/** The curve of a page, laid back into the wrap's own millimetres: each tile begins 10 mm before the last one ends. */
function laidBack(pages: ReadPage[], template: WrapTemplate): { points: (readonly [number, number])[]; tiles: number } {
  const curves = pages
    .map((page) => ofWidth(page, STROKES.template.width).map(({ points }) => points))
    .filter((one) => one.length > 0);
  const lengths = curves.map((parts) => {
    const xs = parts.flat().map(([x]) => x);
    return Math.max(...xs) - Math.min(...xs);
  });
  const points: (readonly [number, number])[] = [];
  let begin = 0;
  for (const [index, parts] of curves.entries()) {
    const flat = parts.flat();
    const left = Math.min(...flat.map(([x]) => x));
    points.push(...flat.map(([x, y]) => [begin + x - left, y] as const));
    begin += lengths[index]! - 10;
  }
  // heights count from the curve's own start on its page
  const zero = points[0]![1];
  const first = template.curve[0]![1];
  return { points: points.map(([x, y]) => [x, first + zero - y] as const), tiles: curves.length };
}

const ordinate = (template: WrapTemplate, girth: number): number =>
  template.high * Math.cos((2 * Math.PI * girth) / template.wrapLength);

describe.each(['a4', 'letter'] as const)('wraps on %s paper', (paper) => {
  it.each([
    { diameter: 38.1, tiles: 1 },
    { diameter: 60.3, tiles: 1 },
    { diameter: 114.3, tiles: 2 },
  ])('are true for a tube of $diameter mm in $tiles part(s)', async ({ diameter, tiles }) => {
    const { template, pages } = await wrapPages(diameter, paper);
    const drawn = laidBack(pages, template);
    expect(drawn.tiles).toBe(tiles);
    const girths = drawn.points.map(([x]) => x);
    expect(Math.abs(Math.max(...girths) - Math.min(...girths) - Math.PI * (diameter + 0.1))).toBeLessThan(TRUE);
    const off = drawn.points.map(([x, y]) => Math.abs(y - ordinate(template, x)));
    expect(drawn.points.length).toBeGreaterThanOrEqual(181);
    expect(Math.max(...off)).toBeLessThan(TRUE);
  });

  it('carry a bar of 100 mm and one of 4 in, and say how to print', async () => {
    const { pages } = await wrapPages(114.3, paper);
    for (const page of pages.filter((one) => ofWidth(one, STROKES.template.width).length > 0)) {
      const bars = ofWidth(page, STROKES.check.width).map(({ points }) => Math.abs(points[1]![0] - points[0]![0]));
      expect(bars).toHaveLength(2);
      expect(Math.abs(bars[0]! - 100)).toBeLessThan(0.005);
      expect(Math.abs(bars[1]! - 101.6)).toBeLessThan(0.005);
      expect(page.texts.some((text) => text.includes('Print at 100 %, no fit to page'))).toBe(true);
    }
  });

  it('name the joint, the piece, the generators, the datum end, and give ordinates', async () => {
    const { template, pages } = await wrapPages(38.1, paper);
    const text = pages[0]!.texts.join(' ');
    for (const said of [
      'Joint 1, face A, in hoop',
      'keeps the datum end',
      'outside',
      'top',
      'inside',
      'bottom',
      'towards the datum end of hoop',
      'scrap',
    ]) {
      expect(text).toContain(said);
    }
    for (const station of template.stations) expect(text).toContain(station.girth.toFixed(2));
  });
});

describe('tiles', () => {
  it('cover a drawing and overlap by 10 mm', () => {
    const tiles = tilesOf({ width: 361, height: 300 }, { width: 172, height: 199 });
    expect(tiles.map(({ left, top }) => [left, top])).toEqual([
      [0, 0],
      [162, 0],
      [324, 0],
      [0, 189],
      [162, 189],
      [324, 189],
    ]);
    expect(tiles.at(-1)).toMatchObject({ width: 37, height: 111 });
  });
});
