// An owner weighs the ways of putting the frame right, decides, and takes the comparison along.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Figure } from '../../server/plan/figure.ts';
import type { Way } from '../../server/plan/correction.ts';
import { expectSaid, figure, open, openSheet, planOf, seen, settled, stage, stored } from './person.ts';
import { workshopOfFile } from './workshop.ts';

const workshop = workshopOfFile();

const ROWS = [
  ['feet off by', 'footMisfit'],
  ['corners off by', 'cornerMisfit'],
  ['toe', 'toe'],
  ['largest kink', 'largestKink'],
  ['largest hi-lo', 'largestHiLo'],
  ['welds', 'welds'],
  ['purge set-ups', 'purgeSetups'],
  ['purge gas', 'purgeGas'],
  ['work', 'minutes'],
  ['cost', 'cost'],
] as const satisfies readonly (readonly [string, keyof Way])[];

const way = (page: Page, name: string) => stage(page, 'ways').getByRole('radio', { name, exact: true });
const indexOf = (page: Page, name: string) => page.getByRole('navigation').getByRole('link', { name });

describe('an owner', () => {
  it('reads in the table of ways what the plan says', { timeout: 60_000 }, async () => {
    const id = await workshop.store();
    const page = await workshop.visit('desktop');
    await open(page, id);
    const { ways, recommended } = (await planOf(workshop, await stored(workshop, id))).correction!;
    expect(ways.map(({ key }) => key)).toEqual(expect.arrayContaining(['rebend', 'splice-turned', 'new-frame']));

    const table = stage(page, 'ways').getByRole('table').first();
    const heads = await table.getByRole('columnheader').allInnerTexts();
    expect(heads.length).toBe(ways.length);
    expect(heads.findIndex((head) => head.includes('recommended'))).toBe(
      ways.findIndex(({ key }) => key === recommended),
    );
    for (const [words, column] of ROWS) {
      const row = table
        .getByRole('row')
        .filter({ has: page.getByRole('rowheader', { name: new RegExp(`^${words}`) }) });
      const cells = await row.getByRole('cell').allInnerTexts();
      expect(cells.length).toBe(ways.length);
      for (const [place, one] of ways.entries()) {
        const value: Figure | null = one[column];
        const cell = cells[place]!.trim();
        const least = `≥ ${(one.costAtLeast.value / 100).toFixed(2)}`;
        if (!one.possible) expect(cell, `${words} of ${one.key}`).toBe('');
        else if (value === null) expect(cell, `${words} of ${one.key}`).toBe(column === 'cost' ? least : 'open');
        else if (value.unit === 'minor') expect(cell).toBe((value.value / 100).toFixed(2));
        else expectSaid(cell, value);
      }
    }
  });

  it('chooses another way, sees everything follow, and takes it back', { timeout: 60_000 }, async () => {
    const id = await workshop.store();
    const page = await workshop.visit('desktop');
    await open(page, id);
    const job = await stored(workshop, id);
    const before = (await planOf(workshop, job)).correction!;
    const ofKey = (key: Way['key']) => before.ways.find((one) => one.key === key)!;
    const cards = stage(page, 'ways').getByRole('heading', { name: /^Joint \d/ });
    expect(await cards.count()).toBe(ofKey('splice-turned').joints.length);
    const kink = await figure(stage(page, 'ways'), 'kink');
    expectSaid(kink, ofKey('splice-turned').joints[0]!.kink);

    await way(page, 'splice, two joints in each member').click();
    await settled(page);
    const two = (await planOf(workshop, await stored(workshop, id))).correction!;
    expect(two.chosen).toBe('splice-two');
    expect(await cards.count()).toBe(ofKey('splice-two').joints.length);
    expect(await cards.count()).not.toBe(ofKey('splice-turned').joints.length);
    expectSaid(
      await figure(stage(page, 'ways'), 'kink'),
      two.ways.find(({ key }) => key === 'splice-two')!.joints[0]!.kink,
    );
    await indexOf(page, 'Ways to put it right').getByText('splice, 2 joints').waitFor();
    await stage(page, 'ways')
      .getByRole('heading', { name: 'Sizes afterwards: splice, two joints in each member' })
      .waitFor();
    await stage(page, 'price').getByText('Price of: splice, two joints in each member').waitFor();
    const marks = page.locator('figure svg g.joint text');
    expect(await marks.count()).toBe(ofKey('splice-two').joints.length);
    const cut = await openSheet(page, workshop, 'Cut and purge sheet');
    expect(cut.says('splice, two joints in each member')).toBe(true);

    await way(page, 'new frame').click();
    await settled(page);
    await cards.first().waitFor({ state: 'detached' });
    await indexOf(page, 'Ways to put it right').getByText('new frame').waitFor();

    await page.getByRole('button', { name: 'Undo' }).click();
    await page.keyboard.press('Control+z');
    await settled(page);
    expect(await way(page, 'splice, the far side turned').isChecked()).toBe(true);
    expect(await cards.count()).toBe(ofKey('splice-turned').joints.length);
    expect(await figure(stage(page, 'ways'), 'kink')).toBe(kink);
    expect(await indexOf(page, 'Ways to put it right').innerText()).toContain('splice, turned');
    await seen(() => stored(workshop, id)).toEqual(job);

    await page.getByRole('button', { name: 'Redo' }).click();
    await settled(page);
    expect(await way(page, 'splice, two joints in each member').isChecked()).toBe(true);
    await stage(page, 'ways').getByRole('button', { name: 'Use what the plan recommends', exact: true }).click();
    await settled(page);
    expect(await way(page, 'splice, the far side turned').isChecked()).toBe(true);
  });

  it('opens the comparison with all ways on it', { timeout: 60_000 }, async () => {
    const id = await workshop.store();
    const page = await workshop.visit('phone');
    await open(page, id);
    const sheet = await openSheet(page, workshop, 'Comparison of the ways');
    for (const name of ['rebend', 'splice, the far side turned', 'new frame'])
      expect(sheet.says(name), name).toBe(true);
  });
});
