import type { Finding } from '../../plan/finding.ts';

/** Steps in which a way out is offered [mm]: what a tape shows; common practice, no source. */
const STEP = 0.1;
/** Rounding that does not count as beyond a limit, in steps. */
const ROUNDING = 1e-6;

/** A limit rounded up to a value that is easy to set [mm]. */
export const atLeast = (low: number): number => Math.ceil(low / STEP - ROUNDING) / (1 / STEP);

/** A limit rounded down [mm]. */
export const atMost = (high: number): number => Math.floor(high / STEP + ROUNDING) / (1 / STEP);

/** The first easy value beyond a limit that must be passed [mm]. */
export const above = (low: number): number => (Math.floor(low / STEP + ROUNDING) + 1) / (1 / STEP);

/** The last easy value before a limit that must not be reached [mm]. */
export const below = (high: number): number => (Math.ceil(high / STEP - ROUNDING) - 1) / (1 / STEP);

/** A value for a field, where it can be typed there at all. */
export const wayOut = (field: string, value: number, most = 20_000): Finding['wayOut'] =>
  value > 0 && value <= most ? { field, value } : null;
