import { describe, expect, it } from 'vitest';
import type { SitePoint } from '../../../server/job/site-point.ts';
import type { SiteThing } from '../../../server/job/site-thing.ts';
import type { Vector3 } from '../../../server/solver/geometry/vector.ts';
import { sitePlace } from '../../../server/solver/site/points/site-places.ts';
import { pointDoubts } from '../../../server/solver/site/points/point-doubts.ts';
import { formulaValue } from '../formula-value.ts';
import { faultsOf } from '../figures-in.ts';
import { apart, byDistances, laidPoints, levelled, plane, plannedPoints, siteWith, typed } from './points-laid.ts';

const plumb = (name: string, from: string, ahead: number, port: number, up: number, set = 1): SitePoint => ({
  name,
  at: { by: 'plumb', from, ahead, port, up, set, accuracy: null },
});
const degrees = (angle: number) => (angle * Math.PI) / 180;
/** Bow up by p, port up by r. */
const upOf = (p: number, r: number): Vector3 => {
  const [x, y] = [Math.sin(degrees(p)), Math.sin(degrees(r))];
  return { x, y, z: Math.sqrt(1 - x * x - y * y) };
};
const codes = (points: SitePoint[], things: SiteThing[] = []) =>
  laidPoints(siteWith(points, things)).findings.map(({ code, field, data }) =>
    `${code} ${field} ${String(data['name'] ?? '')}`.trim(),
  );

describe('a point by tape and plumb line', () => {
  it('is straight from its coordinates while the structure lies level', () => {
    const { points } = laidPoints(siteWith([typed('A', 100, 200, 300), plumb('P', 'A', 10, 20, -30)]));
    expect(points.get('P')).toEqual({ x: 110, y: 220, z: 270 });
  });

  it('hangs plumb: in a boat that is 3 down by the bow a line of 1000 swings 52.3 ahead', () => {
    const level = [levelled(upOf(-3, 0))];
    const { points } = laidPoints(siteWith([plumb('P', 'A', 0, 0, -1000), typed('A', 0, 0, 0)]), () => 0, level);
    expect(points.get('P')!.x).toBeCloseTo(1000 * Math.sin(degrees(3)), 9);
    expect(points.get('P')!.z).toBeCloseTo(-1000 * Math.cos(degrees(3)), 9);
    // level ahead rises towards the bow of a boat whose bow is down
    const ahead = laidPoints(siteWith([plumb('P', 'A', 1000, 0, 0), typed('A', 0, 0, 0)]), () => 0, level).points.get(
      'P',
    )!;
    expect(ahead.z).toBeCloseTo(1000 * Math.sin(degrees(3)), 9);
  });

  it('is known as well as its three measures, and its formula gives it', () => {
    const level = [null, levelled(upOf(2, -4))];
    const { points, findings } = plannedPoints(
      siteWith([typed('A', 100, 200, 300, 0.5), plumb('P', 'A', 700, -400, -900, 2)]),
      level,
    );
    const { x, y, z } = points[1]!;
    for (const one of [x, y, z]) {
      expect(one.band!.plusMinus).toBeCloseTo(Math.hypot(2, 0.5), 6);
      expect(
        formulaValue({ ...one, working: { ...one.working, formula: `v${one.working.formula.slice(1)}` } }),
      ).toBeCloseTo(one.value, 9);
    }
    expect(findings).toEqual([]);
    expect(faultsOf(points)).toEqual([]);
  });

  it('needs a set of readings that tells', () => {
    const points = [typed('A', 0, 0, 0), plumb('P', 'A', 1, 2, 3, 2)];
    const [found] = laidPoints(siteWith(points), () => 0, [levelled(), null]).findings;
    expect(found).toMatchObject({ code: 'level-set-missing', field: '/site/points/1/at/set', data: { value: 2 } });
    expect(laidPoints(siteWith(points)).findings[0]!.code).toBe('level-set-missing');
  });

  it('has no way ahead in a structure that stands on its end', () => {
    const [found] = laidPoints(siteWith([typed('A', 0, 0, 0), plumb('P', 'A', 1, 2, 3)]), () => 0, [
      levelled({ x: 1, y: 0, z: 0 }),
    ]).findings;
    expect(found).toMatchObject({ code: 'direction-none', field: '/site/points/1/at/ahead' });
  });
});

