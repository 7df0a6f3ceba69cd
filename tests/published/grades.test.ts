// Material values as their sources print them: EN 10088-1 (two secondary copies), EN 10217-7 (304 seen, the others from
// memory), Callister 2005, p. 199, and Considère's rule on typical tensile strength and uniform elongation from memory.
import { describe, expect, it } from 'vitest';
import type { CatalogueGradeKey } from '../../server/job/tube.ts';
import { springbackShare } from '../../server/solver/bending/springback.ts';
import { CATALOGUE_GRADES, considere } from '../../server/solver/tube/grades.ts';

// ρ kg/m³ of EN 10088-1; Rp0.2 MPa and A % of EN 10217-7, annealed, with where they were read
it.each([
  ['304', 7900, 195, 40, 'en-10217-7'],
  ['304L', 7900, 180, 40, 'en-10217-7-memory'],
  ['316', 8000, 205, 40, 'en-10217-7-memory'],
  ['316L', 8000, 190, 40, 'en-10217-7-memory'],
  ['321', 7900, 200, 35, 'en-10217-7-memory'],
  ['2205', 7800, 450, 25, 'en-10217-7-memory'],
] as [CatalogueGradeKey, number, number, number, string][])('%s', (key, density, proof, elongation, source) => {
  const grade = CATALOGUE_GRADES[key];
  expect([grade.density, grade.proofStress, grade.elongation]).toEqual([density, proof, elongation]);
  expect(grade.sources).toMatchObject({ density: 'en-10088-1', proofStress: source, elongation: source });
});

// EN 10088-1 has 200 GPa for all of them, US handbooks 193 GPa for 304 and 316 (from memory): 3.6 % more springback
describe('modulus', () => {
  it('is 200 GPa for 2205 and 193 GPa for the austenitic grades', () => {
    for (const [key, { elasticModulus }] of Object.entries(CATALOGUE_GRADES))
      expect(elasticModulus).toBe(key === '2205' ? 200_000 : 193_000);
  });
  it('springback goes with 1/E', () => {
    const bend = { ...CATALOGUE_GRADES['304'], outsideDiameter: 38.1, wall: 1.65, radius: 114.3 };
    const ratio = springbackShare(bend) / springbackShare({ ...bend, elasticModulus: 200_000 });
    expect((100 * (ratio - 1)).toFixed(1)).toBe('3.6');
  });
});

describe('hardening', () => {
  it('Callister has K 1400 MPa, n 0.44 for annealed 304', () => {
    const { strengthCoefficient, hardeningExponent, sources } = CATALOGUE_GRADES['304'];
    expect([strengthCoefficient, hardeningExponent]).toEqual([1400, 0.44]);
    expect(sources.strengthCoefficient).toBe('callister');
  });
  // Rm MPa, Ag, n, K MPa as printed
  it.each([
    ['304', 620, 0.5, '0.405', '1341'],
    ['304L', 580, 0.5, '0.405', '1255'],
    ['316L', 580, 0.42, '0.351', '1189'],
    ['321', 600, 0.45, '0.372', '1257'],
    ['2205', 760, 0.2, '0.182', '1244'],
  ] as [CatalogueGradeKey, number, number, string, string][])('Considère, %s', (key, rm, ag, n, k) => {
    const law = considere({ tensileStrength: rm, uniformElongation: ag });
    expect(law.hardeningExponent.toFixed(3)).toBe(n);
    expect(law.strengthCoefficient.toFixed(0)).toBe(k);
    // a power law necks where its slope is its stress: at a true strain of n, with just the load of Rm
    const atNeck = law.strengthCoefficient * law.hardeningExponent ** law.hardeningExponent;
    expect(atNeck / (1 + ag)).toBeCloseTo(rm, 9);
    if (key === '304') return; // the catalogue has Callister's
    const grade = CATALOGUE_GRADES[key];
    expect(grade.hardeningEstimated).toBe(true);
    // 316L is held at 1190 and 0.35
    expect(Math.abs(grade.hardeningExponent - Number(n))).toBeLessThanOrEqual(key === '316L' ? 0.001 + 1e-9 : 0);
    expect(Math.abs(grade.strengthCoefficient - Number(k))).toBeLessThanOrEqual(key === '316L' ? 1 : 0);
  });
});
