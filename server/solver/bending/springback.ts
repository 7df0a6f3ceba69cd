import { sectionProperties, type TubeSize } from '../tube/section.ts';

/** Young's modulus [MPa], K [MPa] and n of σ = K εⁿ. */
export type HardeningLaw = {
  readonly elasticModulus: number;
  readonly strengthCoefficient: number;
  readonly hardeningExponent: number;
};
/** A tube bent to the centreline radius `radius` [mm] under load. */
export type LoadedBend = TubeSize & HardeningLaw & { readonly radius: number };

/** Points and weights of Gauss–Legendre quadrature on 0…1, by Newton's method on the Legendre polynomial. */
function gaussLegendre(count: number): readonly { readonly at: number; readonly weight: number }[] {
  return Array.from({ length: count }, (_, index) => {
    let x = Math.cos((Math.PI * (index + 0.75)) / (count + 0.5)); // Abramowitz & Stegun 22.16.6, first guess
    let slope = 1;
    for (let round = 0; round < 20; round += 1) {
      let [before, here] = [1, x];
      for (let n = 2; n <= count; n += 1) [before, here] = [here, ((2 * n - 1) * x * here - (n - 1) * before) / n];
      slope = (count * (x * here - before)) / (x * x - 1);
      x -= here / slope;
    }
    return { at: (1 - x) / 2, weight: 1 / ((1 - x * x) * slope * slope) };
  });
}

const ROUND = gaussLegendre(20);
const THROUGH = gaussLegendre(5);

/**
 * First moment of stress over one quarter of a ring of radius r [N·mm/mm]: ∫₀^{π/2} σ(r sin φ / R) r² sin φ dφ.
 * Below the angle where E ε reaches K εⁿ the integral is closed; above it φ = φ_y + (π/2 − φ_y) u² keeps the
 * integrand smooth, so that 20 points give seven digits.
 */
function quarterRing(r: number, bend: LoadedBend): number {
  const { elasticModulus, strengthCoefficient, hardeningExponent, radius } = bend;
  // E ε = K εⁿ; the stress is the lower of the two, so the elastic line rules below this strain
  const yieldStrain = (strengthCoefficient / elasticModulus) ** (1 / (1 - hardeningExponent));
  const yieldAngle = Math.asin(Math.min(1, (yieldStrain * radius) / r));
  const elastic = ((elasticModulus * r ** 3) / radius) * (yieldAngle / 2 - Math.sin(2 * yieldAngle) / 4);
  const span = Math.PI / 2 - yieldAngle;
  const plastic = ROUND.reduce((sum, { at, weight }) => {
    const sine = Math.sin(yieldAngle + span * at ** 2);
    return sum + weight * 2 * at * sine ** (1 + hardeningExponent);
  }, 0);
  return elastic + strengthCoefficient * (r / radius) ** hardeningExponent * r ** 2 * span * plastic;
}

/** Moment in the tube under load [N·mm]: M = 4 ∫∫ σ(r sin φ / R) r² sin φ dφ dr. Derived: plane sections, ε = y/R. */
export function bendingMoment(bend: LoadedBend): number {
  const inner = bend.outsideDiameter / 2 - bend.wall;
  const rings = THROUGH.map(({ at, weight }) => weight * quarterRing(inner + at * bend.wall, bend));
  return 4 * bend.wall * rings.reduce((sum, ring) => sum + ring, 0);
}

/**
 * Share of the bend angle that springs back [–]: λ = M R / (E I). Derived: release is elastic. It leaves out the
 * straights beside the bend and the softer unloading of cold-worked steel, so it is a lower-side estimate.
 */
export const springbackShare = (bend: LoadedBend): number =>
  (bendingMoment(bend) * bend.radius) / (bend.elasticModulus * sectionProperties(bend).secondMoment);

/** Angle to bend to, in the unit of `angle`: θ_b = θ_f / (1 − λ). */
export const angleToBendTo = ({ angle, share }: { readonly angle: number; readonly share: number }): number =>
  angle / (1 - share);

/** Centreline radius after release [mm]: R_f = R / (1 − λ). The arc keeps its length. */
export const radiusAfterRelease = ({ radius, share }: { readonly radius: number; readonly share: number }): number =>
  radius / (1 - share);
