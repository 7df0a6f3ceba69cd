import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import type { Job } from '../../server/job/job.ts';
import type { Plan } from '../../server/plan/plan.ts';
import type { Page } from '../../server/sheets/page.ts';
import { layoutSheet, type SheetName } from '../../server/sheets/render-sheet.ts';
import { plan as solve } from '../../server/solver/plan.ts';
import {
  planOf,
  planOfEight,
  planOfNone,
  planOfTwelveMembers,
  planWithHole,
  planWithManyNotes,
  wayOfEverything,
} from './fixture-cases.ts';
import { makeJob, makePlan } from './fixture.ts';
import { covered, crossed, outside } from './layout-faults.ts';

const PAPERS = ['a4', 'letter'] as const;
const UNITS = ['mm', 'inch'] as const;

type Setting = { paper: (typeof PAPERS)[number]; unit: (typeof UNITS)[number]; diameter: number };

function pagesOf(name: SheetName, plan: Plan, { paper, unit, diameter }: Setting): readonly Page[] {
  const job = makeJob(diameter, paper);
  const sheet = layoutSheet(name, {
    plan,
    job: { ...job, units: { ...job.units, length: unit } },
    revision: { number: 3, date: '2026-11-25T08:00:00Z' },
  });
  if (!sheet.ok) throw new Error(sheet.reason);
  return sheet.pages;
}

function expectNoFaults(pages: readonly Page[]): void {
  for (const page of pages) {
    expect(outside(page)).toEqual([]);
    expect(covered(page)).toEqual([]);
    expect(crossed(page)).toEqual([]);
  }
}

const settings = PAPERS.flatMap((paper) => UNITS.map((unit) => ({ paper, unit })));

describe.each(settings)('the comparison on $paper in $unit', (setting) => {
  it.each([
    ['six ways', makePlan],
    ['eight ways', planOfEight],
    ['eight ways of twelve members', planOfTwelveMembers],
    ['one way that is possible', planOfNone],
    ['more to say than a page holds', planWithManyNotes],
  ] as const)('is one page without faults for %s', (_, make) => {
    const pages = pagesOf('comparison', make(), { ...setting, diameter: 38.1 });
    expect(pages).toHaveLength(1);
    expectNoFaults(pages);
  });

  it('keeps everything above the title block but for the line to sign', () => {
    const [page] = pagesOf('comparison', planWithManyNotes(), { ...setting, diameter: 38.1 });
    const low = page!.items.flatMap((item) =>
      item.kind === 'text' && item.text.startsWith('made up') ? [item.at[1]] : [],
    );
    expect(low.length).toBeGreaterThan(0);
    expect(Math.max(...low)).toBeLessThan(page!.height - 10 - 30);
  });
});

describe.each(settings)('the cut and purge sheet on $paper in $unit', (setting) => {
  it.each([25.4, 38.1, 114.3])('has no faults for a joint of each kind in a tube of %f mm', (diameter) => {
    const plan = planOf([wayOfEverything(diameter)], {}, diameter);
    expectNoFaults(pagesOf('cut-and-purge', plan, { ...setting, diameter }));
  });

  it.each([60.3, 114.3])('has no faults for a new frame with a hole in its main of %f mm', (diameter) => {
    expectNoFaults(pagesOf('cut-and-purge', planWithHole(diameter), { ...setting, diameter }));
  });
});

/** The demo job with other readings, or with another way taken. */
const demos = {
  'a rebend': (job: Job): Job => ({ ...job, closing: { ...job.closing, way: 'rebend' } }),
  'a frame left as it is': (job: Job): Job => ({ ...job, closing: { ...job.closing, way: 'leave' } }),
  'new tube let in': (job: Job): Job => read(job, { 'width-at-corners': 905, 'width-at-feet': 905 }),
  'a leg that is short': (job: Job): Job => read(job, { 'left-leg': 560, 'right-leg': 600 }),
};

function read(job: Job, values: Readonly<Record<string, number>>): Job {
  const { cameBack } = job;
  if (cameBack === null) throw new Error('the demo job came back');
  const readings = cameBack.readings.map((one) =>
    one.reading === 'size' ? { ...one, value: values[one.check] ?? one.value } : one,
  );
  return { ...job, cameBack: { ...cameBack, readings } };
}

describe.each(Object.entries(demos))('the sheets of the demo job with %s', (_, change) => {
  const job = change(landingStage());
  const demo = solve(job);

  it.each(settings)('have no faults on $paper in $unit', ({ paper, unit }) => {
    for (const name of ['comparison', 'cut-and-purge'] as const) {
      const sheet = layoutSheet(name, {
        plan: demo,
        job: { ...job, units: { ...job.units, length: unit }, print: { ...job.print, paper } },
        revision: null,
      });
      if (!sheet.ok) throw new Error(sheet.reason);
      expectNoFaults(sheet.pages);
      if (name === 'comparison') expect(sheet.pages).toHaveLength(1);
    }
  });
});
