import { Matrix, QrDecomposition } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import type { SitePoint } from '../../../server/job/site-point.ts';
import type { Vector3 } from '../../../server/solver/geometry/vector.ts';
import { randomSource } from '../../properties/returned-scatter.ts';
import { faultsOf } from '../figures-in.ts';
import { apart, byDistances, distancesTo, laidPoints, plane, plannedPoints, siteWith, typed } from './points-laid.ts';

const { uniform, normal } = randomSource(11);
const anywhere = (size = 3000): Vector3 => ({
  x: size * (2 * uniform() - 1),
  y: size * (2 * uniform() - 1),
  z: size * (2 * uniform() - 1),
});
const knownPoints = (count: number): SitePoint[] =>
  Array.from({ length: count }, (_, index) => {
    const { x, y, z } = anywhere();
    return typed(`K${String(index)}`, x, y, z);
  });
const at = (point: SitePoint): Vector3 => {
  if (point.at.by !== 'typed') throw new Error('a known point is typed');
  return point.at.point;
};

/** The differences of the squared distances, which are linear in the place, solved by a library. */
function byLinearAlgebra(known: readonly SitePoint[], distances: readonly number[]): Vector3 {
  const [first, ...others] = known.map(at);
  const square = ({ x, y, z }: Vector3) => x * x + y * y + z * z;
  const rows = others.map(({ x, y, z }) => [2 * (x - first!.x), 2 * (y - first!.y), 2 * (z - first!.z)]);
  const right = others.map((one, index) => [
    distances[0]! ** 2 - distances[index + 1]! ** 2 + square(one) - square(first!),
  ]);
  const [x, y, z] = new QrDecomposition(new Matrix(rows)).solve(new Matrix(right)).to1DArray();
  return { x: x!, y: y!, z: z! };
}

/** Steps of Gauss and Newton by a library, each row divided by its accuracy. */
function byGaussNewton(known: readonly SitePoint[], distances: readonly [string, number, number][], start: Vector3) {
  let place = start;
  for (let step = 0; step < 60; step += 1) {
    const rows = known.map(at).map((from, index) => {
      const size = apart(place, from);
      const [, distance, accuracy] = distances[index]!;
      const slope = [place.x - from.x, place.y - from.y, place.z - from.z].map((part) => part / size / accuracy);
      return { slope, lack: (distance - size) / accuracy };
    });
    const change = new QrDecomposition(new Matrix(rows.map(({ slope }) => slope)))
      .solve(new Matrix(rows.map(({ lack }) => [lack])))
      .to1DArray();
    place = { x: place.x + change[0]!, y: place.y + change[1]!, z: place.z + change[2]! };
  }
  return place;
}

const slipped = (known: SitePoint[], place: Vector3, things: Parameters<typeof siteWith>[1], on: string | null) => {
  const distances = distancesTo(place, known);
  distances[1]![1] += 25;
  return plannedPoints(siteWith([...known, byDistances('P', distances, 'up', on)], things)).findings.map(
    ({ code, field }) => `${code} ${field}`,
  );
};

