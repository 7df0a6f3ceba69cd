// An owner reads what is recommended and why, weighs the other ways, decides, and takes the comparison along.
import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import type { Job } from '../../server/job/job.ts';
import { words, wordsOf } from '../../server/language/words.ts';
import type { CorrectionPlan, Way, WayKey } from '../../server/plan/correction.ts';
import {
  choose,
  expectSaid,
  field,
  figure,
  open,
  openSheet,
  planOf,
  seen,
  settled,
  stage,
  stored,
  type,
} from './person.ts';
import { expectTable } from './way-table.ts';
import { workshopOfFile } from './workshop.ts';
import { sizeRead } from '../solver/size-read.ts';

const workshop = workshopOfFile();

const ways = (page: Page): Locator => stage(page, 'ways');
const radio = (page: Page, key: WayKey) => ways(page).getByRole('radio', { name: wordsOf('way', key), exact: true });
const indexOf = (page: Page) => page.getByRole('navigation').getByRole('link', { name: words('stage.ways') });
const cards = (page: Page) => ways(page).getByRole('heading', { name: /^Joint \d/ });

async function corrected(id: string): Promise<CorrectionPlan> {
  return (await planOf(workshop, await stored(workshop, id))).correction!;
}

function wayOf(correction: CorrectionPlan, key: WayKey | null): Way {
  const found = correction.ways.find((one) => one.key === key);
  if (found === undefined) throw new Error(`The plan has no way ${String(key)}.`);
  return found;
}

describe('an owner', () => {
  it('reads which way and why, and in the table what the plan says of each', { timeout: 60_000 }, async () => {
    const id = await workshop.store();
    const page = await workshop.visit('desktop');
    await open(page, id);
    const correction = await corrected(id);
    const { ways: all, recommended, wouldChange } = correction;
    expect(all.map(({ key }) => key)).toEqual(
      expect.arrayContaining(['leave', 'rebend', 'splice-fewest', 'new-frame']),
    );
    expect(recommended).toBe('splice-fewest');

    const said = ways(page).locator('.recommendation');
    expect(await said.locator('.way').innerText()).toMatch(new RegExp(wordsOf('way', recommended!), 'i'));
    expect(await said.locator('.reason').innerText()).toMatch(/^Recommended: .*fewest welds/);
    expect(await said.locator('li').count()).toBe(wouldChange.length);
    expectSaid(await figure(said, words('ways.column.fixingMisfit')), wayOf(correction, recommended).fixingMisfit);
    expectSaid(await figure(said, words('ways.column.welds')), wayOf(correction, recommended).welds);

    const heads = await ways(page).getByRole('table').first().getByRole('columnheader').allInnerTexts();
    const possible = all.filter((way) => way.possible);
    expect(heads.length).toBe(possible.length);
    expect(heads.findIndex((head) => head.includes('recommended'))).toBe(
      possible.findIndex(({ key }) => key === recommended),
    );
    await expectTable(ways(page).getByRole('table').first(), correction);
  });

  it('chooses another way, sees everything follow, and takes it back', { timeout: 60_000 }, async () => {
    const id = await workshop.store();
    const page = await workshop.visit('desktop');
    await open(page, id);
    const job = await stored(workshop, id);
    const before = await corrected(id);
    const [first, other] = [wayOf(before, 'splice-fewest'), wayOf(before, 'rebend')];
    expect(other.joints.length).not.toBe(first.joints.length);
    expect(await cards(page).count()).toBe(first.joints.length);
    const kink = await figure(ways(page), 'kink');
    expectSaid(kink, first.joints[0]!.kink);

    await radio(page, 'rebend').click();
    await settled(page);
    const after = await corrected(id);
    expect(after.chosen).toBe('rebend');
    expect(await cards(page).count()).toBe(other.joints.length);
    expect(after.ways.find(({ key }) => key === 'rebend')!.rebends.length).toBeGreaterThan(0);
    await indexOf(page).getByText('rebend').first().waitFor();
    await ways(page).getByRole('heading', { name: 'How it is done: rebend' }).waitFor();
    await stage(page, 'price')
      .locator('.what', { hasText: /^rebend/i })
      .waitFor();
    expect(await page.locator('figure svg [data-joint]').count()).toBe(other.joints.length);
    const cut = await openSheet(page, workshop, 'Cut and purge sheet');
    expect(cut.says('rebend')).toBe(true);

    await radio(page, 'new-frame').click();
    await settled(page);
    await cards(page).first().waitFor({ state: 'detached' });
    await indexOf(page).getByText('new frame').waitFor();

    await page.getByRole('button', { name: 'Undo' }).click();
    await page.keyboard.press('Control+z');
    await settled(page);
    expect(await radio(page, 'splice-fewest').isChecked()).toBe(true);
    expect(await cards(page).count()).toBe(first.joints.length);
    expect(await figure(ways(page), 'kink')).toBe(kink);
    expect(await indexOf(page).innerText()).toContain('splice, fewest welds');
    await seen(() => stored(workshop, id)).toEqual(job);

    await page.getByRole('button', { name: 'Redo' }).click();
    await settled(page);
    expect(await radio(page, 'rebend').isChecked()).toBe(true);
    await ways(page).getByRole('button', { name: 'Use what the plan recommends', exact: true }).click();
    await settled(page);
    expect(await radio(page, 'splice-fewest').isChecked()).toBe(true);
  });

  it(
    'sees cost and days of every way, and is asked for the days of a bender outside',
    { timeout: 60_000 },
    async () => {
      const id = await workshop.store();
      const page = await workshop.visit('desktop');
      await open(page, id);
      for (const way of (await corrected(id)).ways) expect([way.cost, way.days]).not.toContain(null);
      await ways(page)
        .getByText(/^Work, cost and days are with the legs \(4 welds, .* L of purge gas\)/)
        .waitFor();

      await choose(page, '/quote/bending', words('choice.bending.outside'));
      await settled(page);
      for (const { key, days } of (await corrected(id)).ways)
        expect(days === null, key).toBe(key === 'rebend' || key === 'new-frame');
      await expectTable(ways(page).getByRole('table').first(), await corrected(id));
      const asked = words('price.daysOpen', { option: wordsOf('way', 'new-frame') });
      await stage(page, 'price').getByRole('button', { name: asked, exact: true }).click();
      await seen(() => page.evaluate(() => document.activeElement?.getAttribute('data-field'))).toBe(
        '/closing/daysAtBender',
      );
      await ways(page)
        .getByText(/nobody has said how long the bender takes/)
        .waitFor();

      await type(page, '/closing/daysAtBender', '9');
      await settled(page);
      const correction = await corrected(id);
      for (const way of correction.ways) expect([way.cost, way.days]).not.toContain(null);
      await expectTable(ways(page).getByRole('table').first(), correction);
      const newFrame = wayOf(correction, 'new-frame').days!.value;
      expect(newFrame).toBeGreaterThanOrEqual(9);
      expect(wayOf(correction, 'splice-fewest').days!.value).toBeLessThan(newFrame);
    },
  );

  it('takes the comparison along on one page, with all ways on it', { timeout: 60_000 }, async () => {
    const id = await workshop.store();
    const page = await workshop.visit('phone');
    await open(page, id);
    const sheet = await openSheet(page, workshop, 'Comparison of the ways');
    expect(sheet.sizes.length).toBe(1);
    for (const { key } of (await corrected(id)).ways.filter((way) => way.possible))
      expect(sheet.says(wordsOf('wayShort', key)) || sheet.says(wordsOf('way', key)), key).toBe(true);
    expect(sheet.says('fewest welds')).toBe(true);
    // a letter means the same on the page
    const risks = ways(page).locator('dl.risks');
    const [letters, meanings] = [await risks.locator('dt').allInnerTexts(), await risks.locator('dd').allInnerTexts()];
    expect(letters.length).toBeGreaterThan(2);
    for (const [row, letter] of letters.entries())
      expect(sheet.says(`${letter}: ${meanings[row]!.slice(0, 24)}`), letter).toBe(true);
  });
});

