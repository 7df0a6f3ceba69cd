// A mitre and a wedge, computed beforehand and checked by bisection of the implicit surface; printed to 1e-4 mm.
import { expect, it } from 'vitest';
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
