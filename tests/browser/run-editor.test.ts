// One tube through many points: its table is pasted, mended and put in order, with a mouse and with a finger.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { MOST_POINTS } from '../../web/state/limits.ts';
import { field, seen, settled, stage, stored } from './person.ts';
import { openRun, paste, pasteWell, points, TABLE } from './run-page.ts';
import { type ScreenName, workshopOfFile } from './workshop.ts';

const workshop = workshopOfFile();

const paths = (page: Page) =>
  page.locator('figure svg .wanted path.centre').evaluateAll((lines) => lines.map((line) => line.getAttribute('d')));

const boxOf = (page: Page) => stage(page, 'wanted').getByRole('textbox', { name: 'What was pasted' });

describe.each<ScreenName>(['desktop', 'phone'])('a table of points at the %s', (screen) => {
  it('is pasted from a spreadsheet and changes the drawing', { timeout: 60_000 }, async () => {
    const { page, id } = await openRun(workshop, screen);
    const before = await paths(page);
    await pasteWell(page, TABLE);
    expect(points(await stored(workshop, id))).toEqual([
      { x: 0, y: 0, z: 0, radius: null },
      { x: 600, y: 0, z: 0, radius: null },
      { x: 600, y: 500, z: 0, radius: 120 },
      { x: 600, y: 500, z: 400, radius: null },
      { x: 1200.5, y: 500, z: 400, radius: null },
    ]);
    await seen(() => paths(page)).not.toEqual(before);
  });

  it('says which cell is a text and keeps what was pasted', { timeout: 60_000 }, async () => {
    const { page, id } = await openRun(workshop, screen);
    const before = points(await stored(workshop, id));
    await paste(page, '/frame/points/0/x', '1\t2\t3\n4\ttwelve\t6\n');
    const alert = stage(page, 'wanted').getByRole('alert');
    await alert.waitFor();
    for (const part of ['Row 2, column y', '“twelve”', 'cannot be read as a length', 'Nothing was pasted'])
      expect(await alert.textContent()).toContain(part);
    expect(await boxOf(page).inputValue()).toBe('1\t2\t3\n4\ttwelve\t6\n');
    await settled(page);
    expect(points(await stored(workshop, id))).toEqual(before);
    if (process.env['PICTURES'] !== undefined)
      await page.screenshot({ path: `${process.env['PICTURES']}/text-${screen}.png` });

    await boxOf(page).fill('1\t2\t3\n4\t12\t6\n');
    await page.getByRole('button', { name: 'Make it the whole table' }).click();
    await seen(() => boxOf(page).count()).toBe(0);
    await settled(page);
    expect(points(await stored(workshop, id))).toEqual([
      { x: 1, y: 2, z: 3, radius: null },
      { x: 4, y: 12, z: 6, radius: null },
    ]);
  });

  it('takes 2,000 points without losing one', { timeout: 60_000 }, async () => {
    const { page, id } = await openRun(workshop, screen);
    const before = points(await stored(workshop, id));
    const many = Array.from({ length: 2000 }, (_, row) => [row * 20, (row % 2) * 300, 0].join('\t')).join('\n');
    const began = Date.now();
    await paste(page, '/frame/points/0/x', many);
    const alert = stage(page, 'wanted').getByRole('alert');
    await alert.waitFor();
    expect(Date.now() - began).toBeLessThan(3000);
    for (const part of [
      '2,000 rows',
      `takes ${String(MOST_POINTS)}`,
      `row ${String(MOST_POINTS + 1)} is the first too many`,
    ])
      expect(await alert.textContent()).toContain(part);
    expect(await boxOf(page).inputValue()).toBe(many);
    if (process.env['PICTURES'] !== undefined)
      await page.screenshot({ path: `${process.env['PICTURES']}/many-${screen}.png` });
    await (await field(page, '/frame/points/1/x')).fill('900');
    await settled(page);
    expect(points(await stored(workshop, id))).toEqual(
      before.map((one, row) => (row === 1 ? { ...one, x: 900 } : one)),
    );
  });
});

describe('rows of points, by keyboard', () => {
  it('go between others, move, and start from the other end', { timeout: 60_000 }, async () => {
    const { page, id } = await openRun(workshop, 'desktop');
    await pasteWell(page, TABLE);
    const before = points(await stored(workshop, id));
    const row = (number: number) => page.getByRole('button', { name: `Row ${String(number)}: move, add or take out` });
    await row(2).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Add below: row 2' }).focus();
    await page.keyboard.press('Enter');
    await seen(() => page.evaluate(() => document.activeElement?.getAttribute('data-field'))).toBe('/frame/points/2/x');
    await settled(page);
    expect(points(await stored(workshop, id))[2]).toEqual({ x: 600, y: 250, z: 0, radius: null });

    await row(3).press('Enter');
    await page.getByRole('button', { name: 'Up: row 3' }).press('Enter');
    await seen(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('Up: row 2');
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await page.getByRole('button', { name: 'Start from the other end' }).press('Enter');
    await settled(page);
    expect(points(await stored(workshop, id))).toEqual([...before].reverse());
  });

  it('bear what is wrong with them', { timeout: 60_000 }, async () => {
    const { page } = await openRun(workshop, 'desktop');
    await pasteWell(page, '0\t0\t0\n100\t0\t0\n100\t0\t0\n100\t300\t0\n');
    const found = page.locator('[data-findings="/frame/points/2"]');
    await found.waitFor();
    expect(
      await found.locator('xpath=preceding-sibling::tr[1]').locator('[data-field="/frame/points/2/x"]').count(),
    ).toBe(1);
    expect(await found.textContent()).toMatch(/point/i);
  });
});
