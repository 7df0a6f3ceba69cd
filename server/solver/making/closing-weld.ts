import type { Bending, MemberBending } from '../../job/bending.ts';
import type { Finding } from '../../plan/finding.ts';
import type { ClosingWeld } from '../../plan/making.ts';
import { figure, input } from '../figure.ts';
import { finding } from '../finding.ts';
import type { MemberGeometry } from '../frame/frame-geometry.ts';
import { withBending } from './making-findings.ts';
import { JOINT_KEEP_OUT } from './split-member.ts';

/**
 * Where the closing weld of a closed member stands: in the middle of its longest straight, or of the one that the job
 * asks for, with every other straight beside it. A straight is usable where its middle is 1.5 D clear of both bends:
 * room for clamp, torch and polishing belt; common practice, no source.
 */
export function planClosing(
  { name, closing }: MemberGeometry,
  asked: MemberBending,
  outsideDiameter: number,
  bending: Bending,
): { plan: ClosingWeld | null; findings: Finding[] } {
  if (closing === null) return { plan: null, findings: [] };
  const keepOut = JOINT_KEEP_OUT * outsideDiameter;
  const choices = closing.straights.map(({ from, length }) => ({
    straight: from + 1,
    length,
    usable: length / 2 >= keepOut,
  }));
  const chosen = closing.straights.find(({ from }) => from === closing.from);
  const length = chosen?.length ?? 0;
  const findings: Finding[] = [];
  const field = '/bending/members';
  const byRule = { field, value: withBending(bending, { ...asked, closingStraight: null }) };
  const wanted = asked.closingStraight;
  if (wanted !== null && !choices.some(({ straight }) => straight === wanted)) {
    const data = { member: name, value: wanted, straights: choices.map(({ straight }) => straight).join(', ') };
    findings.push(finding('closing-straight-missing', 'caution', field, data, byRule));
  } else if (length / 2 < keepOut) {
    const better = choices.some(({ usable }) => usable);
    const data = { member: name, value: length / 2, low: keepOut };
    findings.push(finding('closing-weld-near-bend', 'caution', field, data, better ? byRule : null));
  }
  const inputs = [input('L', 'straight', length, 'mm'), input('D', 'outside-diameter', outsideDiameter, 'mm')];
  return {
    plan: {
      straight: closing.from + 1,
      byRule: wanted === null || closing.from + 1 !== wanted,
      length: figure(length, 'mm', 'L', inputs, ['geometry']),
      clear: figure(length / 2, 'mm', 'a = L / 2', inputs, ['geometry', 'closing-rule']),
      choices,
    },
    findings,
  };
}
