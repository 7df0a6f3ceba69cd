/** What the leg sheet and the level sheet say. */
export const siteSheets = {} as const;
