// A welder opens the example, believes it, and takes the sheet to the bench.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import {
  amount,
  choose,
  expectSaid,
  field,
  figure,
  open,
  openSheet,
  planOf,
  seconds,
  seen,
  settled,
  stage,
  stored,
  type,
} from './person.ts';
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

const chamber = (page: Page, number: number) =>
  stage(page, 'purge').getByRole('group', { name: `Chamber ${String(number)}`, exact: true });
const button = (page: Page, name: string | RegExp) =>
  stage(page, 'purge').getByRole('button', { name, exact: typeof name === 'string' });
const noSidewaysScroll = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth);

/** A rail with two posts under it and a brace between them, each a saddle; nothing is drilled, so the brace is shut. */
function bracedRail(): Job {
  const point = (x: number, z: number) => ({ x, y: 0, z, radius: null });
  const tube = (name: string, from: [number, number], to: [number, number], onto: [string | null, string | null]) => ({
    name,
    path: { by: 'points' as const, points: [point(...from), point(...to)], closed: false },
    start: onto[0] === null ? { end: 'free' as const } : { end: 'saddle' as const, onto: onto[0] },
    finish: onto[1] === null ? { end: 'free' as const } : { end: 'saddle' as const, onto: onto[1] },
  });
  const members = [
    tube('rail', [0, 0], [1500, 0], [null, null]),
    tube('post 1', [400, 0], [400, -500], ['rail', null]),
    tube('post 2', [1000, 0], [1000, -500], ['rail', null]),
    tube('brace', [400, -300], [1000, -300], ['post 1', 'post 2']),
  ];
  return { ...newJob('members'), title: 'Braced rail', frame: { shape: 'members', members } };
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
    expect(chambers.length).toBeGreaterThan(0);
    const waits: string[] = [];
    for (const { number, printed } of chambers) {
      const card = chamber(page, number);
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

describe.each<ScreenName>(['desktop', 'phone'])('a welder who sets up at the %s', (screen) => {
  it('reads, types and orders what the bench needs, and sees the gas', { timeout: 90_000 }, async () => {
    const page = await workshop.visit(screen);
    const id = await workshop.store();
    await open(page, id);
    const plan = async () => planOf(workshop, await stored(workshop, id));

    await type(page, '/purge/prePurgeFlow', '8');
    await type(page, '/purge/targetOxygen', '20');
    await settled(page);
    const { purge } = await plan();
    const card = chamber(page, 1);
    expect(seconds(await figure(card, 'wait before welding'))).toBe(Math.ceil(purge!.chambers[0]!.printed.time.value));
    expect(await figure(card, 'pre-purge flow')).toBe('8.0 L/min');
    expect(await figure(card, 'until the meter shows')).toBe('20 ppm');
    expectSaid(await figure(card, 'before the last quarter'), purge!.closingFlow);
    expect(seconds(await figure(card, 'hold'))).toBe(Math.ceil(purge!.hold.value));

    await type(page, '/purge/targetOxygen', '1');
    await settled(page);
    expect(await page.locator('#stage-purge > .finding.stop').innerText()).toContain('oxygen in the gas');
    await seen(() => card.count()).toBe(0);
    await stage(page, 'purge').getByText('The gas is not planned: what stands here says why.').waitFor();
    await type(page, '/purge/targetOxygen', '20');
    await settled(page);

    await card.getByRole('button', { name: 'Add a meter reading' }).click();
    await type(page, '/purge/meter/0/minutes', '4');
    await type(page, '/purge/meter/0/oxygen', '15');
    await card.getByText('The target is reached: weld.').waitFor();
    await choose(page, '/purge/feed', 'hoop, right foot');
    await settled(page);
    expect(await card.locator('dt:text-is("Feed") + dd').innerText()).toBe('hoop, right foot');

    const current = await field(page, '/welding/butt/current');
    expect(await current.getAttribute('placeholder')).toMatch(/^\d+, by the plan$/);
    await current.fill('62');
    await settled(page);
    await stage(page, 'purge').getByText('Settings for a butt: 62 A').waitFor();

    await stage(page, 'purge').getByText('Order of welding', { exact: true }).click();
    await button(page, 'Make an order of your own').click();
    const proposed = (await plan()).welding!.proposed.map(({ weld }) => weld);
    await button(page, `Down: Weld ${proposed[0]!}`).click();
    await choose(page, '/welding/order/0/first', 'quarter 3');
    await settled(page);
    const { order } = (await stored(workshop, id)).welding;
    expect(order.map(({ weld }) => weld)).toEqual([proposed[1], proposed[0]]);
    expect(order[0]!.first).toBe(3);

    await page
      .getByRole('navigation')
      .getByRole('link', { name: /Weld and purge/ })
      .click();
    // gas is shown while its stage is read: only a page that has come to rest shows the same a moment later
    await settled(page);
    const dots = page.locator('figure .paper svg path.dots');
    const shown = page.getByRole('button', { name: 'gas and welds' });
    await seen(() => shown.getAttribute('aria-pressed')).toBe('true');
    await seen(() => dots.count()).toBe((await plan()).views[0]!.gas.filter(({ flows }) => flows).length);
    await shown.click();
    await seen(() => dots.count()).toBe(0);
    expect(await noSidewaysScroll(page)).toBe(true);
  });

  it('is refused at a closed bore, and opens it', { timeout: 90_000 }, async () => {
    const page = await workshop.visit(screen);
    const id = await workshop.store(bracedRail());
    await open(page, id);
    const before = await planOf(workshop, await stored(workshop, id));
    const { data } = before.findings.find(({ code }) => code === 'closed-chamber')!;
    const index = page.getByRole('navigation').getByRole('link', { name: /Weld and purge/ });
    expect(await index.innerText()).toContain('stop');

    const shut = chamber(page, Number(data['chamber']));
    const stop = shut.locator('.finding.stop');
    expect(await stop.locator('svg').getAttribute('class')).toContain('stop');
    expect(await stop.innerText()).toContain('A closed bore must never be welded');
    expect(await shut.locator('.name', { hasText: 'wait before welding' }).count()).toBe(0);
    await stop.getByRole('button', { name: 'Set vent holes under saddle ends to all of them' }).click();
    await settled(page);

    expect((await stored(workshop, id)).purge.holes.underSaddles).toBe('all');
    const { purge } = await planOf(workshop, await stored(workshop, id));
    await seen(() => stage(page, 'purge').locator('.finding.stop').count()).toBe(0);
    for (const { number, printed } of purge!.chambers)
      expect(seconds(await figure(chamber(page, number), 'wait before welding'))).toBe(Math.ceil(printed.time.value));
    expect(await index.innerText()).not.toContain('stop');
  });
});
