import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import type { OperationRate } from '../../server/job/rates.ts';
import type { Figure } from '../../server/plan/figure.ts';
import type { PurgePlan } from '../../server/plan/purge.ts';
import { plan } from '../../server/solver/plan.ts';
import { pricedAs } from '../../server/solver/pricing.ts';
import { purgeWork } from '../../server/solver/purge/purge-work.ts';
import {
  contextOf,
  holes,
  hoopJob,
  jobOf,
  LEG,
  MAIN,
  member,
  purged,
  seat,
  SPLICE,
  withPurge,
  type Cut,
} from './purge-frames.ts';
import { formulaValue } from './formula-value.ts';

/** Times of an operation [min]. */
const timed = (setUp: number, each: number): OperationRate => {
  const own = (value: number) => ({ value, since: '', example: false });
  return { hour: own(5000), machine: null, setUp: own(setUp), each: own(each), perMetre: own(0) };
};

const planOf = (...made: Parameters<typeof purged>): PurgePlan => purged(...made).purge!;

/** What is in each set-up: the tubes of its chambers, and its welds. */
const inside = ({ setups, chambers }: PurgePlan) =>
  setups.map((setUp) => ({
    tubes: setUp.chambers.map((number) => chambers.find((one) => one.number === number)!.stretches[0]!.member),
    welds: setUp.welds,
  }));

/** A tube by itself, far from the main one. */
const APART = member('apart', [
  [0, 2000, 0],
  [900, 2000, 0],
]);

describe('set-ups', () => {
  it('a saddle without a hole has both of its bores in one', () => {
    expect(inside(planOf(jobOf([MAIN, LEG])))).toEqual([{ tubes: ['main', 'leg'], welds: ['S1'] }]);
    expect(inside(planOf(jobOf([MAIN, LEG], holes({ underSaddles: 'all' }))))).toEqual([
      { tubes: ['main'], welds: ['S1'] },
    ]);
  });

  it('bores that hang together by other bores are in one too', () => {
    const second = { ...LEG, name: 'second', start: seat('leg') };
    const between = planOf(
      jobOf([
        MAIN,
        LEG,
        {
          ...second,
          path: member('', [
            [500, 300, 0],
            [900, 300, 0],
          ]).path,
        },
      ]),
    );
    expect(inside(between)).toEqual([{ tubes: ['main', 'leg', 'second'], welds: ['S1', 'S2'] }]);
    expect(inside(planOf(hoopJob([300])))).toEqual([{ tubes: ['hoop', 'crossbar 1'], welds: ['S1', 'S2'] }]);
  });

  it('bores that share no weld are apart', () => {
    const cuts: Cut[] = [...SPLICE, { member: 'apart', station: 450 }];
    const made = planOf(jobOf([MAIN, APART]), cuts);
    expect(inside(made)).toEqual([
      { tubes: ['main'], welds: ['1'] },
      { tubes: ['apart'], welds: ['2'] },
    ]);
  });

  it('come in the order of their first welds, chambers numbered through all of them', () => {
    // the tube that is welded first comes first, though the frame has it last
    const cuts: Cut[] = [{ member: 'apart', station: 450 }, ...SPLICE];
    const made = planOf(jobOf([MAIN, LEG, APART]), cuts);
    expect(inside(made)).toEqual([
      { tubes: ['apart'], welds: ['1'] },
      { tubes: ['main', 'leg'], welds: ['2', 'S1'] },
    ]);
    expect(made.chambers.map(({ number, setup }) => [number, setup])).toEqual([
      [1, 1],
      [2, 2],
      [3, 2],
    ]);
    expect(made.setups.map(({ number, chambers }) => [number, chambers])).toEqual([
      [1, [1]],
      [2, [2, 3]],
    ]);
  });

  it('of pockets between dams have each weld once, with every pocket that it heats', () => {
    const made = planOf(hoopJob([200, 350], { extent: 'dams' }), [{ member: 'hoop', station: 150 }]);
    const welds = made.setups.flatMap((setUp) => setUp.welds);
    expect([...welds].sort()).toEqual(['1', 'S1', 'S2', 'S3', 'S4']);
    for (const setUp of made.setups)
      for (const chamber of made.chambers) {
        const shares = chamber.welds.some((weld) => setUp.welds.includes(weld));
        expect(setUp.chambers.includes(chamber.number)).toBe(shares);
        expect(chamber.setup === setUp.number).toBe(shares);
      }
  });

  it('a meter reading is that of the chamber with its number', () => {
    const job = jobOf([MAIN, LEG, APART], { meter: [{ chamber: 1, minutes: 1, oxygen: 20_000 }] });
    const cuts: Cut[] = [{ member: 'apart', station: 450 }, ...SPLICE];
    const [read] = planOf(job, cuts).meters;
    const { volume } = planOf(job, cuts).chambers[0]!;
    // 0.9 m of bore, one minute of 10 L/min
    expect(volume.value).toBeCloseTo((Math.PI * 34.8 ** 2 * 900) / 4e6, 9);
    expect(read?.wellMixed.value).toBeCloseTo(2 + 209_498 * Math.exp(-10 / volume.value), 6);
  });
});

