import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Job } from '../../server/job/job.ts';
import type { SavedJob } from '../../server/job/saved-job.ts';
import type { Figure } from '../../server/plan/figure.ts';
import type { Plan } from '../../server/plan/plan.ts';
import { readSheet, type SheetText } from './sheet-text.ts';
import type { Workshop } from './workshop.ts';

/** How long a state may take to come [ms]: as patient as the page's own actions. */
const COMES = { timeout: 20_000, interval: 50 };

/** Waits until what is read off the page is what it must be. */
export const seen = <Value>(read: () => Promise<Value>) => expect.poll(read, COMES);

export const stage = (page: Page, key: string): Locator => page.locator(`#stage-${key}`);

/** The field of a value of the job; folded parts are opened on the way to it. */
export async function field(page: Page, pointer: string): Promise<Locator> {
  const found = page.locator(`[data-field="${pointer}"]`);
  const fold = found.locator('xpath=ancestor::details[not(@open)]').first();
  if ((await fold.count()) > 0) await fold.locator('summary').first().click();
  return found;
}

export async function type(page: Page, pointer: string, text: string): Promise<void> {
  await (await field(page, pointer)).fill(text);
}

export async function choose(page: Page, pointer: string, words: string): Promise<void> {
  await (await field(page, pointer)).selectOption({ label: words });
}

/** Waits until the plan is that of what stands in the fields, and the page has saved it by itself. */
export async function saved(page: Page): Promise<void> {
  await page.locator('figure .working').waitFor({ state: 'detached' });
  await page.locator('header .saved').waitFor();
}

/** The same, for those who press the keys for saving and do not wait for the page to do it. */
export async function settled(page: Page): Promise<void> {
  await page.locator('figure .working').waitFor({ state: 'detached' });
  await page.keyboard.press('Control+s');
  await page.locator('header .saved').waitFor();
}

/** Opens a job as an address that somebody sent. */
export async function open(page: Page, id: string): Promise<void> {
  await page.goto(`/#/job/${id}`);
  await page.locator('main').waitFor();
  await settled(page);
}

/** The number on the page that bears a name, without its band: '34.8 mm'. */
export async function figure(inside: Locator, name: string): Promise<string> {
  const place = inside.locator('.figure').filter({ has: inside.page().locator('.name', { hasText: exactly(name) }) });
  return spoken(place.first());
}

/** Number and unit of one figure. */
export async function spoken(place: Locator): Promise<string> {
  const parts = await place.locator('.number, .unit').allTextContents();
  return parts.join(' ').trim();
}

export const exactly = (text: string): RegExp => new RegExp(`^\\s*${text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}\\s*$`);

/** Seconds of a time that is said like '1 h 2 min', '4 min 30 s' or '45 s'. */
export function seconds(text: string): number {
  const part = (unit: string): number => Number(new RegExp(`(\\d+) ${unit}\\b`).exec(text)?.[1] ?? 0);
  return part('h') * 3600 + part('min') * 60 + part('s');
}

/** The number that a text begins with; a true minus counts as one. */
export const amount = (text: string): number => Number.parseFloat(text.replace('\u2212', '-'));

/** That the page says a figure to the decimals that it shows. */
export function expectSaid(text: string, { value }: Figure): void {
  const decimals = /\.(\d+)/.exec(text)?.[1]?.length ?? 0;
  expect(Math.abs(amount(text) - value), `${text} for ${String(value)}`).toBeLessThanOrEqual(
    0.5 * 10 ** -decimals + 1e-9,
  );
}

/** A job as it is stored, and its plan as anybody gets it from the server. */
export async function stored({ address }: Workshop, id: string): Promise<Job> {
  const answer = await fetch(`${address}/api/jobs/${id}`);
  return ((await answer.json()) as SavedJob).job;
}

export async function planOf({ address }: Workshop, job: Job): Promise<Plan> {
  const answer = await fetch(`${address}/api/plan`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(job),
  });
  return (await answer.json()) as Plan;
}

/** Touches the link of a sheet and reads the PDF that the browser got for it. */
export async function openSheet(page: Page, { address }: Workshop, name: string): Promise<SheetText> {
  const link = stage(page, 'sheets').getByRole('link', { name, exact: true });
  const url = new URL((await link.getAttribute('href')) ?? '', address).href;
  const answer = page.context().waitForEvent('response', (response) => response.url() === url);
  const [tab] = await Promise.all([page.waitForEvent('popup'), link.click()]);
  const response = await answer;
  expect([response.status(), response.headers()['content-type']]).toEqual([200, 'application/pdf']);
  await tab.close();
  const again = await fetch(url);
  return readSheet(new Uint8Array(await again.arrayBuffer()));
}
