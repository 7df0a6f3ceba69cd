// Before anything is bent: an owner sees what a misread sketch would cost, a bender how each tube gets by the machine.
import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import { expectSaid, open, planOf, seen, settled, spoken, stage, stored } from './person.ts';
import { SCREENS, type ScreenName, workshopOfFile } from './workshop.ts';

const workshop = workshopOfFile();

const ordered = (): Job => ({ ...landingStage(), cameBack: null });

/** A stair of a tube whose first leg hangs down where the bed is: it strikes from its start and gets by from its finish. */
function strikingRun(): Job {
  const job = newJob('run');
  const at = (x: number, y: number, z: number) => ({ x, y, z, radius: null });
  const points = [at(0, 0, 0), at(0, 0, 700), at(600, 0, 700), at(600, 400, 700), at(1000, 400, 700)];
  const surroundings = { ...job.machine.surroundings, bedBelow: 500 };
  return { ...job, machine: { ...job.machine, surroundings }, frame: { shape: 'run', points } };
}

describe.each(Object.keys(SCREENS) as ScreenName[])('an owner at a %s', (screen) => {
  it('sees what a misread sketch would come to, and what that would cost', { timeout: 60_000 }, async () => {
    const id = await workshop.store(ordered());
    const page = await workshop.visit(screen);
    await open(page, id);
    const job = await stored(workshop, id);
    const check = (await planOf(workshop, job)).frame!.readingCheck!;
    const row = check.rows.find(
      ({ slip, fields }) => slip === 'outside-read-as-centre' && fields.join() === '/frame/width',
    )!;

    await page.getByText('If the sketch is read another way').click();
    const name = 'width: The outside size was read as centre to centre.';
    const line = stage(page, 'wanted').getByRole('row').filter({ hasText: name });
    const cells = line.getByRole('cell');
    expect(await cells.count()).toBe(check.dimensions.length);
    for (const [place, gets] of row.gets.entries()) expectSaid(await spoken(cells.nth(place)), gets!);
    expect(row.off[0]).toBeCloseTo(38.1, 6);
    expect(await cells.first().innerText()).toContain('+38.1');

    await line.getByRole('button', { name: 'What would that cost?' }).click();
    const cameBack = { tapeAccuracy: 1, angleAccuracy: 0.2, readings: row.readings! };
    const { ways, recommended } = (await planOf(workshop, { ...job, cameBack })).correction!;
    const wayRow = (words: string) => stage(page, 'wanted').getByRole('row').filter({ hasText: words });
    const best = ways.find(({ key }) => key === recommended)!;
    const said = wayRow('(recommended)').last();
    await said.waitFor();
    expectSaid(await spoken(said.getByRole('cell').nth(1)), best.fixingMisfit);
    expect(await said.getByRole('cell').first().innerText()).toBe((best.costAtLeast.value / 100).toFixed(2));
    // looking is not changing
    expect((await stored(workshop, id)).cameBack).toBeNull();
  });
});

describe('a bender', () => {
  it('marks a tube from its other end, and every mark follows', { timeout: 60_000 }, async () => {
    const id = await workshop.store(ordered());
    const page = await workshop.visit('desktop');
    await open(page, id);
    await page.getByLabel('marked and bent from').selectOption({ label: 'from its finish' });
    await settled(page);
    const job = await stored(workshop, id);
    expect(job.bending.members).toEqual([{ member: 'hoop', from: 'finish', side: 'usual', closingStraight: null }]);
    const { bends, making } = (await planOf(workshop, job)).frame!.members[0]!;
    expect(making.from).toBe('finish');
    await stage(page, 'wanted').getByText('Bent from its finish').waitFor();
    const first = stage(page, 'wanted').getByRole('table', { name: /hoop/ }).getByRole('row').nth(1);
    expectSaid(await spoken(first.getByRole('cell').nth(1)), bends[0]!.startMark);
  });

  it('is told that a leg strikes the bed, and takes the way that gets by', { timeout: 60_000 }, async () => {
    const id = await workshop.store(strikingRun());
    const page = await workshop.visit('phone');
    await open(page, id);
    const strikes = page.getByText(/strikes: the bed or the floor/);
    await seen(() => strikes.count()).toBeGreaterThan(0);
    const offered = page.locator('.finding', { hasText: 'but it can in another way' }).getByRole('button');
    await offered.click();
    await settled(page);
    await seen(() => strikes.count()).toBe(0);
    const job = await stored(workshop, id);
    expect(job.bending.members).toMatchObject([{ member: 'run', from: 'finish' }]);
    const [way] = (await planOf(workshop, job)).frame!.members[0]!.making.ways;
    expect(way).toMatchObject({ key: 'as-planned', possible: true });
  });

  it('closes a ring in another straight than the longest', { timeout: 60_000 }, async () => {
    const id = await workshop.store(newJob('ring'));
    const page = await workshop.visit('desktop');
    await open(page, id);
    const byRule = (await planOf(workshop, await stored(workshop, id))).frame!.members[0]!.making.closing!;
    expect(byRule).toMatchObject({ straight: 2, byRule: true });
    await page.getByLabel('closing weld in').selectOption({ label: 'straight 3' });
    await settled(page);
    const asked = (await planOf(workshop, await stored(workshop, id))).frame!.members[0]!.making.closing!;
    expect(asked).toMatchObject({ straight: 3, byRule: false });
    expect(asked.length.value).toBeLessThan(byRule.length.value);
  });
});
