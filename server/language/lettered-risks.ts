import type { Way, WayKey } from '../plan/correction.ts';

/** What can go wrong, each thing once, with a letter that stands for it in a narrow table. */
export type LetteredRisk = { readonly letter: string; readonly risk: string; readonly ways: readonly WayKey[] };

/** The letters of a list, a to z, then aa, ab … */
const letterOf = (index: number): string =>
  (index >= 26 ? letterOf(Math.floor(index / 26) - 1) : '') + String.fromCharCode(97 + (index % 26));

/**
 * The risks of the ways that are possible, in the order in which a reader of their table meets them: page and sheets give
 * a risk the same letter.
 *
 * @param all the ways as they stand in the plan
 */
export function letteredRisks(all: readonly Pick<Way, 'key' | 'possible' | 'risks'>[]): readonly LetteredRisk[] {
  const ways = all.filter(({ possible }) => possible);
  return [...new Set(ways.flatMap(({ risks }) => risks))].map((risk, index) => ({
    letter: letterOf(index),
    risk,
    ways: ways.filter(({ risks }) => risks.includes(risk)).map(({ key }) => key),
  }));
}
