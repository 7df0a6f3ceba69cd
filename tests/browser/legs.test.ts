// Legs on a float: how long they are, how sure that is, and what to measure again before the saw.
import type { AxeResults } from 'axe-core';
import type { Locator, Page } from 'playwright-core';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import type { LegPlan } from '../../server/plan/leg.ts';
import {
  amount,
  choose,
  expectSaid,
  field,
  figure,
  open,
  planOf,
  saved,
  seen,
  spoken,
  stage,
  stored,
  type,
} from './person.ts';
import { workshopOfFile } from './workshop.ts';

const workshop = workshopOfFile();
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Nothing came back yet: the legs are for the frame as wanted, and the plan is quick. */
const ordered = (): Job => ({ ...landingStage(), cameBack: null });
const leg = (page: Page, index: number): Locator => stage(page, 'level').locator(`[data-leg="${String(index)}"]`);
const length = async (page: Page, index: number): Promise<string> => figure(leg(page, index), 'saw off');
const legsOf = async (job: Job): Promise<readonly LegPlan[]> => (await planOf(workshop, job)).site!.legs;
const focused = (page: Page) => page.evaluate(() => document.activeElement?.getAttribute('data-field'));

async function openFolds(page: Page): Promise<void> {
  await stage(page, 'level')
    .locator('details')
    .evaluateAll((folds) => {
      for (const fold of folds) fold.setAttribute('open', '');
    });
}

async function expectNoSidewaysScroll(page: Page): Promise<void> {
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(wide).toBe(0);
}

/** What of the stage breaks a rule of WCAG, is wider than the screen, or is too small to touch. */
async function expectReach(page: Page): Promise<void> {
  await page.evaluate(axe);
  const broken = await page.evaluate(async () => {
    const { axe } = globalThis as unknown as { axe: { run: (where: string, how: object) => Promise<AxeResults> } };
    const rules = { runOnly: { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21aa'] } };
    const { violations, passes } = await axe.run('#stage-level', rules);
    return [
      ...violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(' ')}`)),
      ...(passes.length > 8 ? [] : ['nothing was looked at']),
    ];
  });
  expect(broken).toEqual([]);
  await expectNoSidewaysScroll(page);
  const small = await stage(page, 'level')
    .locator('button, input, select, summary')
    .evaluateAll((all) =>
      all.flatMap((one) => {
        const { width, height } = one.getBoundingClientRect();
        const shown = one.getClientRects().length > 0;
        return shown && Math.min(width, height) < 43.5 ? [`${one.tagName} ${one.textContent ?? ''}`] : [];
      }),
    );
  expect(small).toEqual([]);
}

describe('a welder with a phone on the float', () => {
  it('sees what to saw off, and what to measure again before', { timeout: 60_000 }, async () => {
    const id = await workshop.store(ordered());
    const page = await workshop.visit('phone');
    await open(page, id);
    const before = await legsOf(ordered());
    expect(before).toHaveLength(2);
    for (const [index, { cutLength }] of before.entries()) expectSaid(await length(page, index), cutLength);
    const order = before.map((one) => (one.order === 1 ? 'cut first' : 'cut second'));
    for (const [index, said] of order.entries()) await leg(page, index).getByText(said, { exact: true }).waitFor();

    const trim = '/site/level/sets/0/readings/0/angle';
    await type(page, trim, '3.5');
    await saved(page);
    const after = await legsOf(await stored(workshop, id));
    expect(Math.abs(after[0]!.cutLength.value - before[0]!.cutLength.value)).toBeGreaterThan(1);
    await seen(async () => amount(await length(page, 0))).toBeCloseTo(after[0]!.cutLength.value, 1);

    const doubts = leg(page, 0).locator('summary').filter({ hasText: 'is made of' });
    await doubts.click();
    await leg(page, 0).getByRole('button', { name: 'Measure again: the level' }).last().click();
    await seen(() => focused(page)).toBe(trim);
    // the foot is typed in a fold: the way there opens it
    await leg(page, 0)
      .getByRole('button', { name: /, Measure again: the foot/ })
      .click();
    await seen(() => focused(page)).toContain('/site/legs/0/foot/at/');
    await openFolds(page);
    await expectReach(page);
  });

  it('adds a leg to a new frame, one on the other side, and hears when a foot is on the tube', async () => {
    const id = await workshop.store(newJob('hoop'));
    const page = await workshop.visit('phone');
    await open(page, id);
    await stage(page, 'level').getByRole('button', { name: 'Add a leg' }).click();
    await seen(() => focused(page)).toBe('/site/legs/0/name');
    // taken back, the caret is not lost with its field
    await page.keyboard.press('Control+z');
    await seen(() => page.evaluate(() => document.activeElement?.id)).toBe('stage-level-title');
    await stage(page, 'level').getByRole('button', { name: 'Add a leg' }).click();
    await seen(async () => amount(await length(page, 0))).toBeGreaterThan(500);
    await stage(page, 'level').getByRole('button', { name: 'Add another leg' }).click();
    await seen(() => length(page, 1)).toBe(await length(page, 0));
    expect(await (await field(page, '/site/legs/1/foot/at/z')).inputValue()).toBe('−600');
    await saved(page);
    const [{ headPoint, ...first }, second] = (await legsOf(await stored(workshop, id))) as [LegPlan, LegPlan];
    expect([first.name, second.name]).toEqual(['port leg', 'starboard leg']);
    expect([first.side, second.side]).toEqual(['port', 'starboard']);
    for (const axis of ['x', 'y', 'z'] as const)
      await type(page, `/site/legs/0/foot/at/${axis}`, String(headPoint[axis]));
    await leg(page, 0).getByText('The foot and the head of this leg are one place').waitFor();
    await leg(page, 0).getByText('No length yet: a finding says why.').waitFor();
    expect(await length(page, 1)).toMatch(/mm$/);
    await openFolds(page);
    await leg(page, 0).getByRole('button', { name: 'Take out: port leg', exact: true }).click();
    await seen(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe(
      'Take out: starboard leg',
    );
  });
});

describe('an owner at the desktop', () => {
  it('sees how the frame stands, what room there is, and what no number says', { timeout: 60_000 }, async () => {
    const id = await workshop.store(ordered());
    const page = await workshop.visit('desktop');
    await open(page, id);
    const { standing, gaps, strength } = (await planOf(workshop, ordered())).site!;
    const part = stage(page, 'level');
    const gap = gaps[0]!.rows[0]!;
    expectSaid(await figure(part.locator('[data-thing="pile"]'), `gap to ${gap.name}`), gap.gap);
    const across = part.locator('[data-slope="x"] .figure').first();
    expectSaid(await spoken(across), {
      ...standing!.slopes[1]!.toLevel,
      value: Math.abs(standing!.slopes[1]!.toLevel.value),
    });

    await part.getByText('As struts and beams: information, no approval').click();
    await part.getByText(/A frame that holds a person is tested under load/).waitFor();
    expectSaid(await figure(part.locator('[data-strut="port leg"]'), 'Euler load'), strength.struts[1]!.euler);
    await type(page, '/site/load', '2000');
    await seen(async () => figure(part.locator('[data-load="own"]'), 'load of your own')).toBe('2000 N');
    await choose(page, '/site/standing/slopes/0/to', 'the structure');
    await seen(async () => spoken(part.locator('[data-slope="asked"] .figure').last())).toBe('0.0°');
    await openFolds(page);
    await expectNoSidewaysScroll(page);
  });
});
