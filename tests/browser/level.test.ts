// Somebody on a boat with a phone reads a level, by touch alone, and reads off what it must show for a post.
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { expectSaid, field, open, planOf, seen, settled, spoken, stage, stored } from './person.ts';
import { workshopOfFile } from './workshop.ts';

const workshop = workshopOfFile();

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds in the stage. */
async function violations(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as { axe: { run: (at: string) => Promise<AxeResults> } };
    const { violations } = await axe.run('#stage-level');
    return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(' ')}`));
  });
}

const focused = (page: Page) => page.evaluate(() => document.activeElement?.getAttribute('data-field'));

const noSidewaysScroll = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth);

describe('a level on site', () => {
  it('is read with a thumb, and says what it must show for a raked post', { timeout: 90_000 }, async () => {
    const page = await workshop.visit('phone');
    const id = await workshop.store({ ...newJob('hoop'), title: 'Stern frame' });
    await open(page, id);
    const level = stage(page, 'level');
    const button = (name: string) => level.getByRole('button', { name, exact: true });

    // one line to begin with and nothing to fill in; then two levels to read, and the time is noted with the first number
    expect(await level.locator('input, select, textarea').count()).toBe(0);
    await button('Read the level').tap();
    await seen(() => focused(page)).toBe('/site/level/sets/0/readings/0/angle');
    const taken = async (set: number): Promise<string> =>
      (await field(page, `/site/level/sets/${String(set)}/taken`)).inputValue();
    expect(await taken(0)).toBe('');
    expect(
      await level.getByLabel('shows').evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value)),
    ).toEqual(['', '']);
    await level.getByText('Not read: its own axes are taken for level.').waitFor();
    const reading = (number: number) => level.getByRole('group', { name: `level ${String(number)}`, exact: true });
    await reading(1).getByLabel('shows').fill('0.8');
    expect(await taken(0)).toMatch(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/);
    await reading(1).getByRole('button', { name: 'astern up' }).tap();
    await reading(2).getByLabel('shows').fill('1,7');

    // a post that is raked 10 degrees aft in the boat
    await button('Add a line for the level').tap();
    await seen(() => focused(page)).toBe('/site/directions/0/name');
    await (await field(page, '/site/directions/0/name')).fill('post');
    const rake = page.locator('[data-field="/site/directions/0/direction/ahead"]');
    await rake.fill('10');
    await rake.locator('xpath=ancestor::div[contains(@class, "angle")]').getByRole('button', { name: 'astern' }).tap();
    await settled(page);
    const job = await stored(workshop, id);
    expect(job.site.level.sets[0]!.readings).toMatchObject([{ angle: -0.8 }, { angle: 1.7 }]);
    expect(job.site.directions[0]).toMatchObject({ name: 'post', direction: { ahead: -10, port: 0 } });

    const [row] = (await planOf(workshop, job)).site!.rows;
    const table = level.getByRole('table', { name: 'post', exact: true });
    const line = (held: string) => table.locator(`[data-held="${held}"]`);
    await seen(() => spoken(line('fore-and-aft').getByRole('cell').first())).toBe('9.20°');
    for (const { plane, shows, offPlumb } of row!.planes) {
      expectSaid(await spoken(line(plane).getByRole('cell').first()), offPlumb);
      expectSaid(await spoken(line(plane).getByRole('cell').last()), shows);
    }
    expectSaid(await spoken(line('along').getByRole('cell').last()), row!.along);
    expect(await line('fore-and-aft').innerText()).toContain('leans astern');
    expect(await level.getByText('say which one is meant').innerText()).toContain('fore and aft shows 80.8°');

    // the readings grow old, and are taken again with one touch
    expect(await level.locator('[data-age="old"]').count()).toBe(0);
    await (await field(page, '/site/level/sets/0/taken')).fill('2026-01-02T09:40');
    await seen(() => level.locator('[data-age="old"]').innerText()).toContain('good for 2 h. Read again');
    expect(await noSidewaysScroll(page)).toBe(true);
    expect(await violations(page)).toEqual([]);
    await button('Read again').tap();
    await seen(() => focused(page)).toBe('/site/level/sets/1/readings/0/angle');
    await level.getByText('Set 2 is not read yet: set 1 still counts.').waitFor();
    await settled(page);
    // nothing is made up: the old set counts, and is old, until both levels are read
    expect(await level.locator('[data-age="old"]').count()).toBe(1);
    await seen(() => spoken(line('fore-and-aft').getByRole('cell').first())).toBe('9.20°');
    await reading(1).getByRole('button', { name: 'astern up' }).first().tap();
    await reading(1).getByLabel('shows').first().fill('1.2');
    await reading(2).getByLabel('shows').first().fill('1.5');
    await seen(() => level.locator('[data-age="old"]').count()).toBe(0);
    await seen(() => spoken(line('fore-and-aft').getByRole('cell').first())).toBe('8.80°');
    await settled(page);
    const { sets } = (await stored(workshop, id)).site.level;
    expect(sets.map(({ readings }) => readings.map((one) => 'angle' in one && one.angle))).toEqual([
      [-0.8, 1.7],
      [-1.2, 1.5],
    ]);

    // the drawing in its place over the card is looked at from all four sides
    const drawing = page.getByRole('region', { name: 'Drawing', exact: true });
    await drawing.getByRole('button', { name: 'site', exact: true }).tap();
    for (const side of ['from astern', 'from above', 'from a corner', 'from starboard']) {
      await drawing.getByRole('button', { name: side, exact: true }).tap();
      await drawing.getByRole('group', { name: `Drawing of the site, ${side}` }).waitFor();
    }
    expect(await noSidewaysScroll(page)).toBe(true);
    expect(await violations(page)).toEqual([]);
  });
});
