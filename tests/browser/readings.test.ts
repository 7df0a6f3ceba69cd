import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import type { Job } from '../../server/job/job.ts';
import { field, open, saved, seen, settled, stage, stored, type } from './person.ts';
import { workshopOfFile, type ScreenName } from './workshop.ts';

const workshop = workshopOfFile();
const came = (): number => landingStage().cameBack!.readings.length;
const ordered = (): Job => ({ ...landingStage(), cameBack: null });
const row = (page: Page, size: string) => stage(page, 'cameBack').locator(`[data-size="${size}"]`);
const found = (page: Page, size: string) => row(page, size).locator('input').first();

describe.each<ScreenName>(['desktop', 'phone'])('an owner with a tape, at the %s', (screen) => {
  it('types what it found, and nothing typed is lost', { timeout: 90_000 }, async () => {
    const id = await workshop.store(ordered());
    const page = await workshop.visit(screen);
    await open(page, id);
    await stage(page, 'cameBack').getByRole('button', { name: 'It came back otherwise' }).click();
    const width = found(page, 'width-at-corners/0');
    await width.focus();
    await page.keyboard.type('38 3/4 in');
    await page.keyboard.press('Tab');
    await type(page, '/cameBack/sizes/left-leg/0/value', 'about 700');
    await saved(page);
    const readings = async () => (await stored(workshop, id)).cameBack!.readings;
    expect(await readings()).toMatchObject([
      { check: 'width-at-corners', reference: 'outside', value: 984.25 },
      { check: 'left-leg', value: null },
    ]);
    expect(await row(page, 'width-at-corners/0').innerText()).toContain('fitted');

    await page.reload();
    await settled(page);
    expect(await width.inputValue()).toBe('38 3/4 in');
    expect(await found(page, 'left-leg/0').inputValue()).toBe('about 700');
    expect(await row(page, 'left-leg/0').locator('.trouble').innerText()).toContain('cannot be read as a length');

    await width.fill('');
    await found(page, 'left-leg/0').fill('701');
    await saved(page);
    expect(await readings()).toMatchObject([{ check: 'left-leg', value: 701 }]);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await width.inputValue()).toBe('38 3/4 in');
    const wide = await page.evaluate(() => [document.documentElement.scrollWidth, window.innerWidth]);
    expect(wide[0]).toBeLessThanOrEqual(wide[1]!);
  });
});

describe('sizes on the drawing', () => {
  it('are typed where they were read, and a field makes its line thick', { timeout: 60_000 }, async () => {
    const id = await workshop.store();
    const page = await workshop.visit('desktop');
    await open(page, id);
    await page.locator('figure').getByRole('button', { name: 'as it came back' }).click();
    const fields = async () =>
      page
        .locator('figure [data-dimension]')
        .evaluateAll((all) => all.map((one) => one.getAttribute('data-dimension')));
    // of all its sizes only those that were read can be typed
    const read = Array.from({ length: came() }, (_, at) => `/cameBack/readings/${String(at)}/value`);
    await seen(async () => (await fields()).toSorted()).toEqual(read);
    await page.locator('figure [data-dimension="/cameBack/readings/1/value"]').click();
    await page.locator('.editor input').fill('977');
    await page.keyboard.press('Enter');
    expect(await (await field(page, '/cameBack/readings/1/value')).inputValue()).toBe('977');
    await (await field(page, '/cameBack/readings/3/value')).focus();
    const thick = page.locator('figure .dimension.thick [data-dimension]');
    await seen(() => thick.evaluateAll((all) => all.map((one) => one.getAttribute('data-dimension')))).toEqual([
      '/cameBack/readings/3/value',
    ]);
  });
});

describe('other readings', () => {
  it('are added, typed, pasted and taken out by the keyboard', { timeout: 60_000 }, async () => {
    const id = await workshop.store();
    const page = await workshop.visit('desktop');
    await open(page, id);
    const part = stage(page, 'cameBack');
    await part.getByLabel('Add another reading').selectOption({ label: 'angle of a bend' });
    await part.getByRole('button', { name: 'Add it' }).press('Enter');
    // the caret stands in the new reading
    await seen(() => page.evaluate(() => document.activeElement?.getAttribute('data-field'))).toBe(
      `/cameBack/readings/${String(came())}/value`,
    );
    await page.keyboard.type('89.4');
    await part.getByText('Paste points').click();
    await part.getByLabel('Points, one a line').fill('0 0 0\n10 x 0');
    await part.getByRole('button', { name: 'Put them to the corners' }).click();
    await part.getByText('Row 2, column y').waitFor();
    await part.getByLabel('Points, one a line').fill('-456 -600 0\n-456 0 0');
    await part.getByRole('button', { name: 'Put them to the corners' }).click();
    await part.getByText('2 points put to their corners.').waitFor();
    await saved(page);
    const readings = async () => (await stored(workshop, id)).cameBack!.readings.slice(came());
    expect(await readings()).toMatchObject([
      { reading: 'turn', what: 'angle', piece: 2, value: 89.4 },
      { reading: 'point', at: { spot: 'start' }, x: -456, y: -600, z: 0 },
      { reading: 'point', at: { spot: 'corner', number: 1 }, x: -456, y: 0, z: 0 },
    ]);
    await part.getByRole('button', { name: 'Take out: angle of a bend' }).press('Enter');
    await saved(page);
    expect((await readings()).map(({ reading }) => reading)).toEqual(['point', 'point']);
  });
});
