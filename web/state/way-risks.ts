import type { Way, WayKey } from '../../server/plan/correction.ts';

/** What can go wrong, each thing once, with a letter that stands for it in a narrow table. */
export type LetteredRisk = { readonly letter: string; readonly risk: string; readonly ways: readonly WayKey[] };

/** The letters of a list, a to z, then aa, ab … */
const letterOf = (index: number): string =>
  (index >= 26 ? letterOf(Math.floor(index / 26) - 1) : '') + String.fromCharCode(97 + (index % 26));

/** The risks of some ways in the order in which they are first met. */
export function letteredRisks(ways: readonly Way[]): readonly LetteredRisk[] {
  const all = [...new Set(ways.flatMap(({ risks }) => risks))];
  return all.map((risk, index) => ({
    letter: letterOf(index),
    risk,
    ways: ways.filter(({ risks }) => risks.includes(risk)).map(({ key }) => key),
  }));
}
