// Saddles computed beforehand and checked by bisection of the implicit surface; printed to 1e-4 mm. The line to cut to
// is the further of the outer and the inner ordinate.
import { describe, expect, it } from 'vitest';
import type { MemberGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { centrelineFromChain } from '../../server/solver/geometry/centreline.ts';
import { holeWrap } from '../../server/solver/joints/hole-wrap.ts';
import { saddleOrdinate } from '../../server/solver/joints/saddle-cut.ts';
import { saddleWrap } from '../../server/solver/joints/saddle-wrap.ts';

const radians = (angle: number) => (angle * Math.PI) / 180;
const EQUAL = { outsideDiameter: 48.3, wall: 2, mainRadius: 24.15, offset: 0, axisAngle: radians(90) };
const SLANTED = { outsideDiameter: 38.1, wall: 1.65, mainRadius: 30.15, offset: 0, axisAngle: radians(60) };
const ASIDE = { outsideDiameter: 25.4, wall: 1.65, mainRadius: 30.15, offset: 12, axisAngle: radians(45) };

// generator, outer, inner, cut
type Row = readonly [number, number, number, number];
const EQUAL_ROWS: readonly Row[] = [
  [0, 24.15, 24.15, 24.15],
  [30, 20.9145, 21.4608, 21.4608],
  [60, 12.075, 14.6716, 14.6716],
  [90, 0, 9.6229, 9.6229],
  [120, 12.075, 14.6716, 14.6716],
  [150, 20.9145, 21.4608, 21.4608],
  [180, 24.15, 24.15, 24.15],
  [210, 20.9145, 21.4608, 21.4608],
  [240, 12.075, 14.6716, 14.6716],
  [270, 0, 9.6229, 9.6229],
  [300, 12.075, 14.6716, 14.6716],
  [330, 20.9145, 21.4608, 21.4608],
];
const SLANTED_ROWS: readonly Row[] = [
  [0, 45.8127, 44.8601, 45.8127],
  [30, 42.5562, 42.0333, 42.5562],
  [60, 34.6391, 35.1771, 35.1771],
  [90, 26.9844, 28.4315, 28.4315],
  [120, 23.6405, 25.1312, 25.1312],
  [150, 23.5062, 24.6333, 24.6333],
  [180, 23.8157, 24.7683, 24.7683],
];
const ASIDE_ROWS: readonly Row[] = [
  [0, 51.8158, 50.1658, 51.8158],
  [30, 44.8305, 44.2653, 44.8305],
  [60, 33.9214, 35.3168, 35.3168],
  [90, 24.4513, 27.4853, 27.4853],
  [120, 21.2214, 24.2668, 24.2668],
  [150, 22.8334, 25.1262, 25.1262],
  [180, 26.4158, 28.0658, 28.0658],
  [210, 30.8846, 32.0741, 32.0741],
  [240, 36.265, 36.9748, 36.9748],
  [270, 42.627, 42.6174, 42.627],
  [300, 48.965, 48.0248, 48.965],
  [330, 52.8817, 51.2132, 52.8817],
];

describe.each([
  ['48.3 × 2 on 48.3 at 90°', EQUAL, EQUAL_ROWS],
  ['38.1 × 1.65 on 60.3 at 60°', SLANTED, SLANTED_ROWS],
  ['25.4 × 1.65 on 60.3 at 45°, 12 aside', ASIDE, ASIDE_ROWS],
] as const)('%s', (_, saddle, rows) => {
  const frame = {
    key: 'crossbar 1 start',
    member: 'crossbar 1',
    place: 'start',
    tube: saddle,
    paperThickness: 0,
    stations: 24,
    ringStation: 0,
    scrap: 'start',
  } as const;
  const start = saddleWrap(frame, { ...saddle, acute: 0, distance: null, far: Infinity, end: 'start' })!.template;
  const finish = saddleWrap(
    { ...frame, place: 'finish', scrap: 'finish' },
    { ...saddle, acute: 0, distance: null, far: Infinity, end: 'finish' },
  )!.template;

  it.each(rows)('generator %i', (angle, outer, inner, cut) => {
    const generator = radians(angle);
    const radius = saddle.outsideDiameter / 2;
    expect(saddleOrdinate({ ...saddle, radius, generator })).toBeCloseTo(outer, 4);
    expect(saddleOrdinate({ ...saddle, radius: radius - saddle.wall, generator })).toBeCloseTo(inner, 4);
    expect(start.stations[angle / 15]!.cut).toBeCloseTo(cut, 4);
    // seen from the far end the same saddle runs round the other way
    expect(finish.stations[((360 - angle) % 360) / 15]!.cut).toBeCloseTo(-cut, 4);
  });
});

it('a generator that misses the main has no ordinate, and an end that misses it has no wrap', () => {
  expect(saddleOrdinate({ ...ASIDE, offset: 25, radius: 12.7, generator: radians(90) })).toBeUndefined();
  const frame = {
    key: 'x start',
    member: 'x',
    place: 'start',
    tube: ASIDE,
    paperThickness: 0,
    stations: 16,
    ringStation: 0,
    scrap: 'start',
  } as const;
  expect(
    saddleWrap(frame, { ...ASIDE, offset: 25, acute: 0, distance: null, far: Infinity, end: 'start' }),
  ).toBeUndefined();
});

it.each([
  [0, 0, 39.4042],
  [30, 9.691, 35.5656],
  [60, 17.457, 25.5684],
  [90, 20.6204, 13.4922],
  [120, 17.457, 3.5714],
  [150, 9.691, -2.5344],
  [180, 0, -4.5899],
  [210, -9.691, -2.5344],
  [240, -17.457, 3.5714],
  [270, -20.6204, 13.4922],
  [300, -17.457, 25.5684],
  [330, -9.691, 35.5656],
])('the hole for 19.05 in a main of 60.3 at 60°: generator %i', (angle, girth, along) => {
  const turn = radians(60);
  const rail = (name: string, direction: { x: number; y: number; z: number }, length: number): MemberGeometry => ({
    name,
    centreline: centrelineFromChain({ point: { x: 0, y: 0, z: 0 }, direction, normal: { x: 0, y: 0, z: 1 } }, [
      { kind: 'straight', length },
    ]),
    closed: false,
    closing: null,
    start: { kind: 'free' },
    finish: { kind: 'free' },
  });
  const seat = { kind: 'saddle', onto: 'main', station: 0, axisAngle: turn, offset: 0 } as const;
  const branch = { ...rail('branch', { x: Math.cos(turn), y: Math.sin(turn), z: 0 }, 400), start: seat };
  const wrap = holeWrap(
    rail('main', { x: 1, y: 0, z: 0 }, 1000),
    { member: branch, end: 'start', seat },
    { number: 1, middle: null, radii: { main: 30.15, branch: 19.05 }, paperThickness: 0, templateStations: 24 },
  )!;
  const station = wrap.stations[angle / 15]!;
  expect(station.cut).toBeCloseTo(along, 4);
  // the branch stands over the middle of the paper; seen from outside with the far end up, a quarter turn of the branch
  // (away × acute side) lies on the other side of it
  expect(Math.abs(station.girth - wrap.wrapLength / 2)).toBeCloseTo(Math.abs(girth), 4);
  expect(Math.sign(Math.round(1e6 * (station.girth - wrap.wrapLength / 2)))).toBe(-Math.sign(girth) || 0);
  expect(wrap.curve[0]![0]).toBeCloseTo(wrap.curve.at(-1)![0], 9);
  expect(wrap.curve[0]![1]).toBeCloseTo(wrap.curve.at(-1)![1], 9);
});
