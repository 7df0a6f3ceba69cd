import type { ArcPiece } from '../geometry/centreline.ts';
import type { Arc } from './arcs.ts';

/** What of an arc counts here. */
type HeldArc = Pick<Arc, 'sinceDieBend'> & { readonly piece: Pick<ArcPiece, 'made'> };

/** What the machine must hold at the two ends of a member, and what is left on there for it [mm]. */
export type LeftOn = {
  /** Straight before the first die bend, from the sawn end; infinite where there is no die bend. */
  readonly grip: number;
  readonly extraFirst: number;
  /** Straight after the last arc, up to the sawn end. */
  readonly held: number;
  /** What the last straight is short of; nothing after a rolled arc, which no clamp holds. */
  readonly shortLast: number;
  /** The trim allowance, or what is short if that is more. */
  readonly extraLast: number;
};

/**
 * Length that is left on for the machine and cut off after bending.
 *
 * @param ends the last straight, and what saddles take off either end [mm]
 */
export function leftOn(
  arcs: readonly HeldArc[],
  ends: { readonly lastStraight: number; readonly firstThroat: number; readonly lastThroat: number },
  machine: { readonly gripLength: number; readonly leastStraight: number; readonly trimAllowance: number },
): LeftOn {
  const firstDie = arcs.find(({ piece }) => piece.made === 'die');
  const grip = (firstDie?.sinceDieBend ?? Infinity) - ends.firstThroat;
  const held = ends.lastStraight - ends.lastThroat;
  const last = arcs.at(-1);
  const shortLast = last?.piece.made === 'die' ? machine.leastStraight - held : 0;
  return {
    grip,
    extraFirst: Math.max(0, machine.gripLength - grip),
    held,
    shortLast,
    extraLast: last === undefined ? 0 : Math.max(machine.trimAllowance, shortLast),
  };
}

/**
 * The same for a piece that is an arc from end to end, both ends together [mm]: on a die the clamp's length before the bend
 * and, after it, the trim allowance or the straight that the machine needs; no clamp holds what is rolled, so that it has
 * the trim allowance alone, as the rolled end of a member has.
 */
export function leftOnArc(made: ArcPiece['made'], machine: Parameters<typeof leftOn>[2]): number {
  const arc = { piece: { made }, sinceDieBend: 0 };
  const { extraFirst, extraLast } = leftOn([arc], { lastStraight: 0, firstThroat: 0, lastThroat: 0 }, machine);
  return extraFirst + extraLast;
}
