import { AUSTENITIC, AUSTENITIC_DIFFUSIVITY } from '../tube/heat-properties.ts';

/** Stainless takes on colour from 200 to 300 °C (Force Technology report 1337-4-da-en, 2016): the gas stays on above this [°C]. */
export const COOLED = 250;
/** Before the arc [°C]; our own choice. */
export const SURROUNDINGS = 20;
/** Heat lost from the outside near 250 °C [W/(m² K)]: still air some 10, radiation of dull steel some 15; from memory. */
export const SURFACE_LOSS = 25;
/** How far the time may be off: the loss, the arc's share and the spread along the tube are each known to about a third. */
export const COOLING_DOUBT = 0.5;

/** Newton's method closes in on the root from any start; this many steps are more than it takes. */
const MOST_STEPS = 60;

/**
 * Seconds until the root of a weld is below 250 °C after the arc has passed. Heat of a line source spreads to both sides
 * along a thin wall, which gives it to the air outside: ΔT = H/(ρc w √(4πα t)) exp(−h t/(ρc w)). Gas inside takes none.
 *
 * @param weld heat put in for each length [J/mm] and wall [mm]
 */
export function rootCooling({ heat, wall }: { readonly heat: number; readonly wall: number }): number {
  if (heat <= 0 || wall <= 0) return 0;
  const wallCapacity = AUSTENITIC.heatCapacity * (wall / 1000);
  const fade = wallCapacity / SURFACE_LOSS;
  const first = (heat * 1000) / (wallCapacity * Math.sqrt(4 * Math.PI * AUSTENITIC_DIFFUSIVITY));
  // y + ln y = k with y = 2 t/fade, from 2 (ln first − ½ ln t − t/fade) = 2 ln ΔT
  const k = 2 * Math.log(first / (COOLED - SURROUNDINGS)) + Math.log(2 / fade);
  let y = k > 1 ? k : Math.exp(k);
  for (let step = 0; step < MOST_STEPS && y > 0; step += 1) {
    // in ln y, where the curve bends least: y' = y exp((k − y − ln y)/(1 + y))
    const next = y * Math.exp((k - y - Math.log(y)) / (1 + y));
    const settled = Math.abs(next - y) <= 1e-13 * next;
    y = next;
    if (settled) break;
  }
  return (y * fade) / 2;
}