/** The example with every one of its sizes read, so that one wrong reading shows. */
function measuredTwice(): Job {
  const job = landingStage();
  const cameBack = job.cameBack!;
  const more = [sizeRead('crown-rise', 29), sizeRead('width-at-middle', 980)];
  return { ...job, cameBack: { ...cameBack, readings: [...cameBack.readings, ...more] } };
}

describe('a reading that disagrees', () => {
  it('is told at its field and left out', { timeout: 60_000 }, async () => {
    const id = await workshop.store(measuredTwice());
    const page = await workshop.visit('phone');
    await open(page, id);
    const [part, pointer] = [stage(page, 'cameBack'), '/cameBack/readings/2/value'];
    const row = part.locator('[data-size="left-leg/0"]');
    await part.getByText('10 readings, 3 more than needed.').waitFor();
    expect(await part.getByText('does not agree').count()).toBe(0);

    await type(page, pointer, '751');
    await settled(page);
    const told = row.locator('.finding');
    expect(await told.innerText()).toContain('This reading does not agree with all the others.');
    expect(await told.innerText()).toContain('It was read as 751.0 mm');
    // what the others say of it
    const fitted = (await planOf(workshop, await stored(workshop, id))).correction!.fit.readings;
    const left = fitted.find(({ field: at }) => at === pointer || at === '/cameBack/readings/2')!;
    expect(left.disagrees).toBe(true);
    expect(Math.abs(left.fitted.value - 701)).toBeLessThan(2);
    expect(await row.innerText()).toContain(left.fitted.value.toFixed(1));

    await row.getByRole('button', { name: 'Leave this reading out' }).click();
    await settled(page);
    await told.waitFor({ state: 'detached' });
    expect(await (await field(page, pointer)).inputValue()).toBe('');
    await part.getByText('9 readings, 2 more than needed.').waitFor();
    expect((await corrected(id)).fit.readings.some(({ disagrees }) => disagrees)).toBe(false);
  });
});
