import type { GapPlan } from '../../../plan/gap.ts';
import { RADIANS } from '../../geometry/angle.ts';
import { planPieces } from '../../geometry/plan-pieces.ts';
import { movedLine } from '../../geometry/moved-centreline.ts';
import { turnAbout } from '../../geometry/rigid-motion.ts';
import { ORIGIN, scale } from '../../geometry/vector.ts';
import { sampledMember, type SampledMember } from '../../views/outline.ts';
import type { SiteStudy } from '../site-study.ts';

/** Swung by less than this [degrees] a tube is drawn on itself: a millimetre at an arm of one metre; our own choice. */
const DRAWN_APART = 0.05;

/** Tubes of the frame as they have swung where a least gap is, so that the gap does not hang in the air. */
export function swungAtGaps({ laid: { frame } }: SiteStudy, gaps: readonly GapPlan[]): SampledMember[] {
  const hinge = frame?.hinge ?? null;
  if (frame === null || hinge === null) return [];
  const seen = new Set<string>();
  return gaps.flatMap(({ rows: [least] }) => {
    const swing = least?.of === 'member' ? (least.frameSwing?.value ?? 0) : 0;
    const line = frame.lines.find(({ name }) => name === least?.name);
    if (line === undefined || Math.abs(swing) < DRAWN_APART) return [];
    const key = `${line.name} ${swing.toFixed(1)}`;
    if (seen.has(key)) return [];
    seen.add(key);
    const turn = turnAbout(hinge.at, scale(hinge.axis, swing * RADIANS), ORIGIN);
    const { name, closed } = line;
    return [sampledMember({ name, closed, pieces: planPieces(movedLine(turn, line.centreline)) })];
  });
}
