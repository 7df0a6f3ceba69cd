import type { BreakEven } from '../plan/quote.ts';
import { words, wordsOf } from './words.ts';

/** Hundredths of what is counted are rounding, not a joint or a frame more. */
const ROUNDING = 1e-6;

/**
 * The sentence that says up to where one way is the cheaper one, and where the job stands now.
 *
 * @param money writes an amount in minor units
 */
export function breakEvenWords(
  { by, way, other, at, now, cheaper }: BreakEven,
  money: (minor: number) => string,
): string {
  const value = (one: number): string =>
    by === 'labour' || by === 'offer' ? money(one) : String(Math.floor(one + ROUNDING));
  const name = (key: string): string => wordsOf('wayShort', key);
  const stands = value(now.value);
  if (at === null) {
    const dearer = cheaper === way ? other : way;
    return words(`breakEven.${by}.never`, { cheaper: name(cheaper), dearer: name(dearer), now: stands });
  }
  return words(`breakEven.${by}`, { way: name(way), other: name(other), at: value(at.value), now: stands });
}
