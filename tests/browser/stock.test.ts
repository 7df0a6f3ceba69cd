// A shop keeps what lies on its rack, lays jobs out on it, takes the bars and puts them back.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import type { StockRow, Taking } from '../../server/job/stock-row.ts';
import { field, open, seen, settled, stage, stored, type } from './person.ts';
import { type ScreenName, workshopOfFile } from './workshop.ts';

const workshop = workshopOfFile();

const noSidewaysScroll = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth);

async function asked<Body>(path: string): Promise<Body> {
  const answer = await fetch(`${workshop.address}${path}`);
  return (await answer.json()) as Body;
}

const rows = (): Promise<readonly StockRow[]> => asked('/api/stock');
const rowsOfWall = async (wall: number) =>
  (await rows())
    .filter(({ document }) => document.wall === wall)
    .map(({ document: { count, remnant } }) => ({ count, remnant }));

/** A hoop of a wall of its own, so that one test does not cut up the bars of another. */
const hoopOf = (title: string, wall: number): Job => {
  const job = newJob('hoop');
  return { ...job, title, tube: { ...job.tube, wall } };
};

const button = (page: Page, name: string | RegExp) =>
  page.locator('main').getByRole('button', { name, exact: typeof name === 'string' });
const said = (page: Page, text: string | RegExp) => page.locator('main').getByText(text).first().waitFor();
const typed = (page: Page, name: string) => page.locator('form').getByRole('textbox', { name, exact: true });

/** Four bars of six metres for the size that is worked on. */
async function putBarsOnTheList(page: Page, name: string): Promise<void> {
  await button(page, 'Add bars').click();
  await typed(page, 'name or place').fill(name);
  await typed(page, 'length').fill('6 m');
  await typed(page, 'how many').fill('-4');
  await typed(page, 'price of one bar').fill('60');
  await button(page, 'Put on the list').click();
  await said(page, 'A whole number, 0 or more.');
  expect(await typed(page, 'how many').inputValue()).toBe('-4');
  await typed(page, 'length').fill('6000');
  await typed(page, 'how many').fill('4');
  await button(page, 'Put on the list').click();
  await button(page, `Change: ${name}, 6000.0 mm`).waitFor();
}

