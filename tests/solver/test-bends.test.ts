import { describe, expect, it } from 'vitest';
import type { Machine, TestBend } from '../../server/job/machine.ts';
import type { Job } from '../../server/job/job.ts';
import { newJob } from '../../server/job/default-job.ts';
import { bendsOfTube } from '../../server/solver/bending/test-bends.ts';
import { plan } from '../../server/solver/plan.ts';
import { BENDER, testBend, TUBE } from './made-up-shop.ts';

const RADIUS = BENDER.dies[0]!.radius;
const counted = (bends: readonly TestBend[], heat = '') => bendsOfTube(bends, { ...TUBE, heat }, RADIUS);

/** A job whose record holds these bends. */
function withRecord(bends: TestBend[], change: { machine?: Partial<Machine>; tube?: Partial<Job['tube']> } = {}): Job {
  const job = newJob('offset');
  const springback: Machine['springback'] = { method: 'test-bends', bends };
  return {
    ...job,
    tube: { ...job.tube, ...change.tube },
    machine: { ...job.machine, springback, ...change.machine },
  };
}

describe('a test bend counts', () => {
  const of = (more: Partial<Omit<TestBend, 'measuredAngle'>>) => testBend(90, 87, null, more);

  it.each([
    ['of the same tube printed otherwise', { tubeDiameter: 38.1 + 0.04 }, 1],
    ['not of one 0.2 mm thicker', { tubeDiameter: 38.3 }, 0],
    ['of a wall 2 % thicker', { wall: 1.65 * 1.02 }, 1],
    ['not of one 4 % thicker', { wall: 1.65 * 1.04 }, 0],
    ['nor 4 % thinner', { wall: 1.65 * 0.96 }, 0],
    ['of a die measured to 0.4 %', { dieRadius: RADIUS * 1.004 }, 1],
    ['not of one 0.6 % larger', { dieRadius: RADIUS * 1.006 }, 0],
  ])('%s', (_, more, count) => {
    expect(counted([testBend(90, 87, null, { wall: 9 }), of(more)]).ofTube).toEqual(count === 1 ? [1] : []);
    expect(counted([of(more)]).bends).toHaveLength(count);
  });

  it('only once it is measured', () => {
    const waiting: TestBend = { ...of({}), measuredAngle: null };
    expect(counted([waiting, of({})])).toEqual({ bends: [of({})], heat: '', ofTube: [1], others: 0 });
    const { springback, findings } = plan(withRecord([waiting, of({}), testBend(45, 43.4)]));
    expect(springback).toMatchObject({ method: 'fitted', bendsTyped: 3, bendsOfTube: [1, 2] });
    expect(findings.map(({ code }) => code)).not.toContain('test-bends-no-fit');
  });

  it('first of the job’s own heat, where that holds two angles; else of every heat', () => {
    const own = [of({ heat: 'A17' }), testBend(45, 43.5, null, { heat: ' A17 ' })];
    const other = [of({ heat: 'B4' }), of({})];
    expect(counted([...own, ...other], 'A17')).toEqual({ bends: own, heat: 'A17', ofTube: [0, 1, 2, 3], others: 0 });
    // one angle of the own heat draws no line
    const one = [own[0]!, { ...own[0]!, measuredAngle: 86.8 }];
    expect(counted([...one, ...other], 'A17')).toEqual({
      bends: [...one, ...other],
      heat: '',
      ofTube: [0, 1, 2, 3],
      others: 0,
    });
    expect(counted([...own, ...other], '')).toEqual({
      bends: [...own, ...other],
      heat: '',
      ofTube: [0, 1, 2, 3],
      others: 0,
    });
  });

  it('and the plan says of how many it is, and of which heat', () => {
    const bends = [
      testBend(45, 43.5, null, { heat: 'A17' }),
      testBend(120, 116, null, { heat: 'A17' }),
      testBend(90, 80, null, { heat: 'B4' }),
      testBend(90, 80, null, { tubeDiameter: 48.3 }),
    ];
    const { springback, findings } = plan(withRecord(bends, { tube: { heat: 'A17' } }));
    expect(springback).toMatchObject({ method: 'fitted', bendsTyped: 4, bendsOfTube: [0, 1, 2] });
    expect(springback!.fit!.heat).toBe('A17');
    expect(springback!.fit!.bends).toEqual([
      { commanded: 45, springback: 1.5 },
      { commanded: 120, springback: 4 },
    ]);
    expect(findings.find(({ code }) => code === 'test-bends-other-tube')!.data).toEqual({ others: 1, count: 4 });
  });

  it('for nothing while the springback is asked for from theory', () => {
    const typed = withRecord([testBend(45, 40, 150, { scribedBefore: 100, scribedAfter: 103 }), testBend(120, 110)]);
    const theory: Job = {
      ...typed,
      machine: { ...typed.machine, springback: { ...typed.machine.springback, method: 'theory' } },
    };
    const { springback, frame, findings } = plan(theory);
    const none = plan(newJob('offset'));
    expect(springback!.bendTo90).toEqual(none.springback!.bendTo90);
    expect(frame!.members).toEqual(none.frame!.members);
    expect(findings).toEqual(none.findings);
  });
});

