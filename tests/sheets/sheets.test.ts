import { describe, expect, it } from 'vitest';
import { hasWords } from '../../server/language/words.ts';
import { SHEET_REASONS } from '../../server/sheets/page.ts';
import { SHEET_NAMES, layoutSheet, renderSheet, type SheetName } from '../../server/sheets/render-sheet.ts';
import type { SheetInput } from '../../server/sheets/sheet-input.ts';
import { makeJob, makePlan } from './fixture.ts';
import { lines } from './layout-faults.ts';
import { readPdf } from './read-pdf.ts';

const REVISION = { number: 7, date: '2026-11-25T08:30:00Z' };
const input = (change: Partial<SheetInput> = {}): SheetInput => ({
  plan: makePlan(),
  job: makeJob(),
  revision: REVISION,
  ...change,
});

async function textOf(name: SheetName, given = input()): Promise<string[]> {
  const sheet = await renderSheet(name, given);
  if (!sheet.ok) throw new Error(sheet.reason);
  return (await readPdf(sheet.pdf)).map(({ texts }) => texts.join(' '));
}

describe('every sheet', () => {
  it.each(SHEET_NAMES)(
    '%s says its page of pages, revision, date, customer, number and that it is invented',
    async (name) => {
      const sheet = await renderSheet(name, input());
      if (!sheet.ok) throw new Error(sheet.reason);
      const pages = await readPdf(sheet.pdf);
      expect(pages).toHaveLength(sheet.pages);
      for (const [index, page] of pages.entries()) {
        const text = page.texts.join(' ');
        expect(page.texts).toContain(`${String(index + 1)} of ${String(sheet.pages)}`);
        for (const said of [
          'Boarding hoop',
          'A rowing club',
          'BH-1',
          '2026-11-25',
          'INVENTED EXAMPLE',
          'Computed from revision 7',
        ]) {
          expect(text).toContain(said);
        }
      }
    },
  );

  it.each(SHEET_NAMES)('%s has the same bytes twice', async (name) => {
    const [one, two] = [await renderSheet(name, input()), await renderSheet(name, input())];
    if (!one.ok || !two.ok) throw new Error('no sheet');
    expect(Buffer.compare(one.pdf, two.pdf)).toBe(0);
  });

  it.each([
    ['a4', 210, 297],
    ['letter', 215.9, 279.4],
  ] as const)('has the size of %s', async (paper, width, height) => {
    const sheet = await renderSheet('quote', input({ job: makeJob(38.1, paper) }));
    if (!sheet.ok) throw new Error(sheet.reason);
    const [page] = await readPdf(sheet.pdf);
    expect(page!.width).toBeCloseTo(width, 2);
    expect(page!.height).toBeCloseTo(height, 2);
  });

  it('sets names in other alphabets that the typeface has', async () => {
    const job = { ...makeJob(), customer: 'Łódź Ωμέγα Лодка' };
    expect((await textOf('quote', input({ job }))).join(' ').replace(/\s/g, '')).toContain('ŁódźΩμέγαЛодка');
  });

  it('says why it cannot be made, with words for each reason', async () => {
    const plan = makePlan();
    const empty = input({ plan: { ...plan, frame: null, correction: null, purge: null, stock: null, quote: null } });
    expect(await renderSheet('bend', empty)).toEqual({ ok: false, reason: 'frame-not-possible' });
    expect(await renderSheet('cut-and-purge', empty)).toEqual({ ok: false, reason: 'frame-not-possible' });
    expect(await renderSheet('weld-and-purge', empty)).toEqual({ ok: false, reason: 'frame-not-possible' });
    expect(await renderSheet('procedure', empty)).toEqual({ ok: false, reason: 'frame-not-possible' });
    expect(await renderSheet('quote', empty)).toEqual({ ok: false, reason: 'quote-not-possible' });
    expect(await renderSheet('quote-working', empty)).toEqual({ ok: false, reason: 'quote-not-possible' });
    expect(await renderSheet('stock', empty)).toEqual({ ok: false, reason: 'frame-not-possible' });
    const tubeless = input({ plan: { ...plan, stock: { pieces: [], sizes: [], overlong: [], joints: [] } } });
    expect(await renderSheet('stock', tubeless)).toEqual({ ok: false, reason: 'nothing-to-saw' });
    const first = input({ plan: { ...plan, correction: null } });
    expect(await renderSheet('comparison', first)).toEqual({ ok: false, reason: 'nothing-came-back' });
    const unwelded = input({ plan: { ...plan, welding: null } });
    expect(await renderSheet('weld-and-purge', unwelded)).toEqual({ ok: false, reason: 'nothing-to-weld' });
    expect(await renderSheet('procedure', unwelded)).toEqual({ ok: false, reason: 'nothing-to-weld' });
    const bare = input({ plan: { ...plan, correction: null, purge: null } });
    expect(await renderSheet('cut-and-purge', bare)).toEqual({ ok: false, reason: 'nothing-to-cut-or-purge' });
    for (const reason of SHEET_REASONS) expect(hasWords(`sheet.reason.${reason}`)).toBe(true);
  });
});

