/**
 * Default material values of a grade: density [kg/m³], Young's modulus [MPa], K [MPa] and n of σ = K εⁿ (true),
 * least 0.2 % proof stress [MPa], least elongation after fracture [%]. The shop overwrites them.
 */
export type Grade = {
  readonly density: number;
  readonly elasticModulus: number;
  readonly strengthCoefficient: number;
  readonly hardeningExponent: number;
  readonly proofStress: number;
  readonly elongation: number;
};
export type GradeName = '304' | '304L' | '316' | '316L' | '321' | '2205';

/**
 * Handbook 1, section 2. Density: EN 10088-1 (2.1). E: 193 GPa for the austenitic grades is the US handbooks' value
 * (2.1, from memory), 200 GPa for 2205 is EN 10088-1. Proof stress and elongation: annealed tube,
 * EN 10217-7 / EN 10296-2 minimum (2.2). K and n: see each grade (2.3).
 */
export const CATALOGUE_GRADES: Readonly<Record<GradeName, Grade>> = {
  // K, n: Callister, Fundamentals of Materials Science and Engineering, 2nd ed. 2005, p. 199 (2.3).
  '304': {
    density: 7900,
    elasticModulus: 193000,
    strengthCoefficient: 1400,
    hardeningExponent: 0.44,
    proofStress: 195,
    elongation: 40,
  },
  // K, n: Considère rule from typical Rm 580, Ag 0.50 (2.3, low). EN strength from memory (2.2).
  '304L': {
    density: 7900,
    elasticModulus: 193000,
    strengthCoefficient: 1255,
    hardeningExponent: 0.405,
    proofStress: 180,
    elongation: 40,
  },
  // K, n: no published value; taken as 316L's (2.3, low). EN strength from memory (2.2).
  '316': {
    density: 8000,
    elasticModulus: 193000,
    strengthCoefficient: 1190,
    hardeningExponent: 0.35,
    proofStress: 205,
    elongation: 40,
  },
  // K, n: Considère rule from typical Rm 580, Ag 0.42, rounded as in 5.3 (2.3, low). EN strength from memory (2.2).
  '316L': {
    density: 8000,
    elasticModulus: 193000,
    strengthCoefficient: 1190,
    hardeningExponent: 0.35,
    proofStress: 190,
    elongation: 40,
  },
  // K, n: Considère rule from typical Rm 600, Ag 0.45 (2.3, low). EN strength from memory (2.2).
  '321': {
    density: 7900,
    elasticModulus: 193000,
    strengthCoefficient: 1257,
    hardeningExponent: 0.372,
    proofStress: 200,
    elongation: 35,
  },
  // K, n: Considère rule from typical Rm 760, Ag 0.20 (2.3, low). EN strength from memory (2.2, medium).
  '2205': {
    density: 7800,
    elasticModulus: 200000,
    strengthCoefficient: 1244,
    hardeningExponent: 0.182,
    proofStress: 450,
    elongation: 25,
  },
};
