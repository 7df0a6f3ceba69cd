import type { WeldTurn } from '../../../job/welding.ts';
import type { Finding } from '../../../plan/finding.ts';
import type { OrderedWeld } from '../../../plan/welding.ts';
import { finding } from '../../finding.ts';
import { quartersOf } from './quarters.ts';

/**
 * The job's own order: its welds in turn, then those that it leaves out, as proposed. The first word on a weld stands.
 */
export function ownOrder(
  order: readonly WeldTurn[],
  proposed: readonly OrderedWeld[],
): { order: OrderedWeld[]; findings: Finding[] } {
  const findings: Finding[] = [];
  const own: OrderedWeld[] = [];
  for (const [index, { weld, ...sequence }] of order.entries()) {
    const told = (code: 'order-no-such-weld' | 'order-twice') =>
      findings.push(finding(code, 'caution', `/welding/order/${String(index)}/weld`, { weld }));
    if (own.some((one) => one.weld === weld)) told('order-twice');
    else if (proposed.some((one) => one.weld === weld)) own.push({ weld, quarters: quartersOf(sequence) });
    else told('order-no-such-weld');
  }
  const rest = proposed.filter(({ weld }) => own.every((one) => one.weld !== weld));
  return { order: [...own, ...rest], findings };
}
