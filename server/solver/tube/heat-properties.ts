/** How a steel takes heat: growth for each degree [1/K], and the heat that a cubic metre takes for it [J/m³K]. */
export type HeatProperties = { readonly growth: number; readonly heatCapacity: number };

/** From 20 to about 300 °C; density times 500 J/kgK: EN 10088-1, from memory. α/ρc is 4.3·10⁻¹² m³/J. */
export const AUSTENITIC: HeatProperties = { growth: 17e-6, heatCapacity: 7900 * 500 };
/** Likewise. */
export const DUPLEX: HeatProperties = { growth: 13e-6, heatCapacity: 7800 * 500 };

/** How fast heat spreads in an austenitic steel [m²/s]; usual value, from memory. */
export const AUSTENITIC_DIFFUSIVITY = 3.8e-6;
