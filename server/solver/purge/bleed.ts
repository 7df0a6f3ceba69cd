import { ARGON_AIR_DIFFUSIVITY, CUBIC_METRES_PER_SECOND } from './argon.ts';
import type { DeadBore } from './dead-legs.ts';
import { erfc } from './error-function.ts';
import type { OxygenStep } from './purge-models.ts';

/** Share of l²/D up to which a leg bleeds as if it had no end: its end takes off less than 0.1 % then. */
const LONG = 0.1;
/** Terms of the sum after that; the next is under a hundredth of a percent. */
const TERMS = 3;
/** Halvings that find a number to all digits of a double. */
const HALVINGS = 54;
/** From here on e^(z²) erfc z is 1/(z √π) (1 − 1/(2 z²)) to 0.2 %, and e^(z²) does not overflow before. */
const FAR = 5;

/** What a leg bleeds by: its bore and holes under saddles [mm], and the wall that these go through [mm]. */
export type BledBy = { readonly bore: number; readonly holeBore: number; readonly wall: number };

/**
 * How freely air diffuses through a hole under a saddle, against the bore behind it, h = A_h/(A (w + π d_h/4)) [1/m]:
 * through the wall, and to the hole and away from it as to a disc on either side, 1/(2 D d_h). Derived.
 */
export const holeFreedom = ({ bore, holeBore, wall }: BledBy): number =>
  (1000 * holeBore ** 2) / (bore ** 2 * (wall + (Math.PI * holeBore) / 4));

/**
 * What diffuses out of a leg full of air by each mouth, as the slope of its share there [1/m], by D t [m²]; derived, for
 * the sums see Crank, The Mathematics of Diffusion, from memory. A hole before it, h, holds it back.
 */
function slopeOf(reach: number, freedom: number | null): (spread: number) => number {
  const number = freedom === null ? Infinity : freedom * reach;
  const terms = Array.from({ length: TERMS }, (_, n) => {
    if (freedom === null) return { rate: ((n + 0.5) * Math.PI) ** 2, weight: 2 / reach };
    const rate = root(n, number) ** 2;
    return { rate, weight: (2 * freedom * number) / (number ** 2 + number + rate) };
  });
  return (spread) => {
    if (spread >= LONG * reach ** 2)
      return terms.reduce((sum, { rate, weight }) => sum + weight * Math.exp((-rate * spread) / reach ** 2), 0);
    if (freedom === null) return 1 / Math.sqrt(Math.PI * spread);
    const z = freedom * Math.sqrt(spread);
    return z < FAR ? freedom * Math.exp(z * z) * erfc(z) : (1 - 1 / (2 * z * z)) / Math.sqrt(Math.PI * spread);
  };
}

/** The n-th root of µ tan µ = B, from nπ to (n + ½)π. */
function root(n: number, number: number): number {
  let [low, high] = [n * Math.PI, (n + 0.5) * Math.PI];
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (low + high) / 2;
    if (middle * Math.sin(middle) * Math.cos(n * Math.PI) < number * Math.cos(middle) * Math.cos(n * Math.PI))
      low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Seconds until what diffuses out of dead legs no longer keeps the gas at the vent over the target:
 * Σ bleed C₀ = Q (C₂ − Cᵢ).
 *
 * @param flow [L/min]
 */
export function bleedTime(
  legs: readonly DeadBore[],
  { start, target, supply }: OxygenStep,
  by: BledBy & { readonly flow: number },
): number {
  const blind = legs.filter(({ length, mouths }) => length > 0 && mouths > 0);
  if (blind.length === 0) return 0;
  const freedom = holeFreedom(by);
  const slopes = blind.map(({ length, mouths, behindHole }) => {
    const slope = slopeOf(length / 1000, behindHole ? freedom : null);
    return (spread: number): number => mouths * slope(spread);
  });
  const mouth = (Math.PI * (by.bore / 1000) ** 2) / 4;
  const allowed = (by.flow * CUBIC_METRES_PER_SECOND * (target - supply)) / start / mouth / ARGON_AIR_DIFFUSIVITY;
  // no leg bleeds more than one without an end or a hole before it: by 1/√(π D t) all are low enough at the latest
  const mouths = blind.reduce((sum, one) => sum + one.mouths, 0);
  let [low, high] = [0, (mouths / allowed) ** 2 / Math.PI];
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (low + high) / 2;
    if (slopes.reduce((sum, slope) => sum + slope(middle), 0) > allowed) low = middle;
    else high = middle;
  }
  return high / ARGON_AIR_DIFFUSIVITY;
}
