// A ± must not shrink where a line comes near to level or to plumb, nor where readings disagree.
import { describe, expect, it } from 'vitest';
import type { Level } from '../../../server/job/level.ts';
import type { Site } from '../../../server/job/site.ts';
import { levelRows } from '../../../server/solver/site/level/level-rows.ts';
import { planLevel } from '../../../server/solver/site/level/plan-level.ts';
import { faultsOf } from '../figures-in.ts';
import { height, incline, levelOf, levelStudy, X, Y, Z } from './level-study.ts';

const along = (name: string, vector: typeof X) => ({ name, direction: { by: 'axes' as const, vector: { ...vector } } });
const LINES = { directions: [along('rail', X), along('beam', Y), along('post', Z)] };

/** A level of ± 0.2 degrees that shows so much. */
const lying = (trim: number, list: number): Level => ({
  ...levelOf([incline(X, trim), incline(Y, list)]),
  angleAccuracy: 0.2,
});
const rowsOf = (level: Level, changes: Partial<Site> = LINES) => levelRows(levelStudy({ ...changes, level }));

/** Trims from either side of the accuracy down to nothing. */
const TRIMS = [-0.6, -0.25, -0.2, -0.1, -1e-4, 0, 0.1, 0.15];

describe('a line near level', () => {
  it.each(TRIMS)('is known to 0.2, with a trim of %d', (trim) => {
    const [rail, beam] = rowsOf(lying(trim, 0));
    expect(rail!.along.value).toBeCloseTo(Math.abs(trim), 9);
    for (const row of [rail!, beam!]) {
      expect(row.along.band!.plusMinus).toBeCloseTo(0.2, 4);
      expect(row.offPlumb.band!.plusMinus).toBeCloseTo(0.2, 4);
      for (const { shows, offPlumb } of row.planes) {
        expect(shows.band!.plusMinus).toBeCloseTo(0.2, 4);
        expect(offPlumb.band!.plusMinus).toBeCloseTo(0.2, 4);
      }
    }
  });
});

describe('a line near plumb', () => {
  it.each(TRIMS)('is known to 0.2, with a trim of %d', (trim) => {
    const [, , post] = rowsOf(lying(trim, 0));
    expect(post!.offPlumb.value).toBeCloseTo(Math.abs(trim), 6);
    // of an angle that is as small as its doubts, what is off sideways turns it a little further
    expect(post!.along.band!.plusMinus).toBeGreaterThan(0.1999);
    expect(post!.along.band!.plusMinus).toBeLessThan(0.218);
    for (const { shows } of post!.planes) expect(shows.band!.plusMinus).toBeCloseTo(0.2, 4);
  });

  it('has the ± of its own lean as well', () => {
    const lean = { name: 'lean', direction: { by: 'plumb' as const, ahead: 0.1, port: 0, set: 1 } };
    const [row] = rowsOf(lying(0, 0), { directions: [lean] });
    // the lean is off plumb, wherever plumb is: the level alone is in it, once for each way
    expect(row!.along.band!.plusMinus).toBeCloseTo(0.2, 3);
  });
});

describe('trim, list and tilt', () => {
  it.each(TRIMS)('are known to 0.2, with a trim of %d', (trim) => {
    const { level } = planLevel(levelStudy({ level: lying(trim, 0) }));
    expect(level.trim.band!.plusMinus).toBeCloseTo(0.2, 4);
    expect(level.list.band!.plusMinus).toBeCloseTo(0.2, 4);
    expect(level.tilt.band!.plusMinus).toBeGreaterThan(0.1999);
    expect(level.tilt.band!.plusMinus).toBeLessThan(0.218);
  });

  it('are as doubtful as they have moved little since', () => {
    const level = { ...levelOf([incline(X, 1), incline(Y, 0)], [incline(X, 1.05), incline(Y, 0)]), angleAccuracy: 0.2 };
    const { drift } = planLevel(levelStudy({ level })).level;
    expect(drift!.turn.value).toBeCloseTo(0.05, 9);
    expect(drift!.turn.band!.plusMinus).toBeCloseTo(0.2 * Math.SQRT2, 3);
  });
});

describe('readings that scatter further than their accuracies', () => {
  const read = (...angles: number[]) => levelOf([...angles.map((angle) => incline(X, angle, 0.1)), incline(Y, 0)]);

  it('have a ± that their disagreement allows', () => {
    const { level } = planLevel(levelStudy({ level: read(0, 0.8) }));
    // residuals ± 0.4 of 0.1 each: k = √(2 · 4² / 1); the mean of two is 0.1 / √2
    const k = Math.sqrt(32);
    expect(level.trim.band!.plusMinus).toBeCloseTo((k * 0.1) / Math.SQRT2, 6);
    expect(level.trim.band!.plusMinus).toBeCloseTo(0.4, 6);
    expect(level.trim.working.sources).toContain('level-scatter');
    expect(level.trim.working.inputs.find(({ symbol }) => symbol === 'k')!.value).toBeCloseTo(k, 9);
    expect(faultsOf(level)).toEqual([]);
  });

  it('and no smaller one where they agree', () => {
    const { level } = planLevel(levelStudy({ level: read(0.3, 0.31) }));
    expect(level.trim.band!.plusMinus).toBeCloseTo(0.1 / Math.SQRT2, 6);
    expect(level.trim.working.sources).not.toContain('level-scatter');
  });

  it('count a height less: the first only says how high the origin is', () => {
    const marks = [
      height({ x: 0, y: 0, z: 0 }, 0),
      height({ x: 1000, y: 0, z: 0 }, 0),
      height({ x: 0, y: 1000, z: 0 }, 0),
    ];
    const { level } = planLevel(levelStudy({ level: levelOf([...marks, height({ x: 1000, y: 1000, z: 0 }, 20)]) }));
    // a quarter of 20 is left at each of four marks, and four heights are one more than it takes
    expect(level.trim.working.inputs.find(({ symbol }) => symbol === 'k')!.value).toBeCloseTo(10, 6);
  });
});

describe('a structure that nobody has read', () => {
  const sourcesOf = (level: Level) =>
    rowsOf(level)
      .flatMap(({ along: one, planes }) => [one, ...planes.map(({ shows }) => shows)])
      .map(({ working }) => working.sources);

  it('is said to lie as its own axes do wherever a level is told', () => {
    for (const sources of sourcesOf(levelOf())) expect(sources).toContain('level-own-axes');
  });

  it('and not where a level was read', () => {
    for (const sources of sourcesOf(lying(1, 1))) expect(sources).not.toContain('level-own-axes');
  });
});
