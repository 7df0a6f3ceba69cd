/**
 * How long the tables of a frame may grow. The same numbers stand in the schema of the job, which the page knows
 * only as types; a test holds the two equal.
 */
export const MOST_POINTS = 120;
export const MOST_PIECES = 120;
