import type { Finish } from '../../job/finish.ts';
import type { Tube } from '../../job/tube.ts';
import type { Welding } from '../../job/welding.ts';
import type { Figure } from '../../plan/figure.ts';
import type { Finding } from '../../plan/finding.ts';
import type { FinishPlan } from '../../plan/finish.ts';
import { band, figure, input } from '../figure.ts';
import { beadOn } from '../welding/weld-section.ts';
import type { WeldWork } from '../welding/weld-work.ts';
import { cleaningPlan } from './cleaning.ts';
import { finishFindings } from './finish-findings.ts';
import { finishMinutes } from './finish-minutes.ts';
import { finishNotes } from './finish-notes.ts';
import { finishSteps, isFlush, KNOCKED_DOWN, weldKinds } from './finish-steps.ts';
import { surfaceOf } from './surfaces.ts';

/**
 * How the welds are ground, polished and cleaned: steps with their grits, roughness to aim at, minutes, bath, and what to
 * keep away from the work. Nothing where nothing is welded.
 *
 * @param work.backing of welds round a tube; left out: gas alone
 * @param work.tube near the sea a grade that is not known to stand it gets a note
 */
export function planFinish(work: {
  readonly finish: Finish;
  readonly welds: readonly Pick<WeldWork, 'site'>[];
  readonly symbols: Welding['symbols'];
  readonly tube: Pick<Tube, 'grade' | 'wall'>;
  readonly backing?: Welding['backing'];
}): { readonly finish: FinishPlan | null; readonly findings: Finding[] } {
  const { finish, welds, symbols, tube, backing = 'purge' } = work;
  if (welds.length === 0) return { finish: null, findings: [] };
  const { treatment, surface, cleaning } = finish;
  const kinds = weldKinds(welds);
  // in the corner of a saddle or a pad nothing stands proud
  const { butts } = kinds;
  return {
    finish: {
      treatment,
      surface,
      ...surfaceOf(surface),
      reinforcement: butts && treatment !== 'none' && treatment !== 'colour' ? capHeight(tube.wall) : null,
      leftProud: butts && isFlush(treatment) ? knockedDown() : null,
      steps: finishSteps(finish, kinds),
      ...finishMinutes(finish, welds),
      cleaning: cleaningPlan(cleaning),
      notes: finishNotes(finish, { symbols, grade: tube.grade, kinds }),
    },
    findings: finishFindings(finish, { kinds, backing }),
  };
}

/** How proud a bead stands as welded [mm]: the cap that the filler is reckoned with. */
function capHeight(wall: number): Figure {
  const { height } = beadOn(wall).cap;
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
