import { describe, expect, it } from 'vitest';
import type { Direction } from '../../../server/job/direction.ts';
import type { Vector3 } from '../../../server/solver/geometry/vector.ts';
import { directionDoubts, directionOf, type DirectionContext } from '../../../server/solver/site/level/directions.ts';
import { contextOf, incline, levelOf, lyingBoat, radians, X, Y, Z } from './level-study.ts';

const FIELD = '/site/directions/3/direction';
const boat = contextOf(lyingBoat);
const tanOf = (angle: number) => Math.tan(radians(angle));

const told = (direction: Direction, context: DirectionContext = boat): Vector3 => {
  const found = directionOf(direction, FIELD, context);
  if ('finding' in found) throw new Error(found.finding.code);
  return found.direction;
};

const refused = (direction: Direction, context: DirectionContext = boat) => {
  const found = directionOf(direction, FIELD, context);
  if ('direction' in found) throw new Error('it is a direction');
  const { code, grade, field, data } = found.finding;
  expect(grade).toBe('stop');
  return { code, field, data };
};

const near = (one: Vector3, other: Vector3) => {
  for (const axis of ['x', 'y', 'z'] as const) expect(one[axis]).toBeCloseTo(other[axis], 12);
};

const tube = { member: 'hoop', spot: 'middle' as const, number: 2, distance: 0 };

describe('a direction', () => {
  it('is a vector of any length', () =>
    near(told({ by: 'axes', vector: { x: 0, y: -3, z: 4 } }), { x: 0, y: -0.6, z: 0.8 }));

  it('leans in the structure as seen square to each plane', () => {
    near(told({ by: 'lean', ahead: -10, port: 0 }), { x: -Math.sin(radians(10)), y: 0, z: Math.cos(radians(10)) });
    const both = told({ by: 'lean', ahead: 20, port: -35 });
    expect(both.x / both.z).toBeCloseTo(tanOf(20), 12);
    expect(both.y / both.z).toBeCloseTo(tanOf(-35), 12);
    expect(Math.hypot(both.x, both.y, both.z)).toBeCloseTo(1, 12);
  });

  it('nearly flat, keeps its digits', () => {
    const both = told({ by: 'lean', ahead: 89, port: 89 });
    expect(both.x / both.z / tanOf(89)).toBeCloseTo(1, 12);
    expect(both.x).toBeCloseTo(both.y, 14);
  });

  it('plumb is up', () => {
    near(told({ by: 'plumb', ahead: 0, port: 0, set: 1 }), boat.levels[0]!.up);
  });

  it('off plumb counts from where plumb is seen in each plane', () => {
    // a post raked 10 back that is 9.2 off plumb: the bow is 0.8 down
    const { up } = boat.levels[0]!;
    const bow = (Math.atan2(up.x, up.z) * 180) / Math.PI;
    const side = (Math.atan2(up.y, up.z) * 180) / Math.PI;
    expect(bow).toBeCloseTo(-0.8, 3);
    near(told({ by: 'plumb', ahead: -10 - bow, port: -side, set: 1 }), told({ by: 'lean', ahead: -10, port: 0 }));
    near(told({ by: 'plumb', ahead: 5, port: 7, set: 1 }), told({ by: 'lean', ahead: 5 + bow, port: 7 + side }));
  });

  it('off plumb is off by what the level was off', () => {
    const off = { ...boat, off: (field: string) => (field === `${FIELD}/port` ? 0.1 : 0) };
    near(told({ by: 'plumb', ahead: 5, port: 7, set: 1 }, off), told({ by: 'plumb', ahead: 5, port: 7.1, set: 1 }));
  });

  it('runs along a tube, a thing, or from point to point', () => {
    const context: DirectionContext = {
      ...boat,
      placeOnFrame: (at) => (at.member === 'hoop' ? { point: X, tangent: Y } : undefined),
      alongOf: (name) => (name === 'post' ? Z : undefined),
      points: new Map([
        ['low', { x: 1, y: 1, z: 1 }],
        ['high', { x: 1, y: 4, z: 5 }],
      ]),
    };
    near(told({ by: 'tube', at: tube }, context), Y);
    near(told({ by: 'thing', thing: 'post' }, context), Z);
    near(told({ by: 'points', from: 'low', to: 'high' }, context), { x: 0, y: 0.6, z: 0.8 });
    const missing = refused({ by: 'points', from: 'low', to: 'nowhere' }, context);
    expect(missing).toEqual({ code: 'site-name-missing', field: `${FIELD}/to`, data: { name: 'nowhere' } });
    expect(refused({ by: 'points', from: 'low', to: 'low' }, context).code).toBe('direction-none');
  });
});

describe('no direction', () => {
  it.each<[Direction, string, string, object]>([
    [{ by: 'axes', vector: { x: 0, y: 0, z: 0 } }, 'direction-none', 'vector', {}],
    [{ by: 'plumb', ahead: 1, port: 1, set: 2 }, 'level-set-missing', 'set', { value: 2 }],
    [{ by: 'thing', thing: 'post' }, 'site-name-missing', 'thing', { name: 'post' }],
    [{ by: 'points', from: 'a', to: 'b' }, 'site-name-missing', 'from', { name: 'a' }],
    // no frame stands there
    [{ by: 'tube', at: tube }, 'site-place-missing', 'at', {}],
  ])('%j', (direction, code, field, data) =>
    expect(refused(direction)).toEqual({ code, field: `${FIELD}/${field}`, data }),
  );

  it('from a set that does not tell', () => {
    const dumb = contextOf(levelOf([incline(X, 1)]));
    expect(refused({ by: 'plumb', ahead: 1, port: 1, set: 1 }, dumb).code).toBe('level-set-missing');
  });

  it('off plumb by so much that it lies flat in the structure', () => {
    const steep = contextOf(levelOf([incline(X, 4), incline(Y, -3)]));
    const flat = refused({ by: 'plumb', ahead: 88, port: 0, set: 1 }, steep);
    expect(flat.code).toBe('direction-too-flat');
    expect(flat.field).toBe(`${FIELD}/ahead`);
    expect(flat.data['value']).toBeCloseTo(92, 1);
    expect(refused({ by: 'plumb', ahead: 0, port: -88, set: 1 }, steep).field).toBe(`${FIELD}/port`);
    // the other way it is a direction
    near(
      told({ by: 'plumb', ahead: 0, port: 88, set: 1 }, steep),
      told({ by: 'plumb', ahead: 0, port: 88, set: 1 }, steep),
    );
  });
});

it('only what a level read off plumb is doubtful', () => {
  expect(directionDoubts({ by: 'plumb', ahead: 1, port: 1, set: 1 }, FIELD, 0.2)).toEqual([
    { field: `${FIELD}/ahead`, plusMinus: 0.2, unit: 'deg' },
    { field: `${FIELD}/port`, plusMinus: 0.2, unit: 'deg' },
  ]);
  expect(directionDoubts({ by: 'lean', ahead: 1, port: 1 }, FIELD, 0.2)).toEqual([]);
});
