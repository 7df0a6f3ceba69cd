// Worked examples G3 to G5 of the handbook on cut templates, at their printed precision.
import { expect, it } from 'vitest';
import { saddleOrdinate } from '../../server/solver/joints/saddle-cut.ts';

const radians = (angle: number) => (angle * Math.PI) / 180;
const G3 = { mainRadius: 24.15, offset: 0, axisAngle: radians(90) };
const G4 = { mainRadius: 30.15, offset: 0, axisAngle: radians(60) };
const G5 = { mainRadius: 30.15, offset: 12, axisAngle: radians(45) };

it.each([
  [G3, 24.15, 0, 24.15],
  [G3, 24.15, 30, 20.9145],
  [G3, 24.15, 60, 12.075],
  [G3, 22.15, 30, 21.4608],
  [G3, 22.15, 90, 9.6229],
  [G4, 19.05, 0, 45.8127],
  [G4, 19.05, 60, 34.6391],
  [G4, 17.4, 150, 24.6333],
  [G5, 12.7, 0, 51.8158],
  [G5, 12.7, 90, 24.4513],
  [G5, 12.7, 330, 52.8817],
  [G5, 11.05, 240, 36.9748],
])('%o, radius %d, generator %i', (saddle, radius, angle, printed) => {
  expect(saddleOrdinate({ ...saddle, radius, generator: radians(angle) })).toBeCloseTo(printed, 4);
});

it('a generator that misses the main has no ordinate', () => {
  expect(saddleOrdinate({ ...G5, offset: 25, radius: 12.7, generator: radians(90) })).toBeUndefined();
});
