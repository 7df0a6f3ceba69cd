// A mitre and a wedge, computed beforehand and checked by bisection of the implicit surface; printed to 1e-4 mm.
import { describe, expect, it } from 'vitest';
import { centrelineFromChain } from '../../server/solver/geometry/centreline.ts';
import { faceWrap, wedgeWrap, type CutFace } from '../../server/solver/joints/face-wrap.ts';
import { generatorRuns } from '../../server/solver/joints/generators.ts';
import { planeOrdinate, wedgeWidth } from '../../server/solver/joints/plane-cut.ts';

const radians = (angle: number) => (angle * Math.PI) / 180;

it.each([
  [0, 7.8908, 7.2073],
  [30, 6.8336, 6.2417],
  [60, 3.9454, 3.6037],
  [90, 0, 0],
  [120, -3.9454, -3.6037],
  [150, -6.8336, -6.2417],
  [180, -7.8908, -7.2073],
  [210, -6.8336, -6.2417],
  [240, -3.9454, -3.6037],
  [270, 0, 0],
  [300, 3.9454, 3.6037],
  [330, 6.8336, 6.2417],
])('38.1 × 1.65 at 22.5 degrees: generator %i', (angle, outer, inner) => {
  const cut = { tilt: radians(22.5), generator: radians(angle) };
  expect(planeOrdinate({ ...cut, radius: 19.05 })).toBeCloseTo(outer, 4);
  expect(planeOrdinate({ ...cut, radius: 17.4 })).toBeCloseTo(inner, 4);
});

it.each([
  [0, 25.8839],
  [30, 24.15],
  [60, 19.4129],
  [90, 12.9419],
  [120, 6.471],
  [150, 1.7339],
  [180, 0],
])('48.3 closed by 30 degrees on a hinge at 180: generator %i', (angle, width) => {
  const tilts = { first: radians(15), second: radians(15) };
  expect(wedgeWidth({ radius: 24.15, hinge: 24.15, tilts, generator: radians(angle) })).toBeCloseTo(width, 4);
});

describe('on a wrap of a straight tube', () => {
  const line = centrelineFromChain(
    { point: { x: 5, y: 0, z: 0 }, direction: { x: 1, y: 0, z: 0 }, normal: { x: 0, y: 0, z: 1 } },
    [{ kind: 'straight', length: 1000 }],
  );
  /** A face at a station, its plane turned about z: a positive turn makes the outside, +y, the short side. */
  const face = (station: number, turn: number): CutFace => ({
    runs: generatorRuns(line, station, { x: 0, y: 1, z: 0 }),
    station,
    plane: {
      point: { x: 5 + station, y: 0, z: 0 },
      normal: { x: Math.cos(turn), y: Math.sin(turn), z: 0 },
    },
  });
  const strip = { key: 'k', member: 'm', place: 'p', paperThickness: 0, stations: 24 } as const;

  it.each([
    [0, 0, 7.8908, 7.2073],
    [30, 9.975, 6.8336, 6.2417],
    [60, 19.949, 3.9454, 3.6037],
    [90, 29.924, 0, 0],
    [120, 39.898, -3.9454, -3.6037],
    [150, 49.873, -6.8336, -6.2417],
    [180, 59.847, -7.8908, -7.2073],
    [210, 69.822, -6.8336, -6.2417],
    [240, 79.796, -3.9454, -3.6037],
    [270, 89.771, 0, 0],
    [300, 99.746, 3.9454, 3.6037],
    [330, 109.72, 6.8336, 6.2417],
  ])('38.1 × 1.65 at 22.5 degrees: generator %i', (angle, girth, outer, inner) => {
    const tube = { outsideDiameter: 38.1, wall: 1.65 };
    const wrap = faceWrap({ ...strip, tube, ringStation: 400, scrap: 'finish' }, face(400, -radians(22.5)))!;
    const station = wrap.stations.find((each) => Math.abs(each.angle - angle) < 1e-9)!;
    expect(wrap.wrapLength).toBeCloseTo(119.695, 3);
    expect(wrap.high - wrap.low).toBeCloseTo(15.7815, 4);
    expect(station.girth).toBeCloseTo(girth, 3);
    expect(station.outer).toBeCloseTo(outer, 4);
    expect(station.inner).toBeCloseTo(inner, 4);
  });

  it.each([
    [0, 0, 25.8839],
    [30, 12.645, 24.15],
    [60, 25.29, 19.4129],
    [90, 37.935, 12.9419],
    [120, 50.58, 6.471],
    [150, 63.225, 1.7339],
    [180, 75.869, 0],
    [210, 88.514, 1.7339],
    [240, 101.159, 6.471],
    [270, 113.804, 12.9419],
    [300, 126.449, 19.4129],
    [330, 139.094, 24.15],
  ])('48.3 closed by 30 degrees, both lines on one wrap: generator %i', (angle, girth, width) => {
    const half = 24.15 * Math.tan(radians(15));
    const tube = { outsideDiameter: 48.3, wall: 2 };
    const wrap = wedgeWrap(
      { ...strip, tube, ringStation: 400, scrap: 'between' },
      { first: face(400 - half, radians(15)), second: face(400 + half, -radians(15)) },
      null,
    )!;
    const station = wrap.stations.find((each) => Math.abs(each.angle - angle) < 1e-9)!;
    expect(station.girth).toBeCloseTo(girth, 3);
    expect(station.second! - station.cut).toBeCloseTo(width, 4);
    expect((station.second! + station.cut) / 2).toBeCloseTo(0, 9);
  });
});
