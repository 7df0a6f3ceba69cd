// What bending does to a tube, as practice and handbooks limit it: flattening, mandrels, least radius.
import { describe, expect, it } from 'vitest';
import { FLATTENING_LIMIT, flatteningGuidance, mandrelAdvice } from '../../server/solver/bending/forming.ts';
import { outerElongation } from '../../server/solver/bending/wall.ts';

// Rule of makers of U-tubes, 20 D/R % up to 4D and 5 % above (medium confidence): R/D, %
it.each([
  [2, '10.0'],
  [2.5, '8.0'],
  [3, '6.7'],
  [4, '5.0'],
  [4.01, '5.0'],
  [8, '5.0'],
])('flattening at %d D is %s %%', (ratio, printed) => {
  expect(flatteningGuidance(ratio).toFixed(1)).toBe(printed);
});

// 8 % of ASME B31.3 332.2.1 (from memory) and the US Unified Facilities Guide text, 10 % of TEMA RCB-2.31
it('flattening is worth a word from 8 %, and a caution from 10 %', () => {
  expect(FLATTENING_LIMIT).toEqual({ note: 8, caution: 10 });
});

// Grid of common practice, low confidence: the D/t from and to, then R/D 4, 3, 2, 1.5
describe('mandrel', () => {
  it.each([
    [5, 12, ['none', 'none', 'none-or-plug', 'plug']],
    [12.01, 20, ['none', 'none-or-plug', 'plug', 'ball']],
    [20.01, 30, ['none-or-plug', 'plug', 'ball', 'ball-and-wiper']],
    [30.01, 50, ['plug', 'ball', 'ball-and-wiper', 'special']],
    [50.01, 200, ['ball', 'ball-and-wiper', 'special', 'special']],
  ])('D/t %d to %d', (from, to, printed) => {
    for (const wallFactor of [from, to]) {
      expect([4, 3, 2, 1.5].map((bendRatio) => mandrelAdvice({ wallFactor, bendRatio }))).toEqual(printed);
      // between two columns the tighter one holds, above the first and below the last they go on
      expect([6, 3.9, 2.9, 1.9, 1].map((bendRatio) => mandrelAdvice({ wallFactor, bendRatio }))).toEqual([
        printed[0],
        printed[1],
        printed[2],
        printed[3],
        printed[3],
      ]);
    }
  });
});

// w/k = (D/t) / (R/D) = D²/(t R) of common tubes, printed to 0.01: D, t, w, then w/k at 2, 3 and 4 D; 1/k = 2 x
it.each([
  [25.4, 1.65, '15.39', ['7.70', '5.13', '3.85']],
  [38.1, 1.65, '23.09', ['11.55', '7.70', '5.77']],
  [48.3, 2, '24.15', ['12.07', '8.05', '6.04']],
])('%d × %d', (outsideDiameter, wall, factor, printed) => {
  const wallFactor = outsideDiameter / wall;
  expect(wallFactor.toFixed(2)).toBe(factor);
  const ratios = [2, 3, 4].map(
    (ratio) => 2 * wallFactor * outerElongation({ outsideDiameter, radius: ratio * outsideDiameter }),
  );
  for (const [index, value] of ratios.entries())
    expect(Math.abs(value - Number(printed[index]))).toBeLessThan(0.005 + 1e-9);
});

// FAA AC 43.13-1B Table 9-2, least radius to the centreline (from memory, medium confidence): OD and radius of steel tube
// in sixteenths and thirty-seconds of an inch. It is 3.5 OD within 1/32 in, so the outer fibre stretches by a seventh.
it.each([
  [3 / 16, 21 / 32],
  [1 / 4, 7 / 8],
  [5 / 16, 1 + 1 / 8],
  [3 / 8, 1 + 5 / 16],
  [1 / 2, 1 + 3 / 4],
  [5 / 8, 2 + 3 / 16],
  [3 / 4, 2 + 5 / 8],
  [1, 3 + 1 / 2],
  [1 + 1 / 4, 4 + 3 / 8],
  [1 + 1 / 2, 5 + 1 / 4],
  [2, 7],
])('least radius of steel tube %d in is %d in', (outsideDiameter, radius) => {
  const bendRatio = 1 / (2 * outerElongation({ outsideDiameter, radius }));
  expect(Math.abs(bendRatio - 3.5) * outsideDiameter).toBeLessThanOrEqual(1 / 32 + 1e-12);
});
