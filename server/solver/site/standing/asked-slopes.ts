import type { Slope } from '../../../job/standing.ts';
import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import { RADIANS } from '../../geometry/angle.ts';
import { turned, type RigidMotion } from '../../geometry/rigid-motion.ts';
import { unit, type Vector3 } from '../../geometry/vector.ts';
import type { Rise } from './least-turn-apart.ts';
import { uprightOf } from './upright.ts';

/** A slope that is asked for, of the frame as it was placed; its place in the job's list. */
export type AskedSlope = Rise & { readonly index: number; readonly angle: number };

/** The slopes in the structure's axes; one whose direction has no length is left out, with a finding. */
export function askedSlopes(
  slopes: readonly Slope[],
  motion: RigidMotion,
  up: Vector3,
): { slopes: AskedSlope[]; findings: Finding[] } {
  const findings: Finding[] = [];
  const asked = slopes.flatMap(({ along, angle, to }, index): AskedSlope[] => {
    const direction = unit(along);
    if (direction === undefined) {
      findings.push(finding('direction-none', 'stop', `/site/standing/slopes/${String(index)}/along`));
      return [];
    }
    return [
      {
        index,
        angle,
        along: turned(motion, direction),
        sine: Math.sin(angle * RADIANS),
        up: uprightOf(to, up),
      },
    ];
  });
  return { slopes: asked, findings };
}
