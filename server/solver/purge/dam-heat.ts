import { AUSTENITIC, AUSTENITIC_DIFFUSIVITY } from '../tube/heat-properties.ts';

/** √(2πe): the peak of a plane source that spreads along a tube. */
const PEAK = Math.sqrt(2 * Math.PI * Math.E);

/**
 * Highest rise of temperature [K] at a distance [mm] from a weld made in one pass, nothing cooled:
 * ΔT = (H/t)/(√(2πe) ρc x), from the plane instantaneous source (derived).
 *
 * @param weld heat put in for each length [J/mm] and wall [mm]
 */
export const peakRise = ({ heat, wall }: { readonly heat: number; readonly wall: number }, distance: number): number =>
  ((heat * 1e6) / wall) * (1000 / (PEAK * AUSTENITIC.heatCapacity * distance));

/** When that peak passes [s]: t = x²/2α. */
export const peakTime = (distance: number): number => (distance / 1000) ** 2 / (2 * AUSTENITIC_DIFFUSIVITY);

/** How far the rise may be off: what share of the arc's heat stays is a convention, and the tube cools meanwhile. */
export const DAM_DOUBT = 0.5;
