/** beam: held at both ends, free to turn there, loaded at its middle. cantilever: held at one end, loaded at the other. */
export type BeamCase = 'beam' | 'cantilever';

/** Bending moment over load and length: P L/4 at the middle, P L at the hold. */
export const MOMENT: Readonly<Record<BeamCase, number>> = { beam: 1 / 4, cantilever: 1 };

/** What the sag P L³/(E I) is divided by: 48 at the middle, 3 at the free end. */
export const SAG: Readonly<Record<BeamCase, number>> = { beam: 48, cantilever: 3 };

/** A straight tube under one load: length [mm], elastic section modulus [mm³], second moment [mm⁴], modulus [MPa]. */
export type Beam = {
  readonly case: BeamCase;
  readonly length: number;
  readonly elasticModulus: number;
  readonly sectionModulus: number;
  readonly secondMoment: number;
};

/** Stress in the outermost fibre [MPa] under a load [N]: M/W. Statics of simple beams; what the tube weighs is left out. */
export const beamStress = ({ case: kind, length, sectionModulus }: Beam, load: number): number =>
  (MOMENT[kind] * load * length) / sectionModulus;

/** How far the loaded place gives [mm] under a load [N], while nothing yields. */
export const beamSag = ({ case: kind, length, elasticModulus, secondMoment }: Beam, load: number): number =>
  (load * length ** 3) / (SAG[kind] * elasticModulus * secondMoment);

/** Load [N] that brings the outermost fibre to its proof stress [MPa]. */
export const loadAtProof = ({ case: kind, length, sectionModulus }: Beam, proofStress: number): number =>
  (proofStress * sectionModulus) / (MOMENT[kind] * length);
