/** One inch [mm], by definition (international yard, 1959). */
export const INCH = 25.4;

/** A round tube's size: outside diameter and wall [mm]. */
export type TubeSize = { readonly outsideDiameter: number; readonly wall: number };

/** Bore and radius of gyration [mm], area [mm²], second moment [mm⁴], elastic and plastic modulus [mm³]. */
export type SectionProperties = {
  readonly bore: number;
  readonly area: number;
  readonly secondMoment: number;
  readonly elasticModulus: number;
  readonly plasticModulus: number;
  readonly radiusOfGyration: number;
};

/** Exact properties of the annulus (plane geometry, no thin-wall shortcut). */
export function sectionProperties({ outsideDiameter, wall }: TubeSize): SectionProperties {
  const bore = outsideDiameter - 2 * wall;
  const secondMoment = (Math.PI * (outsideDiameter ** 4 - bore ** 4)) / 64; // I = π(D⁴ − d⁴)/64
  return {
    bore,
    area: Math.PI * (outsideDiameter - wall) * wall, // A = π(D − t)t
    secondMoment,
    elasticModulus: (2 * secondMoment) / outsideDiameter, // W = 2I/D
    plasticModulus: (outsideDiameter ** 3 - bore ** 3) / 6, // Wp = (D³ − d³)/6
    radiusOfGyration: Math.sqrt(outsideDiameter ** 2 + bore ** 2) / 4, // i = √(I/A)
  };
}

/** Mass per length [kg/m] for a density [kg/m³]: π ρ (D − t) t. */
export const massPerMetre = ({ outsideDiameter, wall, density }: TubeSize & { readonly density: number }): number =>
  (Math.PI * density * (outsideDiameter - wall) * wall) / 1e6;

/** What the bore holds [L/m]: π d²/4. */
export const litresPerMetre = ({ outsideDiameter, wall }: TubeSize): number =>
  (Math.PI * (outsideDiameter - 2 * wall) ** 2) / 4000;
