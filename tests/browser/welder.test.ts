// A welder opens the example, believes it, and takes the sheet to the bench.
import { describe, expect, it } from 'vitest';
import { amount, choose, figure, openSheet, planOf, seconds, seen, settled, stage, stored } from './person.ts';
import type { SheetText } from './sheet-text.ts';
import { type ScreenName, workshopOfFile } from './workshop.ts';

const workshop = workshopOfFile();

/** Upright sheets [mm]: ISO 216, and 8.5 in × 11 in. */
const A4 = [210, 297] as const;
const LETTER = [215.9, 279.4] as const;

function expectPaper(sizes: SheetText['sizes'], [wide, high]: readonly [number, number]): void {
  for (const [width, height] of sizes) {
    expect(width).toBeCloseTo(wide, 0);
    expect(height).toBeCloseTo(high, 0);
  }
}

describe.each<ScreenName>(['desktop', 'phone'])('a welder at the %s', (screen) => {
  it('opens the example, looks behind a number and takes the cut-and-purge sheet', { timeout: 60_000 }, async () => {
    const page = await workshop.visit(screen);
    await page.goto('/');
    await page.waitForURL(/#\/job\//);
    await settled(page);

    await page.locator('header').getByText('Made-up example', { exact: true }).waitFor();
    await page.getByText('This is a made-up example.').waitFor();

    const id = decodeURIComponent(page.url().split('#/job/')[1]!);
    const plan = await planOf(workshop, await stored(workshop, id));

    const slips = stage(page, 'cameBack').locator('ol li');
    expect(await slips.count()).toBe(plan.correction!.slips.length);
    expect(await slips.first().innerText()).toContain('The marks of the corners were used as the start of each bend.');
    expect(await slips.first().innerText()).toContain('explains what you measured');
    expect(plan.correction!.slips[0]!.keys).toEqual(['apex-as-start']);
    const said = stage(page, 'cameBack').getByText('Lay the start marks of the bend table on the tube.');
    expect(await said.count()).toBe(1);
    await stage(page, 'cameBack').getByText('Looked at, and do not explain it').click();
    const misfits = await Promise.all(
      (await slips.all()).map(async (slip) => amount(await figure(slip, 'misfit, in accuracies'))),
    );
    expect(misfits).toEqual([...misfits].sort((a, b) => a - b));

    const fewest = stage(page, 'ways').getByRole('radio', { name: 'splice with the fewest welds', exact: true });
    expect(await fewest.isChecked()).toBe(true);
    expect(
      await page
        .getByRole('navigation')
        .getByRole('link', { name: /Ways to put it right/ })
        .innerText(),
    ).toContain('splice, fewest welds');

    const { chambers } = plan.purge!;
    expect(chambers.length).toBe(2);
    const waits: string[] = [];
    for (const { number, printed } of chambers) {
      const card = stage(page, 'purge').getByRole('group', { name: `Chamber ${String(number)}`, exact: true });
      const wait = await figure(card, 'wait before welding');
      expect(seconds(wait)).toBe(Math.ceil(printed.time.value));
      expect(await figure(card, 'gas before welding')).toBe(`${printed.gas.value.toFixed(2)} L`);
      waits.push(wait);
    }

    const times = stage(page, 'purge').getByRole('button', { name: /^wait before welding/ });
    await times.first().click();
    const working = page.getByRole('complementary');
    await working.getByRole('heading', { name: `wait before welding ${waits[0]!}` }).waitFor();
    expect(await working.locator('.formula').innerText()).toBe(chambers[0]!.printed.time.working.formula);
    expect(await working.getByRole('row').count()).toBe(chambers[0]!.printed.time.working.inputs.length);
    expect(await working.getByRole('listitem').count()).toBe(chambers[0]!.printed.time.working.sources.length);
    await page.keyboard.press('Escape');
    await working.getByRole('heading').waitFor({ state: 'detached' });

    const sheet = await openSheet(page, workshop, 'Cut and purge sheet');
    expect(sheet.sizes.length).toBeGreaterThan(1);
    expectPaper(sheet.sizes, A4);
    for (const wait of waits) expect(sheet.says(wait), wait).toBe(true);

    await choose(page, '/print/paper', 'Letter');
    await settled(page);
    const letter = await openSheet(page, workshop, 'Cut and purge sheet');
    expect(letter.sizes.length).toBeGreaterThan(1);
    expectPaper(letter.sizes, LETTER);
    await choose(page, '/print/paper', 'A4');
    await seen(async () => (await stored(workshop, id)).print.paper).toBe('a4');
  });
});
