import type { LegPlan } from '../../server/plan/leg.ts';
import type { Plan } from '../../server/plan/plan.ts';
import type { Page } from '../../server/sheets/page.ts';
import { makePlan } from './fixture.ts';
import { pagesOf, saidOn } from './laid-pages.ts';
import { siteJob } from './site-fixture.ts';

export const legPages = (plan: Plan = makePlan(), job = siteJob()): readonly Page[] => pagesOf('legs')(plan, job);
export const legOf = (plan: Plan, name: string): LegPlan => plan.site!.legs.find((one) => one.name === name)!;

/** The made-up plan with one leg changed. */
export const withLeg = (name: string, change: Partial<LegPlan>): Plan => {
  const plan = makePlan();
  const legs = plan.site!.legs.map((one) => (one.name === name ? { ...one, ...change } : one));
  return { ...plan, site: { ...plan.site!, legs } };
};

const usual = makePlan();
/** The leg sheet of the made-up plan. */
export const usualPages = legPages(usual);

/** The first page of a leg. */
export const pageOf = (name: string, plan: Plan = usual, job?: ReturnType<typeof siteJob>): Page =>
  (plan === usual && job === undefined ? usualPages : legPages(plan, job)).find((page) =>
    saidOn(page).includes(`Leg ${String(legOf(plan, name).number)}: ${name}`),
  )!;
