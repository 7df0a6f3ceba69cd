// Closed forms of the moment in a thin tube, as checks of the integration: derived beforehand, printed as shown.
import { describe, expect, it } from 'vitest';
import { bendingMoment, springbackShare } from '../../server/solver/bending/springback.ts';
import { CATALOGUE_GRADES } from '../../server/solver/tube/grades.ts';

/** Γ(x) by Stirling's series (DLMF 5.11.1), at x + 10 and down again by Γ(x + 1) = x Γ(x). */
function gamma(x: number): number {
  const z = x + 10;
  const series = 1 / (12 * z) - 1 / (360 * z ** 3) + 1 / (1260 * z ** 5);
  const down = Array.from({ length: 10 }, (_, step) => x + step).reduce((product, factor) => product * factor, 1);
  return Math.exp((z - 0.5) * Math.log(z) - z + Math.log(2 * Math.PI) / 2 + series) / down;
}

/** J(n) = ∫₀^{π/2} sin^{1+n} φ dφ = (√π/2) Γ(1 + n/2) / Γ((3 + n)/2). */
const closedJ = (n: number): number => ((Math.sqrt(Math.PI) / 2) * gamma(1 + n / 2)) / gamma((3 + n) / 2);

// A tube that is nothing but plastic, and as thin as it gets: M = 4 K (r/R)ⁿ r² t J(n)
it.each([
  [0, '1.0000'],
  [0.1, '0.97061'],
  [0.2, '0.94359'],
  [0.3, '0.91864'],
  [0.35, '0.90687'],
  [0.4, '0.89552'],
  [0.44, '0.88674'],
  [0.45, '0.88458'],
  [0.5, '0.87402'],
])('J(%d) is %s', (n, printed) => {
  const [r, wall, radius, k] = [20, 1e-4, 100, 1000];
  const thin = { outsideDiameter: 2 * r + wall, wall, radius };
  const moment = bendingMoment({ ...thin, elasticModulus: 1e12, strengthCoefficient: k, hardeningExponent: n });
  const integrated = moment / (4 * k * (r / radius) ** n * r ** 2 * wall);
  const digits = printed.split('.')[1]!.length;
  expect(integrated.toFixed(digits)).toBe(printed);
  expect(closedJ(n).toFixed(digits)).toBe(printed);
});

// λ = (4K / πE) J(n) (R/r)^{1−n}, printed beside the exact share: D, t, R/D, closed form, exact
describe('closed form of the share of 304', () => {
  it.each([
    [25.4, 1.65, 2, '0.01848', '0.01845'],
    [25.4, 1.65, 3, '0.023194', '0.023148'],
    [48.3, 5, 3, '0.023747', '0.023618'],
    [101.6, 2, 3, '0.022588', '0.022584'],
  ])('%d × %d at %d D', (outsideDiameter, wall, ratio, closed, exact) => {
    const grade = CATALOGUE_GRADES['304'];
    const { elasticModulus: e, strengthCoefficient: k, hardeningExponent: n } = grade;
    const radius = ratio * outsideDiameter;
    const digits = closed.split('.')[1]!.length;
    const form = ((4 * k) / (Math.PI * e)) * closedJ(n) * (radius / ((outsideDiameter - wall) / 2)) ** (1 - n);
    expect(form.toFixed(digits)).toBe(closed);
    expect(springbackShare({ ...grade, outsideDiameter, wall, radius }).toFixed(digits)).toBe(exact);
  });
});

// Rigid-plastic, 300 MPa, 38.1 × 1.65: 658 107.45 N·mm by exact integration, 657 658.24 by 4 σ r² t, 0.07 % less
it('the thin form of a rigid-plastic tube', () => {
  const rigid = { elasticModulus: 1e12, strengthCoefficient: 300, hardeningExponent: 0 };
  const exact = bendingMoment({ ...rigid, outsideDiameter: 38.1, wall: 1.65, radius: 76.2 });
  const thin = 4 * 300 * ((38.1 - 1.65) / 2) ** 2 * 1.65;
  expect(thin.toFixed(2)).toBe('657658.24');
  expect((100 * (thin / exact - 1)).toFixed(2)).toBe('-0.07');
});

// Elastic, then 300 MPa: M = Mp ½ (arcsin(η)/η + √(1 − η²)), η = σ R / (E r), Mp = 4 σ r² t, in the limit of a thin tube
it.each([0.1, 0.5, 0.9, 1])('elastic and perfectly plastic at η = %d', (eta) => {
  const [r, wall, stress, e] = [20, 1e-4, 300, 200_000];
  const bend = { outsideDiameter: 2 * r + wall, wall, radius: (eta * e * r) / stress };
  const moment = bendingMoment({ ...bend, elasticModulus: e, strengthCoefficient: stress, hardeningExponent: 0 });
  const plastic = 4 * stress * r ** 2 * wall;
  const closed = (Math.asin(eta) / eta + Math.sqrt(1 - eta ** 2)) / 2;
  expect(moment / plastic).toBeCloseTo(closed, 5);
  if (eta === 1) expect(moment / plastic).toBeCloseTo(Math.PI / 4, 5);
});
