import { describe, expect, it } from 'vitest';
import type { Plan } from '../../server/plan/plan.ts';
import { HEIGHTS } from '../../server/sheets/ink.ts';
import { layoutSheet, type SheetName } from '../../server/sheets/render-sheet.ts';
import {
  heldWith,
  planOfThree,
  planOfTwoSideBySide,
  planOfWelds,
  planWithSleeve,
  stopIn,
  withFindings,
} from './fixture-set-ups.ts';
import { makeJob } from './fixture.ts';
import { covered, crossed, outside, texts } from './layout-faults.ts';

const PLANS: Readonly<Record<string, () => Plan>> = {
  'six welds': () => planOfWelds(6),
  'fourteen welds': () => planOfWelds(14),
  'pockets between dams': planOfThree,
  'two chambers side by side': planOfTwoSideBySide,
  'a stop in each set-up': () => withFindings(planOfThree(), [stopIn(1), stopIn(2), stopIn(3)]),
  'a sleeve': planWithSleeve,
};

const settings = (['a4', 'letter'] as const).flatMap((paper) =>
  (['mm', 'inch'] as const).map((length) => ({ paper, length })),
);

describe.each(settings)('on $paper in $length', ({ paper, length }) => {
  it.each(Object.entries(PLANS))('nothing lies over another with %s, and no letter is too small', (_, make) => {
    const plan = make();
    const job = heldWith({ x: 0.2, y: 1, z: 0.4 }, makeJob(38.1, paper));
    const typed = { ...job, units: { ...job.units, length } };
    for (const name of ['weld-and-purge', 'procedure'] satisfies SheetName[]) {
      const sheet = layoutSheet(name, { plan, job: typed, revision: null });
      if (!sheet.ok) throw new Error(sheet.reason);
      for (const page of sheet.pages) {
        expect(outside(page)).toEqual([]);
        expect(covered(page)).toEqual([]);
        expect(crossed(page)).toEqual([]);
        expect(texts(page.items).filter(({ text, at }) => at[1] < page.height - 40 && /\S…$/.test(text))).toEqual([]);
        const above = texts(page.items).filter(({ at }) => at[1] < page.height - 40);
        expect(Math.min(...above.map(({ height }) => height))).toBeGreaterThanOrEqual(HEIGHTS.small - 1e-9);
      }
    }
  });
});
