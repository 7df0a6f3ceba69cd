import type { Finish } from '../../job/finish.ts';
import type { Welding } from '../../job/welding.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import { isPickle } from './cleaning.ts';
import { isFlush, type WeldKinds } from './finish-steps.ts';
import { ROUGHEST_BY_THE_SEA, roughestOf } from './surfaces.ts';

/** A bath without chromium(VI) at the warmth of a room. */
const MILD = { field: '/finish/cleaning', value: 'citric-3' } as const;

/** What the finish that was chosen has to say, of these kinds of weld and what backs those round a tube. */
export function finishFindings(
  { treatment, surface, cleaning, nearSea }: Finish,
  { kinds, backing }: { readonly kinds: WeldKinds; readonly backing: Welding['backing'] },
): Finding[] {
  const findings: Finding[] = [];
  const roughest = roughestOf(surface);
  if (nearSea && roughest !== null && roughest > ROUGHEST_BY_THE_SEA) {
    const field = '/finish/surface';
    const data = { value: roughest, high: ROUGHEST_BY_THE_SEA };
    findings.push(finding('finish-too-coarse-for-sea', 'caution', field, data, { field, value: 'satin' }));
  }
  // in a corner the bead stays whatever is chosen
  if (kinds.butts && surface !== 'as-delivered' && !isFlush(treatment)) {
    const field = '/finish/treatment';
    findings.push(finding('treatment-below-surface', 'note', field, { surface }, { field, value: 'flush' }));
  }
  if (cleaning === 'nitric-1') findings.push(finding('dichromate-bath', 'caution', MILD.field, {}, MILD));
  if (isPickle(cleaning)) {
    // a mild bath leaves the colours of welding on, so that it mends a pickle only where they are ground off
    findings.push(finding('pickle-dangerous', 'caution', MILD.field, {}, treatment === 'none' ? null : MILD));
  }
  if (cleaning !== 'none' && kinds.butts && backing === 'sleeve') {
    const out = { field: '/welding/backing', value: 'purge' };
    findings.push(finding('acid-in-sleeve', 'caution', MILD.field, {}, out));
  }
  return findings;
}
