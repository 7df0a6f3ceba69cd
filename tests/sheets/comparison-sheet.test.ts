import { describe, expect, it } from 'vitest';
import { formatBand, quantityParts } from '../../server/language/quantity-format.ts';
import { wordsOf } from '../../server/language/words.ts';
import type { Plan } from '../../server/plan/plan.ts';
import { COLOURS } from '../../server/sheets/ink.ts';
import { layoutSheet, renderSheet } from '../../server/sheets/render-sheet.ts';
import { planOf, planOfEight, planOfNone, planWithManyNotes } from './fixture-cases.ts';
import { figure } from './fixture-figure.ts';
import { lines } from './layout-faults.ts';
import { makeJob, makePlan } from './fixture.ts';
import { way } from './fixture-way.ts';
import { readPdf } from './read-pdf.ts';

async function textOf(plan: Plan): Promise<string> {
  const sheet = await renderSheet('comparison', { plan, job: makeJob(), revision: null });
  if (!sheet.ok) throw new Error(sheet.reason);
  const [page, ...others] = await readPdf(sheet.pdf);
  expect(others).toEqual([]);
  return page!.texts.join(' ');
}

describe('the comparison', () => {
  it('says on top which way is recommended, and why', async () => {
    const text = await textOf(makePlan());
    const [title, table] = ['We recommend: splice with the fewest welds', 'fixing points off'].map((said) =>
      text.indexOf(said),
    );
    expect(title).toBeGreaterThan(0);
    expect(table).toBeGreaterThan(title!);
    expect(text).toContain('it has the fewest welds');
  });

  it('has every possible way with the same columns: figures, bands, money, days, its risks', async () => {
    const plan = planOfEight();
    const text = await textOf(plan);
    const { units } = makeJob();
    for (const [index, one] of plan.correction!.ways.entries()) {
      const off = `${quantityParts(one.fixingMisfit.value, 'mm', units).number} ± 12.5`;
      expect(text).toMatch(new RegExp(`${String(index + 1)} ${wordsOf('wayShort', one.key)}( \\(\\w+\\))? ${off}`));
    }
    expect(formatBand(figure(0, 'mm', 12.5).band!, 'mm', units)).toBe('± 12.5 mm');
    expect(text).toContain('splice, fewest welds (recommended)');
    expect(text).toContain('splice, least kink (chosen)');
    expect(text).toContain('from EUR 233.00');
    expect(text).toMatch(/0\.10° 0\.74° 0\.12 5 1 150\.00 225 EUR 21,500\.01 1 • ([a-z] ){3}/);
  });

  it('leaves the mark away from a way that another one beats', async () => {
    const ways = [way('splice-fewest', [], 100), way('leave', [], 200, { unbeaten: false })];
    const text = await textOf(planOf(ways));
    expect(text).toMatch(/EUR 1\.00 10 • a/);
    expect(text).toMatch(/EUR 2\.00 10 a/);
  });

  it('says on top what the recommended way costs beside others', async () => {
    const text = (await textOf(makePlan())).replaceAll('\u00a0', ' ');
    const told =
      'It is EUR 122.40 cheaper than a new frame. For EUR 60.00 less: leave it and pack the feet, but 12.4 mm further off.';
    expect(text).toContain(told);
    expect(text.indexOf(told)).toBeLessThan(text.indexOf('fixing points off'));
  });

  it('says which columns have the legs in them, where the job has any', async () => {
    const plan = makePlan();
    const legs = { welds: figure(4, 'count'), purgeGas: figure(250, 'L') };
    const text = await textOf({ ...plan, quote: { ...plan.quote!, legs } });
    expect(text).toContain('with the legs (4 welds, 250.00 L of purge gas); all else is of the frame alone.');
    expect(await textOf({ ...plan, quote: { ...plan.quote!, legs: null } })).not.toContain('with the legs');
  });

  it('says for a way that is not possible why, in the words of its finding where there is one', async () => {
    const plan = planOfNone();
    expect(await textOf(plan)).toContain('1 leave it not possible: The size is too small for two tubes side by side.');
    const stop = { code: 'width-under-tube', grade: 'stop', field: '/frame/width', data: {}, wayOut: null } as const;
    const text = await textOf({ ...plan, findings: [stop] });
    expect(text).toMatch(/1 leave it not possible: Width[^:]*: \w+/);
  });

  it('lets only possible ways be taken, and has a line to sign', async () => {
    const text = await textOf(planOfNone());
    expect(text).toMatch(/We take: 8 new frame agreed: name and signature date$/);
  });

  it('says what can go wrong, what would change it, and which reading disagrees', async () => {
    const text = await textOf(makePlan());
    for (const said of [
      'What can go wrong a: Packing under a foot can come loose. b: The welds pull the open ends.',
      'What would change this Splice, fewest welds: cheaper up to',
      'With readings 4 times as exact',
      'Left leg disagrees with the others: measured 607.0 mm, they say 601.2 mm.',
      'Readings: 4, tape ± 1.0 mm, level ± 0.20°. Sizes found from them: 3.',
      'Not measured, taken as wanted: crown rise.',
    ]) {
      expect(text).toContain(said);
    }
  });

  it('says where two ways cost alike, and that money rests on examples where it does', async () => {
    const plan = makePlan();
    const text = await textOf(plan);
    expect(text).toContain('Splice, fewest welds: cheaper up to 6 joints; above that: new frame. The splice has 2.');
    expect(text).toContain('New frame: cheaper where bending a frame costs less than EUR 480.00');
    expect(text).not.toContain('Money rests on example');
    const [first, ...others] = plan.quote!.options;
    const options = [{ ...first!, examples: 3 }, ...others];
    expect(await textOf({ ...plan, quote: { ...plan.quote!, options } })).toContain('Money rests on example rates');
  });

  it('says how much it left out where a page does not hold everything', async () => {
    const many = planWithManyNotes();
    const plan = { ...many, quote: { ...many.quote!, breakEven: [] } };
    const text = await textOf(plan);
    const said = [...text.matchAll(/made up (?:and long )+(\d+)/g)];
    const out = Number(/(\d+) more on the job card/.exec(text)?.[1]);
    expect(said.length).toBeGreaterThan(2);
    expect(said.length + out).toBe(plan.correction!.wouldChange.length);
  });

  it('draws each possible way once over the wanted frame, and says the factor once', async () => {
    const plan = planOfEight();
    const sheet = layoutSheet('comparison', { plan, job: makeJob(), revision: null });
    if (!sheet.ok) throw new Error(sheet.reason);
    const { ways, wanted } = plan.correction!.picture!;
    const drawn = lines(sheet.pages[0]!.items);
    expect(drawn.filter(({ role }) => role === 'edge')).toHaveLength(ways.length * wanted.length);
    expect(drawn.filter(({ role }) => role === 'leg')).toHaveLength(ways.flatMap((one) => one.lines).length);
    const dots = drawn.filter(({ fill, points }) => fill === COLOURS.black && points.length === 16);
    expect(dots).toHaveLength(ways.flatMap((one) => one.joints).length);
    expect((await textOf(plan)).match(/drawn 20 times as large/g)).toHaveLength(1);
  });
});
