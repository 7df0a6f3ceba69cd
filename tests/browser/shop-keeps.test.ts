// A shop keeps its machine, its own size and its own grade, and finds them in the next job; its test bends make a line.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { choose, field, figure, open, planOf, seen, settled, stage, stored, type } from './person.ts';
import { type ScreenName, workshopOfFile } from './workshop.ts';

const workshop = workshopOfFile();

const button = (page: Page, name: string) => stage(page, 'what').getByRole('button', { name, exact: true });
const newHoop = (title: string): Promise<string> => workshop.store({ ...newJob('hoop'), title });
const said = (page: Page, text: string | RegExp) => stage(page, 'what').getByText(text).first().waitFor();
const noSidewaysScroll = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth);

describe.each<ScreenName>(['desktop', 'phone'])('a shop at the %s', (screen) => {
  it('keeps a machine with its dies and chooses it in another job', { timeout: 90_000 }, async () => {
    const name = `Bender by the ${screen}`;
    const page = await workshop.visit(screen);
    await open(page, await newHoop('First'));
    expect(await button(page, 'Keep this machine with the shop').isDisabled()).toBe(true);
    await type(page, '/machine/name', name);
    await type(page, '/machine/dies/0/gripLength', '90');
    await button(page, 'Add a die').click();
    await type(page, '/machine/dies/1/tubeDiameter', '42.4');
    await type(page, '/machine/dies/1/radius', '4 3/4 in');
    await type(page, '/machine/dies/1/name', 'Old block');
    await choose(page, '/machine/dies/1/tooling', 'plug mandrel');
    await type(page, '/machine/surroundings/bedBelow', '800');
    await button(page, 'Keep this machine with the shop').click();
    await said(page, `Kept with the shop as "${name}"`);

    const second = await newHoop('Second');
    await open(page, second);
    await stage(page, 'what').getByLabel("One of the shop's machines", { exact: true }).selectOption({ label: name });
    await settled(page);
    const { machine } = await stored(workshop, second);
    expect(machine).toMatchObject({ name, die: 0, surroundings: { bedBelow: 800 } });
    expect(machine.dies).toMatchObject([
      { gripLength: 90, tubeDiameter: 38.1 },
      { name: 'Old block', tubeDiameter: 42.4, radius: 120.65, tooling: 'plug' },
    ]);

    await type(page, '/tube/outsideDiameter', '42.4');
    await settled(page);
    await button(page, 'Set die in use to Old block, for 42.4 mm, radius 120.65 mm').click();
    await settled(page);
    expect((await stored(workshop, second)).machine.die).toBe(1);
    expect(
      await stage(page, 'what')
        .getByRole('radio', { name: /^Old block/ })
        .isChecked(),
    ).toBe(true);
    expect(await noSidewaysScroll(page)).toBe(true);
  });

  it('keeps a size and a grade of its own and chooses both', { timeout: 90_000 }, async () => {
    const page = await workshop.visit(screen);
    await open(page, await newHoop('First'));
    const [size, grade] = [`Rail by the ${screen}`, `Coil by the ${screen}`];
    const wall = screen === 'phone' ? '2.1' : '2.2';
    await type(page, '/tube/outsideDiameter', '40.5');
    await type(page, '/tube/wall', wall);
    await choose(page, '/tube/tolerance/by', 'own limits');
    await type(page, '/tube/tolerance/wall', '0.15');
    await settled(page);
    expect(await figure(stage(page, 'what'), 'wall at least')).toBe(`${(Number(wall) - 0.15).toFixed(2)} mm`);
    await stage(page, 'what').getByLabel('Name of this size in the shop', { exact: true }).fill(size);
    await button(page, 'Keep this size with the shop').click();
    await said(page, `Kept with the shop as "${size}"`);
    await choose(page, '/tube/grade/key', 'own grade');
    await type(page, '/tube/grade/name', grade);
    await type(page, '/tube/grade/hardeningExponent', '0.41');
    await button(page, 'Keep this grade with the shop').click();
    await said(page, `Kept with the shop as "${grade}"`);

    const second = await newHoop('Second');
    await open(page, second);
    await stage(page, 'what').getByLabel('Usual sizes', { exact: true }).selectOption({ label: size });
    await choose(page, '/tube/grade/key', `${grade}, the shop’s own`);
    await settled(page);
    expect((await stored(workshop, second)).tube).toMatchObject({
      outsideDiameter: 40.5,
      wall: Number(wall),
      tolerance: { by: 'own', wall: 0.15 },
      grade: { from: 'own', name: grade, hardeningExponent: 0.41 },
    });
    expect(await noSidewaysScroll(page)).toBe(true);
  });

  it('sees the line through its test bends', { timeout: 90_000 }, async () => {
    const page = await workshop.visit(screen);
    const id = await newHoop('Tests');
    await open(page, id);
    await type(page, '/tube/heat', 'H 7');
    await choose(page, '/machine/springback/method', 'from our own test bends');
    for (const [index, [bent, measured]] of [
      ['45', '43.4'],
      ['90', '87.6'],
      ['120', '117.0'],
    ].entries()) {
      const at = `/machine/springback/bends/${String(index)}`;
      if (index > 0) await button(page, 'Add a test bend').click();
      await type(page, `${at}/commandedAngle`, bent!);
      await type(page, `${at}/measuredAngle`, measured!);
      expect(await (await field(page, `${at}/heat`)).inputValue()).toBe('H 7');
      expect(await (await field(page, `${at}/dieRadius`)).inputValue()).toBe('114.3');
    }
    await settled(page);
    const { springback } = await planOf(workshop, await stored(workshop, id));
    const fit = springback!.fit!;
    const picture = stage(page, 'what').getByRole('img', { name: /^Springback of 3 test bends/ });
    expect(await picture.locator('circle').count()).toBe(3);
    expect(await picture.getAttribute('aria-label')).toContain('from 45° to 120°');
    expect(await picture.locator('text').allTextContents()).toEqual(
      expect.arrayContaining(['0', '120', 'springback °']),
    );
    expect(await figure(stage(page, 'what'), 'b, share of the angle')).toBe(fit.share.value.toFixed(3));
    await said(page, '3 of 3 test bends are of this tube and die.');
    await said(page, 'Only test bends of heat H 7 are used.');

    await type(page, '/machine/springback/bends/2/tubeDiameter', '42.4');
    await settled(page);
    await said(page, '2 of 3 test bends are of this tube and die.');
    await seen(() => picture.count()).toBe(0);
    expect(await noSidewaysScroll(page)).toBe(true);
  });
});

