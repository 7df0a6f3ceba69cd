import type { Difference } from '../../plan/readings-fit.ts';
import type { Figure } from '../../plan/figure.ts';
import { band, figure, input } from '../figure.ts';
import type { Check, FrameGeometry, Spot } from '../frame/frame-geometry.ts';
import type { Reference } from '../../job/quantities.ts';
import { length, subtract, type Vector3 } from '../geometry/vector.ts';

/** Where a spot of the frame as it came back ends up. */
export type Placer = (spot: Spot) => Vector3;

/** What a check's reference adds to its centre size [mm]. */
export const extraFor = (check: Check, reference: Reference): number =>
  reference === 'outside' ? check.outsideExtra : reference === 'inside' ? check.insideExtra : 0;

/** Size of a check with its spots moved, centre to centre [mm]. */
export const measureCheck = (check: Check, placed: Placer = (spot) => spot.point): number =>
  length(subtract(placed(check.to), placed(check.from)));

/**
 * Every check of the wanted frame beside the same one of the frame as it came back (or as corrected), in the
 * reference that it was typed in.
 *
 * @param placed where each spot of `actual` stands
 * @param doubt how sure the actual size is, ± [mm]
 */
export function differences(
  wanted: FrameGeometry,
  actual: FrameGeometry,
  context: { doubt: number; from: readonly string[] },
  placed?: Placer,
): Difference[] {
  return wanted.checks.flatMap((check) => {
    const own = actual.checks.find((other) => other.key === check.key && other.index === check.index);
    if (own === undefined) return [];
    const size = (centre: number, name: string, doubt: number): Figure =>
      figure(
        centre + extraFor(check, check.reference),
        'mm',
        'w = c + e',
        [input('c', name, centre, 'mm'), input('e', 'reference-extra', extraFor(check, check.reference), 'mm')],
        ['geometry'],
        doubt > 0 ? band(doubt, ...context.from) : null,
      );
    const wantedSize = size(measureCheck(check), 'centre-to-centre-wanted', 0);
    const actualSize = size(measureCheck(own, placed), 'centre-to-centre-actual', context.doubt);
    return [
      {
        key: check.key,
        index: check.index,
        field: own.field,
        reference: check.reference,
        wanted: wantedSize,
        cameBack: actualSize,
        difference: figure(
          actualSize.value - wantedSize.value,
          'mm',
          'Δ = actual − wanted',
          [input('a', 'actual', actualSize.value, 'mm'), input('w', 'wanted', wantedSize.value, 'mm')],
          ['geometry'],
          context.doubt > 0 ? band(context.doubt, ...context.from) : null,
        ),
      },
    ];
  });
}
