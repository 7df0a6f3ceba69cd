import type { Difference } from '../../plan/readings-fit.ts';
import type { Band, Figure } from '../../plan/figure.ts';
import { band, figure, input } from '../figure.ts';
import { extraFor, measureCheck, type Check, type FrameGeometry } from '../frame/frame-geometry.ts';
import type { ReturnedFrame } from './returned-frame.ts';

const same = (check: Check) => (other: Check) => other.key === check.key && other.index === check.index;

/** Bands below this are rounding [mm]. */
const NOTHING = 1e-9;

/**
 * Every size of the wanted frame beside the same one of a frame that was measured, in the reference that it was typed
 * in. Bands: √Σ (size of a variation − size)², first order.
 *
 * @param of the frame and its variations; `fieldOf` gives the reading that a size was taken with
 */
export function differences(
  wanted: FrameGeometry,
  of: ReturnedFrame,
  fieldOf: (check: Check) => string = () => '',
): Difference[] {
  return wanted.checks.flatMap((check) => {
    const own = of.geometry.checks.find(same(check));
    if (own === undefined) return [];
    const sizeOf = (one: Check): number => measureCheck(one) + extraFor(one, check.reference);
    const size = sizeOf(own);
    const spread = Math.hypot(
      ...of.variations.map(({ checks }) => {
        const other = checks.find(same(check));
        return other === undefined ? 0 : sizeOf(other) - size;
      }),
    );
    const sized = { check, field: fieldOf(check), wanted: measureCheck(check), actual: measureCheck(own) };
    return [
      sizeDifference(
        { ...sized, extra: extraFor(own, check.reference) },
        spread > NOTHING ? band(spread, 'readings') : null,
      ),
    ];
  });
}

/** A size of the wanted frame and the same one of another frame, centre to centre, with what its reference adds there [mm]. */
export type SizePair = {
  readonly check: Check;
  readonly field: string;
  readonly wanted: number;
  readonly actual: number;
  readonly extra: number;
};

/** A size of the wanted frame beside the same one of another frame, in the reference that it was typed in. */
export function sizeDifference({ check, field, wanted, actual, extra }: SizePair, plusMinus: Band | null): Difference {
  const wantedSize = sizeFigure('centre-to-centre-wanted', wanted, extraFor(check, check.reference), null);
  const actualSize = sizeFigure('centre-to-centre-actual', actual, extra, plusMinus);
  return {
    key: check.key,
    index: check.index,
    field,
    reference: check.reference,
    wanted: wantedSize,
    cameBack: actualSize,
    difference: figure(
      actualSize.value - wantedSize.value,
      'mm',
      'Δ = actual − wanted',
      [input('a', 'actual', actualSize.value, 'mm'), input('w', 'wanted', wantedSize.value, 'mm')],
      ['geometry', 'first-order'],
      plusMinus,
    ),
  };
}

const sizeFigure = (name: string, centre: number, extra: number, plusMinus: Band | null): Figure =>
  figure(
    centre + extra,
    'mm',
    'w = c + e',
    [input('c', name, centre, 'mm'), input('e', 'reference-extra', extra, 'mm')],
    ['geometry'],
    plusMinus,
  );