describe('what the shop keeps', () => {
  it('is updated, renamed, deleted and brought back', { timeout: 90_000 }, async () => {
    const page = await workshop.visit('desktop');
    const id = await newHoop('Third');
    await open(page, id);
    await type(page, '/machine/name', 'Mandrel bender');
    await button(page, 'Keep this machine with the shop').click();
    await type(page, '/machine/trimAllowance', '40');
    await said(page, 'This job differs in: trim allowance.');
    await button(page, "Take the shop's: Mandrel bender").click();
    await said(page, 'Kept with the shop as "Mandrel bender"');
    await page.getByRole('button', { name: 'Undo' }).click();
    await button(page, "Update the shop's machine").click();
    await said(page, 'Kept with the shop as "Mandrel bender"');

    await button(page, 'Rename in the shop: Mandrel bender').click();
    await stage(page, 'what').getByLabel('New name', { exact: true }).fill('Mandrel bender, left');
    await page.keyboard.press('Enter');
    await said(page, 'Kept with the shop as "Mandrel bender, left"');
    await settled(page);
    expect((await stored(workshop, id)).machine.name).toBe('Mandrel bender, left');

    await button(page, 'Delete from the shop: Mandrel bender, left').click();
    await said(page, 'Deleted from the shop: Mandrel bender, left.');
    await button(page, 'Bring it back: Mandrel bender, left').click();
    await said(page, 'Kept with the shop as "Mandrel bender, left"');
  });

  it('loses nothing where two people save it at once', { timeout: 90_000 }, async () => {
    const job = { ...newJob('hoop'), machine: { ...newJob('hoop').machine, name: 'Shared bender' } };
    const first = await workshop.visit('desktop');
    await open(first, await workshop.store(job));
    await button(first, 'Keep this machine with the shop').click();
    await said(first, 'Kept with the shop as "Shared bender"');
    const second = await workshop.visit('desktop');
    await open(second, await workshop.store(job));
    await said(second, 'Kept with the shop as "Shared bender"');

    await type(first, '/machine/trimAllowance', '25');
    await button(first, "Update the shop's machine").click();
    await said(first, 'Kept with the shop as "Shared bender"');
    await type(second, '/machine/leastStraight', '80');
    await button(second, "Update the shop's machine").click();
    await said(second, /Somebody else saved "Shared bender" .+ least straight between bends, trim allowance\./);
    await button(second, "Take the shop's: Shared bender").click();
    await said(second, 'Kept with the shop as "Shared bender"');
    expect(await (await field(second, '/machine/trimAllowance')).inputValue()).toBe('25');
    await second.getByRole('button', { name: 'Undo' }).click();
    expect(await (await field(second, '/machine/leastStraight')).inputValue()).toBe('80');
  });

  it('says which name is taken', { timeout: 60_000 }, async () => {
    const page = await workshop.visit('phone');
    await open(page, await newHoop('Names'));
    for (const name of ['Roller', 'Press']) {
      await type(page, '/machine/name', name);
      await button(page, 'Keep this machine with the shop').click();
      await said(page, `Kept with the shop as "${name}"`);
    }
    await button(page, 'Rename in the shop: Press').click();
    await stage(page, 'what').getByLabel('New name', { exact: true }).fill('roller');
    await page.keyboard.press('Enter');
    await page.getByRole('alert').getByText('The shop already keeps a machine named "Roller".').waitFor();
  });
});
