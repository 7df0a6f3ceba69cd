import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../../server/job/default-job.ts';
import { EXACT } from '../../../server/solver/site/laid-site.ts';
import { add, cross, dot, scale, squareTo, unit, type Vector3 } from '../../../server/solver/geometry/vector.ts';
import { levelDoubts } from '../../../server/solver/site/level/level-doubts.ts';
import { solveLevels } from '../../../server/solver/site/level/solve-levels.ts';
import type { Level, LevelReading } from '../../../server/job/level.ts';
import { degrees, height, incline, levelOf, lyingBoat, radians, upOf, X, Y } from './level-study.ts';

const said = (level: Level) =>
  solveLevels(level, EXACT).findings.map(({ code, grade, field }) => [code, grade, field] as const);

const SET = '/site/level/sets/0';
const origin = { x: 0, y: 0, z: 0 };
const mark = (x: number, y: number, z = 0): Vector3 => ({ x, y, z });

describe('readings that do not tell', () => {
  it.each<[string, LevelReading[]]>([
    ['none', []],
    ['one incline', [incline(X, 1)]],
    ['one height', [height(mark(100, 0), 3)]],
    ['two heights', [height(mark(100, 0), 3), height(mark(0, 100), 3)]],
    ['one of each', [incline(X, 1), height(mark(100, 0), 3)]],
  ])('%s: too few', (_, readings) => {
    expect(said(levelOf(readings))).toEqual([['level-readings-too-few', 'stop', SET]]);
    expect(solveLevels(levelOf(readings), EXACT).levels).toEqual([null]);
  });

  it.each<[string, LevelReading[]]>([
    ['two inclines along one line', [incline(X, 1), incline(mark(-5, 0), -1)]],
    ['one above the other', [incline(X, 1), incline(mark(1, 0, 0.5), 20)]],
    ['half a degree apart', [incline(X, 1), incline(mark(1, 0.0087), 1)]],
    ['three marks in line', [height(origin, 1), height(mark(100, 50), 2), height(mark(300, 150), 4)]],
    ['marks along the incline', [incline(Y, 1), height(mark(3, 0), 1), height(mark(3, 900), 17)]],
    ['three heights of one mark', [height(mark(9, 9), 1), height(mark(9, 9), 2), height(mark(9, 9), 1)]],
  ])('%s: in line', (_, readings) => {
    expect(said(levelOf(readings))).toEqual([['level-readings-in-line', 'stop', SET]]);
  });

  it('a level laid along nothing', () => {
    expect(said(levelOf([incline(origin, 1), incline(Y, 1), incline(X, 0)]))).toEqual([
      ['direction-none', 'stop', `${SET}/readings/0/along`],
    ]);
  });

  it.each([
    [88.3, 1.7],
    [-88.3, 1.7],
    [91.7, 1.7],
    [178.3, 1.7],
    [-178.3, 1.7],
    [-180, 0],
    [45.5, 44.5],
    [100, 10],
    [134.9, 44.9],
    [135.1, 44.9],
  ])('%d is read from the upright or from the other end: %d to one side', (angle, flat) => {
    const { findings, levels } = solveLevels(levelOf([incline(X, angle), incline(Y, 1)]), EXACT);
    expect(levels).toEqual([null]);
    expect(findings).toHaveLength(1);
    const [one] = findings;
    expect(one).toMatchObject({ code: 'level-reading-over-45', grade: 'stop', field: `${SET}/readings/0/angle` });
    expect(one!.data).toEqual({ value: angle, high: 45, flat });
    // to which side is not known
    expect(one!.wayOut).toBeNull();
  });

  it('45 is still a reading', () => expect(said(levelOf([incline(X, 45), incline(Y, 1)]))).toEqual([]));

  it('heights that differ by more than their marks are apart', () => {
    const level = levelOf([height(origin, 0), height(mark(100, 0), 110), height(mark(0, 100), 0)]);
    const { findings, levels } = solveLevels(level, EXACT);
    expect(levels).toEqual([null]);
    expect(findings.map(({ code, field, data }) => [code, field, data['value']])).toEqual([
      ['level-readings-impossible', `${SET}/readings/1/height`, 10],
      // and between the second and the third: 110 over 141.4 is possible
    ]);
  });

  it('angles along nearly one line that no lie gives', () => {
    const level = levelOf([incline(X, 40), incline({ x: Math.cos(0.1), y: Math.sin(0.1), z: 0 }, -40)]);
    expect(said(level)).toEqual([['level-readings-impossible', 'stop', SET]]);
  });

  it('heights that would lay it on its back', () => {
    // on a steep plane of marks: up by their heights points below the deck
    const level = levelOf([height(origin, 0), height(mark(100, 0, 400), -400), height(mark(0, 100), 0)]);
    expect(said(level)).toEqual([['level-readings-impossible', 'stop', SET]]);
  });

  it('leaves the other sets alone', () => {
    const level = levelOf([incline(X, 1)], [incline(X, -0.8), incline(Y, 1.7)]);
    const [first, second] = solveLevels(level, EXACT).levels;
    expect(first).toBeNull();
    expect(second!.up).toEqual(upOf(lyingBoat));
  });
});

