import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import { DEGREES } from '../../geometry/angle.ts';
import { length, ORIGIN, type Vector3 } from '../../geometry/vector.ts';
import type { AskedSlope } from './asked-slopes.ts';
import { turnToOne, turnToTwo } from './least-turn.ts';

/** The least turn of a frame without a hinge to its slopes, as a rotation vector [rad]; none where they cannot be had. */
export function freeTurn(slopes: readonly AskedSlope[]): { turn: Vector3; findings: Finding[] } {
  const [one, two] = slopes;
  if (one === undefined) return { turn: ORIGIN, findings: [] };
  const found = two === undefined ? turnToOne(one) : turnToTwo(one, two);
  if (found === undefined) {
    return { turn: ORIGIN, findings: [finding('slopes-at-odds', 'stop', '/site/standing/slopes/1')] };
  }
  const { turn, eitherWay } = found;
  const field = `/site/standing/slopes/${String((two ?? one).index)}`;
  const value = length(turn) * DEGREES;
  return { turn, findings: eitherWay ? [finding('standing-either-way', 'caution', field, { value })] : [] };
}
