import type { Operation } from '../../job/rates.ts';
import type { QuotePart } from '../../plan/quote.ts';
import type { CutPiece } from '../../plan/stock.ts';

/**
 * What a piece of work takes for one frame, in plain numbers: every way of a correction is priced by them. Two pieces of work
 * done together (a frame and its legs) are their sum, so that a set-up is paid once.
 */
export type Quantities = {
  readonly pieces: readonly CutPiece[];
  /** How often each operation is done: bends, cuts, welds fitted, fillings, welds, welds finished; bottles are the quote's. */
  readonly counts: Readonly<Record<Operation, number>>;
  /** What passes through each: tube bent, round sawn, length of welds [m]. */
  readonly metres: Readonly<Record<Operation, number>>;
  /** Minutes that follow from the work itself, beside set-up and each: arc, waiting for the gas, grinding [min]. */
  readonly process: Readonly<Record<Operation, number>>;
  /** [L]; what of it runs through each bore, and through the torch. */
  readonly purgeGas: number;
  readonly torchGas: number;
  /** Filler to have at hand [g]. */
  readonly filler: number;
  readonly welds: number;
  /** Whether a whole frame is made from new tube; left out: it is not. */
  readonly anew?: boolean;
  /** For the lines: what each quantity is made of. */
  readonly parts: Readonly<Partial<Record<'gas' | 'filler' | Operation, readonly QuotePart[]>>>;
};
