/** What is further off than so many of its standard deviations is more than chance: common practice, no source. */
export const MOST_DEVIATIONS = 3;
