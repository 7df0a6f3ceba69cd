/** beam: held at both ends, free to turn there. cantilever: held at one end. */
export type BeamCase = 'beam' | 'cantilever';

/** point: at the middle of a beam, at the free end of a cantilever [N]. along: so much for each mm of it [N/mm]. */
export type LoadKind = 'point' | 'along';

/**
 * Bending moment over load and length: P L/4 at the middle and P L at the hold; w L²/8 and w L²/2 of a load along it, over
 * the whole of it, w L. Statics of simple beams.
 */
export const MOMENT: Readonly<Record<LoadKind, Readonly<Record<BeamCase, number>>>> = {
  point: { beam: 1 / 4, cantilever: 1 },
  along: { beam: 1 / 8, cantilever: 1 / 2 },
};

/** What the sag P L³/(E I) is divided by: 48 at the middle, 3 at the free end; of a load along it, w L⁴, 384/5 and 8. */
export const SAG: Readonly<Record<LoadKind, Readonly<Record<BeamCase, number>>>> = {
  point: { beam: 48, cantilever: 3 },
  along: { beam: 384 / 5, cantilever: 8 },
};

/** A straight tube under one load: length [mm], elastic section modulus [mm³], second moment [mm⁴], modulus [MPa]. */
export type Beam = {
  readonly case: BeamCase;
  readonly length: number;
  readonly elasticModulus: number;
  readonly sectionModulus: number;
  readonly secondMoment: number;
};

/** A load on a beam: of its kind, the whole of it [N]. */
export type BeamLoad = { readonly kind: LoadKind; readonly whole: number };

/** Stress in the outermost fibre [MPa] under a load: M/W. Statics of simple beams; what the tube weighs is left out. */
export const beamStress = ({ case: held, length, sectionModulus }: Beam, { kind, whole }: BeamLoad): number =>
  (MOMENT[kind][held] * whole * length) / sectionModulus;

/** How far the middle or the free end gives [mm] under a load, while nothing yields. */
export const beamSag = (
  { case: held, length, elasticModulus, secondMoment }: Beam,
  { kind, whole }: BeamLoad,
): number => (whole * length ** 3) / (SAG[kind][held] * elasticModulus * secondMoment);

/** Point load [N] that brings the outermost fibre to its proof stress [MPa]. */
export const loadAtProof = ({ case: held, length, sectionModulus }: Beam, proofStress: number): number =>
  (proofStress * sectionModulus) / (MOMENT.point[held] * length);
