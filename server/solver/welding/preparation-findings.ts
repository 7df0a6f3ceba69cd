import type { Welding } from '../../job/welding.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import { gapLimits, preparationOf, SQUARE_AT_MOST, SQUARE_UP_TO, type Fit } from './preparation.ts';

/** A land of a bevel that is offered in place of one that leaves none [mm, walls]: 1 to 1.5 mm; common practice. */
const USUAL_LAND = { most: 1.5, walls: 0.4 } as const;

/** What there is to say about how the faces of a job's butts are prepared. */
export function preparationFindings({
  wall,
  gap,
  groove,
  backing,
}: Fit & { readonly backing: Welding['backing'] }): Finding[] {
  const preparation = preparationOf('butt', { wall, gap, groove });
  const findings: Finding[] = [];
  const { low, high } = gapLimits(preparation, wall, backing);
  if (gap < low || gap > high) {
    const field = '/closing/gap';
    const data = { value: gap, low, high, wall, ...(backing === 'sleeve' ? { backing } : {}) };
    findings.push(finding('gap-for-wall', 'caution', field, data, { field, value: gap < low ? low : high }));
  }
  if (preparation !== 'bevel') {
    if (wall <= SQUARE_AT_MOST) return findings;
    const field = '/welding/groove/form';
    return [
      ...findings,
      finding('square-thick-wall', 'caution', field, { value: wall, high: SQUARE_AT_MOST }, { field, value: null }),
    ];
  }
  if (wall <= SQUARE_UP_TO) {
    const field = '/welding/groove/form';
    findings.push(
      finding('bevel-thin-wall', 'note', field, { value: wall, low: SQUARE_UP_TO }, { field, value: null }),
    );
  }
  if (groove.land >= wall) {
    const field = '/welding/groove/land';
    const value = Math.min(USUAL_LAND.most, USUAL_LAND.walls * wall);
    findings.push(finding('land-over-wall', 'stop', field, { value: groove.land, high: wall }, { field, value }));
  }
  return findings;
}