describe.each<[ScreenName, number]>([
  ['desktop', 1.7],
  ['phone', 1.8],
])('a shop at the %s', (screen, wall) => {
  it('lays a frame out on its rack, takes the bars and puts them back', { timeout: 120_000 }, async () => {
    const page = await workshop.visit(screen);
    const id = await workshop.store(hoopOf(`Hoop by the ${screen}`, wall));
    await open(page, id);
    await type(page, '/stock/saw/kerf', '2.5');
    await stage(page, 'stock').getByText('Bars and remnants of the shop', { exact: true }).click();
    await putBarsOnTheList(page, `Rack by the ${screen}`);
    await settled(page);

    await button(page, 'Lay out on stock').click();
    await button(page, 'Keep these bars').click();
    await said(page, 'These bars are kept with the job: 1 from stock, 0 to be bought.');
    await said(page, '1 bar as laid out: proven the cheapest.');
    await button(page, 'Take them from stock').click();
    await said(page, /^Taken from stock: number \d+ in the book/);
    await settled(page);
    const [taking] = await asked<readonly Taking[]>('/api/stock/takings');
    const kept = (await stored(workshop, id)).stock;
    expect([kept.saw.kerf, kept.layout?.taken, taking?.jobId]).toEqual([2.5, taking?.number, id]);
    expect(await rowsOfWall(wall)).toEqual([
      { count: 3, remnant: false },
      { count: 1, remnant: true },
    ]);

    // undo takes back what the job says, never what the book says
    await page.getByRole('button', { name: 'Undo' }).click();
    await button(page, 'Mark them as taken').click();
    await said(page, /^Taken from stock/);
    await button(page, 'Put back').click();
    await button(page, 'Take them from stock').waitFor();
    expect(await rowsOfWall(wall)).toEqual([{ count: 4, remnant: false }]);
    await settled(page);
    expect((await stored(workshop, id)).stock.layout?.taken).toBeNull();

    // and behind the keeping of bars the book still says what was taken
    await button(page, 'Take them from stock').click();
    await said(page, /^Taken from stock/);
    await settled(page);
    const [again] = await asked<readonly Taking[]>('/api/stock/takings');
    const forgotten = `Number ${String(again?.number)} in the book was taken for this job. The job does not keep these bars any more.`;
    const undoAll = async () => {
      while ((await button(page, 'Lay out on stock').count()) > 0 && (await page.getByText(forgotten).count()) === 0) {
        await page.getByRole('button', { name: 'Undo' }).click();
        await settled(page);
      }
    };
    await undoAll();
    await button(page, 'Keep these bars again').click();
    await said(page, /^Taken from stock/);
    await settled(page);
    expect((await stored(workshop, id)).stock.layout?.taken).toBe(again?.number);
    await undoAll();
    await button(page, 'Put back').click();
    await page.getByText(forgotten).waitFor({ state: 'detached' });
    expect(await rowsOfWall(wall)).toEqual([{ count: 4, remnant: false }]);
    expect(await noSidewaysScroll(page)).toBe(true);
  });

  it('keeps a row that is half typed until it is saved or left', { timeout: 90_000 }, async () => {
    const page = await workshop.visit(screen);
    const own = wall + 0.03;
    const id = await workshop.store(hoopOf(`Typed by the ${screen}`, own));
    await open(page, id);
    await stage(page, 'stock').getByText('Bars and remnants of the shop', { exact: true }).click();
    await button(page, 'Add a remnant').click();
    await typed(page, 'name or place').fill('Half typed');
    await typed(page, 'length').fill('12');
    await page.reload();
    await seen(() => typed(page, 'length').inputValue()).toBe('12');
    expect(await typed(page, 'name or place').inputValue()).toBe('Half typed');
    expect(await page.getByRole('checkbox', { name: 'a remnant (an offcut that was kept)' }).isChecked()).toBe(true);
    await typed(page, 'length').fill('1200');
    await button(page, 'Put on the list').click();
    const change = button(page, 'Change: Half typed, 1200.0 mm');
    await change.click();
    await typed(page, 'how many').fill('7');
    await page.reload();
    await seen(() => typed(page, 'how many').inputValue()).toBe('7');
    // what somebody else saved meanwhile is not written over by what was typed before it
    const row = (await rows()).find(({ document }) => document.wall === own)!;
    await fetch(`${workshop.address}/api/stock/${row.id}`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ document: { ...row.document, count: 2 }, basedOn: row.revision }),
    });
    await page.reload();
    await seen(() => typed(page, 'how many').inputValue()).toBe('7');
    await button(page, 'Save').click();
    await said(page, /^Somebody else changed this row/);
    expect(await rowsOfWall(own)).toEqual([{ count: 2, remnant: true }]);
    await button(page, 'Leave it').click();
    await page.reload();
    await stage(page, 'stock').getByText('Bars and remnants of the shop', { exact: true }).click();
    await change.waitFor();
    expect(await page.locator('form').getByRole('textbox', { name: 'how many', exact: true }).count()).toBe(0);
    expect(await rowsOfWall(own)).toEqual([{ count: 2, remnant: true }]);
  });

  it('joins a member that is longer than any bar', { timeout: 90_000 }, async () => {
    const page = await workshop.visit(screen);
    const job = hoopOf(`Long hoop by the ${screen}`, wall);
    const tubes = job.rates.tubes.map((tube) => ({ ...tube, barLength: 1500 }));
    const id = await workshop.store({ ...job, rates: { ...job.rates, tubes } });
    await open(page, id);
    await said(page, /This piece is longer than any bar/);
    await button(page, /^Set joints between bars to hoop: /).click();
    await settled(page);
    const [joint] = (await stored(workshop, id)).stock.joints;
    expect(joint?.member).toBe('hoop');
    await seen(() => stage(page, 'stock').getByText('hoop 1 of 2').count()).toBeGreaterThan(0);
    const station = await field(page, '/stock/joints/0/station');
    expect(Number.parseFloat(await station.inputValue())).toBeCloseTo(joint!.station, 2);
    expect(await noSidewaysScroll(page)).toBe(true);
  });

  it('cuts two jobs from the same bars without opening one', { timeout: 120_000 }, async () => {
    const page = await workshop.visit(screen);
    const own = wall + 0.05;
    const titles = [`First by the ${screen}`, `Second by the ${screen}`] as const;
    const both = await Promise.all(titles.map((title) => workshop.store(hoopOf(title, own))));
    const takenAs = ({ stock }: Job) => stock.layout?.taken;
    await page.goto('/#/stock');
    await button(page, 'Add bars').click();
    await typed(page, 'outside diameter').fill('38.1');
    await typed(page, 'wall').fill(String(own));
    await page.getByRole('combobox', { name: 'grade', exact: true }).fill('316L');
    await typed(page, 'length').fill('6000');
    await typed(page, 'price of one bar').fill('50');
    await button(page, 'Put on the list').click();
    await button(page, 'Change: without a name, 6000.0 mm').first().waitFor();

    for (const title of titles) await page.getByRole('checkbox', { name: title }).check();
    await button(page, 'Lay out on stock').click();
    await said(page, 'What each job pays of the bars, by the length that is cut for it');
    for (const title of titles) await seen(() => page.getByText(`hoop for ${title}`).count()).toBeGreaterThan(0);
    await button(page, 'Take them from stock for all 2 jobs').click();
    const back = page.getByRole('button', { name: new RegExp(`^Put back: Number \\d+, ${titles[0]} and 1 more$`) });
    await back.waitFor();
    expect((await rowsOfWall(own)).filter(({ remnant }) => !remnant)).toEqual([{ count: 0, remnant: false }]);
    const [taking] = await asked<readonly Taking[]>('/api/stock/takings');
    await seen(async () => (await Promise.all(both.map((id) => stored(workshop, id)))).map(takenAs)).toEqual([
      taking?.number,
      taking?.number,
    ]);
    await back.click();
    await back.waitFor({ state: 'detached' });
    expect(await rowsOfWall(own)).toEqual([{ count: 1, remnant: false }]);
    expect(await noSidewaysScroll(page)).toBe(true);
  });

  it('keeps bars in every job that is cut from them, and takes all of them at once', { timeout: 120_000 }, async () => {
    const page = await workshop.visit(screen);
    const own = wall + 0.02;
    const other = `Other by the ${screen}`;
    const otherId = await workshop.store(hoopOf(other, own));
    const id = await workshop.store(hoopOf(`Own by the ${screen}`, own));
    await open(page, id);
    await stage(page, 'stock').getByText('Bars and remnants of the shop', { exact: true }).click();
    await putBarsOnTheList(page, `Shared by the ${screen}`);
    await page.getByText('Cut other jobs from the same bars', { exact: true }).first().click();
    await page.getByRole('checkbox', { name: other }).check();
    await button(page, 'Lay out on stock').click();
    await button(page, 'Keep them in all 2 jobs').click();
    await said(page, 'Each of the 2 jobs keeps the bars that it is cut from.');
    await settled(page);
    const layoutOf = async (of: string) => (await stored(workshop, of)).stock.layout;
    expect((await layoutOf(otherId))!.bars.flatMap(({ pieces }) => pieces.map(({ job }) => job))).toContain('');
    await said(page, `Other jobs are cut from the same bars: ${other}. All bars of these jobs are taken at once.`);
    await button(page, 'Take them from stock').click();
    await said(page, /^Taken from stock/);
    await settled(page);
    await seen(async () => (await layoutOf(otherId))!.taken).toBe((await layoutOf(id))!.taken);
    expect((await layoutOf(id))!.taken).toBeGreaterThan(0);
    expect(await noSidewaysScroll(page)).toBe(true);
  });
});
