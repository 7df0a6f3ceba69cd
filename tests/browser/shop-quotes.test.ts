// A shop quotes a frame that it never saw: its sizes, its own rates, the total, the quote in the customer's hands.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import type { IssuedQuote } from '../../web/api/client.ts';
import { field, open, planOf, saved, seen, settled, stage, stored, type } from './person.ts';
import { readSheet } from './sheet-text.ts';
import { workshopOfFile } from './workshop.ts';

const workshop = workshopOfFile();

const price = (page: Page) => stage(page, 'price');
const big = async (page: Page): Promise<string> =>
  (await price(page).locator('.total strong').innerText()).replace(/\s/g, ' ');
const fold = (page: Page, name: string) => price(page).locator('summary').filter({ hasText: name });

/** The numbers that a hoop without a weld is priced by. */
const OWN_RATES = {
  '/rates/tubes/0/perMetre/value': '18.50',
  '/rates/waste/value': '8',
  '/rates/labour/bend/hour/value': '58',
  '/rates/labour/bend/machine/value': '12',
  '/rates/labour/bend/setUp/value': '25',
  '/rates/labour/bend/each/value': '6',
  '/rates/labour/bend/perMetre/value': '0',
  '/rates/labour/cut/hour/value': '52',
  '/rates/labour/cut/setUp/value': '8',
  '/rates/labour/cut/each/value': '4',
  '/rates/labour/cut/perMetre/value': '0',
  '/rates/overhead/value': '15',
  '/rates/margin/value': '12',
  '/rates/tax/value': '19',
} as const;

async function optionOf(job: Job) {
  const quote = (await planOf(workshop, job)).quote!;
  return { quote, option: quote.options.find(({ scope }) => scope === quote.scope)! };
}

const words = (minor: number): string =>
  `EUR ${(minor / 100).toLocaleString('en', { minimumFractionDigits: 2, maximumFractionDigits: 2 })}`;

