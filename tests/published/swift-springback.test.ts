// Degrees lost for a finished 90° where the tube hardens by Swift's law from its proof stress: integrated beforehand with
// an independent program, printed to 0.01°.
import { describe, expect, it } from 'vitest';
import {
  angleToBendTo,
  bendingMoment,
  springbackShare,
  type HardeningLaw,
  type LoadedBend,
} from '../../server/solver/bending/springback.ts';
import { CATALOGUE_GRADES } from '../../server/solver/tube/grades.ts';
import { sectionProperties } from '../../server/solver/tube/section.ts';

const lost = (bend: LoadedBend) => (angleToBendTo({ angle: 90, share: springbackShare(bend) }) - 90).toFixed(2);

const swift = (elasticModulus: number, k: number, n: number, proofStress: number): HardeningLaw => ({
  elasticModulus,
  strengthCoefficient: k,
  hardeningExponent: n,
  hardening: 'swift',
  proofStress,
});
/** 304 annealed, 304 as welded, 316L annealed, 2205. */
const LAWS = [
  swift(193_000, 1400, 0.44, 260),
  swift(193_000, 1400, 0.44, 350),
  swift(193_000, 1190, 0.35, 260),
  swift(200_000, 1227, 0.182, 500),
];

// D, t, R/D, then a column for each law above
it.each([
  [25.4, 1.65, 2, ['1.77', '1.85', '1.71', '2.24']],
  [25.4, 1.65, 3, ['2.28', '2.44', '2.26', '3.17']],
  [25.4, 1.65, 4, ['2.76', '2.99', '2.77', '4.05']],
  [38.1, 1.65, 2, ['1.75', '1.83', '1.68', '2.21']],
  [38.1, 1.65, 3, ['2.25', '2.40', '2.23', '3.11']],
  [38.1, 1.65, 4, ['2.72', '2.94', '2.73', '3.98']],
  [48.3, 2.0, 2, ['1.75', '1.83', '1.68', '2.20']],
  [48.3, 2.0, 3, ['2.25', '2.40', '2.23', '3.10']],
  [48.3, 2.0, 4, ['2.71', '2.94', '2.72', '3.97']],
])('%d × %d at %d D', (outsideDiameter, wall, ratio, printed) => {
  expect(LAWS.map((law) => lost({ ...law, outsideDiameter, wall, radius: ratio * outsideDiameter }))).toEqual(printed);
});

// Power law with K 1275 MPa, n 0.45 (Kalpakjian & Schmid, table of K and n, from memory), 25.4 × 1.65
it.each([
  [2, '1.51'],
  [3, '1.90'],
  [4, '2.23'],
])('the second textbook at %d D', (ratio, printed) => {
  const law = { elasticModulus: 193_000, strengthCoefficient: 1275, hardeningExponent: 0.45 };
  expect(lost({ ...law, outsideDiameter: 25.4, wall: 1.65, radius: ratio * 25.4 })).toBe(printed);
});

describe("Swift's law", () => {
  const tube = { outsideDiameter: 38.1, wall: 1.65, radius: 114.3 };
  it('is elastic up to the proof stress: M = E I / R', () => {
    const radius = (193_000 * 19.05) / 260; // where the outer fibre reaches it
    const { secondMoment } = sectionProperties(tube);
    expect(bendingMoment({ ...LAWS[0]!, ...tube, radius }) / ((193_000 * secondMoment) / radius)).toBeCloseTo(1, 12);
    expect(springbackShare({ ...LAWS[0]!, ...tube, radius: 0.9 * radius })).toBeLessThan(1);
  });
  it('without hardening is the power law without hardening', () => {
    const flat = { elasticModulus: 193_000, strengthCoefficient: 300, hardeningExponent: 0 };
    const power = bendingMoment({ ...flat, ...tube });
    expect(bendingMoment({ ...flat, ...tube, hardening: 'swift', proofStress: 300 })).toBe(power);
    const almost = bendingMoment({ ...flat, ...tube, hardeningExponent: 1e-6, hardening: 'swift', proofStress: 300 });
    expect(almost / power).toBeCloseTo(1, 5);
  });
  it('is above the power law, and does not change with the unit of length', () => {
    for (const law of LAWS) {
      const { elasticModulus, strengthCoefficient, hardeningExponent } = law;
      const power = springbackShare({ elasticModulus, strengthCoefficient, hardeningExponent, ...tube });
      const share = springbackShare({ ...law, ...tube });
      expect(share).toBeGreaterThan(power);
      const small = { outsideDiameter: 0.0381, wall: 0.00165, radius: 0.1143 };
      expect(springbackShare({ ...law, ...small })).toBeCloseTo(share, 12);
    }
  });
  it('is only used where it is asked for', () => {
    const grade = CATALOGUE_GRADES['304'];
    expect(lost({ ...grade, ...tube })).toBe('2.11');
    expect(lost({ ...grade, ...tube, hardening: 'power' })).toBe('2.11');
    expect(Number(lost({ ...grade, ...tube, hardening: 'swift' }))).toBeGreaterThan(2.11);
  });
});
