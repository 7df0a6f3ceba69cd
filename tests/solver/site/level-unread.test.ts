import { Value } from 'typebox/value';
import { describe, expect, it } from 'vitest';
import { LevelSet } from '../../../server/job/level.ts';
import type { Level, LevelReading } from '../../../server/job/level.ts';
import type { Site } from '../../../server/job/site.ts';
import { describeFinding } from '../../../server/language/finding-words.ts';
import { newJob } from '../../../server/job/default-job.ts';
import { EXACT } from '../../../server/solver/site/laid-site.ts';
import { directionOf } from '../../../server/solver/site/level/directions.ts';
import { levelDoubts } from '../../../server/solver/site/level/level-doubts.ts';
import { planLevel } from '../../../server/solver/site/level/plan-level.ts';
import { solveLevels } from '../../../server/solver/site/level/solve-levels.ts';
import { sitePoints } from '../../../server/solver/site/points/site-points.ts';
import { contextOf, height, incline, levelOf, levelStudy, X, Y, Z } from './level-study.ts';

const READ = [incline(X, -0.8), incline(Y, 1.7)];
const notRead = (reading: LevelReading): LevelReading =>
  reading.reading === 'incline' ? { ...reading, angle: null } : { ...reading, height: null };
const BEGUN = [incline(X, -0.5), notRead(incline(Y, 0))];
const planned = (level: Level, changes: Partial<Site> = {}) => planLevel(levelStudy({ ...changes, level }));

describe('a set that is begun and not read to its end', () => {
  it('leaves the set before in use, and says that it waits', () => {
    const { level } = planned(levelOf(READ, BEGUN));
    expect(level).toMatchObject({ known: true, set: 1, waiting: 2, drift: null });
    expect(level.trim.value).toBeCloseTo(-0.8, 12);
    expect(level.residuals).toHaveLength(2);
  });

  it('leaves the structure as its own axes have it where nothing else is read', () => {
    const { level, findings } = planned(levelOf([notRead(height(X, 0))]), {
      directions: [{ name: 'post', direction: { by: 'axes', vector: { ...Z } } }],
    });
    expect(level).toMatchObject({ known: false, set: 0, waiting: 1, up: Z, residuals: [] });
    // the set says itself that it is not read
    expect(findings).toEqual([]);
  });

  it('is a caution at the first value that is missing, with the set that everything goes by', () => {
    const { levels, findings } = solveLevels(levelOf(READ, BEGUN), EXACT);
    expect(levels[1]).toBeNull();
    const field = '/site/level/sets/1/readings/1/angle';
    expect(findings).toMatchObject([
      { code: 'level-set-not-read', grade: 'caution', field, data: { value: 2, now: 1 } },
    ]);
    expect(describeFinding(findings[0]!, newJob('hoop').units)).toContain('is taken from set 1.');
    const heights = solveLevels(levelOf([height(X, 0), notRead(height(Y, 0))]), EXACT).findings;
    expect(heights).toMatchObject([{ field: '/site/level/sets/0/readings/1/height', data: { value: 1 } }]);
    expect(heights[0]!.data).not.toHaveProperty('now');
  });

  it('waits no more once a later one is read', () => {
    const { level } = planned(levelOf(READ, BEGUN, READ));
    expect(level).toMatchObject({ set: 3, waiting: 0, drift: { set: 1 } });
  });

  it('has nothing that a lean or a point could be told by', () => {
    const level = levelOf(READ, BEGUN);
    const lean = directionOf({ by: 'plumb', ahead: 1, port: 1, set: 2 }, '/it', contextOf(level));
    expect(lean).toMatchObject({ finding: { code: 'level-set-missing', field: '/it/set', data: { value: 2 } } });
    const point = { by: 'plumb' as const, from: 'A', ahead: 1, port: 1, up: 1, set: 2, accuracy: null };
    const site = {
      ...newJob('hoop').site,
      level,
      points: [
        { name: 'A', at: { by: 'typed' as const, point: { x: 0, y: 0, z: 0 }, accuracy: null } },
        { name: 'B', at: point },
      ],
    };
    const { findings } = sitePoints(site, { levels: solveLevels(level, EXACT).levels, off: EXACT });
    expect(findings).toMatchObject([{ code: 'level-set-missing', field: '/site/points/1/at/set' }]);
    expect(describeFinding(findings[0]!, newJob('hoop').units)).toContain('not read to its end');
  });

  it('is doubtful of nothing', () =>
    expect(levelDoubts({ ...newJob('hoop').site, level: levelOf(BEGUN) })).toEqual([]));
});

describe('readings that anything rests on', () => {
  const site = { ...newJob('hoop').site, level: levelOf(READ, READ, READ, READ) };
  const sets = (changes: Partial<Site>) => [
    ...new Set(levelDoubts({ ...site, ...changes }).map(({ field }) => Number(field.split('/')[4]) + 1)),
  ];
  const plumb = { by: 'plumb' as const, ahead: 0, port: 0, set: 1 };

  it('are those in use and those before them', () => expect(sets({})).toEqual([3, 4]));

  it('and those that a lean or a point names', () => {
    expect(sets({ directions: [{ name: 'post', direction: plumb }] })).toEqual([1, 3, 4]);
    const at = { by: 'plumb' as const, from: 'A', ahead: 1, port: 1, up: 1, set: 2, accuracy: null };
    expect(sets({ points: [{ name: 'B', at }] })).toEqual([2, 3, 4]);
    const shape = { shape: 'cylinder' as const, at: { x: 0, y: 0, z: 0 }, axis: plumb, diameter: 60, ends: null };
    expect(sets({ things: [{ name: 'post', shape, clearance: null, swing: null }] })).toEqual([1, 3, 4]);
  });
});

describe('times of readings', () => {
  const timed = (...taken: string[]): Level => {
    const level = levelOf(...taken.map(() => READ));
    return { ...level, sets: level.sets.map((set, index) => ({ ...set, taken: taken[index]! })) };
  };
  const order = (...taken: string[]) =>
    planned(timed(...taken)).findings.filter(({ code }) => code === 'level-sets-order');

  it('that are not in order are a caution: the last listed is taken for now', () => {
    const field = '/site/level/sets/2/taken';
    expect(order('2026-05-04T09:40', '2026-05-06T08:00', '2026-05-05T23:59')).toMatchObject([
      { grade: 'caution', field, data: { value: 2, now: 3 } },
    ]);
  });

  it('are in order where they are the same, or not noted', () => {
    expect(order('2026-05-04T09:40', '2026-05-04T09:40')).toEqual([]);
    expect(order('', '2026-05-04T09:40', '')).toEqual([]);
  });

  it.each(['2026-13-01T09:40', '2026-00-10T09:40', '2026-04-31T09:40', '2026-02-30T09:40', '2026-05-04T24:00'])(
    '%s is on no clock',
    (taken) => expect(Value.Check(LevelSet, { taken, note: '', readings: [] })).toBe(false),
  );

  it.each(['', '2026-12-31T23:59', '2028-02-29T00:00', '2026-04-30T12:00'])('%s is a time, or none', (taken) =>
    expect(Value.Check(LevelSet, { taken, note: '', readings: [] })).toBe(true),
  );
});
