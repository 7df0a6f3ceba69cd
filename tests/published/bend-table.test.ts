// A run in space computed beforehand by another program, and the US Navy's pipe-length problem (NAVEDTRA 14119, public
// domain): values asserted at the precision they are printed with.
import { describe, expect, it } from 'vitest';
import {
  arcLength,
  bendTable,
  developedLength,
  mirrored,
  reversed,
  tangentLength,
  tangentPoints,
  type BendTable,
} from '../../server/solver/geometry/bend-table.ts';

const degrees = (radians: number) => (radians * 180) / Math.PI;
const at = (x: number, y: number, z: number) => ({ x, y, z });

function table(points: [number, number, number][], radius: number): BendTable {
  const all = points.map(([x, y, z]) => at(x, y, z));
  const result = bendTable({
    start: all[0]!,
    apexes: all.slice(1, -1).map((point) => ({ point, radius })),
    finish: all.at(-1)!,
  });
  if ('failure' in result) throw new Error(result.failure);
  return result;
}

const example = table(
  [
    [0, 0, 0],
    [250, 0, 0],
    [250, 180, 0],
    [400, 180, 160],
    [400, 420, 160],
    [250, 520, 300],
  ],
  76.2,
);

describe('feed, rotation and bend of the worked example', () => {
  it.each([
    [0, 173.8, 0, 90, 76.2, 119.6947],
    [1, 27.6, 133.1524, 90, 76.2, 119.6947],
    [2, 66.9171, 180, 90, 76.2, 119.6947],
    [3, 116.1694, 89.8727, 64.0168, 47.6306, 85.1385],
  ])('bend %i', (index, feed, rotation, angle, tangent, arc) => {
    const step = example.steps[index]!;
    expect(step.feed).toBeCloseTo(feed, 4);
    expect(degrees(step.rotation)).toBeCloseTo(rotation, 4);
    expect(degrees(step.angle)).toBeCloseTo(angle, 4);
    expect(tangentLength(step)).toBeCloseTo(tangent, 4);
    expect(arcLength(step)).toBeCloseTo(arc, 4);
  });

  it('last straight and developed length', () => {
    expect(example.lastStraight).toBeCloseTo(180.6237, 4);
    expect(developedLength(example)).toBeCloseTo(1009.3328, 4);
    // corner to corner: the straights and both tangent lengths of every bend
    const legs = example.steps.reduce((sum, step) => sum + step.feed + 2 * tangentLength(step), example.lastStraight);
    expect(legs).toBeCloseTo(1117.5714, 4);
  });

  it('bends back into the printed tangent points', () => {
    const points = tangentPoints(example, { point: at(0, 0, 0), direction: at(1, 0, 0), normal: at(0, 0, 1) });
    const printed = [
      [173.8, 0, 0],
      [250, 76.2, 0],
      [250, 103.8, 0],
      [302.1163, 180, 55.5907],
      [347.8837, 180, 104.4093],
      [400, 256.2, 160],
      [400, 372.3694, 160],
      [368.699, 440.8673, 189.2143],
      [250, 520, 300],
    ];
    expect(points).toHaveLength(printed.length);
    for (const [index, [x, y, z]] of printed.entries()) {
      expect(points[index]!.x).toBeCloseTo(x!, 4);
      expect(points[index]!.y).toBeCloseTo(y!, 4);
      expect(points[index]!.z).toBeCloseTo(z!, 4);
    }
  });

  it('reversed and mirrored tables', () => {
    const back = reversed(example);
    expect(back.steps.map((step) => step.feed)).toEqual(
      [180.6237, 116.1694, 66.9171, 27.6].map((feed) => expect.closeTo(feed, 4) as number),
    );
    expect(back.steps.map((step) => degrees(step.rotation))).toEqual(
      [0, 89.8727, 180, 133.1524].map((rotation) => expect.closeTo(rotation, 4) as number),
    );
    expect(back.steps.map((step) => degrees(step.angle))).toEqual(
      [64.0168, 90, 90, 90].map((angle) => expect.closeTo(angle, 4) as number),
    );
    expect(back.lastStraight).toBeCloseTo(173.8, 4);
    expect(mirrored(example).steps.map((step) => degrees(step.rotation))).toEqual(
      [0, -133.1524, 180, -89.8727].map((rotation) => expect.closeTo(rotation, 4) as number),
    );
  });
});

describe('sign of the rotation, R = 50', () => {
  it.each([
    ['the same way', [0, 150, 0], 0],
    ['the other way', [400, 150, 0], 180],
    ['up', [200, 150, 200], 90],
    ['down', [200, 150, -200], -90],
  ] as [string, [number, number, number], number][])('%s', (_, last, rotation) => {
    const small = table([[0, 0, 0], [200, 0, 0], [200, 150, 0], last], 50);
    expect(degrees(small.steps[1]!.rotation)).toBeCloseTo(rotation, 9);
    expect(small.steps.map((step) => Number(step.feed.toFixed(9)))).toEqual([150, 50]);
    expect(small.lastStraight).toBeCloseTo(150, 9);
    expect(developedLength(small).toFixed(3)).toBe('507.080');
  });
});

it('US Navy NAVEDTRA 14119: legs 48 and 72 in, radius 18 in, 90 degrees (printed 112.26 with 1.57 for π/2)', () => {
  const pipe = table(
    [
      [0, 0, 0],
      [48, 0, 0],
      [48, 72, 0],
    ],
    18,
  );
  expect(pipe.steps[0]!.feed).toBeCloseTo(30, 9);
  expect(pipe.lastStraight).toBeCloseTo(54, 9);
  expect(developedLength(pipe)).toBeCloseTo(112.2743, 4);
  expect(pipe.steps[0]!.feed + pipe.lastStraight + 1.57 * 18).toBeCloseTo(112.26, 2);
});
