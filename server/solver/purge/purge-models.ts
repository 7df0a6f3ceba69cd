import { AIR_OXYGEN, ARGON_AIR_DIFFUSIVITY, ARGON_DENSITY, ARGON_VISCOSITY, CUBIC_METRES_PER_SECOND } from './argon.ts';
import { erfc, erfcinv } from './error-function.ts';

/** Reynolds number up to which flow in a tube stays laminar; Reynolds 1883, the usual limit. */
export const LAMINAR_LIMIT = 2300;
/** Bores that a free jet needs to reach the wall: about 2.5 to 5, the larger is taken. */
const JET_REACH = 5;
/** Quantiles that are looked through: from all of the air to the last digit of a double, in steps that no meter shows. */
const LEAST_QUANTILE = -6;
const MOST_QUANTILE = 8;
const QUANTILE_DIGITS = 1e-7;

/** Oxygen at the start, wanted and in the gas, all in one unit [ppm]; supply < target < start. */
export type OxygenStep = { readonly start: number; readonly target: number; readonly supply: number };

/** A tube that gas is swept through: length and bore [mm], flow [L/min]. */
export type SweptTube = { readonly length: number; readonly bore: number; readonly flow: number };

type BoreFlow = Pick<SweptTube, 'bore' | 'flow'>;

/** From air to the target with a gas that holds some oxygen itself. */
export const fromAir = (gas: { readonly target: number; readonly supply: number }): OxygenStep => ({
  start: AIR_OXYGEN,
  ...gas,
});

/** What is left of the difference: r = (C₂ − Cᵢ)/(C₀ − Cᵢ), between 0 and 1. */
export const remaining = ({ start, target, supply }: OxygenStep): number => (target - supply) / (start - supply);

/**
 * Volumes of gas for a chamber that is well mixed all the time, N = ln[(C₀ − Cᵢ)/(C₂ − Cᵢ)].
 * Crowl & Louvar, Chemical Process Safety, sweep-through purging.
 */
export const wellMixedVolumes = (step: OxygenStep): number => -Math.log(remaining(step));

/** Oxygen [as start] after N well-mixed volumes: C = Cᵢ + (C₀ − Cᵢ) exp(−N). */
export const wellMixedOxygen = ({ start, supply }: Omit<OxygenStep, 'target'>, volumes: number): number =>
  supply + (start - supply) * Math.exp(-volumes);

/** Mean speed U = Q/(π a²) [m/s]. */
export const meanSpeed = ({ bore, flow }: BoreFlow): number =>
  (flow * CUBIC_METRES_PER_SECOND) / ((Math.PI * (bore / 1000) ** 2) / 4);

/** Re = ρ U d/µ of argon at 20 °C. */
export const reynolds = (tube: BoreFlow): number =>
  (ARGON_DENSITY * meanSpeed(tube) * (tube.bore / 1000)) / ARGON_VISCOSITY;

/** Flow [L/min] at which a bore [mm] reaches a Reynolds number. */
export const flowAtReynolds = (bore: number, number: number): number => number / reynolds({ bore, flow: 1 });

/** Pe = U d/D. */
export const peclet = (tube: BoreFlow): number => (meanSpeed(tube) * (tube.bore / 1000)) / ARGON_AIR_DIFFUSIVITY;

/** Dispersion along a tube in laminar flow, K = D (1 + Pe²/192) [m²/s]; Taylor 1953, Aris 1956. */
export const dispersion = (tube: BoreFlow): number => ARGON_AIR_DIFFUSIVITY * (1 + peclet(tube) ** 2 / 192);

/** Bo = U L/K. */
export const bodenstein = (tube: SweptTube): number => (meanSpeed(tube) * (tube.length / 1000)) / dispersion(tube);

/** q = erfc⁻¹(2r) of a step in oxygen. */
export const stepQuantile = (step: OxygenStep): number => erfcinv(2 * remaining(step));

/**
 * Volumes until the outlet has the target, N = [b + √(1 + b²)]² with b = q/√Bo: the first term of Ogata & Banks 1961.
 * On the long side: 1.3 to 2.8 % more than a finite-volume solution of the same equation.
 */
export function closedFormVolumes({ bodenstein: bo, quantile }: { bodenstein: number; quantile: number }): number {
  const b = quantile / Math.sqrt(bo);
  return (b + Math.sqrt(1 + b * b)) ** 2;
}

/** Tubes of one bore in a row, as gas passes them: the time that it takes [s], and how it spreads on its way. */
export type TubesInRow = {
  readonly residence: number;
  /** Share of that time in the bore that the hose's jet keeps mixed: the first 5 diameters. */
  readonly mixedShare: number;
  /** Bo of the rest. */
  readonly bodenstein: number;
};

/**
 * Tubes that the same gas passes one after another, each with its own flow. Variances of the time on the way add up
 * where gas mixes at the joints, σ² = Σ 2 τᵢ²/Boᵢ, and Bo = 2 τ²/σ² is that of one tube which spreads it as far.
 *
 * @returns null where the flow is not laminar in one of them: the closed form does not hold there
 */
export function tubesInRow(tubes: readonly SweptTube[]): TubesInRow | null {
  let [mixed, rest, variance] = [0, 0, 0];
  let jet = JET_REACH * (tubes[0]?.bore ?? 0);
  for (const tube of tubes) {
    if (reynolds(tube) > LAMINAR_LIMIT) return null;
    const inJet = Math.min(jet, tube.length);
    const length = tube.length - inJet;
    jet -= inJet;
    const speed = 1000 * meanSpeed(tube);
    mixed += inJet / speed;
    if (length <= 0) continue;
    const time = length / speed;
    rest += time;
    variance += (2 * time ** 2) / bodenstein({ ...tube, length });
  }
  const residence = mixed + rest;
  return {
    residence,
    mixedShare: rest > 0 ? mixed / residence : 1,
    bodenstein: variance > 0 ? (2 * rest ** 2) / variance : 0,
  };
}

/**
 * Volumes of a row of tubes until its far end has what a quantile stands for: the mixed share as a well-mixed chamber,
 * the rest by the closed form, N = f N_mixed + (1 − f) N_closed, never more than well mixed all through. The sum of
 * the two is on the long side of both in a row. Leaks, dead legs and wide tubes lying flat are not in it.
 */
export function longVolumes(
  { mixedShare: share, bodenstein: bo }: TubesInRow,
  { wellMixed, quantile }: { readonly wellMixed: number; readonly quantile: number },
): number {
  const closed = share < 1 ? closedFormVolumes({ bodenstein: bo, quantile }) : 0;
  return Math.min(wellMixed, share * wellMixed + (1 - share) * closed);
}

/** What is left at the far end [ppm] after some volumes of a row of tubes: the same sum, turned round. */
export function longOxygen(row: TubesInRow, { start, supply }: Omit<OxygenStep, 'target'>, volumes: number): number {
  const share = row.mixedShare;
  if (share >= 1) return wellMixedOxygen({ start, supply }, volumes);
  let [low, high] = [LEAST_QUANTILE, MOST_QUANTILE];
  // N grows with q; r = erfc(q)/2, and N_mixed = −ln r
  while (high - low > QUANTILE_DIGITS) {
    const quantile = (low + high) / 2;
    const wellMixed = -Math.log(erfc(quantile) / 2);
    const reached = share * wellMixed + (1 - share) * closedFormVolumes({ bodenstein: row.bodenstein, quantile });
    if (reached < volumes) low = quantile;
    else high = quantile;
  }
  return supply + ((start - supply) * erfc(low)) / 2;
}
