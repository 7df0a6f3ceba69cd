/** Share of the time that an arc burns, by hand, 0.1 to 0.3: common practice, no source. */
export const OPERATING_FACTOR = { middle: 0.2, off: 0.1 } as const;

/** The ± of a floor time as a share of it, first order; with the arc burning a tenth of the time it is twice as long. */
export const FLOOR_DOUBT = OPERATING_FACTOR.off / OPERATING_FACTOR.middle;

/**
 * From the first tack of some welds to the end of their last arc [s]: tacking, changing rods, turning the frame and
 * letting quarters cool are within it.
 *
 * @param arcTime of these welds [s]
 */
export const floorTime = (arcTime: number): number => arcTime / OPERATING_FACTOR.middle;
