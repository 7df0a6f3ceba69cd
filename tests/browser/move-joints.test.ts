// A welder moves a joint on the drawing, by a finger or a key, sees everything follow, and cuts to what the plan says.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { formatFigure } from '../../server/language/quantity-format.ts';
import type { CorrectionPlan } from '../../server/plan/correction.ts';
import { choose, field, open, openSheet, planOf, seen, settled, stage, stored, type } from './person.ts';
import { workshopOfFile } from './workshop.ts';

const workshop = workshopOfFile();

/** The one joint of the inner crossbar: a straight tube, so that across the drawing is along the tube. */
const handle = (page: Page) => page.locator('figure svg [data-joint="crossbar 1/0"]');
const stands = async (page: Page): Promise<number> => Number(await handle(page).getAttribute('aria-valuenow'));

async function corrected(id: string): Promise<CorrectionPlan> {
  return (await planOf(workshop, await stored(workshop, id))).correction!;
}

/** Where the joints of the way shown stand, by member [mm]. */
async function places(id: string): Promise<Readonly<Record<string, number>>> {
  const { ways, chosen } = await corrected(id);
  const joints = ways.find(({ key }) => key === chosen)?.joints ?? [];
  return Object.fromEntries(joints.map(({ member, place }) => [member, place]));
}

async function openFrame(screen: 'desktop' | 'phone'): Promise<{ page: Page; id: string }> {
  const id = await workshop.store();
  const page = await workshop.visit(screen);
  await open(page, id);
  return { page, id };
}

describe('a joint on the drawing', () => {
  it('is drawn along its tube, everything follows, and one undo puts it back', { timeout: 60_000 }, async () => {
    const { page, id } = await openFrame('desktop');
    const [job, before] = [await stored(workshop, id), await places(id)];
    const box = (await handle(page).locator('circle.touch').boundingBox())!;
    expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(43.5);
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (const by of [10, 20, 30, 40]) await page.mouse.move(x + by, y + 2);
    await page.mouse.up();
    await settled(page);

    const { closing } = await stored(workshop, id);
    expect(closing.way).toBe('splice-own');
    const now = Object.fromEntries(closing.joints.map(({ member, station }) => [member, station]));
    expect(Math.abs(now['hoop']! - before['hoop']!)).toBeLessThan(0.06);
    expect(Math.abs(now['crossbar 1']! - before['crossbar 1']!)).toBeGreaterThan(20);
    expect(await places(id)).toMatchObject({ 'crossbar 1': now['crossbar 1']! });
    expect(await stands(page)).toBeCloseTo(now['crossbar 1']!, 1);
    expect(await stage(page, 'ways').getByRole('radio', { name: 'splice with your own joints' }).isChecked()).toBe(
      true,
    );
    const at = closing.joints.findIndex(({ member }) => member === 'crossbar 1');
    const typed = await (await field(page, `/closing/joints/${String(at)}/station`)).inputValue();
    expect(Number(typed)).toBeCloseTo(now['crossbar 1']!, 1);

    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    await seen(() => stored(workshop, id)).toEqual(job);
    expect(await stands(page)).toBeCloseTo(before['crossbar 1']!, 1);
  });

  it('is moved by the keys on a phone, and the sheet has its new distances', { timeout: 60_000 }, async () => {
    const { page, id } = await openFrame('phone');
    const [job, before] = [await stored(workshop, id), await places(id)];
    const marks = async (): Promise<string[]> => {
      const { ways, chosen } = await corrected(id);
      const { joints } = ways.find(({ key }) => key === chosen)!;
      return joints.flatMap(({ faceA, faceB }) =>
        [faceA, faceB].flatMap((face) =>
          face.marks.generators.map(({ distance }) => formatFigure(distance, job.units)),
        ),
      );
    };
    const old = await marks();
    await handle(page).focus();
    for (const key of ['ArrowRight', 'ArrowRight', 'Shift+ArrowRight', 'ArrowLeft']) await page.keyboard.press(key);
    await settled(page);
    expect((await places(id))['crossbar 1']).toBeCloseTo(before['crossbar 1']! + 11, 1);

    const sheet = await openSheet(page, workshop, 'Cut and purge sheet');
    const fresh = await marks();
    expect(fresh.filter((text) => !old.includes(text)).length).toBeGreaterThan(0);
    for (const text of fresh) expect(sheet.says(text), text).toBe(true);

    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    await seen(() => stored(workshop, id)).toEqual(job);
  });
});

describe('a stretch that must not be cut', () => {
  it('sends the joint elsewhere', { timeout: 60_000 }, async () => {
    const { page, id } = await openFrame('desktop');
    const inTheWay = (await places(id))['crossbar 1']!;
    const [from, to] = [Math.round(inTheWay - 60), Math.round(inTheWay + 60)];
    await stage(page, 'ways').locator('summary', { hasText: 'Cut and close' }).click();
    await stage(page, 'ways').getByRole('button', { name: 'Add a stretch' }).click();
    await choose(page, '/closing/barred/0/member', 'crossbar 1');
    await type(page, '/closing/barred/0/from', String(from));
    await type(page, '/closing/barred/0/to', String(to));
    await settled(page);
    const { ways } = await corrected(id);
    const stations = ways
      .filter(({ possible }) => possible)
      .flatMap(({ joints }) => joints.filter(({ member }) => member === 'crossbar 1').map(({ place }) => place));
    expect(stations.length).toBeGreaterThan(0);
    for (const station of stations) expect(station <= from || station >= to, String(station)).toBe(true);
    await handle(page).first().waitFor();
    const shown = await stands(page);
    expect(shown <= from || shown >= to).toBe(true);
  });
});
