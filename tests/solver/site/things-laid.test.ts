import { describe, expect, it } from 'vitest';
import type { Direction } from '../../../server/job/direction.ts';
import type { SiteThing } from '../../../server/job/site-thing.ts';
import type { Vector3 } from '../../../server/solver/geometry/vector.ts';
import { EXACT, type Off } from '../../../server/solver/site/laid-site.ts';
import { layThings } from '../../../server/solver/site/points/lay-things.ts';
import { thingDoubts } from '../../../server/solver/site/points/thing-doubts.ts';
import { apart, levelled, plane, siteWith, UP } from './points-laid.ts';

const O = { x: 0, y: 0, z: 0 };
const POINTS = new Map<string, Vector3>([
  ['A', O],
  ['B', { x: 1000, y: 0, z: 0 }],
  ['C', { x: 0, y: 1000, z: 0 }],
  ['M', { x: 500, y: 1e-5, z: 0 }],
]);
const TUBE: Direction = { by: 'tube', at: { member: 'rail', spot: 'start', number: 1, distance: 0 } };

const thing = (name: string, shape: SiteThing['shape'], other: Partial<SiteThing> = {}): SiteThing => ({
  name,
  shape,
  clearance: 20,
  swing: null,
  ...other,
});
const post = (name: string, axis: Direction, other: Partial<SiteThing> = {}, ends: object | null = null) =>
  thing(name, { shape: 'cylinder', at: O, axis, diameter: 50, ends } as SiteThing['shape'], other);
const wallBy = (name: string, normal: Direction) =>
  thing(name, { shape: 'plane', plane: { by: 'normal', at: O, normal } });
const through = (name: string, ...points: string[]) => thing(name, { shape: 'plane', plane: { by: 'points', points } });
const axes = (x: number, y: number, z: number): Direction => ({ by: 'axes', vector: { x, y, z } });

const lay = (things: SiteThing[], off: Off = EXACT) =>
  layThings(siteWith([], things), {
    levels: [levelled()],
    points: POINTS,
    frame: null,
    placeOnFrame: (at) => (at.member === 'rail' ? { point: O, tangent: { x: 0, y: 1, z: 0 } } : undefined),
    off,
  });
const codes = (things: SiteThing[]) =>
  lay(things).findings.map(({ code, grade, field, data }) =>
    `${code} ${grade} ${field} ${String(data['name'] ?? '')}`.trim(),
  );

