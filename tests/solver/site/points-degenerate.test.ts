import { describe, expect, it } from 'vitest';
import type { SitePoint } from '../../../server/job/site-point.ts';
import { apart, byDistances, distancesTo, laidPoints, plane, plannedPoints, siteWith, typed } from './points-laid.ts';

const DECK = [typed('A', 0, 0, 0), typed('B', 1000, 0, 0), typed('C', 0, 1000, 0)];
const codes = (points: SitePoint[], things = [] as Parameters<typeof siteWith>[1]) =>
  laidPoints(siteWith(points, things)).findings.map(({ code, field }) => `${code} ${field}`);
const bandsOf = (points: SitePoint[]) => {
  const plan = plannedPoints(siteWith(points));
  const { x, y, z } = plan.points.at(-1)!;
  return { plan, bands: [x, y, z].map(({ band }) => band?.plusMinus ?? 0) };
};

describe('a flat crossing', () => {
  it('in the plane of the known points is known badly square to it, and well along it', () => {
    const flat = distancesTo({ x: 400, y: 300, z: 0 }, DECK);
    const { plan, bands } = bandsOf([...DECK, byDistances('P', flat)]);
    const [x = 0, y = 0, z = 0] = bands;
    expect(Math.max(x, y)).toBeLessThan(10);
    // 2 mm on 500: √(2 · 500 · 2) of the first distance alone is 45
    expect(z).toBeGreaterThan(40);
    expect(z).toBeLessThan(200);
    expect(plan.findings.map(({ code, field }) => `${code} ${field}`)).toEqual(['point-doubtful /site/points/3/at']);
    expect(plan.findings[0]!.data['value']).toBeCloseTo(z, 9);
  });

  it('that lacks a little lies in the plane, with the same doubt', () => {
    const flat = distancesTo({ x: 400, y: 300, z: 0 }, DECK).map(([name, one]): [string, number] => [name, one - 1]);
    const { plan, bands } = bandsOf([...DECK, byDistances('P', flat)]);
    const point = plan.points.at(-1)!;
    expect(point.z.value).toBeCloseTo(0, 9);
    expect(Math.hypot(point.x.value - 400, point.y.value - 300)).toBeLessThan(2);
    expect(point.residuals).toHaveLength(3);
    expect(Math.max(...point.residuals.map(({ residual }) => Math.abs(residual.value)))).toBeLessThan(3);
    expect(bands[2]!).toBeGreaterThan(30);
    expect(bands[2]!).toBeLessThan(300);
  });

  it.each([0, 1e-6, 1e-3, 1, 10])('%s off it the place changes by no more than the distances allow', (height) => {
    const exact = distancesTo({ x: 400, y: 300, z: height }, DECK);
    const found = laidPoints(siteWith([...DECK, byDistances('P', exact)])).points.get('P')!;
    expect(Math.hypot(found.x - 400, found.y - 300)).toBeLessThan(1e-6);
    expect(Math.abs(found.z - height)).toBeLessThan(1e-4);
  });

  it('four known points in one plane, and the place in it as well', () => {
    const four = [...DECK, typed('D', 1000, 1000, 0)];
    const flat = distancesTo({ x: 400, y: 300, z: 0 }, four).map(([name, one], index): [string, number] => [
      name,
      one + [1, -1, 0.5, -0.8][index]!,
    ]);
    const { plan, bands } = bandsOf([...four, byDistances('P', flat)]);
    expect(Math.abs(plan.points.at(-1)!.z.value)).toBeLessThan(40);
    expect(bands[2]!).toBeGreaterThan(10);
    expect(bands.every((band) => band < 1000)).toBe(true);
  });

  it('two circles on a plane that only touch', () => {
    const deck = plane('deck', { x: 0, y: 0, z: 0 }, { x: 0, y: 0, z: 1 });
    const on = (one: number, other: number) =>
      laidPoints(
        siteWith(
          [
            ...DECK,
            byDistances(
              'P',
              [
                ['A', one],
                ['B', other],
              ],
              'port',
              'deck',
            ),
          ],
          [deck],
        ),
      ).points.get('P')!;
    expect(apart(on(400, 600), { x: 400, y: 0, z: 0 })).toBeLessThan(1e-4);
    expect(apart(on(399, 599), { x: 400, y: 0, z: 0 })).toBeLessThan(1e-6);
    expect(on(401, 601).y).toBeGreaterThan(30);
  });
});

describe('known points that nearly lie in line', () => {
  const line = (off: number) => [typed('A', 0, 0, 0), typed('B', 1000, off, 0), typed('C', 2000, 0, 0)];
  it('give a band that grows, never nothing', () => {
    const widest = [500, 50, 5].map((off) => {
      const known = line(off);
      const { plan, bands } = bandsOf([...known, byDistances('P', distancesTo({ x: 900, y: 400, z: 700 }, known))]);
      const { x, y, z } = plan.points.at(-1)!;
      expect(apart({ x: x.value, y: y.value, z: z.value }, { x: 900, y: 400, z: 700 })).toBeLessThan(1e-6);
      return Math.max(...bands);
    });
    expect(widest[1]!).toBeGreaterThan(3 * widest[0]!);
    expect(widest[2]!).toBeGreaterThan(3 * widest[1]!);
    expect(widest.every(Number.isFinite)).toBe(true);
  });

  it('in line they are a stop that says how far the middle one is off', () => {
    const known = line(0.0005);
    const [found] = laidPoints(
      siteWith([
        ...known,
        byDistances('P', [
          ['A', 1000],
          ['B', 800],
          ['C', 1000],
        ]),
      ]),
    ).findings;
    expect(found).toMatchObject({ code: 'points-in-line', grade: 'stop', field: '/site/points/3/at/distances' });
    expect(found!.data['value']).toBeCloseTo(0.0005, 9);
  });

  it('on a plane two are in line where one stands right over the other', () => {
    const deck = plane('deck', { x: 0, y: 0, z: 0 }, { x: 0, y: 0, z: 1 });
    const over = [typed('A', 0, 0, 0), typed('B', 0, 0, 500)];
    expect(
      codes(
        [
          ...over,
          byDistances(
            'P',
            [
              ['A', 300],
              ['B', 583],
            ],
            'up',
            'deck',
          ),
        ],
        [deck],
      ),
    ).toEqual(['points-in-line /site/points/2/at/distances']);
  });
});