describe('a shop that quotes', () => {
  it('goes from a fresh job to an issued quote', { timeout: 90_000 }, async () => {
    const id = await workshop.store(newJob('hoop'));
    const page = await workshop.visit('phone');
    await open(page, id);
    await type(page, '/title', 'Arch over a gate');
    await type(page, '/customer', 'a yard');
    await type(page, '/tube/outsideDiameter', '42.4');
    await type(page, '/frame/width/value', '1100');
    await price(page).getByText('7 lines rest on examples').waitFor();
    await price(page).getByRole('button', { name: 'Replace the first example' }).click();
    await seen(() => page.evaluate(() => document.activeElement?.getAttribute('data-field'))).toBe(
      '/rates/tubes/0/perMetre/value',
    );
    for (const [pointer, text] of Object.entries(OWN_RATES)) await type(page, pointer, text);
    await price(page).getByText('Every line has a price.').waitFor();
    await saved(page);

    const job = await stored(workshop, id);
    const today = job.rates.tax.since;
    expect(today).toMatch(/^\d{4}-\d{2}-\d{2}$/);
    expect(job.rates.labour.bend.machine).toEqual({ value: 1200, since: today, example: false });
    const { option } = await optionOf(job);
    expect([option.examples, option.open]).toEqual([0, []]);
    expect(await big(page)).toBe(words(option.total));

    await price(page).getByRole('button', { name: 'Issue this quote', exact: true }).click();
    await price(page).getByText('Quote 1 is issued.').waitFor();
    expect((await stored(workshop, id)).quote.date).toBe(today);
    const link = price(page).getByRole('link', { name: 'for the customer, quote 1', exact: true });
    const answer = await fetch(new URL((await link.getAttribute('href'))!, workshop.address));
    expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'application/pdf']);
    const sheet = await readSheet(new Uint8Array(await answer.arrayBuffer()));
    expect(['Arch over a gate', 'a yard', words(option.total).slice(4)].map((text) => sheet.says(text))).toEqual([
      true,
      true,
      true,
    ]);
    expect(sheet.says('example rates')).toBe(false);

    // what was given stays as it was, whatever comes after
    await type(page, '/rates/tubes/0/perMetre/value', '99');
    await settled(page);
    expect(await big(page)).not.toBe(words(option.total));
    const row = price(page).getByRole('listitem').filter({ hasText: 'Quote 1' });
    await row.getByText('the job has changed since').waitFor();
    expect((await row.innerText()).replace(/\s/g, ' ')).toContain(words(option.total));
    const list = (await (await fetch(`${workshop.address}/api/jobs/${id}/quotes`)).json()) as IssuedQuote[];
    expect(list.map(({ number, total, examples }) => [number, total, examples])).toEqual([[1, option.total, 0]]);
  });

  it('takes an example for its own, or types over it, and one undo takes that back', { timeout: 60_000 }, async () => {
    const id = await workshop.store(newJob('hoop'));
    const page = await workshop.visit('desktop');
    await open(page, id);
    const pointer = '/rates/labour/bend/hour';
    const hour = await field(page, `${pointer}/value`);
    const marks = price(page).locator('td', { has: hour });
    expect(await marks.innerText()).toContain('example');
    await hour.fill('58');
    await marks.getByText(/^since/).waitFor();
    expect(await marks.innerText()).not.toContain('example');
    await settled(page);
    expect((await stored(workshop, id)).rates.labour.bend.hour).toMatchObject({ value: 5800, example: false });
    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    expect(await hour.inputValue()).toBe('50.00');
    expect((await stored(workshop, id)).rates.labour.bend.hour).toEqual({ value: 5000, since: '', example: true });

    await marks.getByRole('button', { name: 'bending, each hour: this is mine' }).click();
    await marks.getByRole('button', { name: /^bending, each hour: since/ }).click();
    await type(page, `${pointer}/since`, '2026-02-03');
    await settled(page);
    expect((await stored(workshop, id)).rates.labour.bend.hour).toEqual({
      value: 5000,
      since: '2026-02-03',
      example: false,
    });

    // what cannot be read makes nothing of an example
    await type(page, '/rates/tax/value', 'later');
    await settled(page);
    expect((await stored(workshop, id)).rates.tax).toEqual({ value: 20, since: '', example: true });
    await type(page, '/rates/tax/value', '400');
    await price(page).getByText('The plan still uses 20.').waitFor();
    await settled(page);
    expect((await stored(workshop, id)).rates.tax).toEqual({ value: 20, since: '', example: true });
    await type(page, '/rates/tax/value', '');
    await price(page).getByText('1 line still open: tax').waitFor();
    await settled(page);
    expect((await stored(workshop, id)).rates.tax).toEqual({ value: null, since: '', example: false });
  });

  it('keeps its rates, takes them over into the next job, and sees when they differ', { timeout: 60_000 }, async () => {
    const first = await workshop.store(newJob('hoop'));
    const page = await workshop.visit('desktop');
    await open(page, first);
    await type(page, '/rates/labour/bend/hour/value', '61');
    await type(page, '/rates/name', 'Spring list');
    await type(page, '/rates/from', '2026-01-01');
    await type(page, '/rates/until', '2026-06-30');
    await price(page).getByRole('button', { name: 'Keep these rates with the shop' }).click();
    await price(page)
      .getByText(/^Kept with the shop as "Spring list"/)
      .waitFor();

    const second = await workshop.store({ ...newJob('ring'), quote: { ...newJob('ring').quote, date: '2026-08-01' } });
    await open(page, second);
    await fold(page, 'Rates').click();
    await price(page).getByText('not in effect on').waitFor();
    await price(page).getByRole('button', { name: 'Take over the rates "Spring list"' }).click();
    await settled(page);
    expect((await stored(workshop, second)).rates).toEqual((await stored(workshop, first)).rates);
    await price(page).getByText('in this job', { exact: true }).waitFor();
    await type(page, '/rates/labour/bend/hour/value', '70');
    await price(page).getByText('The shop keeps "Spring list" too.').waitFor();
  });

  it('quotes several numbers of frames in a money without decimals', { timeout: 60_000 }, async () => {
    const id = await workshop.store(newJob('hoop'));
    const page = await workshop.visit('phone');
    await open(page, id);
    await type(page, '/rates/currency', 'JPY');
    await price(page).getByRole('button', { name: 'Set decimal digits of money to 0' }).click();
    await fold(page, 'Price by number of frames').click();
    await price(page).getByRole('button', { name: 'Add a number of frames' }).click();
    await type(page, '/quote/quantities/1', '10');
    await settled(page);
    const job = await stored(workshop, id);
    expect([job.rates.minorDigits, job.rates.labour.bend.hour.value, job.quote.quantities]).toEqual([0, 50, [1, 10]]);
    const { option } = await optionOf(job);
    const rows = price(page)
      .getByRole('row')
      .filter({ has: page.locator('[data-field^="/quote/quantities/"]') });
    const grouped = (minor: number): string => minor.toLocaleString('en');
    for (const [index, { total, totalEach }] of option.breaks.entries()) {
      const row = await rows.nth(index).innerText();
      expect([row.includes(grouped(total)), row.includes(grouped(totalEach))]).toEqual([true, true]);
    }
    expect(option.breaks.map(({ quantity }) => quantity)).toEqual([1, 10]);
  });

  it('notes what the work took, and takes the mean over', { timeout: 60_000 }, async () => {
    const id = await workshop.store(newJob('hoop'));
    const page = await workshop.visit('phone');
    await open(page, id);
    await fold(page, 'Times taken').click();
    for (const [row, minutes] of ['14', '18'].entries()) {
      await price(page).getByRole('button', { name: 'Note a time' }).click();
      await type(page, `/log/${String(row)}/minutes`, minutes);
    }
    await settled(page);
    expect((await stored(workshop, id)).log).toMatchObject([
      { operation: 'bend', count: 2, setUp: 20, minutes: 14, planned: 30, process: 0 },
      { operation: 'bend', count: 2, setUp: 20, minutes: 18, planned: 30, process: 0 },
    ]);
    await price(page).getByRole('button', { name: 'Show the mean of all jobs' }).click();
    await price(page).getByRole('heading', { name: 'All jobs of the shop' }).waitFor();
    await price(page).getByRole('button', { name: 'bending: take over set-up and each' }).first().click();
    await settled(page);
    expect((await stored(workshop, id)).rates.labour.bend).toMatchObject({
      setUp: { value: 20, example: false },
      each: { value: 8, example: false },
    });
  });
});
