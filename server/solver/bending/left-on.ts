import type { Arc } from './arcs.ts';

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
  arcs: readonly Arc[],
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
