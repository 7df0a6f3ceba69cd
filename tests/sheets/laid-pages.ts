import type { Job } from '../../server/job/job.ts';
import type { Plan } from '../../server/plan/plan.ts';
import type { Drawn } from '../../server/sheets/ink.ts';
import type { Page } from '../../server/sheets/page.ts';
import { layoutSheet, type SheetName } from '../../server/sheets/render-sheet.ts';
import { makeJob, makePlan } from './fixture.ts';
import { lines, texts } from './layout-faults.ts';

/** The pages of a sheet that must be there, of the made-up plan and job where none are given. */
export const pagesOf =
  (name: SheetName) =>
  (plan: Plan = makePlan(), job: Job = makeJob()): readonly Page[] => {
    const sheet = layoutSheet(name, { plan, job, revision: null });
    if (!sheet.ok) throw new Error(sheet.reason);
    return sheet.pages;
  };

/** All that a page says, in the order in which it is laid. */
export const saidOn = (page: Page): string =>
  texts(page.items)
    .map(({ text }) => text)
    .join(' ');

/** Everything of one role on a page. */
export const ofRole = (page: Page, role: Drawn['role']): Drawn[] =>
  lines(page.items).filter((one) => one.role === role);
