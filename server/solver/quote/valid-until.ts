/**
 * The day so many days after another, ISO 8601, by the Gregorian calendar.
 *
 * @param date a day; empty: none
 * @returns empty where there is no such day, or the year has more than four digits
 */
export function validUntil(date: string, days: number): string {
  const [year, month, day] = date.split('-').map(Number);
  if (year === undefined || month === undefined || day === undefined) return '';
  const until = dayOf(dayNumber({ year, month, day }) + days);
  return until.year > LAST_YEAR
    ? ''
    : [String(until.year).padStart(4, '0'), twoDigits(until.month), twoDigits(until.day)].join('-');
}

const LAST_YEAR = 9999;
const twoDigits = (value: number): string => String(value).padStart(2, '0');

type Day = { readonly year: number; readonly month: number; readonly day: number };

/** Days of 400 years, after which the calendar repeats itself; and of the years within, counted from 1 March. */
const DAYS_OF_400_YEARS = 146_097;
const DAYS_OF_YEAR = 365;

/**
 * Counted from 1 March of the year 0, so that a leap day is the last of its year; the months from March on have 31, 30, 31,
 * 30, 31 days again and again, ⌊(153 m + 2)/5⌋ before month m. Derived.
 */
function dayNumber({ year, month, day }: Day): number {
  const from = month > 2 ? year : year - 1;
  const months = (month + 9) % 12;
  const leaps = Math.floor(from / 4) - Math.floor(from / 100) + Math.floor(from / 400);
  return DAYS_OF_YEAR * from + leaps + Math.floor((153 * months + 2) / 5) + day - 1;
}

function dayOf(number: number): Day {
  const round = Math.floor(number / DAYS_OF_400_YEARS);
  const inRound = number - round * DAYS_OF_400_YEARS;
  // the year is at most one off by the mean length of a year
  let from = 400 * round + Math.floor(inRound / 365.2425);
  if (dayNumber({ year: from + 1, month: 3, day: 1 }) <= number) from += 1;
  if (dayNumber({ year: from, month: 3, day: 1 }) > number) from -= 1;
  const inYear = number - dayNumber({ year: from, month: 3, day: 1 });
  const months = Math.floor((5 * inYear + 2) / 153);
  const month = ((months + 2) % 12) + 1;
  const day = inYear - Math.floor((153 * months + 2) / 5) + 1;
  return { year: month > 2 ? from : from + 1, month, day };
}