describe('more readings than it takes', () => {
  const readings = [
    incline(X, -0.8),
    incline(Y, 1.7, 0.05),
    incline(mark(1, 1, 0.1), 0.9),
    height(mark(0, 0), 500),
    height(mark(3000, 0), 457),
    height(mark(-200, 1200), 540, 3),
    height(mark(2500, -900, 300), 737),
  ];
  const level = levelOf(readings);

  it('is where the linearised problem, with the height of the origin in it, asks for no further step', () => {
    const { up, residuals } = solveLevels(level, EXACT).levels[0]!;
    const [a, b] = [squareTo(up, X), cross(up, squareTo(up, X))];
    const heights = readings.flatMap((one, index) => (one.reading === 'height' ? [index] : []));
    // residuals of the heights against their solved height of the origin
    const rows = readings.map((one, index) => {
      const accuracy = one.accuracy ?? (one.reading === 'height' ? level.heightAccuracy : level.angleAccuracy);
      const lever = one.reading === 'incline' ? unit(one.along)! : one.at;
      const slope = one.reading === 'incline' ? degrees(1) / Math.sqrt(1 - dot(lever, up) ** 2) : 1;
      const origin = heights.includes(index) ? 1 : 0;
      return {
        row: [dot(lever, a) * slope, dot(lever, b) * slope, origin].map((value) => value / accuracy),
        right: residuals[index]! / accuracy,
      };
    });
    const step = solve(
      new Matrix(rows.map(({ row }) => row)),
      Matrix.columnVector(rows.map(({ right }) => right)),
      true,
    );
    expect(Math.hypot(step.get(0, 0), step.get(1, 0))).toBeLessThan(1e-12);
    expect(Math.abs(step.get(2, 0))).toBeLessThan(1e-9);
  });

  it('is the linear solution where angles are small', () => {
    const tiny = readings.map((one) =>
      one.reading === 'incline'
        ? { ...one, along: { ...one.along, z: 0 }, angle: one.angle! / 1e4 }
        : { ...one, at: { ...one.at, z: 0 }, height: one.height! / 1e4 },
    );
    const up = upOf(levelOf(tiny));
    const rows = tiny.map((one) => {
      const accuracy = one.accuracy ?? (one.reading === 'height' ? level.heightAccuracy : level.angleAccuracy);
      const lever = one.reading === 'incline' ? unit(one.along)! : one.at;
      return one.reading === 'incline'
        ? { row: [lever.x, lever.y, 0].map((value) => value / radians(accuracy)), right: one.angle / accuracy }
        : { row: [lever.x, lever.y, 1].map((value) => value / accuracy), right: one.height / accuracy };
    });
    const linear = solve(
      new Matrix(rows.map(({ row }) => row)),
      Matrix.columnVector(rows.map(({ right }) => right)),
      true,
    );
    expect(up.x).toBeCloseTo(linear.get(0, 0), 12);
    expect(up.y).toBeCloseTo(linear.get(1, 0), 12);
    // and it is not nothing
    expect(Math.hypot(up.x, up.y)).toBeGreaterThan(1e-6);
  });

  it('residuals are measured less solved', () => {
    const level = levelOf([incline(X, 1), incline(X, 1.2), incline(Y, 0)]);
    const { up, residuals } = solveLevels(level, EXACT).levels[0]!;
    expect(degrees(Math.asin(up.x))).toBeCloseTo(1.1, 12);
    [-0.1, 0.1, 0].forEach((residual, index) => expect(residuals[index]).toBeCloseTo(residual, 12));
  });

  it('each reading counts by its accuracy', () => {
    const up = upOf(levelOf([incline(X, 1, 0.1), incline(X, 2, 0.2), incline(Y, 0)]));
    expect(degrees(Math.asin(up.x))).toBeCloseTo((1 * 4 + 2 * 1) / 5, 12);
  });
});