describe('things of the site', () => {
  it('are laid in the order of the job, their axes of unit length', () => {
    const { things, findings } = lay([
      thing('ball', { shape: 'point', at: { named: 'B' }, radius: 30 }, { clearance: null }),
      through('deck', 'A', 'B', 'C'),
      post('post', axes(0, 3, 4), {}, { from: 900, to: -100 }),
      post('rail post', TUBE),
    ]);
    expect(findings).toEqual([]);
    expect(things).toMatchObject([
      { field: '/site/things/0', name: 'ball', clearance: null, body: { shape: 'point', at: { x: 1000 }, radius: 30 } },
      { name: 'deck', clearance: 20, swing: null, body: { shape: 'plane', at: O, normal: UP } },
      { body: { shape: 'cylinder', at: O, axis: { x: 0, z: 0.8 }, radius: 25, ends: { from: -100, to: 900 } } },
      { body: { axis: { x: 0, y: 1, z: 0 }, ends: null } },
    ]);
  });

  it('a plane is free on the side from which its points run anticlockwise', () => {
    const [up, down] = lay([through('up', 'A', 'B', 'C'), through('down', 'A', 'C', 'B')]).things;
    expect(up!.body).toMatchObject({ normal: { z: 1 } });
    expect(down!.body).toMatchObject({ normal: { z: -1 } });
  });

  it('a cylinder whose ends are one is a thin disc', () => {
    const [disc] = lay([post('disc', axes(0, 0, 1), {}, { from: 50, to: 50 })]).things;
    const { ends } = disc!.body as { ends: { from: number; to: number } };
    expect(ends.from).toBe(50);
    expect(ends.to).toBeGreaterThan(50);
    expect(ends.to).toBeLessThan(50.01);
  });

  it('stand as another thing does, in any order, and swing about their own axis', () => {
    const swing = { about: { named: 'C' }, axis: { by: 'thing', thing: 'stock' } as const, from: 35, to: -35 };
    const { things, findings } = lay([
      post('blade', { by: 'thing', thing: 'stock' }, { swing }),
      post('stock', { by: 'thing', thing: 'deck' }, { swing }),
      wallBy('deck', { by: 'lean', ahead: 0, port: 0 }),
    ]);
    expect(findings).toEqual([]);
    expect(things[0]!.body).toMatchObject({ axis: UP });
    for (const one of things.slice(0, 2)) {
      expect(one!.swing).toMatchObject({ about: POINTS.get('C'), axis: UP });
      expect(one!.swing!.from).toBeCloseTo((-35 * Math.PI) / 180, 12);
      expect(one!.swing!.to).toBeCloseTo((35 * Math.PI) / 180, 12);
    }
  });

  it('of one name are both there, and the first is meant', () => {
    const { things } = lay([
      post('a', axes(1, 0, 0)),
      post('a', axes(0, 1, 0)),
      wallBy('w', { by: 'thing', thing: 'a' }),
    ]);
    expect(things[1]!.body).toMatchObject({ axis: { y: 1 } });
    expect(things[2]!.body).toMatchObject({ normal: { x: 1 } });
    expect(codes([post('a', axes(1, 0, 0)), post('a', axes(0, 1, 0))])).toEqual([
      'site-name-twice stop /site/things/1/name a',
    ]);
  });

  it.each<[string, SiteThing[], string[]]>([
    ['no direction', [wallBy('w', axes(0, 0, 0))], ['direction-none stop /site/things/0/shape/plane/normal/vector']],
    [
      'no direction of a point',
      [thing('p', { shape: 'point', at: O, radius: 0 }), wallBy('w', { by: 'thing', thing: 'p' })],
      ['direction-none stop /site/things/1/shape/plane/normal/thing'],
    ],
    [
      'no such point',
      [thing('p', { shape: 'point', at: { named: 'Z' }, radius: 0 })],
      ['site-name-missing stop /site/things/0/shape/at/named Z'],
    ],
    [
      'no such corner',
      [through('w', 'A', 'Z', 'Y')],
      [
        'site-name-missing stop /site/things/0/shape/plane/points/1 Z',
        'site-name-missing stop /site/things/0/shape/plane/points/2 Y',
      ],
    ],
    [
      'no such thing',
      [post('w', { by: 'thing', thing: 'q' })],
      ['site-name-missing stop /site/things/0/shape/axis/thing q'],
    ],
    ['itself', [post('w', { by: 'thing', thing: 'w' })], ['site-point-circle stop /site/things/0/shape/axis/thing w']],
    [
      'round in a circle',
      [post('v', { by: 'thing', thing: 'w' }), wallBy('w', { by: 'thing', thing: 'v' })],
      ['site-point-circle stop /site/things/1/shape/plane/normal/thing v'],
    ],
    [
      'no such tube',
      [post('w', { ...TUBE, at: { ...TUBE.at, member: 'x' } })],
      ['site-place-missing stop /site/things/0/shape/axis/at'],
    ],
    [
      'no such set',
      [post('w', { by: 'plumb', ahead: 1, port: 1, set: 3 })],
      ['level-set-missing stop /site/things/0/shape/axis/set'],
    ],
    [
      'swing about nothing',
      [post('w', axes(0, 0, 1), { swing: { about: { named: 'Z' }, axis: axes(0, 0, 0), from: 0, to: 1 } })],
      [
        'site-name-missing stop /site/things/0/swing/about/named Z',
        'direction-none stop /site/things/0/swing/axis/vector',
      ],
    ],
  ])('%s: a stop, and nothing is laid there', (_, things, expected) => {
    expect(codes(things)).toEqual(expected);
    expect(lay(things).things.at(-1)).toBeNull();
  });

  it('points in line make no plane: how far the middle one is off is told', () => {
    const [found] = lay([through('w', 'A', 'B', 'M')]).findings;
    expect(found).toMatchObject({ code: 'points-in-line', grade: 'stop', field: '/site/things/0/shape/plane/points' });
    expect(found!.data['value']).toBeCloseTo(1e-5, 12);
    expect(lay([through('w', 'A', 'A', 'A')]).findings[0]!.data['value']).toBe(0);
  });
});

describe('what is doubtful of things', () => {
  const things = [
    plane('deck', O, UP),
    post(
      'post',
      { by: 'plumb', ahead: 1, port: 2, set: 1 },
      { swing: { about: O, axis: axes(0, 0, 1), from: 0, to: 9 } },
    ),
    thing('ball', { shape: 'point', at: { named: 'A' }, radius: 5 }),
    through('wall', 'A', 'B', 'C'),
    thing('pad', { shape: 'point', at: O, radius: 5 }),
  ];
  const doubts = thingDoubts(siteWith([], things, { tapeAccuracy: 3 }));

  it('is every typed coordinate and every lean that a level read, by its pointer', () => {
    const under = (field: string) => doubts.filter((one) => one.field.startsWith(`${field}/`)).length;
    expect(doubts).toHaveLength(3 + 3 + 2 + 3 + 3);
    expect(
      ['/site/things/0/shape/plane/at', '/site/things/1/shape/at', '/site/things/1/swing/about'].map(under),
    ).toEqual([3, 3, 3]);
    expect(doubts.find(({ field }) => field === '/site/things/1/shape/axis/port')).toEqual({
      field: '/site/things/1/shape/axis/port',
      plusMinus: 0.1,
      unit: 'deg',
      from: 'thing',
      name: 'post',
    });
    expect(doubts.at(-1)).toEqual({ field: '/site/things/4/shape/at/z', plusMinus: 3, from: 'thing', name: 'pad' });
  });

  it('and each of them moves what is laid', () => {
    const exact = JSON.stringify(lay(things).things);
    for (const { field, plusMinus } of doubts)
      expect(JSON.stringify(lay(things, (one) => (one === field ? plusMinus : 0)).things), field).not.toBe(exact);
    const [, moved] = lay(things, (field) => (field === '/site/things/1/shape/at/x' ? 2 : 0)).things;
    expect(apart(moved!.body.at, { x: 2, y: 0, z: 0 })).toBe(0);
  });
});
