import type { CatalogueGradeKey, Grade } from '../../job/tube.ts';
import type { SourceKey } from '../sources.ts';

/**
 * Material values: density [kg/m³], Young's modulus [MPa], K [MPa] and n of σ = K εⁿ (true), least 0.2 % proof
 * stress [MPa], least elongation after fracture [%].
 */
export type GradeValues = {
  readonly density: number;
  readonly elasticModulus: number;
  readonly strengthCoefficient: number;
  readonly hardeningExponent: number;
  readonly proofStress: number;
  readonly elongation: number;
};

/** A grade as the solver uses it: its values, where each comes from, and whether K and n are an estimate. */
export type ResolvedGrade = GradeValues & {
  readonly name: string;
  readonly sources: Readonly<Record<keyof GradeValues, SourceKey>>;
  readonly hardeningEstimated: boolean;
};

/** Which source each value of a catalogue grade has; strength and hardening differ from grade to grade. */
const sourced = (
  strength: 'en-10217-7' | 'en-10217-7-memory',
  hardening: 'callister' | 'considere',
  modulus: 'elastic-modulus' | 'en-10088-1' = 'elastic-modulus',
) => ({
  sources: {
    density: 'en-10088-1',
    elasticModulus: modulus,
    strengthCoefficient: hardening,
    hardeningExponent: hardening,
    proofStress: strength,
    elongation: strength,
  } as const,
  hardeningEstimated: hardening === 'considere',
});

/**
 * The grades that the program knows, annealed. Density from EN 10088-1. Young's modulus of the austenitic grades is
 * 193 GPa (US handbooks, from memory; EN 10088-1 has 200 GPa, which lowers springback by 3.6 %). Proof stress and
 * elongation are the least values of EN 10217-7; only those of 304 were seen in print, the others are from memory.
 * K and n of 304 are Callister's; all others follow from typical Rm and Ag by Considère's rule and are estimates.
 */
export const CATALOGUE_GRADES: Readonly<Record<CatalogueGradeKey, ResolvedGrade>> = {
  '304': {
    name: '304',
    density: 7900,
    elasticModulus: 193_000,
    strengthCoefficient: 1400, // Callister 2005, p. 199
    hardeningExponent: 0.44,
    proofStress: 195,
    elongation: 40,
    ...sourced('en-10217-7', 'callister'),
  },
  '304L': {
    name: '304L',
    density: 7900,
    elasticModulus: 193_000,
    strengthCoefficient: 1255, // Considère from typical Rm 580 MPa, Ag 0.50
    hardeningExponent: 0.405,
    proofStress: 180,
    elongation: 40,
    ...sourced('en-10217-7-memory', 'considere'),
  },
  '316': {
    name: '316',
    density: 8000,
    elasticModulus: 193_000,
    strengthCoefficient: 1190, // no published value found: taken as 316L's
    hardeningExponent: 0.35,
    proofStress: 205,
    elongation: 40,
    ...sourced('en-10217-7-memory', 'considere'),
  },
  '316L': {
    name: '316L',
    density: 8000,
    elasticModulus: 193_000,
    strengthCoefficient: 1190, // Considère from typical Rm 580 MPa, Ag 0.42 gives 1189 and 0.351, rounded
    hardeningExponent: 0.35,
    proofStress: 190,
    elongation: 40,
    ...sourced('en-10217-7-memory', 'considere'),
  },
  '321': {
    name: '321',
    density: 7900,
    elasticModulus: 193_000,
    strengthCoefficient: 1257, // Considère from typical Rm 600 MPa, Ag 0.45
    hardeningExponent: 0.372,
    proofStress: 200,
    elongation: 35,
    ...sourced('en-10217-7-memory', 'considere'),
  },
  '2205': {
    name: '2205',
    density: 7800,
    elasticModulus: 200_000,
    strengthCoefficient: 1244, // Considère from typical Rm 760 MPa, Ag 0.20
    hardeningExponent: 0.182,
    proofStress: 450,
    elongation: 25,
    ...sourced('en-10217-7-memory', 'considere', 'en-10088-1'),
  },
};

/** K and n by Considère's rule (necking at true strain n) from tensile strength [MPa] and uniform elongation [–]. */
export function considere(test: { tensileStrength: number; uniformElongation: number }): {
  strengthCoefficient: number;
  hardeningExponent: number;
} {
  const hardeningExponent = Math.log(1 + test.uniformElongation);
  const strengthCoefficient =
    (test.tensileStrength * (1 + test.uniformElongation)) / hardeningExponent ** hardeningExponent;
  return { strengthCoefficient, hardeningExponent };
}

/** The material of a job: a catalogue grade, or the shop's own with every value typed. */
export function resolveGrade(grade: Grade): ResolvedGrade {
  if (grade.from === 'catalogue') return CATALOGUE_GRADES[grade.key];
  const { name, density, elasticModulus, strengthCoefficient, hardeningExponent, proofStress, elongation } = grade;
  const sources = {
    density: 'typed',
    elasticModulus: 'typed',
    strengthCoefficient: 'typed',
    hardeningExponent: 'typed',
    proofStress: 'typed',
    elongation: 'typed',
  } as const;
  return {
    name,
    density,
    elasticModulus,
    strengthCoefficient,
    hardeningExponent,
    proofStress,
    elongation,
    sources,
    hardeningEstimated: false,
  };
}
