// A shop plans a frame of its own from nothing, prints it, comes back to it, and works on it with a second person.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import { choose, field, figure, open, openSheet, planOf, saved, seen, settled, stage, stored, type } from './person.ts';
import { workshopOfFile } from './workshop.ts';

const workshop = workshopOfFile();

const idOf = (page: Page): string => decodeURIComponent(page.url().split('#/job/')[1]!);
const hoop = (job: Job) => {
  if (job.frame.shape !== 'hoop') throw new Error('This job is no hoop.');
  return job.frame;
};

async function startOwn(page: Page, answers: Readonly<Record<string, string>>): Promise<string> {
  await page.getByRole('button', { name: 'Start your own', exact: true }).click();
  for (const [label, text] of Object.entries(answers)) {
    await page.locator('form').getByLabel(label, { exact: true }).fill(text);
  }
  const demo = page.url();
  await page.getByRole('button', { name: 'Make the plan', exact: true }).click();
  await page.waitForURL((url) => url.href !== demo);
  await page.locator('header').getByText('Job without a title', { exact: true }).waitFor();
  await saved(page);
  return idOf(page);
}

const OWN = {
  'outside diameter': '42.4',
  wall: '2',
  'die radius': '120',
  width: '37 1/2 in',
  legs: '650',
};

