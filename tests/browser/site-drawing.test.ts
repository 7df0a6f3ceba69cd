// The drawing in its place beside the card while legs are typed: the site, what is typed thick, and back to the frame.
import { describe, expect, it } from 'vitest';
import { field, open, seen, settled, stage, type } from './person.ts';
import { workshopOfFile } from './workshop.ts';

const workshop = workshopOfFile();

describe('the drawing of the site', () => {
  it('takes the place of the frame while its stage is read, and leads to what is touched', async () => {
    const page = await workshop.visit('desktop');
    const id = await workshop.store();
    await open(page, id);
    const drawing = page.getByRole('region', { name: 'Drawing', exact: true });
    const site = drawing.getByRole('group', { name: /^Drawing of the site/ });
    const read = (key: string) =>
      stage(page, key).evaluate((section) => {
        section.scrollIntoView();
      });
    const thick = () =>
      drawing.locator('[data-site].thick').evaluateAll((all) => all.map((one) => one.getAttribute('data-site')));

    await drawing.getByRole('group', { name: 'Drawing of the frame' }).waitFor();
    await read('level');
    await site.waitFor();
    expect(
      await stage(page, 'level')
        .getByRole('group', { name: /^Drawing of the site/ })
        .count(),
    ).toBe(0);
    const told = await site.getAttribute('aria-label');
    expect(told).toContain('Legs: starboard leg, port leg');
    expect(told).toMatch(/Least room: gap \d+\.\d mm to pile/);

    // what is typed is thick
    await (await field(page, '/site/legs/1/foot/at/z')).focus();
    await seen(thick).toEqual(['/site/legs/1']);
    await type(page, '/site/legs/1/foot/at/z', '-640');
    await settled(page);
    expect(await site.isVisible()).toBe(true);

    // a touch leads to the block of what was touched, with the keyboard at its fields
    const atFields = () =>
      page.evaluate(
        () =>
          document.activeElement?.closest('details')?.querySelector('[data-field]')?.getAttribute('data-field') ?? '',
      );
    for (const place of ['legs/0', 'things/2', 'points/1']) {
      await drawing.locator(`[data-site="/site/${place}"]`).press('Enter');
      await seen(atFields).toBe(`/site/${place}/name`);
      await seen(thick).toEqual([`/site/${place}`]);
    }

    // elsewhere the frame, unless a person holds on to the site
    await read('wanted');
    await drawing.getByRole('group', { name: 'Drawing of the frame' }).waitFor();
    await drawing.getByRole('button', { name: 'site', exact: true }).click();
    await drawing.getByRole('button', { name: 'from above' }).click();
    await drawing.getByRole('group', { name: /^Drawing of the site, from above/ }).waitFor();
    await read('level');
    await drawing.getByRole('button', { name: 'frame', exact: true }).click();
    await drawing.getByRole('group', { name: 'Drawing of the frame' }).waitFor();
    await drawing.getByRole('button', { name: 'as the stage' }).click();
    await site.waitFor();
  });
});
