import { AIR_OXYGEN, ARGON_DENSITY, CUBIC_METRES_PER_SECOND } from './argon.ts';

/** Discharge coefficient of a sharp-edged hole; Bernoulli with the contraction of a thin plate, usual value. */
export const DISCHARGE_COEFFICIENT = 0.61;
/** Pressure under the weld pool that does no harm [Pa], 10 mm of water; derived: sag of a root 3 mm wide. */
export const USUAL_PRESSURE = 100;
/** Never more than this [Pa]; the same derivation, with half of the sag that is still allowed at 332 Pa left over. */
export const HIGHEST_PRESSURE = 200;

/** Pressure behind a round hole [Pa], Δp = ½ ρ (Q/(Cd A))², argon at 20 °C; flow [L/min], bore [mm]. */
export function ventPressure({ flow, bore }: { readonly flow: number; readonly bore: number }): number {
  const area = (Math.PI * (bore / 1000) ** 2) / 4;
  return (ARGON_DENSITY / 2) * ((flow * CUBIC_METRES_PER_SECOND) / (DISCHARGE_COEFFICIENT * area)) ** 2;
}

/** Bore [mm] of the hole behind which a flow [L/min] makes a pressure [Pa], d = √(4 Q/(π Cd √(2Δp/ρ))). */
export function ventBore({ flow, pressure }: { readonly flow: number; readonly pressure: number }): number {
  const speed = Math.sqrt((2 * pressure) / ARGON_DENSITY);
  return 1000 * Math.sqrt((4 * flow * CUBIC_METRES_PER_SECOND) / (Math.PI * DISCHARGE_COEFFICIENT * speed));
}

/** Flow [L/min] that makes a pressure [Pa] behind a hole of a bore [mm], Q = Cd A √(2Δp/ρ). */
export const ventFlow = ({ pressure, bore }: { readonly pressure: number; readonly bore: number }): number =>
  Math.sqrt(pressure / ventPressure({ flow: 1, bore }));

/** What a purge meets: flow [L/min], oxygen in the gas and wanted [ppm]. */
type Leaking = { readonly flow: number; readonly supply: number };

/** Most air that may leak in while the target is held [mL/min], q = Q (C₂ − Cᵢ)/(C_air − C₂); a balance of oxygen. */
export const leakLimit = ({ flow, supply, target }: Leaking & { readonly target: number }): number =>
  (1000 * flow * (target - supply)) / (AIR_OXYGEN - target);

/** Leak [mL/min] that would hold oxygen where it is [ppm], q = Q (C − Cᵢ)/(C_air − C); null where no leak does. */
export function holdingLeak({ flow, supply, oxygen }: Leaking & { readonly oxygen: number }): number | null {
  return oxygen < supply || oxygen >= AIR_OXYGEN ? null : (1000 * flow * (oxygen - supply)) / (AIR_OXYGEN - oxygen);
}
