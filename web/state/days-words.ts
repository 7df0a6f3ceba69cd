/**
 * Days as a person counts them: to a tenth, and what is less than that as less than a tenth.
 * 0.046 reads '< 0.1', 9.25 reads '9.3'.
 */
export function daysWords(days: number): string {
  if (days > 0 && days < 0.1) return '< 0.1';
  return String(Math.round(days * 10) / 10);
}
