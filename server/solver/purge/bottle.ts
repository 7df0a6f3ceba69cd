/** What gauge and absolute pressure differ by [bar]: one atmosphere. */
export const ATMOSPHERE = 1.013;
/** State that contents are told in: 15 °C [K] and 1 bar. */
export const REFERENCE = { temperature: 288.15, pressure: 1 } as const;
/** Highest gauge reading that a bottle can have here [bar]: the fit of Z ends soon above it. */
export const HIGHEST_GAUGE = 300;

/**
 * Z(p, T) = 1 + Σᵢ xⁱ (a₀ + a₁ θ + a₂ θ² + a₃ θ³), x = p/100 bar, θ = 288.15 K/T − 1, one row for each i from 1: a fit
 * to the equation of state of Tegeler, Span, Wagner 1999, within 0.00003 from 0.5 to 302 bar absolute and −5 to 45 °C.
 */
const FIT = [
  [-0.0738151, -0.339971, -0.321456, -0.0715378],
  [0.0139551, 0.0105709, -0.0443624, 0.0351256],
  [0.0028499, 0.0030345, -0.116359, -0.576531],
  [0.0016287, 0.0265063, 0.1814274, 0.6159955],
  [-0.0008135, -0.0102922, -0.0636003, -0.2109164],
  [8.98e-5, 0.0011168, 0.0069898, 0.0237702],
] as const;

type State = { readonly pressure: number; readonly celsius: number };

/** Compressibility factor of argon at a pressure [bar absolute] and a temperature [°C]. */
export function compressibility({ pressure, celsius }: State): number {
  const x = pressure / 100;
  const theta = REFERENCE.temperature / (celsius + 273.15) - 1;
  return 1 + FIT.reduceRight((sum, [a0, a1, a2, a3]) => x * (sum + a0 + theta * (a1 + theta * (a2 + theta * a3))), 0);
}

/** Z₀, at the state that contents are told in. */
export const REFERENCE_Z = compressibility({ pressure: REFERENCE.pressure, celsius: 15 });

/** A bottle: water volume [L], temperature [°C]. */
export type Bottle = { readonly waterVolume: number; readonly celsius: number };

/** Contents [L at 15 °C, 1 bar] at a pressure [bar absolute], V = V_w (p/Z)(T₀/T) Z₀/p₀. */
export function contents({ waterVolume, celsius }: Bottle, pressure: number): number {
  const inside = pressure / compressibility({ pressure, celsius });
  return (waterVolume * inside * REFERENCE.temperature * REFERENCE_Z) / ((celsius + 273.15) * REFERENCE.pressure);
}

/** Contents at a gauge reading [bar], in litres at 15 °C and 1 bar. */
export const contentsAtGauge = (bottle: Bottle, gauge: number): number => contents(bottle, gauge + ATMOSPHERE);

/** Gas taken out between two settled readings [bar gauge], in litres at 15 °C and 1 bar. */
export const taken = (bottle: Bottle, { from, to }: { readonly from: number; readonly to: number }): number =>
  contentsAtGauge(bottle, from) - contentsAtGauge(bottle, to);

/**
 * The gauge reading [bar] at which a bottle holds so many litres, by halving, since contents rise all the way; null
 * where it would have to be over 300 bar, and 0 where it holds less than an open bottle does.
 */
export function gaugeHolding(bottle: Bottle, litres: number): number | null {
  if (litres > contentsAtGauge(bottle, HIGHEST_GAUGE)) return null;
  let low = 0;
  let high: number = HIGHEST_GAUGE;
  // 50 halvings of 300 bar are finer than a number of this size holds
  for (let halving = 0; halving < 50; halving += 1) {
    const middle = (low + high) / 2;
    if (contentsAtGauge(bottle, middle) < litres) low = middle;
    else high = middle;
  }
  return high;
}
