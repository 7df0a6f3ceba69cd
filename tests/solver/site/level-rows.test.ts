import { describe, expect, it } from 'vitest';
import type { Direction } from '../../../server/job/direction.ts';
import { newJob } from '../../../server/job/default-job.ts';
import type { Site } from '../../../server/job/site.ts';
import { arcPiece, straightPiece } from '../../../server/solver/geometry/centreline.ts';
import { UNMOVED } from '../../../server/solver/geometry/rigid-motion.ts';
import type { LaidFrame, LaidLeg, LaidSite, MadeLine } from '../../../server/solver/site/laid-site.ts';
import { levelRows } from '../../../server/solver/site/level/level-rows.ts';
import { faultsOf } from '../figures-in.ts';
import { incline, levelOf, levelStudy, lyingBoat, X, Y, Z } from './level-study.ts';

const named = (name: string, direction: Direction) => ({ name, direction });
const axes = (x: number, y: number, z: number): Direction => ({ by: 'axes', vector: { x, y, z } });

const rowsOf = (changes: Partial<Site>, standing: Partial<LaidSite> = {}) =>
  levelRows(levelStudy({ level: lyingBoat, ...changes }, standing));
const rowFor = (direction: Direction, changes: Partial<Site> = {}) =>
  rowsOf({ directions: [named('it', direction)], ...changes })[0]!;

const start = { x: 0, y: 0, z: 0 };
const straight = (name: string, direction = X): MadeLine => ({
  name,
  closed: false,
  centreline: { pieces: [straightPiece({ start, direction, length: 10 })], length: 10 },
});
const bent: MadeLine = {
  name: 'bent',
  closed: false,
  centreline: {
    pieces: [
      straightPiece({ start, direction: X, length: 10 }),
      arcPiece({ start: X, direction: X, normal: Z, radius: 50, angle: 1, made: 'die' }),
    ],
    length: 60,
  },
};

describe('rows', () => {
  const frame: LaidFrame = {
    motion: UNMOVED,
    placed: UNMOVED,
    hinge: { at: start, axis: Y },
    turn: 0,
    misfits: [],
    lines: [bent, straight('bar', { x: 0, y: 0, z: -1 })],
  };
  const leg: LaidLeg = {
    field: '/site/legs/0',
    name: 'P1',
    foot: { x: 100, y: 0, z: 0 },
    surface: Z,
    head: { x: 100, y: 300, z: 400 },
    member: 'bar',
    station: 5,
    outsideDiameter: 25,
    wall: 1.5,
  };
  const round = { x: 0, y: 0, z: 0, shape: 'cylinder' as const };
  const site = newJob('hoop').site;
  const typedLeg = (name: string): Site['legs'][number] => ({
    name,
    foot: { at: start, surface: axes(0, 0, 1), end: { end: 'square', plate: 0 }, held: 'pinned' },
    head: { at: { named: 'p' }, end: { end: 'saddle' }, held: 'pinned' },
    tube: null,
    adjust: null,
  });
  const rows = rowsOf(
    {
      ...site,
      level: lyingBoat,
      directions: [named('none', axes(0, 0, 0)), named('shaft', axes(5, 0, -1))],
      legs: [typedLeg('lost'), typedLeg('P1')],
      things: [
        {
          name: 'wall',
          shape: { shape: 'plane', plane: { by: 'normal', at: start, normal: axes(1, 0, 0) } },
          clearance: null,
          swing: null,
        },
        {
          name: 'mast',
          shape: { shape: round.shape, at: start, axis: axes(0, 0, 1), diameter: 90, ends: null },
          clearance: null,
          swing: null,
        },
      ],
    },
    {
      frame,
      legs: [null, leg],
      things: [
        null,
        {
          field: '/site/things/1',
          name: 'mast',
          clearance: null,
          body: { shape: 'cylinder', at: start, axis: Z, radius: 45, ends: null },
          swing: null,
        },
      ],
    },
  );

  it('are typed directions, legs, round things, straight tubes and the hinge; what cannot be told is left out', () => {
    expect(rows.map(({ of, name, field }) => [of, name, field])).toEqual([
      ['direction', 'shaft', '/site/directions/1'],
      ['leg', 'P1', '/site/legs/1'],
      ['thing', 'mast', '/site/things/1'],
      ['member', 'bar', ''],
      ['hinge', '', ''],
    ]);
    expect(faultsOf(rows)).toEqual([]);
  });

  it('have the higher end ahead', () => {
    expect(rows[3]!.direction.z).toBe(1);
    expect(rows[0]!.direction).toMatchObject({ y: -0 });
    expect(rows[0]!.direction.x).toBeLessThan(0);
    // port is 1.7 up
    expect(rows[4]!.direction).toEqual(Y);
    expect(rows[4]!.along.value).toBeCloseTo(1.7, 12);
    expect(rows[1]!.direction.y).toBeCloseTo(0.6, 12);
  });
});

