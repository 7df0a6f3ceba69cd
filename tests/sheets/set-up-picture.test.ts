import { describe, expect, it } from 'vitest';
import { COLOURS, type Drawn, type Spot } from '../../server/sheets/ink.ts';
import type { Page } from '../../server/sheets/page.ts';
import { renderSheet } from '../../server/sheets/render-sheet.ts';
import { chamber } from './fixture-gas.ts';
import { heldWith, planOfThree, planWith } from './fixture-set-ups.ts';
import { weld } from './fixture-weld.ts';
import { makeJob, makePlan } from './fixture.ts';
import { texts } from './layout-faults.ts';
import { readPdf } from './read-pdf.ts';
import { ofRole, saidOn, pagesOf as laidPages } from './laid-pages.ts';

const pagesOf = laidPages('weld-and-purge');

const [first] = pagesOf();

describe('the picture of a set-up', () => {
  it('is to scale: the hoop measured back from the file is 1012 mm over the outside', async () => {
    const sheet = await renderSheet('weld-and-purge', { plan: makePlan(), job: makeJob(), revision: null });
    if (!sheet.ok) throw new Error(sheet.reason);
    const [page] = await readPdf(sheet.pdf);
    const factor = Number(/scale 1:(\d+(?:\.\d+)?)\./.exec(page!.texts.join(' '))?.[1]);
    // the two edges of the hoop are the only lines of so many points that are drawn so wide
    const edges = page!.paths.filter(({ points, width }) => points.length === 28 && Math.abs(width - 0.5) < 1e-3);
    expect(edges).toHaveLength(2);
    const across = edges.map(({ points }) => {
      const xs = points.map(([x]) => x);
      return factor * (Math.max(...xs) - Math.min(...xs));
    });
    expect(Math.max(...across)).toBeCloseTo(1012, 0);
    expect(Math.min(...across)).toBeCloseTo(1012 - 2 * 38.1, 0);
  });

  it('has dots and arrows along the hoop, crosses along the crossbar where no gas runs', () => {
    const gas = ofRole(first!, 'gas');
    const dots = gas.filter(({ fill, points }) => fill !== null && points.length === 10);
    const arrows = gas.filter(({ fill, points }) => fill !== null && points.length === 3);
    const strokes = gas.filter(({ fill }) => fill === null);
    expect(dots.length).toBeGreaterThan(40);
    expect(arrows.length).toBeGreaterThanOrEqual(3);
    expect(strokes.length).toBeGreaterThan(10);
    const level = strokes.map(({ points }) => (points[0]![1] + points[1]![1]) / 2);
    expect(Math.max(...level) - Math.min(...level)).toBeLessThan(1e-6);
    // up the left leg from the feed, down the right one to the vent
    const [up, down] = [arrows[0]!, arrows.at(-1)!];
    expect(up.points[0]![1]).toBeLessThan(up.points[1]![1]);
    expect(down.points[0]![1]).toBeGreaterThan(down.points[1]![1]);
  });

  it('has a solid bar in each plugged end and a hatched band over each taped gap', () => {
    const bars = ofRole(first!, 'mark').filter(({ fill, points }) => fill === COLOURS.black && points.length === 4);
    expect(bars).toHaveLength(3);
    const bands = ofRole(first!, 'mark').filter(({ fill, points }) => fill === COLOURS.white && points.length === 4);
    expect(bands).toHaveLength(2);
    const pocketed = pagesOf(planOfThree())[1]!;
    const dams = ofRole(pocketed, 'mark').filter(
      ({ fill, points, stroke }) => fill === COLOURS.white && points.length === 4 && stroke?.width === 0.25,
    );
    expect(dams).toHaveLength(2);
    expect(saidOn(pocketed)).toContain('dam');
  });

  it('keeps a hose at a hole in the top of a tube clear of the words above it', () => {
    const feed = { ...chamber().feed, kind: 'hole' as const, name: '1', station: 1020, point: { x: 200, y: 0, z: 0 } };
    const page = pagesOf(planWith([{ ...chamber(), feed }]))[0]!;
    const caption = texts(page.items).find(({ text }) => text.startsWith('UP points'))!;
    const marks = ofRole(page, 'mark').flatMap(({ points }) => points.map(([, y]) => y));
    expect(Math.min(...marks)).toBeGreaterThan(caption.at[1]);
  });

  it('draws a pocket larger than the frame that it is in', () => {
    const scale = (page: Page): number => Number(/scale 1:([\d.]+)\./.exec(saidOn(page))?.[1]);
    const [whole, small] = pagesOf(planOfThree());
    expect(scale(small!)).toBeLessThanOrEqual(scale(whole!) / 2);
  });
});

