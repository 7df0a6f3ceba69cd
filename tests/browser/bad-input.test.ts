// What cannot be: every slip of the keyboard is said at its field with a way out, and nothing that was typed is lost.
import type { Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import { field, open, planOf, seen, settled, stage, stored, type } from './person.ts';
import { openWorkshop, type Workshop } from './workshop.ts';

let workshop: Workshop;
let page: Page;
beforeAll(async () => {
  workshop = await openWorkshop();
  page = await workshop.visit('desktop');
}, 60_000);
afterAll(() => workshop.close());
afterEach(() => {
  expect(workshop.faults).toEqual([]);
});

/** The field with everything that stands at it: its message and its button. */
const around = (input: Locator): Locator => input.locator('xpath=ancestor::*[contains(@class,"field")][1]');
const edges = (): Locator => page.locator('figure svg path.edge');

async function textOf(place: Locator): Promise<string> {
  return (await place.allInnerTexts()).join(' ');
}

type Case = {
  readonly what: string;
  readonly pointer: string;
  readonly typed: string;
  /** Parts of the message: the value, what is allowed, what to do. */
  readonly says: readonly string[];
  readonly read: (job: Job) => number | null;
} & (
  | {
      /** The page goes on with the value before: the button that shows it again, and that value. */
      readonly button: string;
      readonly kept: number | null;
    }
  /** No frame can be drawn with it; the plan offers a value that can, and these are the words before it. */
  | { readonly offers: string }
);

const hoop = (job: Job) => {
  if (job.frame.shape !== 'hoop') throw new Error('This job is no hoop.');
  return job.frame;
};
const wall = { pointer: '/tube/wall', button: 'Set wall to 1.65 mm', kept: 1.65, read: (job: Job) => job.tube.wall };

const CASES: readonly Case[] = [
  {
    ...wall,
    what: 'a word for a length',
    typed: 'thin',
    says: ['cannot be read as a length', 'Write it like 38.1', 'still uses 1.65 mm'],
  },
  { ...wall, what: 'a division by nothing', typed: '1/0', says: ['divided by 0', 'still uses 1.65 mm'] },
  {
    ...wall,
    what: 'a negative length',
    typed: '-2',
    says: ['is -2', 'at least 0.001 mm, at most 40 mm', 'larger value', 'still uses 1.65 mm'],
  },
  {
    what: 'a word for a number',
    pointer: '/purge/prePurgeFlow',
    typed: 'plenty',
    says: ['cannot be read as a number', 'still uses 10'],
    button: 'Set pre-purge flow to 10',
    kept: 10,
    read: (job) => job.purge.prePurgeFlow,
  },
  {
    what: 'a word for a rate that is an example',
    pointer: '/rates/tax/value',
    typed: 'later',
    says: ['cannot be read as a number', 'still uses 20'],
    button: 'Set tax to 20',
    kept: 20,
    read: (job) => (job.rates.tax.example ? job.rates.tax.value : null),
  },
  {
    what: 'a wall over half of the diameter',
    pointer: '/tube/wall',
    typed: '25',
    says: ['no bore is left', 'It is 25.0 mm', 'at most 19.1 mm', 'Type a thinner wall'],
    offers: 'Set wall to',
    read: (job) => job.tube.wall,
  },
  {
    what: 'a leg too short for its bend',
    pointer: '/frame/leftLeg/value',
    typed: '60',
    says: ['too short for its corner bend', 'It is 60.0 mm', 'Make the leg longer'],
    offers: 'Set left leg to',
    read: (job) => hoop(job).leftLeg.value,
  },
  {
    what: 'a width under its two bends',
    pointer: '/frame/width/value',
    typed: '4 in',
    says: ['too small for the two corner bends', 'It is 101.6 mm', 'Make it wider'],
    offers: 'Set width to',
    read: (job) => hoop(job).width.value,
  },
];

describe('a value that cannot be', () => {
  it.each(CASES)('$what', { timeout: 60_000 }, async (one) => {
    const { pointer, typed, says, read } = one;
    const id = await workshop.store(newJob('hoop'));
    await open(page, id);
    const drawn = await edges().count();
    expect(drawn).toBeGreaterThan(0);

    await type(page, pointer, typed);
    await settled(page);
    const job = await stored(workshop, id);
    const input = await field(page, pointer);
    const place = around(input);
    const said = await textOf(place);
    for (const part of says) expect(said).toContain(part);
    expect([await input.inputValue(), job.asTyped[pointer]]).toEqual([typed, typed]);

    let mended: number | null;
    let button: string;
    if ('offers' in one) {
      const { data, wayOut } = (await planOf(workshop, job)).findings.find(({ field: at }) => at === pointer)!;
      expect(said).toMatch(new RegExp(`at (least|most) ${Number(data['high'] ?? data['low']).toFixed(1)} mm`));
      mended = Number(wayOut!.value);
      button = `${one.offers} ${String(Math.round(mended * 1000) / 1000)} mm`;
    } else {
      expect(read(job)).toBe(one.kept);
      mended = one.kept;
      button = one.button;
    }
    expect(await edges().count()).toBe(drawn);
    expect(await page.getByText('Last possible frame', { exact: true }).count()).toBe('offers' in one ? 1 : 0);

    await place.getByRole('button', { name: button, exact: true }).click();
    await settled(page);
    await place.getByRole('button', { name: /^Set / }).waitFor({ state: 'detached' });
    expect(await textOf(place)).not.toContain(says[0]);
    expect(await input.getAttribute('aria-invalid')).toBe('false');
    expect(await edges().count()).toBe(drawn);
    expect(await page.getByText('Last possible frame', { exact: true }).count()).toBe(0);
    expect(read(await stored(workshop, id))).toBe(mended);
  });

  it('is still there with its mark after a reload', { timeout: 60_000 }, async () => {
    const id = await workshop.store();
    await open(page, id);
    await type(page, '/tube/wall', 'thin');
    await type(page, '/machine/dies/0/radius', '-5');
    await settled(page);
    await page.reload();
    await settled(page);
    for (const [pointer, typed, kept] of [
      ['/tube/wall', 'thin', 'still uses 1.65 mm'],
      ['/machine/dies/0/radius', '-5', 'still uses 114.3 mm'],
    ] as const) {
      const input = await field(page, pointer);
      expect(await input.inputValue()).toBe(typed);
      expect(await input.getAttribute('aria-invalid')).toBe('true');
      expect(await textOf(around(input))).toContain(kept);
    }
  });

  it('does not stand in the way of other values', { timeout: 60_000 }, async () => {
    const id = await workshop.store();
    await open(page, id);
    await type(page, '/tube/wall', '-2');
    await type(page, '/frame/width/value', '960');
    await settled(page);
    const job = await stored(workshop, id);
    expect([job.tube.wall, hoop(job).width.value]).toEqual([1.65, 960]);
    expect(await page.locator('figure svg').getByText('960.0', { exact: true }).count()).toBeGreaterThan(0);
    expect(await (await field(page, '/tube/wall')).inputValue()).toBe('-2');
  });
});

describe('a frame that came back so', () => {
  const radio = (name: string): Locator => stage(page, 'ways').getByRole('radio', { name, exact: true });
  const told = (): Promise<string> => textOf(page.locator('#stage-cameBack .finding, #stage-ways .finding'));

  it(
    'that no cut can reach the target: says which, by how much, and takes another way',
    { timeout: 60_000 },
    async () => {
      const id = await workshop.store();
      await open(page, id);
      // it and the other readings leave a width that no cut can mend
      await type(page, '/cameBack/readings/0/value', '100');
      await settled(page);
      const { findings, correction } = await planOf(workshop, await stored(workshop, id));
      const out = findings.find(({ code }) => code === 'target-out-of-reach')!;
      await seen(told).toContain('No cut brings this point where it must be');
      for (const part of [String(out.data['name']), `It is off by ${Number(out.data['value']).toFixed(1)} mm`])
        expect(await told()).toContain(part);
      expect(correction!.recommended).toBe('new-frame');
      expect(await radio('new frame').isChecked()).toBe(true);
      expect(await edges().count()).toBeGreaterThan(0);
    },
  );

  it('that cutting what may be cut parts nothing: offers no cut', { timeout: 60_000 }, async () => {
    const id = await workshop.store();
    await open(page, id);
    await stage(page, 'ways').locator('summary', { hasText: 'Cut and close' }).click();
    await stage(page, 'ways').getByRole('checkbox', { name: 'crossbar 1', exact: true }).check();
    await settled(page);
    expect(await told()).toContain('Cutting the members that may be cut does not part the frame');
    expect(await radio('splice with the fewest welds').count()).toBe(0);
    await stage(page, 'ways').getByRole('checkbox', { name: 'hoop', exact: true }).check();
    await settled(page);
    expect(await radio('splice with the fewest welds').isChecked()).toBe(true);
    expect(await told()).not.toContain('does not part the frame');
  });

  it('that own joints part nothing: says so and takes them back', { timeout: 60_000 }, async () => {
    const job = landingStage();
    const joints = [{ member: 'crossbar 1', station: 300 }];
    const id = await workshop.store({ ...job, closing: { ...job.closing, way: 'splice-own', joints } });
    await open(page, id);
    expect(await told()).toContain('These joints do not part the frame');
    expect(await radio('splice with your own joints').count()).toBe(0);
    expect(await radio('splice with the fewest welds').isChecked()).toBe(true);
    await stage(page, 'ways').getByRole('button', { name: 'Put all joints back to the plan’s own' }).click();
    await settled(page);
    expect(await told()).not.toContain('do not part the frame');
    expect((await stored(workshop, id)).closing).toMatchObject({ way: null, joints: [] });
  });

  it('that no tube has the sizes that were read: keeps the wanted frame in sight', { timeout: 60_000 }, async () => {
    const job = landingStage();
    const readings = job.cameBack!.readings.filter((one) => one.reading === 'size' && one.check === 'left-leg');
    const id = await workshop.store({ ...job, cameBack: { ...job.cameBack!, readings } });
    await open(page, id);
    await type(page, '/cameBack/readings/0/value', '5');
    await settled(page);
    await seen(told).toContain('would be shorter than nothing: no frame has them');
    expect(await stage(page, 'ways').innerText()).toContain('No way is worked out yet');
    expect(await page.locator('figure svg .wanted path.edge').count()).toBeGreaterThan(0);
    await type(page, '/cameBack/readings/0/value', '701');
    await settled(page);
    await stage(page, 'ways').getByRole('radio').first().waitFor();
  });
});
