import type { Finish } from '../../job/finish.ts';
import type { Grade } from '../../job/tube.ts';
import type { Welding } from '../../job/welding.ts';
import type { Figure } from '../../plan/figure.ts';
import type { Finding } from '../../plan/finding.ts';
import type { FinishPlan } from '../../plan/finish.ts';
import { band, figure, input } from '../figure.ts';
import { THIN_BEAD } from '../welding/weld-section.ts';
import type { WeldWork } from '../welding/weld-work.ts';
import { cleaningPlan } from './cleaning.ts';
import { finishFindings } from './finish-findings.ts';
import { finishMinutes } from './finish-minutes.ts';
import { finishNotes } from './finish-notes.ts';
import { finishSteps, isFlush, KNOCKED_DOWN } from './finish-steps.ts';
import { surfaceOf } from './surfaces.ts';

/**
 * How the welds are ground, polished and cleaned: steps with their grits, roughness to aim at, minutes, bath, and what to
 * keep away from the work. Nothing where nothing is welded.
 *
 * @param work.grade of the tube: near the sea one that is not known to stand it gets a note
 */
export function planFinish(work: {
  readonly finish: Finish;
  readonly welds: readonly Pick<WeldWork, 'site'>[];
  readonly symbols: Welding['symbols'];
  readonly grade: Grade;
}): { readonly finish: FinishPlan | null; readonly findings: Finding[] } {
  const { finish, welds } = work;
  if (welds.length === 0) return { finish: null, findings: [] };
  const { treatment, surface, cleaning } = finish;
  // in the corner of a saddle or a pad nothing stands proud
  const butts = welds.some(({ site }) => site.form === 'butt');
  return {
    finish: {
      treatment,
      surface,
      ...surfaceOf(surface),
      reinforcement: butts && treatment !== 'none' && treatment !== 'colour' ? capHeight() : null,
      leftProud: butts && isFlush(treatment) ? knockedDown() : null,
      steps: finishSteps(finish),
      ...finishMinutes(finish, welds),
      cleaning: cleaningPlan(cleaning),
      notes: finishNotes(finish, work),
    },
    findings: finishFindings(finish),
  };
}

/** How proud a bead stands as welded [mm]: the cap that the filler is reckoned with. */
function capHeight(): Figure {
  const { height } = THIN_BEAD.cap;
  return figure(height, 'mm', 'h', [input('h', 'height-of-the-cap', height, 'mm')], ['thin-bead']);
}

/** What the first belt leaves of it [mm]. */
function knockedDown(): Figure {
  const { low, high } = KNOCKED_DOWN;
  return figure(
    (low + high) / 2,
    'mm',
    'h₁ = (h_low + h_high)/2',
    [input('h_low', 'least-left-proud', low, 'mm'), input('h_high', 'most-left-proud', high, 'mm')],
    ['finish-steps'],
    band((high - low) / 2, 'range-of-practice'),
  );
}
