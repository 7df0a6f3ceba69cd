import { linearTolerance } from '../frame/general-tolerances.ts';

/** The table begins at this nominal size [mm]; smaller frames are taken as this large. */
const LEAST_SIZE = 2;
/** ± of its first range [mm]: for a size that is no number. */
const LEAST_TOLERANCE = 1;

/**
 * What a frame may miss by and still count as right, ± [mm]: the linear tolerance of welded work, ISO 13920 table 1,
 * class B (the middle one that shops name; common practice).
 *
 * @param size nominal size [mm]
 */
export const fitTolerance = (size: number): number =>
  linearTolerance('iso-13920-b', Math.max(size, LEAST_SIZE))?.plusMinus ?? LEAST_TOLERANCE;
