/**
 * Linear tolerance of a welded construction, ± [mm], ISO 13920 Table 1 class B (seen in a fabricator's copy): what
 * a frame may miss by and still count as right.
 */
const CLASS_B: readonly { readonly upTo: number; readonly allowed: number }[] = [
  { upTo: 30, allowed: 1 },
  { upTo: 120, allowed: 2 },
  { upTo: 400, allowed: 2 },
  { upTo: 1000, allowed: 3 },
  { upTo: 2000, allowed: 4 },
  { upTo: 4000, allowed: 6 },
  { upTo: 8000, allowed: 8 },
  { upTo: 12_000, allowed: 10 },
  { upTo: 16_000, allowed: 12 },
  { upTo: 20_000, allowed: 14 },
];
const BEYOND = 16;

/** @param size nominal size [mm] */
export const fitTolerance = (size: number): number => CLASS_B.find((row) => size <= row.upTo)?.allowed ?? BEYOND;
