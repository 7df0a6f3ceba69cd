/**
 * How long the tables of a job may grow, and what a fresh reading may hold. The same numbers stand in the schema of the
 * job, which the page knows only as types; a test holds the two equal.
 */
export const MOST_POINTS = 120;
export const MOST_PIECES = 120;
export const MOST_READINGS = 400;
export const MOST_FIXINGS = 60;
export const MOST_AIR_HOLES = 40;
export const MOST_METER_READINGS = 60;
export const MOST_LEVEL_SETS = 12;
export const MOST_LEVEL_READINGS = 20;
export const MOST_SITE_POINTS = 60;
export const MOST_SITE_DISTANCES = 12;
export const MOST_DIRECTIONS = 40;
export const MOST_THINGS = 60;
export const MOST_PAIRS = 20;
export const MOST_SLOPES = 2;
export const MOST_LEGS = 24;
/** The longest name of a point, a thing, a leg or a line of the site [characters]. */
export const LONGEST_SITE_NAME = 40;
/** The most that a level may show, and that a line may lean or rise [degrees]. */
export const MOST_SHOWN = 180;
export const MOST_LEAN = 89;
/** The longest length that a tape may have found [mm]. */
export const LONGEST_READING = 50_000;
export const MOST_TUBE_RATES = 40;
export const MOST_QUANTITIES = 6;
export const MOST_TIMES_TAKEN = 200;
export const LONGEST_RATES_NAME = 60;
export const LONGEST_TERMS = 2000;
export const LONGEST_REFERENCE = 40;
