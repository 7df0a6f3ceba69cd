import { describe, expect, it } from 'vitest';
import { formatFigure } from '../../server/language/quantity-format.ts';
import { landingStage } from '../../db/demo/landing-stage.ts';
import type { Way } from '../../server/plan/correction.ts';
import type { TapeMarks } from '../../server/plan/joint.ts';
import { renderSheet } from '../../server/sheets/render-sheet.ts';
import { plan } from '../../server/solver/plan.ts';
import { planOf, wayOfEverything } from './fixture-cases.ts';
import { figure } from './fixture-figure.ts';
import { makeJob } from './fixture.ts';
import { way } from './fixture-way.ts';
import { readPdf } from './read-pdf.ts';

const { units } = makeJob();

async function linesOf(one: Way, plan = planOf([one]), job = makeJob()): Promise<string[]> {
  const sheet = await renderSheet('cut-and-purge', { plan, job, revision: null });
  if (!sheet.ok) throw new Error(sheet.reason);
  return (await readPdf(sheet.pdf)).flatMap(({ texts }) => texts);
}

const textOf = async (one: Way): Promise<string> => (await linesOf(one)).join(' ');

/** Both faces of every joint: four distances from one point, and four to check with where there are any. */
function expectDistances(read: readonly string[], { joints }: Way): void {
  const said = read.join('\n');
  const distance = String.raw`(−?\d+(?:\.\d+)?) ?\n?mm\n`;
  const compare = (row: RegExp, { generators }: TapeMarks): void => {
    const found = (row.exec(said) ?? []).slice(1).map((text) => Number(text.replace('−', '-')));
    expect(found).toHaveLength(4);
    const off = found.map((value, index) => Math.abs(value - generators[index]!.distance.value));
    expect(Math.max(...off)).toBeLessThan(0.0501);
  };
  for (const { number, faceA, faceB } of joints) {
    for (const [side, { marks, check }] of [['A', faceA] as const, ['B', faceB] as const]) {
      const name = String.raw`\n${String(number)} ${side}\n`;
      compare(new RegExp(name + distance.repeat(4)), marks);
      if (check !== null) compare(new RegExp(String.raw`${name}[^]*?\nto check\n${distance.repeat(4)}`), check);
    }
  }
}

describe('the marks', () => {
  it('read back from the file are the distances of a plan made by hand, from both points', async () => {
    const one = wayOfEverything();
    expectDistances(await linesOf(one), one);
  });

  it('read back from the file are the distances of the plan of the demo job', async () => {
    const job = landingStage();
    const demo = plan(job);
    const one = demo.correction!.ways.find(({ key }) => key === demo.correction!.chosen)!;
    expect(one.joints.length).toBeGreaterThan(0);
    expectDistances(await linesOf(one, demo, job), one);
  });

  it('are told to 1/32 in where the job is told to 1/16', async () => {
    const job = makeJob();
    const inches = { ...job, units: { ...job.units, length: 'inch' as const, fraction: 16 as const } };
    const one = wayOfEverything();
    const sheet = await renderSheet('cut-and-purge', { plan: planOf([one]), job: inches, revision: null });
    if (!sheet.ok) throw new Error(sheet.reason);
    const text = (await readPdf(sheet.pdf)).flatMap(({ texts }) => texts).join(' ');
    // 700 mm + 38.1 mm × tan 4° = 702.664 mm = 27.664 in
    expect(text).toContain('2 B 27 21/32 in');
  });

  it('say the point, the way of the tape, and where bends begin and end', async () => {
    const text = await textOf(wayOfEverything());
    expect(text).toContain('the end of bend 1, towards the far end');
    expect(text).toContain('the far end, towards the datum end');
    expect(text).toContain('start of bend 2 1420.0 mm');
    expect(text).toContain('end of crown 1 1414.0 mm');
  });

  it('have a line to scribe where a piece is turned, and which way', async () => {
    const text = await textOf(wayOfEverything());
    expect(text).toContain('Joint 5: before you cut, scribe a line');
    expect(text).toContain('3.20° anticlockwise of the line on piece A');
    expect(text).not.toContain('Joint 1: before you cut, scribe a line');
  });
});

