/** What gauge and absolute pressure differ by [bar]: one atmosphere. */
export const ATMOSPHERE = 1.013;
/** State that contents are told in: 15 °C [K] and 1 bar. */
export const REFERENCE = { temperature: 288.15, pressure: 1 } as const;
/** What a bottle is left with, so that no air gets in [bar gauge]: 5 to 10; common practice, no source. */
export const LEFT_IN_BOTTLE = 10;

/**
 * Z(p) = c₀ + c₁ p + c₂ p² + c₃ p³ of argon, 1 to 300 bar absolute, within 0.0009 at 15 °C: fits to the equation of
 * state of Tegeler, Span, Wagner 1999 at four temperatures [°C].
 */
const FITS = [
  { celsius: 5, fit: [1.001097, -9.60113e-4, 2.66287e-6, 5.657e-10] },
  { celsius: 15, fit: [1.000831, -8.11546e-4, 2.38345e-6, 3.625e-10] },
  { celsius: 20, fit: [1.000728, -7.45752e-4, 2.26174e-6, 2.766e-10] },
  { celsius: 35, fit: [1.000497, -5.75796e-4, 1.94997e-6, 7.5e-11] },
] as const;

type State = { readonly pressure: number; readonly celsius: number };
type Fit = (typeof FITS)[number];

const along = ({ fit: [c0, c1, c2, c3] }: Fit, p: number): number => c0 + p * (c1 + p * (c2 + p * c3));

/** Compressibility factor of argon at a pressure [bar absolute] and 5 to 35 °C, linear between the fitted temperatures. */
export function compressibility({ pressure, celsius }: State): number {
  const [first, ...rest] = FITS;
  let below: Fit = first;
  for (const above of rest) {
    if (celsius <= above.celsius) {
      const share = (celsius - below.celsius) / (above.celsius - below.celsius);
      return (1 - share) * along(below, pressure) + share * along(above, pressure);
    }
    below = above;
  }
  return along(below, pressure);
}

/** A bottle: water volume [L], temperature [°C]. */
export type Bottle = { readonly waterVolume: number; readonly celsius: number };

/** Contents [L at 15 °C, 1 bar] at a pressure [bar absolute], V = V_w (p/Z)(T₀/T) Z₀/p₀. */
export function contents({ waterVolume, celsius }: Bottle, pressure: number): number {
  const reference = compressibility({ pressure: REFERENCE.pressure, celsius: 15 });
  const inside = pressure / compressibility({ pressure, celsius });
  return (waterVolume * inside * REFERENCE.temperature * reference) / ((celsius + 273.15) * REFERENCE.pressure);
}

/** Gas taken out between two settled readings [bar gauge], in litres at 15 °C and 1 bar. */
export const taken = (bottle: Bottle, { from, to }: { readonly from: number; readonly to: number }): number =>
  contents(bottle, from + ATMOSPHERE) - contents(bottle, to + ATMOSPHERE);