describe('bend sheet', () => {
  it('says cut length, marks, angles and how the springback was found', async () => {
    const text = (await textOf('bend')).join(' ');
    for (const said of [
      '2080.0 mm',
      '1 start 484.0 mm',
      '2 middle 1037.0 mm',
      '2 end 1414.0 mm',
      '86.2',
      '59.8',
      '619.0',
      'Springback computed: 2.6 %',
    ]) {
      expect(text).toContain(said);
    }
  });
});

describe('cut and purge sheet', () => {
  it('follows the order of work', async () => {
    const text = (await textOf('cut-and-purge')).join(' ');
    const places = [
      '1 Find the marks',
      '2 Cut',
      '3 Dress and fit',
      '4 Order of welding',
      'Cautions',
      '5 Set-up 1 of 1: welds 1, 2, S1, S2',
      'wait at least 3 min 30 s',
      'turn down, weld at 4 L/min',
      'keep on after the last arc for 1 min',
      '6 Grind and polish',
      'Joint 1, face A',
    ].map((step) => text.indexOf(step));
    expect(places.every((place) => place >= 0)).toBe(true);
    expect(places.toSorted((a, b) => a - b)).toEqual(places);
  });

  it('says four distances a face, the three times, and the cautions', async () => {
    const text = (await textOf('cut-and-purge')).join(' ');
    for (const said of [
      '704.0 mm',
      '1048.8 mm',
      '3 min 30 s',
      '45 s',
      '25 s',
      '50 ppm or less',
      'Argon kills without warning',
      'qualified welder and engineer decide',
    ]) {
      expect(text).toContain(said);
    }
  });

  it('fills its first page: the picture of the joints grows where the next member begins a new one', () => {
    const sheet = layoutSheet('cut-and-purge', input());
    if (!sheet.ok) throw new Error(sheet.reason);
    const [page] = sheet.pages;
    const edges = lines(page!.items).filter(({ role }) => role === 'edge');
    const low = Math.max(...edges.flatMap(({ points }) => points.map(([, y]) => y)));
    expect(low).toBeGreaterThan(page!.height / 2);
  });
});

describe('findings', () => {
  it('of grade stop stand above the picture, others below the tables', async () => {
    const plan = makePlan();
    const stop = { code: 'width-under-tube', grade: 'stop', field: '/frame/width', data: {}, wayOut: null } as const;
    const text = (await textOf('bend', input({ plan: { ...plan, findings: [...plan.findings, stop] } }))).join(' ');
    const [stopAt, tableAt, noteAt] = ['STOP:', 'cut length', 'NOTE:'].map((said) => text.indexOf(said));
    expect(stopAt).toBeGreaterThan(0);
    expect(stopAt).toBeLessThan(tableAt!);
    expect(tableAt).toBeLessThan(noteAt!);
  });
});
