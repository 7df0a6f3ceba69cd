import type { Finish } from '../../job/finish.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import { isPickle } from './cleaning.ts';
import { isFlush } from './finish-steps.ts';
import { ROUGHEST_BY_THE_SEA, roughestOf } from './surfaces.ts';

/** A bath without chromium(VI) at the warmth of a room. */
const MILD = { field: '/finish/cleaning', value: 'citric-3' } as const;

/** What the finish that was chosen has to say. */
export function finishFindings({ treatment, surface, cleaning, nearSea }: Finish): Finding[] {
  const findings: Finding[] = [];
  const roughest = roughestOf(surface);
  if (nearSea && roughest !== null && roughest > ROUGHEST_BY_THE_SEA) {
    const field = '/finish/surface';
    const data = { value: roughest, high: ROUGHEST_BY_THE_SEA };
    findings.push(finding('finish-too-coarse-for-sea', 'caution', field, data, { field, value: 'satin' }));
  }
  if (surface !== 'as-delivered' && !isFlush(treatment)) {
    const field = '/finish/treatment';
    findings.push(finding('treatment-below-surface', 'note', field, { surface }, { field, value: 'flush' }));
  }
  if (cleaning === 'nitric-1') findings.push(finding('dichromate-bath', 'caution', MILD.field, {}, MILD));
  if (isPickle(cleaning)) {
    // a mild bath leaves the colours of welding on, so that it mends a pickle only where they are ground off
    findings.push(finding('pickle-dangerous', 'caution', MILD.field, {}, treatment === 'none' ? null : MILD));
  }
  return findings;
}