describe('a level held in a plane', () => {
  it('says how high, which side rises, and where the upper end leans', () => {
    const [foreAndAft, athwart] = rowFor(axes(-1, 0, 4)).planes;
    expect(foreAndAft).toMatchObject({ plane: 'fore-and-aft', rises: 'back', leans: 'back' });
    // raked atan(1/4) back, the bow 0.8 down: 13.24 off plumb
    expect(foreAndAft!.offPlumb.value).toBeCloseTo((Math.atan(1 / 4) * 180) / Math.PI - 0.8, 3);
    expect(foreAndAft!.shows.value + foreAndAft!.offPlumb.value).toBeCloseTo(90, 12);
    // athwart it is an upright, and plumb is 1.7 to port of that: it leans to starboard
    expect(athwart).toMatchObject({ plane: 'athwart', rises: 'up', leans: 'starboard' });
    expect(athwart!.offPlumb.value).toBeCloseTo(1.7, 3);
  });

  it('is left out where the line is seen end on', () => {
    expect(rowFor(axes(0, 1, 0)).planes.map(({ plane }) => plane)).toEqual(['athwart']);
    expect(rowFor(axes(1, 0, 0)).planes.map(({ plane }) => plane)).toEqual(['fore-and-aft']);
    expect(rowFor(axes(1, 1, 0)).planes).toHaveLength(2);
  });

  it('shows the rise of a flat line on the side where it is', () => {
    const ahead = (x: number) => rowFor(axes(x, 0, 0)).planes[0]!;
    // the bow is down, so the stern rises whichever way the line was typed
    for (const reading of [ahead(3), ahead(-3)]) {
      expect(reading).toMatchObject({ rises: 'back', leans: 'back' });
      expect(reading.shows.value).toBeCloseTo(0.8, 3);
    }
    expect(rowFor(axes(0, 1, 0)).planes[0]).toMatchObject({ rises: 'port' });
  });

  it('has a higher end of its own in each plane', () => {
    // 1.7 up along port, and so the end to port is ahead; but fore and aft its end that is back is the higher one
    const { direction, planes } = rowFor(axes(1, 3, 0));
    expect(direction.y).toBeGreaterThan(0);
    expect(planes).toMatchObject([
      { plane: 'fore-and-aft', rises: 'back', leans: 'back' },
      { plane: 'athwart', rises: 'port', leans: 'port' },
    ]);
    expect(planes[0]!.shows.value).toBeCloseTo(0.8, 3);
  });

  it('has no side where the line is level, none to lean to where it is plumb', () => {
    const level = levelOf([incline(X, 0), incline(Y, 0)]);
    expect(rowFor(axes(1, 0, 0), { level }).planes).toMatchObject([{ rises: null, leans: null }]);
    const upright = rowFor(axes(0, 0, 1), { level });
    expect(upright.planes).toMatchObject([
      { rises: 'up', leans: null },
      { rises: 'up', leans: null },
    ]);
    expect(upright.along.value).toBe(90);
    expect(upright.differs).toBe(false);
  });
});

describe('both are printed', () => {
  it('where they differ by more than a level reads', () => {
    // in the fore-and-aft plane of a boat that only trims there is one answer
    const trim = levelOf([incline(X, -0.8), incline(Y, 0)]);
    const [foreAndAft] = rowFor(axes(-1, 0, 4), { level: trim }).planes;
    expect(foreAndAft!.shows.value).toBeCloseTo(rowFor(axes(-1, 0, 4), { level: trim }).along.value, 12);
    expect(rowFor(axes(1, 0, 0), { level: trim }).differs).toBe(false);
    expect(rowFor(axes(-1, 0, 4)).differs).toBe(true);
  });
});

describe('a row is as sure', () => {
  it('as the readings behind it', () => {
    const along = rowFor(axes(1, 0, 0)).along;
    expect(along.band!.plusMinus).toBeCloseTo(0.1, 9);
    const across = rowFor(axes(1, 1, 0)).along;
    expect(across.band!.plusMinus).toBeCloseTo(0.1, 3);
    const [foreAndAft] = rowFor(axes(-1, 0, 4)).planes;
    expect(foreAndAft!.shows.band!.plusMinus).toBeCloseTo(0.1, 3);
    expect(foreAndAft!.offPlumb.band).toEqual(foreAndAft!.shows.band);
  });

  it('as the level that read it off plumb: how the boat lay cancels out', () => {
    const [foreAndAft, athwart] = rowFor({ by: 'plumb', ahead: -8, port: 3, set: 1 }).planes;
    expect(foreAndAft!.offPlumb.value).toBeCloseTo(8, 9);
    expect(athwart!.offPlumb.value).toBeCloseTo(3, 9);
    expect(foreAndAft!.shows.band!.plusMinus).toBeCloseTo(0.1, 9);
    expect(athwart!.shows.band!.plusMinus).toBeCloseTo(0.1, 9);
    expect(athwart!.shows.band!.from).toEqual(['site-level']);
  });

  it('for ever where nobody read a level', () => {
    const row = rowFor(axes(1, 2, 3), { level: { ...lyingBoat, sets: [] } });
    expect(row.along.band).toBeNull();
    expect(row.along.value).toBeCloseTo((Math.asin(3 / Math.hypot(1, 2, 3)) * 180) / Math.PI, 12);
  });
});