describe('a reading that disagrees', () => {
  it('is a caution at its angle, from more than three accuracies on', () => {
    const pair = (apart: number) => levelOf([incline(X, 1), incline(X, 1 + apart), incline(Y, 0)]);
    expect(said(pair(0.599))).toEqual([]);
    const { findings, levels } = solveLevels(pair(0.601), EXACT);
    expect(levels[0]).not.toBeNull();
    expect(findings.map(({ code, grade, field }) => [code, grade, field])).toEqual([
      ['level-angle-disagrees', 'caution', `${SET}/readings/0/angle`],
      ['level-angle-disagrees', 'caution', `${SET}/readings/1/angle`],
    ]);
    expect(findings[0]!.data['value']).toBeCloseTo(-0.3005, 9);
    expect(findings[1]!.data['value']).toBeCloseTo(0.3005, 9);
  });

  it('is a caution at its height', () => {
    const corners = [mark(0, 0), mark(1000, 0), mark(0, 1000), mark(1000, 1000)].map((at) => height(at, 20));
    corners[3] = height(mark(1000, 1000), 34);
    const { findings } = solveLevels(levelOf(corners), EXACT);
    // a corner of a square that is 14 off leaves 3.5 at each
    expect(findings.map(({ code }) => code)).toEqual(Array(4).fill('level-height-disagrees'));
    expect(findings.map(({ field }) => field)).toEqual([0, 1, 2, 3].map((index) => `${SET}/readings/${index}/height`));
    expect(findings[3]!.data['value']).toBeCloseTo(3.5, 2);
  });

  it('never where there is just enough', () => {
    const level = levelOf([incline(X, 30), incline(mark(1, 1), -3)]);
    const { findings, levels } = solveLevels(level, EXACT);
    expect(findings).toEqual([]);
    expect(levels[0]!.residuals).toEqual([0, 0]);
  });
});

describe('readings that are off', () => {
  it('move up by what they are off', () => {
    const up = upOf(lyingBoat, (field) => (field === `${SET}/readings/1` ? 0.1 : 0));
    expect(degrees(Math.asin(up.x))).toBeCloseTo(-0.8, 12);
    expect(degrees(Math.asin(up.y))).toBeCloseTo(1.8, 12);
  });

  it('and so do heights', () => {
    const level = levelOf([height(origin, 0), height(mark(600, 0), 0), height(mark(0, 600), 0)]);
    const up = upOf(level, (field) => (field === `${SET}/readings/1` ? 6 : 0));
    expect(up.x).toBeCloseTo(0.01, 14);
    expect(up.y).toBeCloseTo(0, 14);
  });

  it('each has its own accuracy, or that of all', () => {
    const flat = [height(origin, 1), height(mark(1, 0), 1, 7), height(mark(0, 1), 1)];
    const level = levelOf(flat, [incline(X, 1), incline(Y, 1, 0.02)]);
    const doubts = levelDoubts({ ...newJob('hoop').site, level });
    expect(doubts.map(({ plusMinus, unit = 'mm' }) => [plusMinus, unit])).toEqual([
      ...[1, 7, 1].map((mm) => [mm, 'mm']),
      ...[0.1, 0.02].map((angle) => [angle, 'deg']),
    ]);
    expect(doubts[1]).toMatchObject({ field: `${SET}/readings/1`, from: 'level', name: '' });
  });
});

it('any mix of the same lie gives the same up', () => {
  const up = upOf(lyingBoat);
  const reads = (along: Vector3) => incline(along, degrees(Math.asin(dot(unit(along)!, up))));
  const stands = (at: Vector3) => height(at, 812 + dot(at, up));
  const slanting = unit(add(X, scale(Y, 0.7)))!;
  const mixes: LevelReading[][] = [
    [reads(slanting), reads(Y)],
    [stands(mark(4000, 0, 200)), stands(mark(-3000, 1200)), stands(mark(0, -1300, 700))],
    [stands(mark(4000, 0)), stands(mark(-3000, 0)), reads(Y)],
    [reads(X), reads(Y), reads(slanting), stands(mark(1000, 10)), stands(mark(10, 1000)), stands(mark(0, 0, 900))],
    [reads(X), reads(Y), stands(mark(1000, 10))],
  ];
  for (const readings of mixes) {
    const { levels, findings } = solveLevels(levelOf(readings), EXACT);
    expect(findings).toEqual([]);
    for (const axis of ['x', 'y', 'z'] as const) expect(levels[0]!.up[axis]).toBeCloseTo(up[axis], 12);
    for (const residual of levels[0]!.residuals) expect(Math.abs(residual)).toBeLessThan(1e-9);
  }
});