describe('a place by its distances', () => {
  it('with one to spare that does not fit cannot tell which: all are named', () => {
    const known = [typed('A', 0, 0, 0), typed('B', 2000, 0, 100), typed('C', 0, 1500, 900), typed('D', 1500, 1500, 0)];
    const fields = [0, 1, 2, 3].map((one) => `distances-disagree /site/points/4/at/distances/${String(one)}/distance`);
    expect(slipped(known, { x: 700, y: 600, z: 1100 }, [], null)).toEqual(fields);
    const deck = plane('deck', { x: 0, y: 0, z: 0 }, { x: 0, y: 0, z: 1 });
    const on = fields.slice(0, 3).map((one) => one.replace('points/4', 'points/3'));
    expect(slipped(known.slice(0, 3), { x: 700, y: 600, z: 0 }, [deck], 'deck')).toEqual(on);
    // two to spare tell which
    const five = [...known, typed('E', -800, -900, 500)];
    expect(slipped(five, { x: 700, y: -300, z: 0 }, [deck], 'deck')).toEqual([
      fields[1]!.replace('points/4', 'points/5'),
    ]);
  });

  it('of four or more that are exact is where the differences of their squares say', () => {
    for (let round = 0; round < 100; round += 1) {
      const known = knownPoints(4 + (round % 5));
      const place = anywhere();
      const distances = distancesTo(place, known);
      const { points, findings } = laidPoints(siteWith([...known, byDistances('P', distances)]));
      const linear = byLinearAlgebra(
        known,
        distances.map(([, distance]) => distance),
      );
      expect(findings).toEqual([]);
      expect(apart(points.get('P')!, place)).toBeLessThan(1e-6);
      expect(apart(points.get('P')!, linear)).toBeLessThan(1e-6);
    }
  });

  it('of more than it takes that scatter is where the normal equations settle, each by its accuracy', () => {
    for (let round = 0; round < 100; round += 1) {
      const known = knownPoints(5 + (round % 6));
      const place = anywhere();
      const distances = distancesTo(place, known).map(([name, distance]): [string, number, number] => {
        const accuracy = 0.5 + 3 * uniform();
        return [name, distance + accuracy * normal(), accuracy];
      });
      const { points } = laidPoints(siteWith([...known, byDistances('P', distances)]));
      expect(apart(points.get('P')!, byGaussNewton(known, distances, place))).toBeLessThan(1e-6);
    }
  });

  it('of three is one of two, and the side says which', () => {
    for (let round = 0; round < 100; round += 1) {
      const known = knownPoints(3);
      const place = anywhere();
      const distances = distancesTo(place, known);
      const found = (towards: 'up' | 'down') =>
        laidPoints(siteWith([byDistances('P', distances, towards), ...known])).points.get('P');
      const [high, low] = [found('up'), found('down')];
      if (high === undefined || low === undefined) continue; // neither lies clearly higher
      expect(high.z).toBeGreaterThanOrEqual(low.z);
      expect(Math.min(apart(high, place), apart(low, place))).toBeLessThan(1e-6);
      for (const one of [high, low])
        distancesTo(one, known).forEach(([, distance], index) => expect(distance).toBeCloseTo(distances[index]![1], 7));
    }
  });

  it('of two on a plane is one of two, and of three on it the one that fits', () => {
    const known = [typed('A', 0, 0, 300), typed('B', 1000, 100, -50), typed('C', 300, 900, 120)];
    const wall = plane('wall', { x: 0, y: 0, z: 40 }, { x: 0.1, y: -0.2, z: 1 });
    const place = { x: 420, y: 350, z: 40 - (0.1 * 420 - 0.2 * 350) };
    const two = distancesTo(place, known.slice(0, 2));
    const port = laidPoints(siteWith([...known, byDistances('P', two, 'port', 'wall')], [wall])).points.get('P')!;
    const other = laidPoints(siteWith([...known, byDistances('P', two, 'starboard', 'wall')], [wall])).points.get('P')!;
    expect(apart(port, place)).toBeLessThan(1e-9);
    expect(other.y).toBeLessThan(-100);
    distancesTo(other, known.slice(0, 2)).forEach(([, one], index) => expect(one).toBeCloseTo(two[index]![1], 9));
    const three = distancesTo(place, known);
    // the third distance tells the two apart, whatever the side says
    const told = laidPoints(siteWith([...known, byDistances('P', three, 'starboard', 'wall')], [wall])).points.get(
      'P',
    )!;
    expect(apart(told, place)).toBeLessThan(1e-8);
  });

  it('beside four known points in one plane still has its mirror image, and the side says which', () => {
    const known = [typed('A', 0, 0, 0), typed('B', 2000, 0, 0), typed('C', 0, 1500, 0), typed('D', 2000, 1500, 3)];
    const place = { x: 700, y: 600, z: -900 };
    const distances = distancesTo(place, known).map(([name, one], index): [string, number] => [
      name,
      one + (index % 2 === 0 ? 1 : -1),
    ]);
    const down = laidPoints(siteWith([...known, byDistances('P', distances, 'down')])).points.get('P')!;
    const up = laidPoints(siteWith([...known, byDistances('P', distances, 'up')])).points.get('P')!;
    expect(apart(down, place)).toBeLessThan(5);
    expect(up.z).toBeGreaterThan(890);
  });

  it('says how far each distance is off, and which one disagrees', () => {
    const known = [typed('A', 0, 0, 0), typed('B', 2000, 0, 100), typed('C', 0, 1500, 900), typed('D', 1500, 1500, 0)];
    const more = [...known, typed('E', 100, 900, 2000), typed('F', 1900, 1000, 1800)];
    const distances = distancesTo({ x: 700, y: 600, z: 800 }, more);
    distances[2]![1] += 20;
    const { points, findings } = plannedPoints(siteWith([...more, byDistances('P', distances)]));
    const plan = points.find(({ name }) => name === 'P')!;
    expect(faultsOf(points)).toEqual([]);
    expect(plan.residuals).toHaveLength(6);
    expect(plan.residuals.map(({ disagrees }) => disagrees)).toEqual([false, false, true, false, false, false]);
    expect(plan.residuals[2]!.field).toBe('/site/points/6/at/distances/2/distance');
    expect(plan.residuals[2]!.residual.value).toBeGreaterThan(6);
    expect(findings).toMatchObject([
      { code: 'distances-disagree', grade: 'caution', field: '/site/points/6/at/distances/2/distance' },
    ]);
    // against the others alone it is the whole slip that shows, to first order
    expect(findings[0]!.data['value']).toBeGreaterThan(18);
    expect(findings[0]!.data['value']).toBeLessThan(22);
    // three that meet leave nothing to compare
    const just = plannedPoints(
      siteWith([...known, byDistances('P', distancesTo({ x: 1, y: 2, z: 3000 }, known.slice(0, 3)))]),
    );
    expect(just.points.at(-1)!.residuals).toEqual([]);
  });
});
