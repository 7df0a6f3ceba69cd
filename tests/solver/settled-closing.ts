import type { Closing, SettledClosing } from '../../server/job/closing.ts';

/** A closing whose shrinkage is typed. */
export function settledClosing(closing: Closing): SettledClosing {
  const { shrinkage } = closing;
  if (shrinkage === null) throw new Error('Nobody has typed what a weld pulls in.');
  return { ...closing, shrinkage };
}
