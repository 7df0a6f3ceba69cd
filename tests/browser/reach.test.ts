// Everybody reaches everything: with a small screen, a finger, a keyboard, a screen reader, by day and by night.
import type { AxeResults, RunOptions } from 'axe-core';
import type { Page } from 'playwright-core';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import type { Job } from '../../server/job/job.ts';
import { fullJob } from './full-job.ts';
import { open } from './person.ts';
import { type ScreenName, workshopOfFile } from './workshop.ts';

const workshop = workshopOfFile();

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const STAGES = ['what', 'wanted', 'cameBack', 'ways', 'purge', 'level', 'stock', 'price', 'sheets'];

async function openJob(page: Page, job?: Job): Promise<void> {
  await open(page, await workshop.store(job));
  await page.locator('summary').evaluateAll((folds) => {
    for (const fold of folds) if (fold instanceof HTMLElement) fold.click();
  });
}

async function openList(page: Page): Promise<void> {
  await page.goto('/#/jobs');
  await page.getByRole('listitem').first().waitFor();
}

/** By which of its rules axe looks: all of WCAG 2.0 A and AA and 2.1 AA, or one rule alone. */
const ALL: RunOptions = { runOnly: { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21aa'] } };
const CONTRAST: RunOptions = { runOnly: { type: 'rule', values: ['color-contrast'] } };

/** What axe finds, by rule and place. */
async function violations(page: Page, options: RunOptions): Promise<string[]> {
  await page.evaluate(axe);
  const found = await page.evaluate(async (rules) => {
    const { axe } = globalThis as unknown as { axe: { run: (options: RunOptions) => Promise<AxeResults> } };
    const { violations, passes } = await axe.run(rules);
    return {
      passes: passes.length,
      violations: violations.flatMap(({ id, nodes }) =>
        nodes.map(({ target, failureSummary }) => `${id}: ${target.join(' ')}: ${failureSummary ?? ''}`),
      ),
    };
  }, options);
  expect(found.passes).toBeGreaterThan(options === ALL ? 15 : 0);
  return found.violations;
}

/** Everything by day; by night the colours are others, and nothing else is. */
async function byDayAndNight(page: Page): Promise<void> {
  await page.emulateMedia({ colorScheme: 'light' });
  expect(await violations(page, ALL)).toEqual([]);
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await page.evaluate(() => getComputedStyle(document.body).color)).toBe('rgb(239, 236, 228)');
  expect(await violations(page, CONTRAST)).toEqual([]);
}

const noSidewaysScroll = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth);

/** What is touched and is less than 44 px wide or high; and how much there is to touch. */
const touched = (page: Page) =>
  page.evaluate(() => {
    const shown = [
      ...document.querySelectorAll('button, a[href], input, select, textarea, summary, [role="button"]'),
    ].filter((element) => element.getClientRects().length > 0 && !element.classList.contains('skip'));
    // a field within its label is touched as one with it
    const boxes = shown.map((element) => {
      const { width, height } = (element.closest('label') ?? element).getBoundingClientRect();
      const name = element.getAttribute('aria-label') ?? element.textContent ?? '';
      return { what: `${element.tagName} ${name.trim()}`, width, height };
    });
    return { count: boxes.length, small: boxes.filter(({ width, height }) => Math.min(width, height) < 43.5) };
  });

describe.each<ScreenName>(['desktop', 'phone'])('the page at the %s', (screen) => {
  it('breaks no rule for people who see, hear or move otherwise', { timeout: 90_000 }, async () => {
    const page = await workshop.visit(screen);
    await openList(page);
    expect(await noSidewaysScroll(page)).toBe(true);
    await byDayAndNight(page);
    if (screen === 'phone') expect((await touched(page)).small).toEqual([]);

    await openJob(page);
    await page.getByRole('button', { name: 'Start your own', exact: true }).click();
    await page
      .locator('#stage-purge')
      .getByRole('button', { name: /^wait before welding/ })
      .first()
      .click();
    expect(await noSidewaysScroll(page)).toBe(true);
    await byDayAndNight(page);
    if (screen === 'phone') {
      const { small, count } = await touched(page);
      expect(count).toBeGreaterThan(150);
      expect(small).toEqual([]);
    }
  });
});

describe.each<ScreenName>(['desktop', 'phone'])('a frame that came back in every way, at the %s', (screen) => {
  it('breaks no rule either, and nothing of it is too small to touch', { timeout: 90_000 }, async () => {
    const page = await workshop.visit(screen);
    await openJob(page, fullJob());
    await page.getByRole('heading', { name: /^Joint 2 in/ }).waitFor();
    await page.locator('#stage-purge').getByText('Your own order', { exact: true }).waitFor();
    expect(await page.locator('#stage-cameBack [data-reading]').count()).toBe(4);
    expect(await noSidewaysScroll(page)).toBe(true);
    await byDayAndNight(page);
    if (screen === 'phone') expect((await touched(page)).small).toEqual([]);
  });
});

describe('a keyboard', () => {
  it('reaches every stage in the order of the page and shows where it is', { timeout: 90_000 }, async () => {
    const page = await workshop.visit('desktop');
    await open(page, await workshop.store());
    await page.locator('body').press('Tab');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Skip to the job card');
    const reached: string[] = [];
    const hidden: string[] = [];
    let steps = 0;
    for (; steps < 600; steps += 1) {
      const at = await page.evaluate(() => {
        const element = document.activeElement;
        if (element === null || element === document.body) return null;
        const { outlineStyle, outlineWidth } = getComputedStyle(element);
        const marked = element.querySelector('.touch');
        const ring = outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2;
        const frame = marked !== null && getComputedStyle(marked).stroke !== 'none';
        const box = element.getBoundingClientRect();
        const middle = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
        const covered = !(middle !== null && (element.contains(middle) || middle.contains(element)));
        return {
          stage: element.closest('section[id^="stage-"]')?.id.slice('stage-'.length) ?? '',
          seen: (ring || frame) && !covered,
          name: `${element.tagName} ${element.getAttribute('aria-label') ?? element.textContent?.trim() ?? ''}`,
        };
      });
      if (at === null) break;
      if (!at.seen) hidden.push(at.name);
      if (at.stage !== '' && reached.at(-1) !== at.stage) reached.push(at.stage);
      await page.keyboard.press('Tab');
    }
    expect(steps).toBeLessThan(600);
    expect(hidden).toEqual([]);
    expect(reached).toEqual(STAGES);
  });

  it('goes from the index to a stage, types, chooses a way, and opens a working', { timeout: 60_000 }, async () => {
    const page = await workshop.visit('desktop');
    await open(page, await workshop.store());
    await page
      .getByRole('navigation')
      .getByRole('link', { name: /Weld and purge/ })
      .focus();
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('stage-purge-title');
    await page.locator('#stage-ways').getByRole('radio', { name: 'splice with the fewest welds' }).focus();
    await page.keyboard.press('ArrowRight');
    expect(await page.locator('#stage-ways').getByRole('radio', { name: 'new frame', exact: true }).isChecked()).toBe(
      true,
    );
    await page.keyboard.press('Control+z');
    await page
      .locator('#stage-what')
      .getByRole('button', { name: /^bore / })
      .first()
      .focus();
    await page.keyboard.press('Enter');
    await page.getByRole('complementary').getByRole('heading', { name: /^bore/ }).waitFor();
  });
});