describe('points that rest on each other', () => {
  const chain = [
    plumb('D', 'C', 1, 1, 1),
    byDistances('C', [
      ['A', 500],
      ['B', 700],
      ['', 700],
    ]),
    plumb('B', 'A', 900, 0, 0),
    typed('A', 0, 0, 0),
    typed('', 0, 800, 0),
  ];
  it('are the same in whatever order they are listed', () => {
    const forth = laidPoints(siteWith(chain)).points;
    const back = laidPoints(siteWith([...chain].reverse())).points;
    expect(forth.size).toBe(5);
    expect([...forth.keys()]).toEqual(['D', 'C', 'B', 'A', '']);
    for (const [name, place] of forth) expect(apart(place, back.get(name)!)).toBe(0);
  });

  it('do not go round in a circle', () => {
    expect(codes([plumb('A', 'B', 1, 0, 0), plumb('B', 'A', 1, 0, 0), plumb('C', 'B', 1, 0, 0)])).toEqual([
      'site-point-circle /site/points/1/at/from A',
    ]);
    expect(codes([plumb('A', 'A', 1, 0, 0)])).toEqual(['site-point-circle /site/points/0/at/from A']);
  });

  it('have names of their own: the first counts', () => {
    const { points, findings } = laidPoints(siteWith([typed('A', 1, 0, 0), typed('A', 2, 0, 0), typed('', 3, 0, 0)]));
    expect(findings).toMatchObject([{ code: 'site-name-twice', grade: 'stop', field: '/site/points/1/name' }]);
    expect(points.get('A')!.x).toBe(1);
    expect(pointDoubts(siteWith([typed('A', 1, 0, 0), typed('A', 2, 0, 0)]))).toHaveLength(3);
  });

  it('are looked for by name', () => {
    expect(codes([plumb('P', 'nobody', 1, 2, 3)])).toEqual(['site-name-missing /site/points/0/at/from nobody']);
    const twice = byDistances(
      'P',
      [
        ['nobody', 5],
        ['A', 5],
        ['no one', 5],
      ],
      'up',
      'deck',
    );
    expect(codes([typed('A', 0, 0, 0), twice])).toEqual([
      'site-name-missing /site/points/1/at/distances/0/from nobody',
      'site-name-missing /site/points/1/at/distances/2/from no one',
      'site-name-missing /site/points/1/at/on deck',
    ]);
  });
});

describe('a plane that a point lies on', () => {
  const base = [typed('A', 0, 0, 0), typed('B', 1000, 0, 0), typed('C', 0, 1000, 0)];
  const on = byDistances(
    'P',
    [
      ['A', 500],
      ['B', 700],
    ],
    'port',
    'deck',
  );
  const through = (...points: string[]): SiteThing => ({
    ...plane('deck', base[0]!.at.by === 'typed' ? base[0]!.at.point : { x: 0, y: 0, z: 0 }, { x: 0, y: 0, z: 1 }),
    shape: { shape: 'plane', plane: { by: 'points', points } },
  });
  const normal = (direction: object, at: object = { x: 0, y: 0, z: 0 }, name = 'deck'): SiteThing => ({
    ...plane(name, { x: 0, y: 0, z: 0 }, { x: 0, y: 0, z: 1 }),
    shape: { shape: 'plane', plane: { by: 'normal', at, normal: direction } as never },
  });

  it('may be given any way that does not lead back', () => {
    const straight = laidPoints(siteWith([...base, on], [plane('deck', { x: 7, y: 7, z: 0 }, { x: 0, y: 0, z: 9 })]));
    const ways = [
      through('A', 'B', 'C'),
      normal({ by: 'lean', ahead: 0, port: 0 }, { named: 'B' }),
      normal({ by: 'plumb', ahead: 0, port: 0, set: 1 }),
      normal({ by: 'points', from: 'A', to: 'H' }),
    ];
    for (const way of ways) {
      const { points, findings } = laidPoints(siteWith([on, ...base, typed('H', 0, 0, 9)], [way]));
      expect(findings).toEqual([]);
      expect(apart(points.get('P')!, straight.points.get('P')!)).toBeLessThan(1e-9);
    }
    const by = laidPoints(
      siteWith(
        [on, ...base],
        [normal({ by: 'thing', thing: 'wall' }), plane('wall', { x: 0, y: 0, z: 5 }, { x: 0, y: 0, z: 2 })],
      ),
    );
    expect(apart(by.points.get('P')!, straight.points.get('P')!)).toBeLessThan(1e-9);
  });

  it('does not lead back to the point, nor to the frame', () => {
    expect(codes([on, ...base], [through('A', 'B', 'P')])).toEqual([
      'site-point-circle /site/things/0/shape/plane/points/2 P',
    ]);
    expect(codes([on, ...base], [normal({ by: 'points', from: 'A', to: 'P' })])).toEqual([
      'site-point-circle /site/things/0/shape/plane/normal/to P',
    ]);
    const tube = { by: 'tube', at: { member: 'hoop', spot: 'start', number: 1, distance: 0 } };
    expect(codes([on, ...base], [normal(tube)])).toEqual(['point-follows-frame /site/things/0/shape/plane/normal']);
    expect(codes([on, ...base], [normal({ by: 'thing', thing: 'wall' }), normal(tube, undefined, 'wall')])).toEqual([
      'point-follows-frame /site/things/1/shape/plane/normal',
    ]);
  });

  it('says nothing here of what is wrong with it in itself: that is said when things are laid', () => {
    expect(codes([on, ...base], [through('A', 'B', 'nobody')])).toEqual([]);
    expect(codes([on, ...base], [normal({ by: 'axes', vector: { x: 0, y: 0, z: 0 } })])).toEqual([]);
    expect(laidPoints(siteWith([on, ...base], [through('A', 'B', 'nobody')])).points.has('P')).toBe(false);
  });
});

describe('a place', () => {
  it('is a point by its name or coordinates', () => {
    const points = new Map([['A', { x: 1, y: 2, z: 3 }]]);
    expect(sitePlace({ named: 'A' }, '/f', points, () => 0)).toEqual({ point: { x: 1, y: 2, z: 3 } });
    const off = (field: string) => (field === '/f/y' ? 0.5 : 0);
    expect(sitePlace({ x: 1, y: 2, z: 3 }, '/f', points, off)).toEqual({ point: { x: 1, y: 2.5, z: 3 } });
    expect(sitePlace({ named: 'B' }, '/f', points, off)).toMatchObject({
      finding: { code: 'site-name-missing', field: '/f/named', data: { name: 'B' } },
    });
  });
});
