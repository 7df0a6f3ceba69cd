import type { Operation } from '../../job/rates.ts';

type ByOperation = Readonly<Record<Operation, number>>;

/** A number for each operation. */
export const byOperation = (pick: (operation: Operation) => number): ByOperation => ({
  bend: pick('bend'),
  cut: pick('cut'),
  fit: pick('fit'),
  purge: pick('purge'),
  bottle: pick('bottle'),
  weld: pick('weld'),
  finish: pick('finish'),
});

/** The order in which the work is done, as the Job lists it; a test holds it to that. */
export const OPERATIONS: readonly Operation[] = ['bend', 'cut', 'fit', 'purge', 'bottle', 'weld', 'finish'];
