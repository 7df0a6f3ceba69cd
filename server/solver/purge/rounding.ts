/** Of flows, widths and times that differ by less than this factor none is the larger: rounding must not choose. */
export const CLEARLY_MORE = 1 + 1e-9;
