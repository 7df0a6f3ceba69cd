import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Schema } from '../../server/job/check-value.ts';
import { Site } from '../../server/job/site.ts';
import type { SitePoint } from '../../server/job/site-point.ts';
import { cross, dot, rotate, scale, subtract, unit, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { layThings } from '../../server/solver/site/points/lay-things.ts';
import { faultsOf } from '../solver/figures-in.ts';
import {
  apart,
  byDistances,
  distancesTo,
  laidPoints,
  levelled,
  plannedPoints,
  siteWith,
  typed,
} from '../solver/site/points-laid.ts';
import { randomSource } from './returned-scatter.ts';
import { valuesOf } from './schema-values.ts';

/** Anywhere within five metres, each place as likely as any other. */
const coordinate = fc.noBias(fc.integer({ min: -5_000_000, max: 5_000_000 })).map((one) => one / 1000);
const place = fc.record({ x: coordinate, y: coordinate, z: coordinate });
const direction = place.map((one) => unit(one)).filter((one): one is Vector3 => one !== undefined);

/** Up to a quarter turn off z. */
const level = fc.tuple(direction, fc.double({ min: 0, max: 1.5, noNaN: true })).map(([axis, angle]) => {
  const square = unit(cross({ x: 0, y: 0, z: 1 }, axis));
  return square === undefined ? { x: 0, y: 0, z: 1 } : rotate({ x: 0, y: 0, z: 1 }, square, angle);
});

const named = (places: readonly Vector3[]): SitePoint[] =>
  places.map(({ x, y, z }, index) => typed(`K${String(index)}`, x, y, z));

/** How well three points and a place span space: the volume over that of a cube of the longest distance. */
function spread(known: readonly Vector3[], at: Vector3): number {
  const [a, b, c] = known.map((one) => subtract(one, at));
  const most = Math.max(...known.flatMap((one) => [apart(one, at), ...known.map((other) => apart(one, other))]));
  const area = cross(subtract(known[1]!, known[0]!), subtract(known[2]!, known[0]!));
  return Math.min(Math.abs(dot(a!, cross(b!, c!))) / most ** 3, Math.hypot(area.x, area.y, area.z) / most ** 2);
}

describe('points there and back', () => {
  it('by distances: the same place to 1e-9 of them', () => {
    fc.assert(
      fc.property(fc.array(place, { minLength: 3, maxLength: 9 }), place, (places, at) => {
        fc.pre(spread(places.slice(0, 3), at) > 0.02);
        const known = named(places);
        const distances = distancesTo(at, known);
        const found = (['up', 'down', 'ahead', 'back', 'port', 'starboard'] as const).flatMap((towards) => {
          const one = laidPoints(siteWith([byDistances('P', distances, towards), ...known])).points.get('P');
          return one === undefined ? [] : [apart(one, at)];
        });
        const size = Math.max(...distances.map(([, distance]) => distance));
        expect(Math.min(...found)).toBeLessThan(1e-9 * size);
      }),
      { numRuns: 150 },
    );
  });

  it('by tape and plumb line: to 1e-12', () => {
    fc.assert(
      fc.property(place, place, level, (from, to, up) => {
        // ahead as seen from above: the structure's x without what is plumb of it
        const ahead = unit(subtract({ x: 1, y: 0, z: 0 }, scale(up, up.x)));
        fc.pre(ahead !== undefined && Math.abs(up.x) < 0.999);
        const port = cross(up, ahead);
        const arm = subtract(to, from);
        const measured = { ahead: dot(arm, ahead), port: dot(arm, port), up: dot(arm, up) };
        const point: SitePoint = {
          name: 'P',
          at: { by: 'plumb', from: 'K0', ...measured, set: 1, accuracy: null },
        };
        const { points } = laidPoints(siteWith([point, ...named([from])]), () => 0, [levelled(up)]);
        expect(apart(points.get('P')!, to)).toBeLessThan(
          1e-12 * (1 + apart(from, { x: 0, y: 0, z: 0 }) + apart(from, to)),
        );
      }),
      { numRuns: 200 },
    );
  });

  it('do not care for the axes: turned and shifted, the place goes with them', () => {
    fc.assert(
      fc.property(
        fc.array(place, { minLength: 5, maxLength: 6 }),
        place,
        direction,
        fc.double({ min: 0, max: 6, noNaN: true }),
        fc.array(fc.double({ min: -4, max: 4, noNaN: true }), { minLength: 6, maxLength: 6 }),
        (places, at, axis, angle, off) => {
          fc.pre(spread(places.slice(0, 3), at) > 0.05);
          const found = (known: SitePoint[]) => {
            const distances = distancesTo(at, named(places)).map(([name, one], index): [string, number] => [
              name,
              Math.max(0.001, one + off[index]!),
            ]);
            return laidPoints(siteWith([...known, byDistances('P', distances)])).points.get('P');
          };
          const moved = (one: Vector3): Vector3 => {
            const { x, y, z } = rotate(one, axis, angle);
            return { x: x + 700, y: y - 300, z: z + 50 };
          };
          const [still, turned] = [found(named(places)), found(named(places.map(moved)))];
          fc.pre(still !== undefined && turned !== undefined);
          // another of two that fit alike may be further up then
          const alike = distancesTo(still, named(places)).every(
            ([, one], index) => Math.abs(one - distancesTo(turned, named(places.map(moved)))[index]![1]) < 1,
          );
          expect(apart(moved(still), turned) < 1e-5 || alike).toBe(true);
        },
      ),
      { numRuns: 100 },
    );
  });
});

describe('bands of points', () => {
  it('are as wide as places from measures that scatter spread', () => {
    const { normal } = randomSource(5);
    const known = [typed('A', 0, 0, 0, 1), typed('B', 2000, 100, 0, 1), typed('C', 200, 1800, 300, 1)];
    const at = { x: 900, y: 700, z: 1200 };
    const from = (points: SitePoint[], distances: [string, number][]): SitePoint[] => [
      ...points,
      byDistances('P', distances),
      { name: 'Q', at: { by: 'plumb', from: 'P', ahead: 300, port: -200, up: -900, set: 1, accuracy: 1.5 } },
    ];
    const distances = distancesTo(at, known);
    const plan = plannedPoints(siteWith(from(known, distances))).points;
    const exact = laidPoints(siteWith(from(known, distances))).points;
    const squares = new Map<string, number>();
    const RUNS = 3000;
    for (let round = 0; round < RUNS; round += 1) {
      const scattered = known.map(({ name, at: typedAt }) => {
        if (typedAt.by !== 'typed') throw new Error('a known point is typed');
        const { x, y, z } = typedAt.point;
        return typed(name, x + normal(), y + normal(), z + normal());
      });
      const taped = distances.map(([name, one]): [string, number] => [name, one + 2 * normal()]);
      const off = (field: string) => (field.startsWith('/site/points/4/at/') ? 1.5 * normal() : 0);
      const { points } = laidPoints(siteWith(from(scattered, taped)), off);
      for (const name of ['P', 'Q'])
        for (const axis of ['x', 'y', 'z'] as const) {
          const square = (points.get(name)![axis] - exact.get(name)![axis]) ** 2;
          squares.set(name + axis, (squares.get(name + axis) ?? 0) + square);
        }
    }
    for (const { name, ...one } of plan.slice(3))
      for (const axis of ['x', 'y', 'z'] as const) {
        const share = one[axis].band!.plusMinus / Math.sqrt(squares.get(name + axis)! / RUNS);
        expect(share, name + axis).toBeGreaterThan(0.9);
        expect(share, name + axis).toBeLessThan(1.1);
      }
  });
});

describe('any site that can be typed', () => {
  const numbersIn = (value: unknown): number[] =>
    typeof value === 'number'
      ? [value]
      : value instanceof Map
        ? [...value.values()].flatMap(numbersIn)
        : typeof value === 'object' && value !== null
          ? Object.values(value).flatMap(numbersIn)
          : [];
  const NAMES = ['A', 'B', 'C', 'D', ''];
  const one = fc.constantFrom(...NAMES);
  /** Names that meet, so that points and things rest on each other. */
  const meeting = (value: unknown, draw: () => string): unknown => {
    if (Array.isArray(value)) return value.map((part) => (typeof part === 'string' ? draw() : meeting(part, draw)));
    if (typeof value !== 'object' || value === null) return value;
    const entries = Object.entries(value).map(([key, part]): [string, unknown] => [
      key,
      typeof part === 'string' && ['name', 'named', 'from', 'to', 'thing', 'on'].includes(key)
        ? draw()
        : meeting(part, draw),
    ]);
    return Object.fromEntries(entries);
  };
  const { points: pointsSchema, things: thingsSchema } = Site.properties;
  const listOf = (schema: unknown, count: number) =>
    fc.array(valuesOf((schema as { items: Schema }).items), { minLength: 0, maxLength: count });
  const sites = fc
    .tuple(listOf(pointsSchema, 7), listOf(thingsSchema, 4), fc.array(one, { minLength: 80, maxLength: 80 }))
    .map(([points, things, names]) => {
      let next = 0;
      const draw = () => names[(next += 1) % names.length]!;
      return siteWith(meeting(points, draw) as Site['points'], meeting(things, draw) as Site['things'], {
        tapeAccuracy: 2,
      });
    });
  const levels = fc.array(fc.option(level.map(levelled)), { maxLength: 3 });

  it('gives numbers, a finding for all that is not there, and the same once more', () => {
    let told = 0;
    fc.assert(
      fc.property(sites, levels, (site, read) => {
        const laid = laidPoints(site, () => 0, read);
        const things = layThings(site, { levels: read, points: laid.points, frame: null, off: () => 0 });
        const plan = plannedPoints(site, read);
        expect(
          [laid.points, laid.findings, things, plan].flatMap(numbersIn).filter((value) => !Number.isFinite(value)),
        ).toEqual([]);
        expect(faultsOf(plan)).toEqual([]);
        const findings = [...laid.findings, ...things.findings];
        const missing =
          site.points.filter(({ name }) => !laid.points.has(name)).length +
          things.things.filter((thing) => thing === null).length;
        expect(missing === 0 || findings.length > 0).toBe(true);
        expect(new Set(findings.map(({ code, field }) => `${code} ${field}`)).size).toBe(findings.length);
        expect(plannedPoints(site, read)).toEqual(plan);
        told += laid.points.size + things.things.filter((thing) => thing !== null).length;
      }),
      { numRuns: 200 },
    );
    expect(told).toBeGreaterThan(200);
  });
});
