import type { PlacedPiece } from './bent-part.ts';

/** What a stretch of the bent part is held against. */
export type Measure = {
  /**
   * Clearance of the point at a distance from a piece's beginning [mm]. With `half` above 0 it may be less: it then
   * allows everything that any point within `half` of it is allowed. From `enough` on it need not be exact.
   */
  readonly clearance: (piece: PlacedPiece, at: number, half: number, enough: number) => number;
  /** Less than this it never is [mm]: the surfaces' own radii, where the axes meet what they strike. */
  readonly floor: number;
  /** Share of the clearance that may be told less (see slack). */
  readonly share: number;
  /** Whether `half` makes a difference on arcs. */
  readonly byTurn: boolean;
  /** The swing of the last clearance that was asked for [rad]. */
  readonly found: { swing: number };
};

/** The nearest place so far: `nearest` was seen, `low` is less than or equal to all that there is [mm]. */
export type Nearest = { nearest: number; low: number; station: number; swing: number };

export const nothingNear = (): Nearest => ({ nearest: Infinity, low: Infinity, station: 0, swing: 0 });

/**
 * How much less than there is a clearance may be told as [mm]: D/40, and a share of the clearance. Under what the bodies
 * of a machine can be measured to; common practice, no source.
 *
 * @param share a twentieth; over the bed less
 */
export const slack = (clearance: number, outsideDiameter: number, share: number = SHARE): number =>
  outsideDiameter / 40 + Math.max(0, clearance) * share;

/** The share of a clearance from the machine or from the tube. */
export const SHARE = 1 / 20;

/** A stretch this small a share of the diameter is not halved again. */
const SMALLEST = 1e-4;

/**
 * Looks along a stretch of a piece, from `from` to `to` off its beginning [mm], for a place nearer than the nearest so
 * far. A clearance changes by no more than 1 mm for each mm along the tube, so a stretch whose middle stands off by more
 * than half its length holds nothing nearer; others are halved (branch and bound).
 */
export function lookAlong(
  best: Nearest,
  measure: Measure,
  piece: PlacedPiece,
  from: number,
  to: number,
  outsideDiameter: number,
): void {
  const half = (to - from) / 2;
  const at = from + half;
  const { floor, share } = measure;
  const before = best.nearest;
  const enough =
    before === Infinity ? Infinity : Math.max(before, before - slack(before, outsideDiameter, share) + half);
  const here = measure.clearance(piece, at, 0, enough);
  if (here < best.nearest) {
    best.nearest = here;
    best.station = piece.station + at;
    best.swing = measure.found.swing;
  }
  const limit = best.nearest === Infinity ? Infinity : best.nearest - slack(best.nearest, outsideDiameter, share);
  let low = Math.max(floor, here - half);
  if (low >= limit && measure.byTurn && piece.radius > 0) {
    low = Math.max(floor, measure.clearance(piece, at, half, limit + half) - half);
  }
  if (low >= limit || half <= SMALLEST * outsideDiameter) {
    best.low = Math.min(best.low, low);
    return;
  }
  lookAlong(best, measure, piece, from, at, outsideDiameter);
  lookAlong(best, measure, piece, at, to, outsideDiameter);
}
