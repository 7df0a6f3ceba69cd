import { sectionProperties, type TubeSize } from '../tube/section.ts';

/** Young's modulus [MPa], K [MPa] and n of σ = K εⁿ. */
export type HardeningLaw = {
  readonly elasticModulus: number;
  readonly strengthCoefficient: number;
  readonly hardeningExponent: number;
};
/** A tube bent to the centreline radius `radius` [mm] under load. */
export type LoadedBend = TubeSize & HardeningLaw & { readonly radius: number };

const ANGLE_STEPS = 400;
const RADIUS_STEPS = 20;

/** Simpson's rule; `steps` is even. */
function simpson(f: (x: number) => number, range: { from: number; to: number; steps: number }): number {
  const h = (range.to - range.from) / range.steps;
  let sum = f(range.from) + f(range.to);
  for (let i = 1; i < range.steps; i += 1) sum += (i % 2 === 1 ? 4 : 2) * f(range.from + i * h);
  return (sum * h) / 3;
}

/** Stress [MPa] at a strain ≥ 0: elastic below where E ε = K εⁿ, power law above. Handbook 1, 5.1 and 2.3. */
const stressAt = (strain: number, law: HardeningLaw): number =>
  Math.min(law.elasticModulus * strain, law.strengthCoefficient * strain ** law.hardeningExponent);

/** Moment in the tube under load [N·mm]. Handbook 1, 5.1: M = 4 ∫∫ σ(r sin φ/R) r² sin φ dφ dr. */
export function bendingMoment(bend: LoadedBend): number {
  const outer = bend.outsideDiameter / 2;
  const ring = (r: number): number =>
    simpson((phi) => stressAt((r * Math.sin(phi)) / bend.radius, bend) * r ** 2 * Math.sin(phi), {
      from: 0,
      to: Math.PI / 2,
      steps: ANGLE_STEPS,
    });
  return 4 * simpson(ring, { from: outer - bend.wall, to: outer, steps: RADIUS_STEPS });
}

/** Share of the bend angle that springs back [–]. Handbook 1, 5.1: λ = M R/(E I). A lower-side estimate (5.5). */
export const springbackShare = (bend: LoadedBend): number =>
  (bendingMoment(bend) * bend.radius) / (bend.elasticModulus * sectionProperties(bend).secondMoment);

/** Angle to bend to, in the unit of `angle`. Handbook 1, 5.1: θ_b = θ_f/(1 − λ). */
export const angleToBendTo = ({ angle, share }: { readonly angle: number; readonly share: number }): number =>
  angle / (1 - share);

/** Centreline radius after release [mm]. Handbook 1, 5.1: R_f = R/(1 − λ). */
export const radiusAfterRelease = ({ radius, share }: { readonly radius: number; readonly share: number }): number =>
  radius / (1 - share);

/** One test bend: commanded and measured angle, both in the same unit. */
export type TestBend = { readonly commanded: number; readonly measured: number };
/** Springback on the commanded angle, s = c − m = a + b c: `fixed` a [unit of the angles], `share` b [–]. */
export type SpringbackFit = { readonly fixed: number; readonly share: number };

/**
 * Least squares of s = a + b c on the commanded angle. Handbook 1, 5.7 (US patent 3,821,525).
 * Undefined when there are fewer than two different commanded angles.
 */
export function fitTestBends(bends: readonly TestBend[]): SpringbackFit | undefined {
  const meanC = bends.reduce((sum, b) => sum + b.commanded, 0) / bends.length;
  const meanS = bends.reduce((sum, b) => sum + b.commanded - b.measured, 0) / bends.length;
  const spread = bends.reduce((sum, b) => sum + (b.commanded - meanC) ** 2, 0);
  if (!(spread > 0)) return undefined;
  const share = bends.reduce((sum, b) => sum + (b.commanded - meanC) * (b.commanded - b.measured - meanS), 0) / spread;
  return { fixed: meanS - share * meanC, share };
}

/** Angle to command for a wanted one. Handbook 1, 5.7: c = (w + a)/(1 − b). */
export const commandFor = (wanted: number, fit: SpringbackFit): number => (wanted + fit.fixed) / (1 - fit.share);
