import { describe, expect, it } from 'vitest';
import type { Reading } from '../../server/job/came-back.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import type { Way } from '../../server/plan/correction.ts';
import { plan } from '../../server/solver/plan.ts';
import { sizeRead } from './size-read.ts';

const fewest = (job: Job): Way | undefined => plan(job).correction!.ways.find(({ key }) => key === 'splice-fewest');

const measured = (job: Job, ...readings: Reading[]): Job => ({
  ...job,
  cameBack: { tapeAccuracy: 1, angleAccuracy: 0.2, readings },
});

describe('a run whose second bend was turned about the tube by too little or too much', () => {
  const run = newJob('run');
  it.each([60, 33, 5, -30, -80, 120, 200])(
    'at %i degrees where 90 were wanted: one cut, the rest turned back',
    (at) => {
      const turn: Reading = {
        reading: 'turn',
        member: 'run',
        piece: 4,
        what: 'rotation',
        value: at,
        accuracy: null,
      };
      const way = fewest(measured(run, turn))!;
      expect(way.joints).toHaveLength(1);
      expect(way.joints[0]!.twist.value).toBeCloseTo(90 - at, 0);
      expect(way.joints[0]!.kind).not.toBe('dart');
      expect(way.steps.map(({ key }) => key)).toContain('scribe-across');
      expect(Math.max(way.fixingMisfit.value, way.cornerMisfit.value)).toBeLessThan(1);
    },
  );
});

describe('a hoop whose straights are all of a wrong length', () => {
  const hoop = newJob('hoop');
  it.each([
    [915, 575, ['let-in', 'slug', 'let-in'], 5],
    [885, 575, ['let-in', 'let-in', 'let-in'], 6],
  ] as const)('%i wide where 900 were wanted, legs of %i where 600 were', (width, leg, kinds, welds) => {
    const read = [
      sizeRead('width-at-corners', width),
      sizeRead('width-at-feet', width),
      sizeRead('left-leg', leg),
      sizeRead('right-leg', leg),
    ];
    const way = fewest(measured(hoop, ...read))!;
    expect(way.joints.map(({ kind }) => kind)).toEqual(kinds);
    expect(way.welds.value).toBe(welds);
    expect(way.cornerMisfit.value).toBeLessThan(0.1);
    for (const one of way.after) expect(Math.abs(one.difference.value), one.key).toBeLessThan(0.2);
  });
});

it('a straight tube that is short is lengthened by one piece', () => {
  const way = fewest(measured(newJob('straight'), { ...sizeRead('length', 980), reference: 'centre' } as Reading))!;
  expect(way.joints.map(({ kind }) => kind)).toEqual(['let-in']);
  expect(way.welds.value).toBe(2);
  expect(way.fixingMisfit.value).toBeLessThan(0.01);
});

it('what is bent again is measured once: a leg that was cut back has its length', () => {
  const offset = newJob('offset');
  const wanted = plan(offset).frame!.checks.find(({ key }) => key === 'last-length')!;
  const longer: Reading = {
    ...sizeRead('last-length', wanted[wanted.reference].value + 25),
    reference: wanted.reference,
  } as Reading;
  for (const way of plan(measured(offset, longer)).correction!.ways) {
    const last = way.after.find(({ key }) => key === 'last-length')!;
    expect(Math.abs(last.difference.value), way.key).toBeLessThan(0.1);
  }
});
