/** Share of the arc's energy that is counted as heat: TIG in EN 1011-1, a convention of that standard. */
export const TIG_FACTOR = 0.6;

/** An arc: current [A], voltage [V], travel speed [mm/s]. */
export type Arc = { readonly current: number; readonly voltage: number; readonly travelSpeed: number };

/** Energy of the arc for each length [J/mm], E = U I/v: ISO/TR 18491, no factor. */
export const arcEnergy = ({ current, voltage, travelSpeed }: Arc): number => (voltage * current) / travelSpeed;

/** Heat put in for each length [J/mm], Q = k U I/v: EN 1011-1. */
export const heatInput = (arc: Arc): number => TIG_FACTOR * arcEnergy(arc);