describe('what set-ups let out', () => {
  const room = (job: Job) => planOf(job).room;
  /** Fresh air that keeps a room at 20.5 % against the largest flow, for each L/min of it. */
  const largest = (job: Job): number =>
    room(job).airToStaySafe.working.inputs.find(({ name }) => name === 'largest-flow')!.value;

  it('is the flow of as many hoses, and of the torch beside them', () => {
    const job = (prePurgeFlow: number, weldingFlow: number) => jobOf([MAIN, LEG], { prePurgeFlow, weldingFlow });
    expect(largest(job(20, 5))).toBe(40);
    expect(largest(job(10, 8))).toBe(2 * 8 + 8);
    expect(largest(jobOf([MAIN, LEG], { ...holes({ underSaddles: 'all' }), prePurgeFlow: 20 }))).toBe(20);
  });

  it('is the most of any of them, not the sum', () => {
    const cuts: Cut[] = [{ member: 'apart', station: 450 }];
    const made = planOf(jobOf([MAIN, LEG, APART], { prePurgeFlow: 20 }), cuts);
    const flow = made.room.airToStaySafe.working.inputs.find(({ name }) => name === 'largest-flow');
    expect([made.setups.length, flow?.value]).toEqual([2, 40]);
  });

  it('runs for the time of welding on the floor', () => {
    const still = jobOf([MAIN, LEG], { hold: 60 });
    const context = contextOf(withPurge(still, { room: { ...still.purge.room, fanFlow: 200 } }));
    const { seconds, wait, arcs } = purgeWork(context);
    expect(arcs).toBe(76);
    expect(seconds).toBeCloseTo(wait + 76 / 0.2 + 60, 9);
    const minutes = planOf(context.job).room.oxygenFan.working.inputs.find(({ name }) => name === 'job-time');
    expect(minutes?.value).toBeCloseTo(seconds / 60, 9);
  });
});

/** All figures in a value, with the way to them. */
function figuresIn(value: unknown, at = ''): [string, Figure][] {
  if (typeof value !== 'object' || value === null) return [];
  if ('working' in value) return [[at, value as Figure]];
  return Object.entries(value).flatMap(([key, inner]) => figuresIn(inner, `${at}/${key}`));
}

describe('workings', () => {
  const frame = hoopJob([200, 350]);
  const labour = { ...frame.rates.labour, purge: timed(10, 4) };
  const jobs: readonly Job[] = [
    frame,
    { ...frame, rates: { ...frame.rates, labour } },
    { ...hoopJob([300], { extent: 'dams', hold: 45, weldingFlow: 7 }), tube: { ...frame.tube, wall: 3.2 } },
    jobOf([MAIN, LEG, APART], holes({ underSaddles: 'all' })),
    jobOf([MAIN, LEG], { model: 'long-tube' }),
    newJob('ring'),
  ];
  const WANTED = [
    /^\/(purge|torch|job)Gas$/u,
    /^\/extents\/\d\/(setups|wait|gasBefore|gas|minutes)$/u,
    /^\/setups\/\d+\/wait$/u,
    /^\/chambers\/\d+\/(plug|wellMixed)\/(time|gas|volumes)$/u,
    /^\/chambers\/\d+\/paths\/\d+\/share$/u,
    /^\/leakLimit$/u,
  ];

  it.each(jobs.map((job, index) => [index, job] as const))(
    'job %d: come to the number by what they state',
    (_, job) => {
      const { purge } = plan(job);
      const seen = WANTED.map(() => 0);
      for (const [at, one] of figuresIn(purge)) {
        const wanted = WANTED.findIndex((pattern) => pattern.test(at));
        if (wanted < 0) continue;
        const value = formulaValue(one);
        expect(value, `${at}: ${one.working.formula}`).toBeDefined();
        expect(Math.abs(value! - one.value), at).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(one.value)));
        seen[wanted]! += 1;
      }
      expect(seen.filter((count) => count > 0).length).toBeGreaterThanOrEqual(WANTED.length - 1);
    },
  );

  it('none is made of its own result', () => {
    // but for the cooling time, which stands as the equation that it solves
    const solved = '/cooling';
    for (const job of jobs)
      for (const [at, { working }] of figuresIn(plan(job).purge)) {
        if (at === solved) continue;
        const [, result] = /^(\S+) = /u.exec(working.formula) ?? [];
        expect(
          working.inputs.map(({ symbol }) => symbol),
          at,
        ).not.toContain(result ?? '');
      }
  });

  it('of a priced piece of work likewise', () => {
    const gas = contextOf(hoopJob([300]));
    const effort = { welds: 0, cuts: 0, bends: 0, pieces: [], bentTube: 0, joints: [] };
    const work = { effort, welds: [], gas, purge: purgeWork(gas) };
    const { rates } = gas.job;
    const purge = timed(3, 7);
    const priced = pricedAs({ ...gas.job, rates: { ...rates, labour: { ...rates.labour, purge } } }, work);
    expect(formulaValue(priced.purgeGas)).toBeCloseTo(work.purge.purgeGas, 9);
    // one set-up
    expect(priced.purgeSetups.value).toBe(1);
    expect(priced.minutes?.value).toBeCloseTo(3 + 7 + work.purge.wait / 60, 9);
    expect(formulaValue(priced.minutes!)).toBeCloseTo(priced.minutes!.value, 9);
  });

  it('a formula without its input has no value', () => {
    const { purgeGas } = plan(jobs[0]!).purge!;
    const { inputs } = purgeGas.working;
    expect(inputs.length).toBeGreaterThan(6);
    for (const { symbol } of inputs) {
      const fewer = inputs.filter((one) => one.symbol !== symbol);
      expect(formulaValue({ ...purgeGas, working: { ...purgeGas.working, inputs: fewer } }), symbol).toBeUndefined();
    }
  });
});
