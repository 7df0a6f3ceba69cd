// A shop plans its welds: it weighs two ways to fill the frame, keeps what it has proved, and opens a closed tube.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import {
  expectSaid,
  field,
  figure,
  open,
  planOf,
  seconds,
  seen,
  settled,
  spoken,
  stage,
  stored,
  type,
} from './person.ts';
import { workshopOfFile } from './workshop.ts';

const workshop = workshopOfFile();

const chamber = (page: Page, number: number) =>
  stage(page, 'purge').getByRole('group', { name: `Chamber ${String(number)}`, exact: true });
const button = (page: Page, name: string) => stage(page, 'purge').getByRole('button', { name, exact: true });
const noSidewaysScroll = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth);

describe('a shop that welds', () => {
  it('weighs filling the whole frame against dams, and takes one', { timeout: 60_000 }, async () => {
    const page = await workshop.visit('desktop');
    const id = await workshop.store();
    await open(page, id);
    const { extents, chambers } = (await planOf(workshop, await stored(workshop, id))).purge!;
    const table = stage(page, 'purge').getByRole('table', { name: 'What is filled' });
    for (const [column, { setups, gas, minutes }] of extents.entries()) {
      const cell = (row: string) => table.getByRole('row', { name: row }).getByRole('cell').nth(column);
      expectSaid(await spoken(cell('set-ups')), setups);
      expectSaid(await spoken(cell('purge gas in all')), gas);
      expectSaid(await spoken(cell('minutes')), minutes);
    }
    await table.getByRole('radio', { name: 'a short chamber between dams' }).check();
    await settled(page);
    expect((await stored(workshop, id)).purge.extent).toBe('dams');
    const pockets = (await planOf(workshop, await stored(workshop, id))).purge!.chambers;
    expect(pockets.length).toBeGreaterThan(chambers.length);
    await seen(() =>
      stage(page, 'purge')
        .getByRole('group', { name: /^Chamber \d+$/ })
        .count(),
    ).toBe(pockets.length);
    expect(await noSidewaysScroll(page)).toBe(true);
  });

  it('keeps proved settings, and is offered them in the next job', { timeout: 90_000 }, async () => {
    const proved = 'test piece 7';
    const page = await workshop.visit('phone');
    await open(page, await workshop.store());
    await type(page, '/welding/butt/current', '57');
    await type(page, '/welding/butt/provedOn', proved);
    const name = await stage(page, 'purge').getByLabel('Name of these settings in the shop').inputValue();
    expect(name).toContain(proved);
    await button(page, 'Keep these settings with the shop').click();
    await stage(page, 'purge').getByText(`Kept with the shop as "${name}"`).waitFor();

    const second = await workshop.store();
    await open(page, second);
    await field(page, '/welding/butt/current');
    await button(page, `Take ${name}`).click();
    await settled(page);
    expect((await stored(workshop, second)).welding.butt).toMatchObject({ current: 57, provedOn: proved });
    await stage(page, 'purge').getByText('Settings for a butt: 57 A').waitFor();
    expect(await stage(page, 'purge').getByText('Nobody has proved them').count()).toBe(0);
  });

  it('opens a ring, which no saddle can open, by a hole to the air', { timeout: 60_000 }, async () => {
    const page = await workshop.visit('phone');
    const id = await workshop.store({ ...newJob('ring'), title: 'Ring' });
    await open(page, id);
    expect(await chamber(page, 1).locator('.finding.stop').innerText()).toContain('the last weld closes it');
    await chamber(page, 1).getByRole('button', { name: 'Add a vent hole to the air' }).click();
    await settled(page);
    expect((await stored(workshop, id)).purge.holes.toAir).toHaveLength(1);
    expect(await chamber(page, 1).innerText()).toContain('vent hole 1 (ring');
    await seen(() => chamber(page, 1).locator('.finding.stop').count()).toBe(0);
    expect(seconds(await figure(chamber(page, 1), 'wait before welding'))).toBeGreaterThan(0);
  });
});
