import { describe, expect, it } from 'vitest';
import { crosses, overlap } from '../../server/sheets/free-place.ts';
import { textBox, type Drawn, type Item, type Rectangle, type Written } from '../../server/sheets/ink.ts';
import type { Page } from '../../server/sheets/page.ts';
import { SHEET_NAMES, layoutSheet, type SheetName } from '../../server/sheets/render-sheet.ts';
import { makeJob, makePlan } from './fixture.ts';

const texts = (items: readonly Item[]): Written[] => items.filter((item) => item.kind === 'text');
const lines = (items: readonly Item[]): Drawn[] => items.filter((item) => item.kind === 'line');

/** A hair is not an overlap [mm]. */
const shrunk = (box: Rectangle, by = 0.05): Rectangle => ({
  left: box.left + by,
  top: box.top + by,
  width: box.width - 2 * by,
  height: box.height - 2 * by,
});

function pagesOf(name: SheetName, diameter: number, paper: 'a4' | 'letter', unit: 'mm' | 'inch'): readonly Page[] {
  const job = makeJob(diameter, paper);
  const sheet = layoutSheet(name, {
    plan: makePlan(diameter),
    job: { ...job, units: { ...job.units, length: unit } },
    revision: { number: 3, date: '2026-11-25T08:00:00Z' },
  });
  if (!sheet.ok) throw new Error(sheet.reason);
  return sheet.pages;
}

const cases = SHEET_NAMES.flatMap((name) =>
  (['a4', 'letter'] as const).flatMap((paper) =>
    (['mm', 'inch'] as const).flatMap((unit) => [38.1, 114.3].map((diameter) => ({ name, paper, unit, diameter }))),
  ),
);

describe.each(cases)('$name on $paper in $unit, tube of $diameter mm', ({ name, paper, unit, diameter }) => {
  const pages = pagesOf(name, diameter, paper, unit);

  it('keeps everything on the paper', () => {
    for (const page of pages) {
      for (const item of page.items) {
        const box = item.kind === 'text' ? textBox(item) : undefined;
        const points =
          box === undefined
            ? (item as Drawn).points
            : ([
                [box.left, box.top],
                [box.left + box.width, box.top + box.height],
              ] as const);
        for (const [x, y] of points) {
          expect(x).toBeGreaterThanOrEqual(4);
          expect(x).toBeLessThanOrEqual(page.width - 4);
          expect(y).toBeGreaterThanOrEqual(4);
          expect(y).toBeLessThanOrEqual(page.height - 4);
        }
      }
    }
  });

  it('lays no text over another', () => {
    for (const page of pages) {
      const written = texts(page.items);
      const met = written.flatMap((one, index) =>
        written
          .slice(index + 1)
          .filter((other) => overlap(shrunk(textBox(one)), shrunk(textBox(other))))
          .map((other) => `${one.text} / ${other.text}`),
      );
      expect(met).toEqual([]);
    }
  });

  it('lets no line pass through an upright or lying text', () => {
    for (const page of pages) {
      const met = texts(page.items).flatMap((text) => {
        const box = shrunk(textBox(text), 0.15);
        return lines(page.items)
          .filter(({ role }) => role !== 'hatch')
          .filter(({ points, closed }) => {
            const whole = closed ? [...points, points[0]!] : points;
            return whole.some((point, index) => index > 0 && crosses(whole[index - 1]!, point, box));
          })
          .map(({ role }) => `${text.text} / ${role}`);
      });
      expect(met).toEqual([]);
    }
  });
});
