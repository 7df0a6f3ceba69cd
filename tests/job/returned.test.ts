import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { parseJob } from '../../server/job/validate.ts';

const ORIGIN = { x: 0, y: 0, z: 0 };
const START = { member: 'hoop', spot: 'start', number: 1, distance: 0 };
const FOOT = { fixing: 'foot', name: '', at: START, off: ORIGIN, lands: null, tolerance: null, plate: null };
const SIZE = { reading: 'size', check: 'left-leg', index: 0, reference: 'outside', value: null, accuracy: null };

const problems = (part: object): readonly string[] => {
  const parsed = parseJob({ ...newJob('hoop'), ...part });
  return parsed.ok ? [] : parsed.problems.map(({ code, field }) => `${code} ${field}`);
};
const cameBack = (...readings: object[]) => ({ cameBack: { tapeAccuracy: 1, angleAccuracy: 0.2, readings } });
const fixing = (...points: object[]) => ({ fixing: points });

describe('what came back, held against the schema', () => {
  it('takes every kind of reading with nothing read yet', () => {
    const places = { from: START, to: { ...START, spot: 'finish' } };
    const nothing = { value: null, accuracy: null };
    const piece = { member: 'hoop', piece: 2, ...nothing };
    const readings = [
      SIZE,
      { reading: 'distance', ...places, reference: 'inside', ...nothing },
      { reading: 'piece', what: 'length', ...piece },
      { reading: 'turn', what: 'rotation', ...piece },
      { reading: 'bevel', ...places, ...nothing },
      { reading: 'level', at: START, ...nothing },
      { reading: 'point', at: START, x: null, y: 3, z: null, accuracy: null },
    ];
    expect(problems(cameBack(...readings))).toEqual([]);
  });

  it('answers for the kind of reading that was meant', () => {
    const at = '/cameBack/readings';
    expect(problems(cameBack({ ...SIZE, value: -1 }))).toEqual([`below-range ${at}/0/value`]);
    expect(problems(cameBack(SIZE, { ...SIZE, reading: 'guess' }))).toEqual([`not-one-of ${at}/1/reading`]);
    expect(problems(cameBack({ ...SIZE, accuracy: 0 }))).toEqual([`below-range ${at}/0/accuracy`]);
  });
});

describe('what a frame is fastened to, held against the schema', () => {
  it('takes all three kinds', () => {
    const points = ['foot', 'pad', 'hole'].map((kind) => ({ ...FOOT, fixing: kind }));
    expect(problems(fixing(...points))).toEqual([]);
  });

  it('answers for the kind that was meant', () => {
    expect(problems(fixing({ ...FOOT, fixing: 'hole', tolerance: 0 }))).toEqual(['below-range /fixing/0/tolerance']);
    const plate = { thickness: 0, hole: -1 };
    expect(problems(fixing({ ...FOOT, fixing: 'pad', plate }))).toEqual([
      'below-range /fixing/0/plate/thickness',
      'below-range /fixing/0/plate/hole',
    ]);
    expect(problems(fixing({ ...FOOT, fixing: 'nail' }))).toEqual(['not-one-of /fixing/0/fixing']);
    // posts are things of the site
    expect(problems(fixing({ ...FOOT, fixing: 'post' }))).toEqual(['not-one-of /fixing/0/fixing']);
  });
});
