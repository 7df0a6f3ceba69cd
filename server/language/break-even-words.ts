import type { BreakEven } from '../plan/quote.ts';
import { words, wordsOf } from './words.ts';

/** Hundredths of what is counted are rounding, not a joint or a frame more. */
const ROUNDING = 1e-6;

/** What is money: it goes straight up, so that two ways never change places in it twice. */
const MONEY = ['labour', 'offer'] as const;
type Money = (typeof MONEY)[number];
const isMoney = (by: BreakEven['by']): by is Money => (MONEY as readonly string[]).includes(by);

/**
 * The sentence that says up to where one way is the cheaper one, and where the job stands now.
 *
 * @param money writes an amount in minor units
 */
export function breakEvenWords(
  { by, way, other, at, wavers, now }: BreakEven,
  money: (minor: number) => string,
): string {
  const value = (one: number): string => (isMoney(by) ? money(one) : String(Math.floor(one + ROUNDING)));
  const said = { way: wordsOf('wayShort', way), other: wordsOf('wayShort', other), now: value(now.value) };
  if (at === null) return words(`breakEven.${by}.never`, said);
  const ending = { ...said, at: value(at.value) };
  return wavers && !isMoney(by) ? words(`breakEven.${by}.wavers`, ending) : words(`breakEven.${by}`, ending);
}