describe('the saw', () => {
  it('is set off square with the long side named, and each scrap has its two sides', async () => {
    const text = await textOf(wayOfEverything());
    expect(text).toContain('Piece A keeps the datum end.');
    expect(text).toMatch(/A 4\.00° inside, 30\.0° towards bottom B 4\.00° inside, 30\.0° towards bottom/);
    expect(text).toContain('4.10 mm at outside, 30.0° towards top, nothing at inside, 30.0° towards bottom');
    expect(text).toContain('Scrap between two saw cuts of 1.2 mm: 257.6 mm all round.');
    expect(text).toContain('A square face needs no wrap');
  });

  it('stops at the hinge of a dart', async () => {
    const text = await textOf(wayOfEverything());
    expect(text).toContain('Joint 3 in hoop, on a straight: a dart, not cut through');
    expect(text).toContain('hinge, not cut: inside');
    expect(text).toContain('stop at the wall of 1.65 mm at inside');
  });
});

describe('the rest of the work', () => {
  it('has a cut list for new tube', async () => {
    const text = await textOf(wayOfEverything());
    expect(text).toContain('4 hoop 84.2 mm 81.7 mm 2400.0 mm 1.95° 0.60° 0.60°');
    expect(text).toContain('new tube, 81.7 mm');
    expect(text).toContain('Joint 4, new piece, end A, for hoop');
    expect(text).toContain('Joint 4, new piece, end B, for hoop');
  });

  it('is told in the order of the plan', async () => {
    const one = wayOfEverything();
    const text = await textOf(one);
    expect(text.match(/\d+\. Joint \d, [\w ]+: (cut face A|close)/g)).toHaveLength(2 * one.joints.length);
    const places = one.joints.map(({ number }) => text.indexOf(`Joint ${String(number)}, `));
    expect(places).toEqual(places.toSorted((a, b) => a - b));
  });

  it('bends again after closing, says radii of a crown, cuts feet back, then packs', async () => {
    const text = await textOf(wayOfEverything());
    const places = [
      'Dress and fit',
      'Bend again',
      'hoop bend 2 0.80° open 84.0° 83.2° — —',
      'hoop crown 1 1.40° further 18.0° 19.4° 2400.0 mm 2226.8 mm',
      'Cut the ends back',
      'Pack the feet',
      'hoop datum end 6.20 mm',
    ].map((said) => text.indexOf(said));
    expect(places.every((place) => place > 0)).toBe(true);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
  });

  it('bends first where the plan says so', async () => {
    const { rebends, steps, ...rest } = wayOfEverything();
    const first = [{ key: 'step.rebend', joint: 0, data: { member: 'hoop', bend: 1, value: 1 } }, ...steps];
    const text = await textOf({ ...rest, rebends, steps: first });
    expect(text.indexOf('Bend again')).toBeLessThan(text.indexOf('Find the marks'));
  });

  it('checks the sizes and the diagonals after tacking, with room to write', async () => {
    const one = wayOfEverything();
    const text = await textOf(one);
    const { checks } = planOf([one]).welding!.movement!;
    for (const { key, index, cameBack, wanted } of one.after) {
      const moved = checks.find((check) => check.key === key && check.index === index);
      const before = moved === undefined ? 0 : moved.shrinkage.value + moved.given.value;
      const tacked = formatFigure({ ...cameBack, value: cameBack.value - before }, units);
      expect(text).toContain(
        `${tacked} .......................... ${formatFigure(cameBack, units)} ${formatFigure(wanted, units)}`,
      );
    }
    // 950.4 mm welded, the welds pull in 0.5 mm and the order adds 0.2 mm
    expect(text).toContain('950.7 mm .......................... 950.4 mm');
  });

  it('checks sizes without a column for the tacks where nothing says what welding moves', async () => {
    const one = wayOfEverything();
    const plan = planOf([one]);
    const text = (await linesOf(one, { ...plan, welding: null })).join(' ');
    expect(text).toContain('950.4 mm 950.0 mm');
    expect(text).not.toContain('tacked found');
  });

  it('is packing alone where the frame is left as it is', async () => {
    const packing: Way['packing'] = [{ member: 'hoop', end: 'finish', height: figure(7.4, 'mm') }];
    const text = await textOf(way('leave', [], 0, { packing }));
    expect(text).toContain('Pack the feet');
    expect(text).toContain('hoop far end 7.40 mm');
    expect(text).not.toContain('Find the marks');
  });
});