describe('a shop', () => {
  it('plans and prices its own frame from nothing, and finds it again', { timeout: 90_000 }, async () => {
    const page = await workshop.visit('desktop');
    await page.goto('/');
    await page.waitForURL(/#\/job\//);
    const id = await startOwn(page, OWN);
    const started = await stored(workshop, id);
    expect(started.tube).toMatchObject({ outsideDiameter: 42.4, wall: 2 });
    expect(started.machine.dies).toMatchObject([{ radius: 120, tubeDiameter: 42.4 }]);
    expect(hoop(started)).toMatchObject({ width: { value: 952.5 }, leftLeg: { value: 650 }, rightLeg: { value: 650 } });
    expect([started.invented, started.cameBack, started.units.length]).toEqual([false, null, 'mm']);
    expect(await page.locator('figure svg path.edge').count()).toBeGreaterThan(0);

    await type(page, '/title', 'Gate for the slip');
    await type(page, '/customer', 'a boat yard');
    await type(page, '/tube/outsideDiameter', '42.4');
    await type(page, '/tube/wall', '2 mm');
    await type(page, '/frame/width/value', '37 3/4 in');
    await stage(page, 'wanted').getByText('= 958.85 mm', { exact: true }).waitFor();

    await stage(page, 'wanted').getByRole('button', { name: 'Add an inner crossbar' }).click();
    await type(page, '/frame/innerCrossbars/0/fromFoot/value', '300');

    await choose(page, '/machine/springback/method', 'from our own test bends');
    const add = stage(page, 'what').getByRole('button', { name: 'Add a test bend' });
    await add.click();
    await add.click();
    for (const [index, [bent, measured]] of [
      ['45', '43.4'],
      ['90', '87.6'],
      ['120', '117.1'],
    ].entries()) {
      await type(page, `/machine/springback/bends/${String(index)}/commandedAngle`, bent!);
      await type(page, `/machine/springback/bends/${String(index)}/measuredAngle`, measured!);
    }

    await type(page, '/rates/tubes/0/perMetre/value', '18.50');
    await stage(page, 'price').getByRole('button', { name: 'Show all rates' }).click();
    await type(page, '/rates/gas/perCubicMetre/value', '11');
    for (const operation of ['bend', 'weld', 'finish']) {
      await type(page, `/rates/labour/${operation}/hour/value`, operation === 'finish' ? '' : '50');
      await type(page, `/rates/labour/${operation}/setUp/value`, '10');
      await type(page, `/rates/labour/${operation}/each/value`, '5');
    }
    await stage(page, 'cameBack').getByRole('button', { name: 'It came back otherwise' }).click();
    await type(page, '/cameBack/sizes/width-at-corners/0/value', '985');
    await type(page, '/cameBack/sizes/left-leg/0/value', '664');
    await saved(page);

    const job = await stored(workshop, id);
    expect(job.tube).toMatchObject({ outsideDiameter: 42.4, wall: 2 });
    expect(hoop(job).width.value).toBe(958.85);
    expect(hoop(job).innerCrossbars).toEqual([{ fromFoot: { value: 300, reference: 'centre' } }]);
    expect(job.machine.springback).toMatchObject({ method: 'test-bends', bends: [{}, {}, { measuredAngle: 117.1 }] });
    const plan = await planOf(workshop, job);
    const quote = plan.quote!;
    const option = quote.options.find(({ scope }) => scope === quote.scope)!;
    expect(option.open.map((index) => option.lines[index]!.key)).toEqual(['finish']);
    const price = stage(page, 'price');
    const finish = price.locator('summary').filter({ hasText: /^\s*grinding, polishing, cleaning/i });
    await price.locator('summary').filter({ hasText: 'Line by line' }).click();
    expect(await finish.innerText()).toMatch(/open/);
    expect(await finish.innerText()).not.toMatch(/\b0\.00\b/);
    const total = (option.total / 100).toLocaleString('en', { minimumFractionDigits: 2 });
    await seen(async () => (await price.locator('.total strong').innerText()).replace(/\s/g, ' ')).toBe(
      `at least EUR ${total}`,
    );
    await price.getByText('1 line still open: grinding, polishing, cleaning').waitFor();
    await price.getByText(`${String(option.examples)} lines rest on examples: no price to give`).waitFor();
    const hoopPlan = plan.frame!.members[0]!;
    expect(await figure(stage(page, 'wanted'), 'cut length')).toBe(`${hoopPlan.cutLength.value.toFixed(1)} mm`);

    const bend = await openSheet(page, workshop, 'Bend sheet');
    expect(bend.says('Gate for the slip')).toBe(true);
    expect(bend.says(`${hoopPlan.cutLength.value.toFixed(1)} mm`)).toBe(true);
    const offer = await openSheet(page, workshop, 'Quote');
    expect([offer.says(total), offer.says('a boat yard'), offer.says('example rates: not a price')]).toEqual([
      true,
      true,
      true,
    ]);

    await page.reload();
    await saved(page);
    for (const [pointer, text] of [
      ['/title', 'Gate for the slip'],
      ['/customer', 'a boat yard'],
      ['/tube/outsideDiameter', '42.4'],
      ['/tube/wall', '2 mm'],
      ['/frame/width/value', '37 3/4 in'],
      ['/frame/innerCrossbars/0/fromFoot/value', '300'],
      ['/machine/springback/bends/2/measuredAngle', '117.1'],
      ['/cameBack/readings/0/value', '985'],
      ['/cameBack/readings/1/value', '664'],
      ['/rates/tubes/0/perMetre/value', '18.50'],
      ['/rates/labour/finish/hour/value', ''],
    ] as const) {
      expect(await (await field(page, pointer)).inputValue(), pointer).toBe(text);
    }
    expect(await stored(workshop, id)).toEqual(job);
  });

  it('brings back an earlier revision, and goes back again', { timeout: 60_000 }, async () => {
    const id = await workshop.store({ ...newJob('hoop'), title: 'Gate' });
    const page = await workshop.visit('phone');
    await open(page, id);
    await type(page, '/frame/width/value', '910');
    await settled(page);
    await type(page, '/frame/width/value', '920');
    await settled(page);
    await page.getByRole('button', { name: 'Show earlier revisions' }).click();
    const rows = page.getByRole('listitem').filter({ has: page.getByRole('button', { name: 'Bring this one back' }) });
    expect((await rows.allInnerTexts()).map((text) => /Revision \d+/.exec(text)?.[0])).toEqual([
      'Revision 2',
      'Revision 1',
    ]);
    await rows.last().getByRole('button').click();
    await page.getByText('Revision 1 is shown. Undo goes back.').waitFor();
    await settled(page);
    expect(hoop(await stored(workshop, id)).width.value).toBe(900);
    expect(await (await field(page, '/frame/width/value')).inputValue()).toBe('900');
    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    expect(hoop(await stored(workshop, id)).width.value).toBe(920);
  });

  it('duplicates, searches, deletes and brings back', { timeout: 60_000 }, async () => {
    const mark = 'Ladder for a quay';
    const id = await workshop.store({ ...newJob('hoop'), title: mark, customer: 'a harbour office' });
    const page = await workshop.visit('phone');
    await open(page, id);
    await page.getByRole('button', { name: 'Duplicate', exact: true }).click();
    await page.locator('header').getByText(`${mark} (copy)`, { exact: true }).waitFor();
    expect(idOf(page)).not.toBe(id);
    expect({ ...(await stored(workshop, idOf(page))), title: mark }).toEqual(await stored(workshop, id));

    await page.getByRole('link', { name: 'All jobs', exact: true }).click();
    const titles = page.getByRole('listitem').locator('strong');
    const search = page.getByRole('searchbox');
    await search.fill('no such job');
    await page.getByText('No job fits this search.').waitFor();
    await search.fill('harbour');
    await seen(() => titles.allInnerTexts()).toEqual([`${mark} (copy)`, mark]);
    await page.getByRole('button', { name: `Delete: ${mark} (copy)`, exact: true }).click();
    await seen(() => titles.allInnerTexts()).toEqual([mark]);
    await page.getByRole('status').getByText(`Deleted: ${mark} (copy)`).waitFor();
    await page.getByRole('button', { name: 'Bring it back', exact: true }).click();
    await seen(async () => (await titles.allInnerTexts()).sort()).toEqual([mark, `${mark} (copy)`]);
    await titles.getByText(mark, { exact: true }).click();
    await page.locator('header').getByText(mark, { exact: true }).waitFor();
  });
});

describe('two tabs on one job', () => {
  async function both(): Promise<{ id: string; first: Page; second: Page }> {
    const id = await workshop.store(newJob('hoop'));
    const first = await workshop.visit('desktop');
    await open(first, id);
    const second = await workshop.tab(first);
    await open(second, id);
    await type(first, '/frame/width/value', '940');
    await settled(first);
    await type(second, '/frame/leftLeg/value', '650');
    await second.keyboard.press('Control+s');
    await second.getByRole('alert').getByText('Somebody else saved this job').waitFor();
    return { id, first, second };
  }

  it('are offered both, and neither loses anything', { timeout: 60_000 }, async () => {
    const { id, first, second } = await both();
    const said = await second.getByRole('alert').innerText();
    expect(said).toContain('You changed: left leg. They changed: width.');
    expect(hoop(await stored(workshop, id))).toMatchObject({ width: { value: 940 }, leftLeg: { value: 600 } });
    expect(await (await field(second, '/frame/leftLeg/value')).inputValue()).toBe('650');

    await second.getByRole('button', { name: 'Keep both; mine where both changed', exact: true }).click();
    await settled(second);
    await second.getByRole('alert').waitFor({ state: 'detached' });
    expect(hoop(await stored(workshop, id))).toMatchObject({ width: { value: 940 }, leftLeg: { value: 650 } });
    expect(await (await field(second, '/frame/width/value')).inputValue()).toBe('940');

    await type(first, '/frame/rightLeg/value', '610');
    await first.keyboard.press('Control+s');
    await first.getByRole('alert').getByText('They changed: left leg').waitFor();
    await first.getByRole('button', { name: 'Take theirs', exact: true }).click();
    await first.getByText('Theirs is shown. Undo brings yours back.').waitFor();
    expect(await (await field(first, '/frame/leftLeg/value')).inputValue()).toBe('650');
    await first.getByRole('button', { name: 'Undo' }).click();
    expect(await (await field(first, '/frame/rightLeg/value')).inputValue()).toBe('610');
  });

  it('keep an unsettled change over a reload', { timeout: 60_000 }, async () => {
    const { id, first, second } = await both();
    await type(first, '/frame/rightLeg/value', '615');
    await settled(first);
    await second.reload();
    await second.getByRole('alert').getByText('Somebody else saved this job').waitFor();
    expect(await (await field(second, '/frame/leftLeg/value')).inputValue()).toBe('650');
    await second.getByRole('button', { name: 'Keep mine', exact: true }).click();
    await settled(second);
    expect(hoop(await stored(workshop, id))).toMatchObject({ width: { value: 900 }, leftLeg: { value: 650 } });
    await second.getByRole('button', { name: 'Undo' }).click();
    await settled(second);
  });
});
