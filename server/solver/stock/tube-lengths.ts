import type { CutClosing } from '../../job/closing.ts';
import type { Figure } from '../../plan/figure.ts';
import type { EffortPiece } from '../correction/outcome.ts';
import { figure, input } from '../figure.ts';
import type { BarJoints } from './bar-joints.ts';
import type { StraightTube } from './straight-tube.ts';

/**
 * A member as it is sawn off bars: whole, or in the lengths that it is joined from before it is bent.
 *
 * A length reaches from one joint to the next on the straight tube, counted from the sawn end that is bent first. What the
 * weld pulls in is left on, and the gap between the faces left off, half at each side of a joint: all lengths together are
 * the cut length and for each joint the shrinkage less the gap.
 *
 * @param member its name and its cut length as planned
 */
export function lengthsOf(
  { name: of, cutLength }: { readonly name: string; readonly cutLength: Figure },
  joints: BarJoints,
  tube: StraightTube | undefined,
  { shrinkage, gap }: Pick<CutClosing, 'shrinkage' | 'gap'>,
): EffortPiece[] {
  const own = joints.get(of) ?? [];
  if (tube === undefined || own.length === 0) return [{ kind: 'member', of, part: 1, parts: 1, length: cutLength }];
  const places = [0, ...own.map(tube.placeOf), cutLength.value];
  const parts = own.length + 1;
  return Array.from({ length: parts }, (_, index): EffortPiece => {
    const [from, to] = [places[index] ?? 0, places[index + 1] ?? 0];
    const faces = (index === 0 ? 0 : 1) + (index === parts - 1 ? 0 : 1);
    const length = figure(
      to - from + (faces * (shrinkage - gap)) / 2,
      'mm',
      'ℓ = p_2 − p_1 + j (s − g) / 2',
      [
        input('p_1', 'from-on-straight-tube', from, 'mm'),
        input('p_2', 'to-on-straight-tube', to, 'mm'),
        input('j', 'welded-ends', faces, 'count'),
        input('s', 'shrinkage', shrinkage, 'mm'),
        input('g', 'gap', gap, 'mm'),
      ],
      ['geometry', 'typed'],
      cutLength.band,
    );
    return { kind: 'length', of, part: index + 1, parts, length };
  });
}
