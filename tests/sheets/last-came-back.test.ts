import { describe, expect, it } from 'vitest';
import type { SlipScore } from '../../server/plan/correction.ts';
import type { Plan } from '../../server/plan/plan.ts';
import { layoutSheet, renderSheet } from '../../server/sheets/render-sheet.ts';
import { makeJob, makePlan } from './fixture.ts';
import { figure } from './fixture-figure.ts';
import { covered, crossed, outside } from './layout-faults.ts';
import { readPdf } from './read-pdf.ts';

const score = (more: Partial<SlipScore>): SlipScore => ({
  keys: ['outside-read-as-centre'],
  fields: ['/frame/width'],
  dieRadius: null,
  bend: null,
  misfit: figure(0.4, 'ratio'),
  explains: true,
  predicted: [],
  ...more,
});

const after = (...slips: SlipScore[]): Plan => {
  const made = makePlan();
  return { ...made, correction: { ...made.correction!, slips } };
};

async function said(made: Plan): Promise<string> {
  const sheet = await renderSheet('bend', { plan: made, job: makeJob(), revision: null });
  if (!sheet.ok) throw new Error(sheet.reason);
  return (await readPdf(sheet.pdf)).flatMap((page) => [...page.texts]).join(' ');
}

describe('the next bend sheet after a frame that came back wrong', () => {
  it('says what went wrong, at which size, and what to change', async () => {
    const text = await said(after(score({})));
    expect(text).toContain('The last one came back wrong');
    expect(text).toContain('The outside size was read as centre to centre. This was at: width.');
    expect(text).toContain('Write “over the outside” beside the size');
  });

  it('says it of both where two went wrong together, and names the other die', async () => {
    const pair = score({ keys: ['apex-as-start', 'other-die'], fields: [], dieRadius: 76.2 });
    const text = await said(after(pair));
    expect(text).toContain('The marks of the corners were used as the start of each bend.');
    expect(text).toContain('Die radius 76.2 mm.');
    expect(text).toContain('Read the radius stamped on the die before bending.');
  });

  it('says nothing where no slip explains it', async () => {
    expect(await said(after(score({ explains: false })))).not.toContain('The last one came back wrong');
    expect(await said(after())).not.toContain('The last one came back wrong');
  });

  it('keeps its pages whole', () => {
    const sheet = layoutSheet('bend', { plan: after(score({})), job: makeJob(), revision: null });
    if (!sheet.ok) throw new Error(sheet.reason);
    for (const page of sheet.pages) {
      expect(outside(page)).toEqual([]);
      expect(covered(page)).toEqual([]);
      expect(crossed(page)).toEqual([]);
    }
  });
});
