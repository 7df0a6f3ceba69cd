/** Path of a Chromium: CHROMIUM_PATH where that is set, else the first usual place; undefined where there is none. */
export function findChromium(): string | undefined;
