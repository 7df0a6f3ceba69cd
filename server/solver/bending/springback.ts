import { sectionProperties, type TubeSize } from '../tube/section.ts';

/**
 * Young's modulus [MPa], K [MPa] and n of the hardening law. By power law σ = K εⁿ on the whole strain, which begins
 * too low (304 at 0.2 %: 91 MPa, and its proof stress is 195 at least). By Swift σ = K (ε0 + εp)ⁿ on the plastic strain, with ε0 such that it
 * begins at the 0.2 % proof stress [MPa]: better under 5 % strain and for tube that is not annealed. (Swift, J. Mech.
 * Phys. Solids 1, 1952, 1; from memory. Started at the proof stress: derived.)
 */
export type HardeningLaw = {
  readonly elasticModulus: number;
  readonly strengthCoefficient: number;
  readonly hardeningExponent: number;
} & ({ readonly hardening?: 'power' } | { readonly hardening: 'swift'; readonly proofStress: number });
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

/** ∫₀^φ E (r sin φ / R) r² sin φ dφ [N·mm/mm]: what the elastic part of a quarter ring adds. */
const elasticRing = (r: number, bend: LoadedBend, angle: number): number =>
  ((bend.elasticModulus * r ** 3) / bend.radius) * (angle / 2 - Math.sin(2 * angle) / 4);

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
  const span = Math.PI / 2 - yieldAngle;
  const plastic = ROUND.reduce((sum, { at, weight }) => {
    const sine = Math.sin(yieldAngle + span * at ** 2);
    return sum + weight * 2 * at * sine ** (1 + hardeningExponent);
  }, 0);
  return (
    elasticRing(r, bend, yieldAngle) + strengthCoefficient * (r / radius) ** hardeningExponent * r ** 2 * span * plastic
  );
}

type SwiftBend = Extract<LoadedBend, { readonly hardening: 'swift' }>;

/**
 * Stress by Swift's law at a whole strain above yield [MPa]: σ/E + (σ/K)^{1/n} − ε0 = ε. The left side is convex in σ
 * and the start lies above the root, so Newton's method comes down to it without a step too far.
 */
function swiftStress(strain: number, start: number, bend: SwiftBend): number {
  const { elasticModulus, strengthCoefficient, hardeningExponent } = bend;
  let stress = strengthCoefficient * (start + strain) ** hardeningExponent;
  for (let round = 0; round < 50; round += 1) {
    const hardened = (stress / strengthCoefficient) ** (1 / hardeningExponent);
    const over = stress / elasticModulus + hardened - start - strain;
    const step = over / (1 / elasticModulus + hardened / (hardeningExponent * stress));
    stress -= step;
    if (Math.abs(step) < 1e-12 * stress) break;
  }
  return stress;
}

/** The same first moment by Swift's law: elastic up to the proof stress, and integrated likewise above it. */
function swiftQuarterRing(r: number, bend: SwiftBend): number {
  const { elasticModulus, strengthCoefficient, hardeningExponent, proofStress, radius } = bend;
  const start = (proofStress / strengthCoefficient) ** (1 / hardeningExponent); // σ = Rp where εp = 0
  const yieldAngle = Math.asin(Math.min(1, (proofStress / elasticModulus) * (radius / r)));
  const span = Math.PI / 2 - yieldAngle;
  const plastic = ROUND.reduce((sum, { at, weight }) => {
    const sine = Math.sin(yieldAngle + span * at ** 2);
    return sum + weight * 2 * at * sine * swiftStress((r * sine) / radius, start, bend);
  }, 0);
  return elasticRing(r, bend, yieldAngle) + r ** 2 * span * plastic;
}

/** Moment in the tube under load [N·mm]: M = 4 ∫∫ σ(r sin φ / R) r² sin φ dφ dr. Derived: plane sections, ε = y/R. */
export function bendingMoment(bend: LoadedBend): number {
  const inner = bend.outsideDiameter / 2 - bend.wall;
  // without hardening both laws are one: elastic, then K
  const swift = bend.hardening === 'swift' && bend.hardeningExponent > 0 ? bend : undefined;
  const rings = THROUGH.map(({ at, weight }) => {
    const r = inner + at * bend.wall;
    return weight * (swift === undefined ? quarterRing(r, bend) : swiftQuarterRing(r, swift));
  });
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
