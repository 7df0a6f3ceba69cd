import type { Difference } from '../../plan/readings-fit.ts';
import { band, figure, input } from '../figure.ts';
import type { Check, FrameGeometry } from '../frame/frame-geometry.ts';
import { length, subtract } from '../geometry/vector.ts';
import type { Reference } from '../../job/quantities.ts';
import type { ReturnedFrame } from './returned-frame.ts';

const extraOf = (check: Check, reference: Reference): number =>
  reference === 'outside' ? check.outsideExtra : reference === 'inside' ? check.insideExtra : 0;

const centreOf = ({ from, to }: Check): number => length(subtract(to.point, from.point));

const sizeOf = (check: Check, reference: Reference): number => centreOf(check) + extraOf(check, reference);

const same = (check: Check) => (other: Check) => other.key === check.key && other.index === check.index;

/** Bands below this are rounding [mm]. */
const NOTHING = 1e-9;

/**
 * Every size of the wanted frame beside the same one of a frame that was measured or corrected, in the reference that it
 * was typed in. Bands: √Σ (size of a variation − size)², first order.
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
    const { reference } = check;
    const size = sizeOf(own, reference);
    const spread = Math.hypot(
      ...of.variations.map(({ checks }) => {
        const other = checks.find(same(check));
        return other === undefined ? 0 : sizeOf(other, reference) - size;
      }),
    );
    const doubt = spread > NOTHING ? band(spread, 'readings', 'angle-scatter') : null;
    const sized = (one: Check, name: string, plusMinus: typeof doubt) =>
      figure(
        sizeOf(one, reference),
        'mm',
        'w = c + e',
        [input('c', name, centreOf(one), 'mm'), input('e', 'reference-extra', extraOf(one, reference), 'mm')],
        ['geometry'],
        plusMinus,
      );
    const wantedSize = sized(check, 'centre-to-centre-wanted', null);
    const actualSize = sized(own, 'centre-to-centre-actual', doubt);
    const difference = figure(
      actualSize.value - wantedSize.value,
      'mm',
      'Δ = actual − wanted',
      [input('a', 'actual', actualSize.value, 'mm'), input('w', 'wanted', wantedSize.value, 'mm')],
      ['geometry'],
      doubt,
    );
    return [
      {
        key: check.key,
        index: check.index,
        field: fieldOf(check),
        reference,
        wanted: wantedSize,
        cameBack: actualSize,
        difference,
      },
    ];
  });
}
