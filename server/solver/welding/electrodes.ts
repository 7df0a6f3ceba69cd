/**
 * Currents that tungsten electrodes carry, electrode negative [mm, A]: AWS A5.12 and ISO 6848 guidance from memory
 * (0.5: 5 to 20, 1.0: 15 to 80, 1.6: 70 to 150, 2.4: 150 to 250, 3.2: 250 to 400, 4.0: 400 to 500), widened by one
 * manual that was seen second-hand (1.0: 25 to 85, 1.6: 50 to 160, 2.4: 160 to 250, 3.2: 250 to 400).
 */
const ELECTRODES = [
  { diameter: 0.5, low: 5, high: 20 },
  { diameter: 1, low: 15, high: 85 },
  { diameter: 1.6, low: 50, high: 160 },
  { diameter: 2.4, low: 150, high: 250 },
  { diameter: 3.2, low: 250, high: 400 },
  { diameter: 4, low: 400, high: 500 },
] as const;
const [THINNEST] = ELECTRODES;
const THICKEST = ELECTRODES[5];

/** 1.5 % lanthana, ISO 6848: common practice for stainless, the code from memory. */
export const ELECTRODE_CODE = 'WLa 15';

/** The thickest electrode that carries a current [mm]; the thinnest or the thickest of all beyond their ranges. */
export function electrodeFor(current: number): number {
  const carries = ELECTRODES.filter(({ low, high }) => current >= low && current <= high);
  return (carries.at(-1) ?? (current < THINNEST.low ? THINNEST : THICKEST)).diameter;
}

/** What an electrode carries [A], by the nearest diameter that is sold. */
export function electrodeRange(diameter: number): { readonly low: number; readonly high: number } {
  const off = (one: { readonly diameter: number }): number => Math.abs(one.diameter - diameter);
  return ELECTRODES.reduce<(typeof ELECTRODES)[number]>(
    (nearest, one) => (off(one) < off(nearest) ? one : nearest),
    THINNEST,
  );
}
