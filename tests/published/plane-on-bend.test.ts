// A plane across a bend: worked rows computed beforehand by two independent ways (root search along each generator,
// slicing of a dense mesh), asserted at the precision they are printed with. 48.3 × 2, R = 144.9.
import { describe, expect, it } from 'vitest';
import { planeOnBend, tiltedPlane } from '../../server/solver/joints/plane-on-bend.ts';
import { wrapForPlane, type PlaneWrap } from '../../server/solver/joints/wrap.ts';

const radians = (angle: number) => (angle * Math.PI) / 180;
const degrees = (angle: number) => (angle * 180) / Math.PI;
const bend = { radius: 144.9, from: 0, to: radians(90) };

type Row = readonly [number, number, number, number];
// generator, θ outer, θ inner [deg], ordinate from the ring at 40° on the outer surface [mm]
const IN_PLANE: readonly Row[] = [
  [0, 42.18258, 42.02647, 6.4397],
  [30, 41.9281, 41.78762, 5.5799],
  [60, 41.17779, 41.08739, 3.2268],
  [90, 40, 40, 0],
  [120, 38.59961, 38.72558, -3.2464],
  [150, 37.3935, 37.64384, -5.6403],
  [180, 36.90564, 37.2104, -6.5213],
  [210, 37.3935, 37.64384, -5.6403],
  [240, 38.59961, 38.72558, -3.2464],
  [270, 40, 40, 0],
  [300, 41.17779, 41.08739, 3.2268],
  [330, 41.9281, 41.78762, 5.5799],
];
const OUT_OF_PLANE: readonly Row[] = [
  [0, 40, 40, 0],
  [30, 39.26427, 39.31808, -2.1292],
  [60, 38.65383, 38.75742, -3.6881],
  [90, 38.31596, 38.45546, -4.2589],
  [120, 38.40902, 38.55171, -3.6883],
  [150, 39.01604, 39.10997, -2.1293],
  [180, 40, 40, 0],
  [210, 40.98396, 40.89003, 2.1293],
  [240, 41.59098, 41.44829, 3.6883],
  [270, 41.68404, 41.54454, 4.2589],
  [300, 41.34617, 41.24258, 3.6881],
  [330, 40.73573, 40.68192, 2.1292],
];
const BOTH: readonly Row[] = [
  [0, 42.18258, 42.02647, 6.4397],
  [30, 41.17163, 41.08615, 3.3907],
  [60, 39.78732, 39.80369, -0.5827],
  [90, 38.24937, 38.39493, -4.4273],
  [120, 36.934, 37.21098, -7.1077],
  [150, 36.35821, 36.70896, -7.8807],
  [180, 36.90564, 37.2104, -6.5213],
  [210, 38.42289, 38.57397, -3.4128],
  [240, 40.25108, 40.22858, 0.5821],
  [270, 41.73641, 41.5931, 4.3914],
  [300, 42.56001, 42.36401, 7.0137],
  [330, 42.68225, 42.48708, 7.7624],
];

describe.each([
  ['tilted 15° in the plane of the bend', 15, 0, [-0.819152, 0.573576, 0], -37.50288, IN_PLANE],
  ['tilted 10° out of it', 0, 10, [-0.633022, 0.754407, 0.173648], 0, OUT_OF_PLANE],
  ['both', 15, 10, [-0.806707, 0.564863, 0.173648], -36.933127, BOTH],
] as const)('%s', (_, inPlane, outOfPlane, normal, distance, rows) => {
  const at = radians(40);
  const plane = tiltedPlane(bend, at, { inPlane: radians(inPlane), outOfPlane: radians(outOfPlane) });

  it('has the printed normal and distance', () => {
    expect(plane.normal.x).toBeCloseTo(normal[0], 6);
    expect(plane.normal.y).toBeCloseTo(normal[1], 6);
    expect(plane.normal.z).toBeCloseTo(normal[2], 6);
    expect(plane.distance).toBeCloseTo(distance, 6);
  });

  it.each(rows)('generator %i', (angle, outer, inner, along) => {
    const onOuter = planeOnBend(bend, plane, { radius: 24.15, angle: radians(angle) }, at)!;
    const onInner = planeOnBend(bend, plane, { radius: 22.15, angle: radians(angle) }, at)!;
    expect(degrees(onOuter.turn!)).toBeCloseTo(outer, 5);
    expect(degrees(onInner.turn!)).toBeCloseTo(inner, 5);
    const ring = (bend.radius + 24.15 * Math.cos(radians(angle))) * at;
    expect(onOuter.along - ring).toBeCloseTo(along, 4);
  });

  it('gives the same ordinates on the wrap, seen the other way round the tube', () => {
    const tilt = Math.acos(plane.normal.y * Math.cos(at) - plane.normal.x * Math.sin(at));
    const outwards = -(plane.normal.x * Math.cos(at) + plane.normal.y * Math.sin(at));
    const cut: PlaneWrap = {
      key: 'joint 1 A',
      member: 'hoop',
      place: '1A',
      tube: { outsideDiameter: 48.3, wall: 2 },
      paperThickness: 0.1,
      stations: 24,
      tilt,
      tiltDirection: Math.atan2(plane.normal.z, outwards),
      arc: { radius: bend.radius },
      ringStation: 500,
      scrap: 'finish',
    };
    const template = wrapForPlane(cut)!;
    for (const [angle, , , along] of rows) {
      const station = template.stations.find((each) => Math.abs(each.angle - ((360 - angle) % 360)) < 1e-9);
      expect(station!.cut).toBeCloseTo(along, 4);
    }
    expect(template.wrapLength).toBeCloseTo(Math.PI * 48.4, 9);
    // a plane that leans past the bend's own axis misses the inside of the bend
    expect(wrapForPlane({ ...cut, tilt: 1.55, tiltDirection: 0 })).toBeUndefined();
  });
});

it.each([
  [0, 25.8518],
  [30, 24.0978],
  [60, 19.2842],
  [90, 12.6449],
  [120, 5.902],
  [150, 0.8705],
  [180, -0.9958],
  [210, 0.8705],
  [240, 5.902],
  [270, 12.6449],
  [300, 19.2842],
  [330, 24.0978],
])('a cut at 5°, tilted 25°, that runs out into the straight before the bend: generator %i', (angle, printed) => {
  const at = radians(5);
  const plane = tiltedPlane(bend, at, { inPlane: radians(25), outOfPlane: 0 });
  const cut = planeOnBend(bend, plane, { radius: 24.15, angle: radians(angle) }, at)!;
  expect(cut.along).toBeCloseTo(printed, 4);
  expect(cut.turn === null).toBe(printed < 0);
});

it('a plane that lies along the bend misses it', () => {
  const endless = { radius: 144.9, from: -Infinity, to: Infinity };
  const plane = { normal: { x: 1, y: 0, z: 0 }, distance: 200 };
  expect(planeOnBend(endless, plane, { radius: 24.15, angle: 0 }, 0)).toBeUndefined();
});
