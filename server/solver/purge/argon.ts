/** Argon and air as the purge needs them, at 20 °C and 101.325 kPa. */

/** Density [kg/m³]; Tegeler, Span, Wagner 1999, equation of state of argon. */
export const ARGON_DENSITY = 1.6618;
/** Viscosity [Pa·s]; Lemmon & Jacobsen 2004. */
export const ARGON_VISCOSITY = 22.31e-6;
/** Diffusivity of argon in air [m²/s]; CRC Handbook, 'Diffusion in gases', after Marrero & Mason 1972. */
export const ARGON_AIR_DIFFUSIVITY = 1.89e-5;
/** Oxygen in air [ppm by volume]: 20.95 %. */
export const AIR_OXYGEN = 209_500;

/** From L/min to m³/s. */
export const CUBIC_METRES_PER_SECOND = 1e-3 / 60;