describe('which way is up', () => {
  const saidWhen = (x: number, y: number, z: number): string => saidOn(pagesOf(makePlan(), heldWith({ x, y, z }))[0]!);

  it('is told where it points at the reader or away', () => {
    expect(saidWhen(0, 0, 3)).toContain('UP points at you: this is seen from above.');
    expect(saidWhen(0, 0, -0.2)).toContain('UP points away from you: this is seen from below.');
    expect(saidWhen(0, 0, 3)).not.toContain('UP leans');
  });

  it.each([
    ['to the right', 1, 0, [1, 0]],
    ['to the left', -2, 0, [-1, 0]],
    ['upwards', 0, 1, [0, -1]],
    ['downwards', 0, -5, [0, 1]],
  ] as const)('is an arrow %s where it lies in the drawing', (_, x, y, way) => {
    const page = pagesOf(makePlan(), heldWith({ x, y, z: 0 }))[0]!;
    expect(saidOn(page)).not.toMatch(/UP (points|leans)/);
    const word = texts(page.items).find(({ text }) => text === 'UP')!;
    const heads = ofRole(page, 'mark').filter(({ points, fill }) => points.length === 3 && fill === COLOURS.black);
    const [head] = heads.toSorted((a, b) => far(a, word.at) - far(b, word.at));
    const [tip, left, right] = head!.points;
    const base: Spot = [(left![0] + right![0]) / 2, (left![1] + right![1]) / 2];
    const size = Math.hypot(tip![0] - base[0], tip![1] - base[1]);
    expect((tip![0] - base[0]) / size).toBeCloseTo(way[0], 6);
    expect((tip![1] - base[1]) / size).toBeCloseTo(way[1], 6);
  });

  it('is both where it leans, and nothing where no way is up', () => {
    const leaning = saidWhen(0, 1, 1);
    expect(leaning).toContain('UP leans towards you too.');
    expect(leaning).toMatch(/\bUP\b(?! leans)/);
    expect(saidWhen(0, 1, -1)).toContain('UP leans away from you too.');
    expect(saidWhen(0, 0, 0)).not.toMatch(/\bUP\b/);
  });
});

const far = ({ points }: Drawn, [x, y]: Spot): number =>
  Math.min(...points.map(([px, py]) => Math.hypot(px - x, py - y)));

describe('the quarters of a tube', () => {
  const tacked = (angles: number[]): Page => {
    const one = weld({
      name: '1',
      kind: 'splice',
      form: 'butt',
      member: 'hoop',
      station: 900,
      point: { x: 0, y: 0, z: 0 },
    });
    const own = { ...one, tacks: { ...one.tacks, angles } };
    return pagesOf(planWith([{ ...chamber(), welds: ['1'] }], [own]))[0]!;
  };
  const page = tacked([0, 90, 180, 270]);
  const [ring] = ofRole(page, 'quarter').filter(({ closed }) => closed);
  const centre: Spot = [
    ring!.points.reduce((sum, [x]) => sum + x, 0) / ring!.points.length,
    ring!.points.reduce((sum, [, y]) => sum + y, 0) / ring!.points.length,
  ];
  /** Which way a word stands from the middle of the tube. */
  const towards = (word: string, near = 30): string[] =>
    texts(page.items)
      .filter(({ text, at }) => text === word && Math.hypot(at[0] - centre[0], at[1] - centre[1]) < near)
      .map(({ at, align, width, height }) => {
        const x = at[0] + (align === 'left' ? width / 2 : align === 'right' ? -width / 2 : 0) - centre[0];
        const y = at[1] - height / 2 - centre[1];
        return `${Math.abs(y) < 1 ? '' : y < 0 ? 'up' : 'down'} ${Math.abs(x) < 1 ? '' : x < 0 ? 'left' : 'right'}`.trim();
      });

  it('go round clockwise from the outside, seen along the tube: the outside left, the top on top', () => {
    expect(towards('1', 8)).toEqual(['up left']);
    expect(towards('2', 8)).toEqual(['up right']);
    expect(towards('3', 8)).toEqual(['down right']);
    expect(towards('4', 8)).toEqual(['down left']);
    expect(towards('outside')).toEqual(['left']);
    expect(towards('top')).toEqual(['up']);
    expect(towards('inside')).toEqual(['right']);
    expect(towards('bottom')).toEqual(['down']);
  });

  it('have the tacks at their angles, numbered as they are set', () => {
    expect(['T1', 'T2', 'T3', 'T4'].flatMap((name) => towards(name))).toEqual(['left', 'up', 'right', 'down']);
  });

  it('are drawn once more where other welds are tacked at other places', () => {
    const count = (one: Page): number => ofRole(one, 'quarter').filter(({ closed }) => closed).length;
    expect(count(page)).toBe(2);
    expect(count(first!)).toBe(4);
  });
});
