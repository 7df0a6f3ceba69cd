import type { CutPiece } from '../../plan/stock.ts';
import { byOperation } from './operations.ts';
import type { Quantities } from './quantities.ts';

/** Pieces shorter than this share of one are none: rounding. */
const NOTHING = 1e-9;

/**
 * What a splice would take if it had another number of joints, each like its own on the mean: with as many welds and as much
 * new tube. Welds of pads, bends that are turned again and the legs under the frame stay as they are.
 *
 * @param quantities with the legs among them
 * @param more so many times its joints; its welds at joints and at pads
 */
export function withJoints(
  quantities: Quantities,
  more: { readonly times: number; readonly welds: number; readonly pads: number; readonly legs: Quantities | null },
): Quantities {
  const { times, welds, pads, legs } = more;
  // a pad is taken to be like the mean of all welds
  const share = (times * welds + pads) / (welds + pads);
  const scaled = (pick: (one: Quantities) => number): number => {
    const fixed = legs === null ? 0 : pick(legs);
    return fixed + share * (pick(quantities) - fixed);
  };
  const each = (key: 'counts' | 'metres' | 'process') =>
    byOperation((operation) => (operation === 'bend' ? quantities[key].bend : scaled((one) => one[key][operation])));
  return {
    pieces: quantities.pieces.some(({ kind }) => kind === 'let-in')
      ? quantities.pieces.flatMap((piece) => (piece.kind === 'let-in' ? severalPieces(piece, times) : [piece]))
      : quantities.pieces,
    counts: each('counts'),
    metres: each('metres'),
    process: each('process'),
    purgeGas: scaled(({ purgeGas }) => purgeGas),
    torchGas: scaled(({ torchGas }) => torchGas),
    filler: scaled(({ filler }) => filler),
    welds: scaled(({ welds }) => welds),
    parts: {},
  };
}

/** A piece so many times: whole ones, and a shorter one for what is left over. */
function severalPieces(piece: CutPiece, times: number): CutPiece[] {
  const whole = Math.floor(times + NOTHING);
  const rest = times - whole;
  return [
    ...(whole > 0 ? [{ ...piece, count: whole * piece.count }] : []),
    ...(rest > NOTHING ? [{ ...piece, length: { ...piece.length, value: rest * piece.length.value } }] : []),
  ];
}
