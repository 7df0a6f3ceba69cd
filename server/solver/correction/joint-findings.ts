import { DEGREES } from '../geometry/angle.ts';
import type { CutClosing } from '../../job/closing.ts';
import type { Joint } from '../../plan/joint.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import type { CutJoint } from './cut-joint.ts';
import type { FaceContext } from './joint-face.ts';
import type { ScrapSides } from './scrap-sides.ts';
import { BRIDGED, HI_LO_LIMITS, hiLoLimit, TWIST_TO_SCRIBE, VISIBLE_KINK, type QualityLevel } from './weld-limits.ts';

/** Less metal missing than this is rounding [mm]. */
const NOTHING = 1e-6;

/** How a step between two walls is graded. */
export function gradeHiLo(hiLo: number, wall: number, quality: QualityLevel): Joint['hiLoGrade'] {
  const limit = hiLoLimit(wall, quality);
  if (hiLo <= Math.min(limit, HI_LO_LIMITS.good * wall)) return 'good';
  if (hiLo <= Math.min(limit, HI_LO_LIMITS.practice * wall)) return 'practice';
  return hiLo <= limit ? 'standard' : 'over';
}

/** What there is to say about one joint: its cuts, its kink, the step between its walls, its twist. */
export function jointFindings(
  joint: CutJoint,
  { number, kind, sides }: { number: number; kind: Joint['kind']; sides: ScrapSides },
  closing: CutClosing,
  { tube: { wall }, quality }: Pick<FaceContext, 'tube' | 'quality'>,
): Finding[] {
  const where = { joint: number, member: joint.member.name };
  const findings: Finding[] = [];
  // narrower than both cuts even on its long side: nothing falls out
  if (sides.long > 0 && sides.long <= 2 * closing.kerf) {
    const data = { ...where, value: sides.long, low: 2 * closing.kerf };
    findings.push(finding('cut-narrower-than-kerf', 'note', '/closing/kerf', data));
  }
  // a dart's short side is not cut
  const missing = kind === 'dart' ? 0 : -sides.short;
  if (sides.missed || missing > NOTHING) {
    const high = BRIDGED * wall;
    const grade = sides.missed || missing > high ? 'stop' : 'caution';
    const data = sides.missed ? where : { ...where, value: missing, high };
    findings.push(finding('cut-short-of-metal', grade, '/closing/joints', data));
  }
  const kink = joint.letIn === null ? joint.kink : Math.max(joint.letIn.kinkA, joint.letIn.kinkB);
  if (kink > VISIBLE_KINK) {
    const data = { ...where, value: kink * DEGREES, high: VISIBLE_KINK * DEGREES };
    findings.push(finding('kink-visible', 'caution', '/closing/joints', data));
  }
  const grade = gradeHiLo(joint.hiLo, wall, quality);
  if (grade === 'standard' || grade === 'over') {
    const high = grade === 'over' ? hiLoLimit(wall, quality) : HI_LO_LIMITS.practice * wall;
    const code = grade === 'over' ? 'hi-lo-over-standard' : 'hi-lo-over-practice';
    const data = { ...where, value: joint.hiLo, high };
    findings.push(finding(code, grade === 'over' ? 'stop' : 'caution', '/closing/joints', data));
  }
  if (Math.abs(joint.twist) > TWIST_TO_SCRIBE) {
    const data = { ...where, value: Math.abs(joint.twist) * DEGREES };
    findings.push(finding('joint-twist', 'note', '/closing/joints', data));
  }
  return findings;
}