describe('lines scribed before and after', () => {
  const scribed = (angle: number, before: number, after: number | null) =>
    testBend(angle, 0.97 * angle, null, { scribedBefore: before, scribedAfter: after });

  it('give the stretch of each bend by its commanded angle, and every later mark moves by it', () => {
    // 0.4 mm and 0.02 mm for each degree
    const bends = [scribed(40, 200, 201.2), scribed(90, 400, 402.2), scribed(140, 300, 303.2), scribed(100, 300, null)];
    const made = plan(withRecord(bends));
    const none = plan(withRecord(bends.map((bend) => ({ ...bend, scribedBefore: null, scribedAfter: null }))));
    const [first, second] = made.frame!.members[0]!.bends;
    const command = first!.angleToBendTo.value;
    expect(made.springback!.stretchAt90.value).toBeCloseTo(0.4 + (0.02 * 90) / 0.97, 9);
    const stretch = 0.4 + 0.02 * command;
    const [plainFirst, plainSecond] = none.frame!.members[0]!.bends;
    expect(first!.startMark.value).toBeCloseTo(plainFirst!.startMark.value, 9);
    expect(second!.startMark.value).toBeCloseTo(plainSecond!.startMark.value - stretch, 9);
    expect(made.frame!.members[0]!.cutLength.value).toBeCloseTo(
      none.frame!.members[0]!.cutLength.value - 2 * stretch,
      9,
    );
    expect(made.frame!.members[0]!.developedLength.value).toBe(none.frame!.members[0]!.developedLength.value);
  });

  it('of one angle alone stand for all in proportion; without any the typed stretch stands', () => {
    const bends = [scribed(90, 200, 203), scribed(90, 200, 203.1), testBend(120, 116.4)];
    const typed = { machine: { stretchPerBend: 1.25 } };
    const { springback } = plan(withRecord(bends, typed));
    const command = springback!.bendTo90.value;
    expect(springback!.stretchAt90.value).toBeCloseTo((3.05 * command) / 90, 9);
    expect(plan(withRecord([testBend(45, 43.4), testBend(120, 116.4)], typed)).springback!.stretchAt90.value).toBe(
      1.25,
    );
  });

  it('that no bend can grow by are left out, as is a radius that closed on release', () => {
    const sane = [scribed(45, 200, 201.5), scribed(120, 200, 204)];
    const wild = [scribed(45, 300, 400), scribed(120, 300, 280), testBend(90, 87, 60)];
    const both = plan(withRecord([...sane, ...wild]));
    const alone = plan(withRecord(sane));
    expect(both.springback!.stretchAt90.value).toBeCloseTo(alone.springback!.stretchAt90.value, 1);
    const told = both.findings.filter(({ code }) => code === 'test-bend-impossible').map(({ field }) => field);
    expect(told).toEqual(
      [2, 3, 4].map(
        (row) => `/machine/springback/bends/${String(row)}/${row === 4 ? 'measuredRadius' : 'scribedAfter'}`,
      ),
    );
    expect(both.springback!.radiusAfterRelease.value).toBeGreaterThan(114.3);
  });
});

describe('the radius after release', () => {
  it('is the mean of those measured on this die, with half their spread', () => {
    const bends = [
      testBend(45, 43.5, 117),
      testBend(90, 87, 119),
      testBend(120, 116),
      testBend(90, 87, 150, { dieRadius: 140 }),
    ];
    const { radiusAfterRelease } = plan(withRecord(bends)).springback!;
    expect(radiusAfterRelease.value).toBe(118);
    expect(radiusAfterRelease.band!.plusMinus).toBe(1);
    expect(radiusAfterRelease.band!.from).toContain('test-bends');
  });

  it('where they agree is no surer than a gauge reads one: half a percent', () => {
    const { radiusAfterRelease } = plan(withRecord([testBend(45, 43.5, 118), testBend(90, 87, 118)])).springback!;
    expect(radiusAfterRelease.value).toBe(118);
    expect(radiusAfterRelease.band!.plusMinus).toBeCloseTo(0.59, 12);
  });

  it('is theory’s where nobody measured one', () => {
    const record = withRecord([testBend(45, 43.5), testBend(90, 87)]);
    expect(plan(record).springback!.radiusAfterRelease.value).toBe(
      plan(newJob('offset')).springback!.radiusAfterRelease.value,
    );
  });
});