describe('distances that do not tell', () => {
  it('are too few', () => {
    const [found] = laidPoints(
      siteWith([
        ...DECK,
        byDistances('P', [
          ['A', 500],
          ['B', 700],
        ]),
      ]),
    ).findings;
    expect(found).toMatchObject({ code: 'distances-too-few', grade: 'stop', data: { value: 2 } });
    // the same point three times is one point
    const same = laidPoints(
      siteWith([
        ...DECK,
        byDistances('P', [
          ['A', 500],
          ['A', 501],
          ['B', 700],
        ]),
      ]),
    ).findings;
    expect(same[0]).toMatchObject({ code: 'distances-too-few', data: { value: 2 } });
  });

  it('leave open which of two is meant where the side does not part them', () => {
    const place = { x: 400, y: 300, z: 500 };
    const points = (towards: 'ahead' | 'up') => [...DECK, byDistances('P', distancesTo(place, DECK), towards)];
    const [found] = laidPoints(siteWith(points('ahead'))).findings;
    expect(found).toMatchObject({ code: 'point-either-side', grade: 'stop', field: '/site/points/3/at/towards' });
    expect(found!.data['value']).toBeCloseTo(1000, 6);
    expect(apart(laidPoints(siteWith(points('up'))).points.get('P')!, place)).toBeLessThan(1e-9);
  });

  it('cannot meet: two that are at odds are named, and what they lack', () => {
    const short = laidPoints(
      siteWith([
        ...DECK,
        byDistances('P', [
          ['A', 400],
          ['B', 500],
          ['C', 900],
        ]),
      ]),
    ).findings[0]!;
    expect(short).toMatchObject({ code: 'distances-cannot-meet', grade: 'stop', data: { one: 'A', other: 'B' } });
    expect(short.data['value']).toBeGreaterThanOrEqual(100 - 1e-9);
    const many = [...DECK, typed('D', 500, 500, 900)];
    const over = laidPoints(
      siteWith([
        ...many,
        byDistances('P', [
          ['A', 400],
          ['B', 500],
          ['C', 900],
          ['D', 700],
        ]),
      ]),
    ).findings[0]!;
    expect(over).toMatchObject({ code: 'distances-cannot-meet', data: { one: 'A', other: 'B', value: 100 } });
  });

  it('the way out is the one distance that could be wrong, and it mends', () => {
    const place = { x: 300, y: 300, z: 400 };
    const distances = distancesTo(place, DECK);
    distances[0]![1] = 40; // 583 was read as 40
    const points = [...DECK, byDistances('P', distances)];
    const [found] = laidPoints(siteWith(points)).findings;
    expect(found!.code).toBe('distances-cannot-meet');
    expect(found!.wayOut).toMatchObject({ field: '/site/points/3/at/distances/0/distance' });
    distances[0]![1] = found!.wayOut!.value as number;
    expect(codes([...DECK, byDistances('P', distances)])).toEqual([]);
    expect(found!.data['value']).toBeCloseTo((found!.wayOut!.value as number) - 40, 0);
  });

  it('one that does not reach its plane is at odds with it', () => {
    const deck = plane('deck', { x: 0, y: 0, z: -500 }, { x: 0, y: 0, z: 1 });
    const distances: [string, number][] = [
      ['A', 300],
      ['B', 1100],
    ];
    const [found] = laidPoints(siteWith([...DECK, byDistances('P', distances, 'port', 'deck')], [deck])).findings;
    expect(found).toMatchObject({ code: 'distances-cannot-meet', data: { one: 'A', other: 'deck' } });
    expect(found!.wayOut!.field).toBe('/site/points/3/at/distances/0/distance');
    distances[0]![1] = found!.wayOut!.value as number;
    expect(codes([...DECK, byDistances('P', distances, 'port', 'deck')], [deck])).toEqual([]);
  });

  it('what three accuracies explain is not refused, what four explain is', () => {
    // two balls that lack so much stand off each other; the third passes through the middle between them
    const lacking = (lack: number) =>
      codes([
        ...DECK,
        byDistances('P', [
          ['A', 500 - lack / 2],
          ['B', 500 - lack / 2],
          ['C', Math.hypot(500, 1000)],
        ]),
      ]);
    const both = Math.hypot(2, 2);
    expect(lacking(2.9 * both)).toEqual([]);
    expect(lacking(3.2 * both)).toEqual(['distances-cannot-meet /site/points/3/at/distances']);
  });
});
