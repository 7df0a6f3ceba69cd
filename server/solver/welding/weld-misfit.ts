import type { Joint } from '../../plan/joint.ts';
import type { WeldMisfit } from '../../plan/welding.ts';
import { gradeHiLo } from '../correction/joint-findings.ts';
import { HI_LO_CAPS, HI_LO_LIMITS, hiLoLimit, KINK_LIMITS, type QualityLevel } from '../correction/weld-limits.ts';
import { figure, input } from '../figure.ts';

/**
 * What the correction leaves at a joint against what is allowed: the step by the standard's level and by what a belt
 * takes away, the kink by the standard's level. Graded by its step, and over where the kink is.
 */
export function weldMisfit(
  { hiLo, kink }: Pick<Joint, 'hiLo' | 'kink'>,
  wall: number,
  quality: QualityLevel,
): WeldMisfit {
  const thickness = input('t', 'wall', wall, 'mm');
  const kinkLimit = KINK_LIMITS[quality];
  return {
    hiLo,
    kink,
    standard: figure(
      hiLoLimit(wall, quality),
      'mm',
      'h = min(0.5 t, h₀)',
      [thickness, input('h₀', 'largest-step-of-level', HI_LO_CAPS[quality], 'mm')],
      ['iso-5817'],
    ),
    polish: figure(HI_LO_LIMITS.good * wall, 'mm', 'h = 0.1 t', [thickness], ['polish-step']),
    kinkLimit: figure(kinkLimit, 'deg', 'β', [input('β', 'kink-of-level', kinkLimit, 'deg')], ['iso-5817-kink']),
    grade: kink.value > kinkLimit ? 'over' : gradeHiLo(hiLo.value, wall, quality),
  };
}
