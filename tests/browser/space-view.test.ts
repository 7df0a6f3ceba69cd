// The frame in space: fetched when it is wanted, turned by key, mouse and button, and painted only when it changes.
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { field, open, seen, settled } from './person.ts';
import { openRun, pasteWell, TABLE } from './run-page.ts';
import { type ScreenName, workshopOfFile } from './workshop.ts';

const workshop = workshopOfFile();

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What stands on the canvas: a number for its dots, and the share of dots that are inked. */
const picture = (page: Page) =>
  page.locator('figure canvas').evaluate((canvas) => {
    const { width, height } = canvas as HTMLCanvasElement;
    const copy = new OffscreenCanvas(width, height);
    const paper = copy.getContext('2d');
    if (paper === null) throw new Error('There is no second canvas.');
    paper.drawImage(canvas as HTMLCanvasElement, 0, 0);
    const { data } = paper.getImageData(0, 0, width, height);
    let [mark, inked] = [0, 0];
    for (let at = 3; at < data.length; at += 4) {
      if (data[at] === 0) continue;
      inked += 1;
      mark = (mark * 31 + at + (data[at - 1] ?? 0)) % 1_000_003;
    }
    return { mark, inked: inked / (width * height) };
  });

describe.each<ScreenName>(['desktop', 'phone'])('the frame in space at the %s', (screen) => {
  it('turns in space while it is typed, and is fetched only then', { timeout: 60_000 }, async () => {
    const { page, asked } = await openRun(workshop, screen);
    await pasteWell(page, TABLE);
    expect(asked.filter((path) => path.includes('SpaceView'))).toEqual([]);
    await page.getByRole('button', { name: 'turn it', exact: true }).click();
    const canvas = page.locator('figure canvas');
    await seen(async () => ((await canvas.count()) === 0 ? 0 : (await picture(page)).inked)).toBeGreaterThan(0.005);
    expect(asked.filter((path) => /SpaceView.*\.js$/.test(path))).toHaveLength(1);

    const atFirst = await picture(page);
    await canvas.focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowUp');
    await seen(() => picture(page)).not.toEqual(atFirst);
    const aside = await picture(page);
    expect(aside.inked).toBeGreaterThan(0.005);
    await page.keyboard.press('+');
    await seen(async () => (await picture(page)).inked).toBeGreaterThan(aside.inked);
    await page.keyboard.press('-');
    await seen(() => picture(page)).toEqual(aside);

    await (await field(page, '/frame/points/2/y')).fill('700');
    await settled(page);
    await seen(() => picture(page)).not.toEqual(aside);
    const typed = await picture(page);
    await canvas.focus();
    await page.keyboard.press('0');
    await seen(() => picture(page)).not.toEqual(typed);
    if (process.env['PICTURES'] !== undefined)
      await page.screenshot({ path: `${process.env['PICTURES']}/space-${screen}.png` });

    const frames = await page.evaluate(async () => {
      let painted = 0;
      const real = requestAnimationFrame;
      globalThis.requestAnimationFrame = (work) => {
        painted += 1;
        return real(work);
      };
      await new Promise((done) => setTimeout(done, 400));
      globalThis.requestAnimationFrame = real;
      return painted;
    });
    expect(frames).toBe(0);
    if (screen === 'desktop') {
      const turned = await picture(page);
      const box = await canvas.boundingBox();
      if (box === null) throw new Error('The canvas has no place.');
      await page.mouse.move(box.x + box.width / 2, box.y + 60);
      await page.mouse.down();
      await page.mouse.move(box.x + box.width / 2 + 90, box.y + 90, { steps: 3 });
      await page.mouse.up();
      await seen(() => picture(page)).not.toEqual(turned);
      const dragged = await picture(page);
      await page.mouse.wheel(0, -240);
      await seen(async () => (await picture(page)).inked).toBeGreaterThan(dragged.inked);
    }
    await page.getByRole('button', { name: 'top', exact: true }).click();
    await seen(() => canvas.count()).toBe(0);
  });

  it('breaks no rule for people who see, hear or move otherwise', { timeout: 60_000 }, async () => {
    const { page } = await openRun(workshop, screen);
    await page.getByRole('button', { name: 'turn it', exact: true }).click();
    await page.locator('figure canvas').waitFor();
    await page.getByRole('button', { name: 'Row 2: move, add or take out' }).click();
    await page.getByRole('button', { name: 'Paste a table' }).click();
    await page.evaluate(axe);
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      const found = await page.evaluate(async () => {
        const { axe } = globalThis as unknown as { axe: { run: (inside: object) => Promise<AxeResults> } };
        const { violations, passes } = await axe.run({ include: [['figure'], ['#stage-wanted']] });
        return {
          passes: passes.length,
          violations: violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`),
        };
      });
      expect(found.violations).toEqual([]);
      expect(found.passes).toBeGreaterThan(10);
    }
    const sizes = await page.locator('figure button, #stage-wanted .stack button').evaluateAll((buttons) =>
      buttons
        .filter((button) => button.getClientRects().length > 0)
        .map((button) => {
          const { width, height } = button.getBoundingClientRect();
          return Math.min(width, height);
        }),
    );
    expect(sizes.length).toBeGreaterThan(20);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(43.5);
    const { wide, room } = await page.evaluate(() => ({
      wide: document.documentElement.scrollWidth,
      room: document.documentElement.clientWidth,
    }));
    expect(wide).toBeLessThanOrEqual(room);
  });
});

describe('a browser that cannot draw in space', () => {
  it('is told so in words, and shows the flat views', { timeout: 60_000 }, async () => {
    const id = await workshop.store(newJob('ring'));
    const page = await workshop.visit('desktop');
    await page.addInitScript(() => {
      HTMLCanvasElement.prototype.getContext = () => null;
    });
    await open(page, id);
    await page.getByRole('button', { name: 'turn it', exact: true }).click();
    await page.getByText('This browser cannot draw in space').waitFor();
    await page.getByRole('button', { name: 'face', exact: true }).click();
    await seen(() => page.locator('figure svg path.edge').count()).toBeGreaterThan(0);
  });
});

describe('a point in space', () => {
  it('is found in the table by touching it, and in space by typing it', { timeout: 60_000 }, async () => {
    const { page } = await openRun(workshop, 'desktop');
    await page.getByRole('button', { name: 'turn it', exact: true }).click();
    const marks = page.locator('figure .picture svg path');
    await seen(() => marks.count()).toBe(4);
    const place = await marks.nth(2).boundingBox();
    if (place === null) throw new Error('The point is not in the picture.');
    await page.mouse.click(place.x + place.width / 2, place.y + place.height / 2);
    await seen(() => page.evaluate(() => document.activeElement?.getAttribute('data-field'))).toBe('/frame/points/2/x');
    await seen(() => page.locator('figure .picture svg path.focused').count()).toBe(1);
    await (await field(page, '/frame/points/0/y')).focus();
    await seen(() => page.locator('figure svg text.focused').allTextContents()).toEqual(['1']);
  });
});
