import { describe, expect, it } from 'vitest';
import { newJob } from '../../../server/job/default-job.ts';
import type { Site } from '../../../server/job/site.ts';
import { planLevel } from '../../../server/solver/site/level/plan-level.ts';
import { angleBetween } from '../../../server/solver/geometry/vector.ts';
import { faultsOf } from '../figures-in.ts';
import { degrees, height, incline, levelOf, levelStudy, lyingBoat, X, Y, Z } from './level-study.ts';

const planned = (changes: Partial<Site>) => planLevel(levelStudy(changes));
const codes = (changes: Partial<Site>) =>
  planned(changes).findings.map(({ code, grade, field }) => [code, grade, field]);
const post = { name: 'post', direction: { by: 'axes' as const, vector: { ...Z } } };

describe('how it lies', () => {
  const { level, findings } = planned({ level: lyingBoat });

  it('is what the last set says, each reading as sure as the level', () => {
    expect(findings).toEqual([]);
    expect(level).toMatchObject({ known: true, set: 1, taken: '2026-05-04T09:40', goodFor: 2, drift: null });
    expect(level.trim.value).toBeCloseTo(-0.8, 12);
    expect(level.list.value).toBeCloseTo(1.7, 12);
    expect(level.trim.band!.plusMinus).toBeCloseTo(0.1, 9);
    expect(level.list.band!.plusMinus).toBeCloseTo(0.1, 9);
    expect(level.trim.band!.from).toEqual(['site-level']);
    expect(level.tilt.value).toBeCloseTo(degrees(angleBetween(level.up, Z)), 12);
    expect(level.tilt.value).toBeCloseTo(Math.hypot(0.8, 1.7), 3);
    expect(level.tilt.band!.plusMinus).toBeCloseTo(0.1, 3);
    expect(faultsOf(level)).toEqual([]);
  });

  it('comes with every reading beside what is left over', () => {
    expect(level.residuals.map(({ field, measured, residual }) => [field, measured.value, residual.value])).toEqual([
      ['/site/level/sets/0/readings/0/angle', -0.8, 0],
      ['/site/level/sets/0/readings/1/angle', 1.7, 0],
    ]);
  });

  it('marks the reading that disagrees', () => {
    const readings = [incline(X, 1, 0.1), incline(X, 1, 0.1), incline(X, 1.6, 0.1), incline(Y, 0), height(X, 5)];
    const { residuals } = planned({ level: levelOf(readings) }).level;
    expect(residuals.map(({ disagrees }) => disagrees)).toEqual([false, false, true, false, false]);
    expect(residuals[2]!.residual.value).toBeCloseTo(0.4, 9);
    expect(residuals[2]!.measured.band!.plusMinus).toBe(0.1);
    expect(residuals[4]).toMatchObject({ field: '/site/level/sets/0/readings/4/height', measured: { unit: 'mm' } });
  });

  it('is as its own axes have it where the last set does not tell, whatever was before', () => {
    const { level } = planned({ level: levelOf([incline(X, -0.8), incline(Y, 1.7)], [incline(X, 1)]) });
    expect(level).toMatchObject({ known: false, set: 0, taken: '', up: Z, residuals: [], drift: null });
    expect(level.trim.value).toBe(0);
    expect(level.trim.band).toBeNull();
    expect(faultsOf(level)).toEqual([]);
  });
});

describe('nobody read a level', () => {
  const { standing } = newJob('hoop').site;
  const slope = { along: { ...X }, angle: 1, to: 'level' as const };

  it('is of no matter on an empty site', () => expect(codes({})).toEqual([]));

  it.each<[string, Partial<Site>]>([
    ['a direction', { directions: [post] }],
    ['a slope to level', { standing: { ...standing, slopes: [slope] } }],
    [
      'a height over level',
      {
        standing: {
          ...standing,
          height: {
            at: { member: 'hoop', spot: 'start', number: 1, distance: 0 },
            over: { x: 0, y: 0, z: 0 },
            value: 1,
            to: 'level',
          },
        },
      },
    ],
    [
      'a point by plumb line',
      {
        points: [{ name: 'a', at: { by: 'plumb', from: 'b', ahead: 1, port: 1, up: 1, set: 1, accuracy: null } }],
      },
    ],
  ])('matters with %s', (what, changes) => {
    // the legs of a frame that is turned or lifted to level are as long as that has it
    const grade = what.includes('level') ? 'caution' : 'note';
    expect(codes(changes)).toEqual([['level-not-read', grade, '/site/level/sets']]);
  });

  it('is of no matter for a slope against the structure', () =>
    expect(codes({ standing: { ...standing, slopes: [{ ...slope, to: 'structure' }] } })).toEqual([]));
});

describe('when it was read', () => {
  const untimed = (...sets: Parameters<typeof levelOf>) => {
    const level = levelOf(...sets);
    return { ...level, sets: level.sets.map((set) => ({ ...set, taken: '' })) };
  };

  it('is missed in the last set alone', () => {
    const both = untimed([incline(X, 1), incline(Y, 1)], [incline(X, 1), incline(Y, 1)]);
    expect(codes({ level: both })).toEqual([['level-no-time', 'note', '/site/level/sets/1/taken']]);
  });

  it('is not missed in a set without readings', () => expect(codes({ level: untimed([]) })).toEqual([]));
});

describe('a second set', () => {
  const moved = (by: number) =>
    levelOf([incline(X, 1), incline(Y, 0)], [incline(X, 9)], [incline(X, 1 + by), incline(Y, 0)]);

  it('says what has changed since the latest one that tells', () => {
    const { drift } = planned({ level: moved(0.4) }).level;
    expect(drift).toMatchObject({ set: 1, taken: '2026-05-04T09:40' });
    expect(drift!.trim.value).toBeCloseTo(0.4, 12);
    expect(drift!.list.value).toBeCloseTo(0, 12);
    expect(drift!.turn.value).toBeCloseTo(0.4, 12);
    // both were read: 0.1 twice; what is off sideways turns 0.4 a little further
    expect(drift!.turn.band!.plusMinus).toBeCloseTo(Math.SQRT2 * 0.1, 2);
    expect(drift!.trim.band!.plusMinus).toBeCloseTo(Math.SQRT2 * 0.1, 6);
    expect(faultsOf(drift)).toEqual([]);
  });

  it('is a caution from three times its accuracy on', () => {
    expect(codes({ level: moved(0.42) })).toEqual([]);
    expect(planned({ level: moved(0.43) }).findings).toMatchObject([
      { code: 'level-drift', grade: 'caution', field: '/site/level/sets/2', data: { trim: 0.43, list: 0 } },
    ]);
  });
});

it('a typed direction that is none is said', () => {
  const none = { name: 'none', direction: { by: 'axes' as const, vector: { x: 0, y: 0, z: 0 } } };
  expect(codes({ level: lyingBoat, directions: [post, none] })).toEqual([
    ['direction-none', 'stop', '/site/directions/1/direction/vector'],
  ]);
});
