import { beforeAll, describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { RunPoint } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import { formatLength, lengthParts } from '../../server/language/length-format.ts';
import { figureParts } from '../../server/language/quantity-format.ts';
import type { Plan } from '../../server/plan/plan.ts';
import { layoutSheet, renderSheet } from '../../server/sheets/render-sheet.ts';
import { plan } from '../../server/solver/plan.ts';
import { makeJob, makePlan } from './fixture.ts';
import { covered, crossed, outside, texts } from './layout-faults.ts';
import { readPdf } from './read-pdf.ts';

/** A staircase in space: every bend turns the tube on by a right angle. */
const stairs = (count: number, from = 0): RunPoint[] => {
  const at = [from, 0, 0];
  return Array.from({ length: count + 2 }, (_, index) => {
    const [x = 0, y = 0, z = 0] = at;
    at[index % 3] = (at[index % 3] ?? 0) + 400;
    return { x, y, z, radius: null };
  });
};

const runOf = (points: RunPoint[]): Job => ({ ...newJob('run'), frame: { shape: 'run', points } });

function pagesOf(job: Job, made: Plan) {
  const sheet = layoutSheet('bend', { plan: made, job, revision: null });
  if (!sheet.ok) throw new Error(sheet.reason);
  return sheet.pages;
}

async function read(job: Job, made: Plan = plan(job)): Promise<string[][]> {
  const sheet = await renderSheet('bend', { plan: made, job, revision: null });
  if (!sheet.ok) throw new Error(sheet.reason);
  return (await readPdf(sheet.pdf)).map((page) => [...page.texts]);
}

const said = async (job: Job, made?: Plan): Promise<string> => (await read(job, made)).flat().join(' ');

describe.each(['mm', 'inch'] as const)('a run of thirty bends in %s', (length) => {
  const job: Job = { ...runOf(stairs(30)), units: { length, fraction: 16 } };
  const made = plan(job);
  const { bends, cutLength } = made.frame!.members[0]!;
  let pages: string[][] = [];
  beforeAll(async () => {
    pages = await read(job, made);
  });

  it('says every start mark, angle and turn, read back from the file', () => {
    expect(bends).toHaveLength(30);
    // numbers of one size beside one another come back as one text
    const all = ` ${pages.flat().join(' ')} `;
    expect(all).toContain(formatLength(cutLength.value, job.units));
    for (const { number, startMark, angleToBendTo, rotation, check } of bends) {
      const mark = lengthParts(startMark.value, job.units).number;
      expect(all).toContain(` ${mark} `);
      expect(all).toContain(`${String(number)} start ${formatLength(startMark.value, job.units)}`);
      expect(all).toContain(` ${figureParts(angleToBendTo, job.units).number} `);
      if (rotation.value !== 0) expect(all).toContain(` ${figureParts(rotation, job.units).number} `);
      if (check !== null) expect(all).toContain(` ${figureParts(check, job.units).number} `);
    }
  });

  it('says the head of the rows again on every page that has some', () => {
    const withRows = pages.filter((page) => page.includes('bend to'));
    expect(withRows.length).toBeGreaterThan(1);
    for (const page of withRows) expect(page).toContain('start mark');
    // how the clock is read stands before the first row
    expect(withRows[0]!.join(' ')).toMatch(/Plus is clockwise\..*start mark/);
  });

  it('is lettered to be read from the machine', () => {
    const written = pagesOf(job, made).flatMap(({ items }) => texts(items));
    for (const { startMark, angleToBendTo } of bends) {
      for (const number of [
        lengthParts(startMark.value, job.units).number,
        figureParts(angleToBendTo, job.units).number,
      ]) {
        const heights = written.filter(({ text }) => text === number).map(({ height }) => height);
        expect(Math.max(...heights)).toBeGreaterThanOrEqual(5);
      }
    }
  });
});

describe.each(['a4', 'letter'] as const)('on %s', (paper) => {
  const print = { paper, templateStations: 16 } as const;
  const cases: readonly (readonly [string, Job])[] = [
    ['thirty bends', runOf(stairs(30))],
    ['a ring', newJob('ring')],
    ['an offset', newJob('offset')],
    ['a straight tube', newJob('straight')],
    ['five members', fiveMembers()],
    ['a mirrored run', { ...runOf(stairs(4)), bending: { ...newJob('run').bending, hand: 'mirrored' } }],
  ];

  it.each(cases)('%s lays out without a text in another or a line through it', (_, job) => {
    for (const length of ['mm', 'inch'] as const) {
      const asked: Job = { ...job, print, units: { length, fraction: 16 } };
      for (const page of pagesOf(asked, plan(asked))) {
        expect(outside(page)).toEqual([]);
        expect(covered(page)).toEqual([]);
        expect(crossed(page)).toEqual([]);
      }
    }
  });
});

function fiveMembers(): Job {
  const free = { end: 'free' } as const;
  return {
    ...newJob('members'),
    frame: {
      shape: 'members',
      members: Array.from({ length: 5 }, (_, index) => ({
        name: `rail ${String(index + 1)}`,
        path: { by: 'points' as const, points: stairs(3 + index, 1500 * index), closed: false },
        start: free,
        finish: free,
      })),
    },
  };
}

describe('a frame of several members', () => {
  it('has each on pages of its own that name it, and the checks of the whole once', async () => {
    const pages = await read(fiveMembers());
    for (let index = 1; index <= 5; index += 1) {
      const own = pages.filter((page) => page.includes(`Bend sheet: rail ${String(index)}`));
      expect(own.length).toBeGreaterThan(0);
      expect(own[0]).toContain(`Bend rail ${String(index)}`);
    }
    expect(pages.filter((page) => page.includes('The frame as wanted'))).toHaveLength(1);
  });
});

describe('which way round', () => {
  const run = runOf(stairs(4));

  it('a mirrored frame says so in large letters, one as drawn does not', async () => {
    const mirrored: Job = { ...run, bending: { ...run.bending, hand: 'mirrored' } };
    expect(await said(mirrored)).toContain('MIRRORED: for the other side');
    expect(await said(run)).not.toContain('MIRRORED');
    const large = pagesOf(mirrored, plan(mirrored)).flatMap(({ items }) => texts(items));
    expect(large.find(({ text }) => text.startsWith('MIRRORED'))!.height).toBeGreaterThanOrEqual(5);
  });

  it('says from which end and on which side it is bent', async () => {
    expect(await said(run)).toMatch(/the start as drawn.*to the RIGHT/);
    const machine = { ...run.machine, surroundings: { ...run.machine.surroundings, side: 'left' as const } };
    const members = [{ member: 'run', from: 'finish' as const, side: 'usual' as const, closingStraight: null }];
    const turned: Job = { ...run, machine, bending: { ...run.bending, members } };
    expect(await said(turned)).toMatch(/the finish as drawn.*to the LEFT/);
    const datum = (job: Job) =>
      plan(job)
        .views.find(({ key }) => key === 'top')!
        .marks.filter(({ kind }) => kind === 'end')
        .map(({ at }) => at);
    const ends = plan(run).frame!.members[0]!;
    const hundredths = (value: number): number => Math.round(value * 100) / 100;
    const flat = ({ x, y }: { x: number; y: number }) => [hundredths(x), hundredths(y)];
    expect(datum(run)).toEqual([flat(ends.start.point)]);
    expect(datum(turned)).toEqual([flat(ends.finish.point)]);
  });

  it('says which way round the machine counts', async () => {
    expect(await said(run)).toContain('Plus is clockwise.');
    expect(await said({ ...run, machine: { ...run.machine, rotationSign: -1 } })).toContain('Plus is anticlockwise.');
  });
});

describe('what else the bender needs', () => {
  it('is how the part goes through the machine, and what is cut off afterwards', async () => {
    const text = await said(makeJob(), makePlan());
    for (const line of [
      'Nearest while bending: 41.5 mm to its own unbent end, at bend 3.',
      'Also possible: from the other end.',
      'cut off after bending: 80.0 mm at the far end.',
      "The machine's own manual",
      'Prove it on the first bend.',
      'Lay the first bend on it, true angle: bend 1',
    ]) {
      expect(text).toContain(line);
    }
  });

  it('is told where a part strikes, with the way out in two pieces', async () => {
    const made = makePlan();
    const [hoop, bar] = made.frame!.members;
    const [first] = hoop!.making.ways;
    const length = first!.extraLast;
    const stuck = {
      ...first!,
      possible: false,
      problems: [{ code: 'strikes', bend: 3, value: -12.5, low: 0, obstacle: 'bed' }] as const,
      clearance: { ...first!.clearance!, obstacle: 'bed', distance: { ...length, value: -12.5 } } as const,
    };
    const split = {
      station: { ...length, value: 1040 },
      clear: { ...length, value: 310 },
      first: { length: { ...length, value: 1040 }, way: 'as-planned' },
      second: { length: { ...length, value: 1041 }, way: 'other-end' },
    } as const;
    const member = {
      ...hoop!,
      making: { ...hoop!.making, ways: [{ ...stuck, problems: [...stuck.problems] }], split },
    };
    const text = await said(makeJob(), { ...made, frame: { ...made.frame!, members: [member, bar!] } });
    expect(text).toContain('NOT POSSIBLE as planned');
    expect(text).toContain('STRIKES while bending: 12.5 mm into the bed or the floor, at bend 3.');
    expect(text).toContain('No other end or side gets it through.');
    expect(text).toContain('joint 1040.0 mm from the start as drawn, 310.0 mm clear');
  });

  it('is where the closing weld of a ring stands', async () => {
    const job = newJob('ring');
    const made = plan(job);
    const { straight, clear } = made.frame!.members[0]!.making.closing!;
    const text = await said(job, made);
    expect(text).toContain(`Closing weld: in the middle of straight ${String(straight)}`);
    expect(text).toContain(`${formatLength(clear.value, job.units)} clear of the bends`);
  });

  it('is the reading check once, with a dash where a misreading gives no frame', async () => {
    const pages = await read(makeJob(), makePlan());
    const own = pages.filter((page) => page.includes('Reading check: was the sketch read right?'));
    expect(own).toHaveLength(1);
    const text = own[0]!.join(' ');
    expect(text).toContain('988.1 mm (+38.1)');
    expect(text).toMatch(/Die radius 76.2 mm\.\s+—\s+—\s+—/);
  });

  it('is what each size is allowed, and what the worst tube makes of it', async () => {
    const text = await said(makeJob(), makePlan());
    expect(text).toMatch(/950\.0 mm ± 0\.50 mm ± 3\.00 mm/);
    expect(text).toContain('949.7 to 950.3');
    const inch: Job = { ...makeJob(), units: { length: 'inch', fraction: 16 } };
    // a fraction would round 3 mm to 1/8 in
    expect(await said(inch, makePlan())).toContain('± 0.118 in');
  });
});
