import type { Job, SettledJob } from '../../job/job.ts';
import type { Finding } from '../../plan/finding.ts';
import type { Joint } from '../../plan/joint.ts';
import type { WeldingPlan } from '../../plan/welding.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { heldUp } from '../frame/held-up.ts';
import { RADIANS } from '../geometry/angle.ts';
import { planMovement } from './movement/plan-movement.ts';
import { padFindings } from './pad-findings.ts';
import { preparationFindings } from './preparation-findings.ts';
import { procedureOf } from './procedure.ts';
import { saddleFindings } from './saddle-findings.ts';
import { settingFindings } from './setting-findings.ts';
import { FORMS, weldSetting } from './settings.ts';
import { reckonedFigure, settledFigure, shrinkageFindings } from './shrinkage-figures.ts';
import { shrinkageOf } from './shrinkage.ts';
import { sleeveFindings } from './sleeve-findings.ts';
import { planSleeve, sleeveSize } from './sleeve.ts';
import { weldOf } from './weld.ts';
import { thickestPlate, type WeldWork } from './weld-work.ts';
import { weldingTotals } from './welding-totals.ts';

/**
 * How the welds of a piece of work are prepared and made, in which order, and what they do to the frame.
 *
 * @param work the job with its shrinkage settled, and as typed; what its welds take; joints of the way that is shown;
 *   the frame that is welded, before it is cut, and the one that is wanted
 */
export function planWelding(work: {
  readonly job: SettledJob;
  readonly typed: Job;
  readonly welds: readonly WeldWork[];
  readonly joints: readonly Joint[];
  readonly frame: FrameGeometry;
  readonly wanted: FrameGeometry;
}): { welding: WeldingPlan; findings: Finding[] } {
  const { job, typed, joints, frame, wanted } = work;
  const { welding, tube, closing } = job;
  const { gap } = closing;
  const settled = { welding, tube, gap, plate: thickestPlate(work.welds.map(({ site }) => site)) };
  const forms = FORMS.filter((form) => work.welds.some(({ site }) => site.form === form));
  const made = forms.map((form) => {
    const setting = weldSetting(form, settled);
    return { form, setting, procedure: procedureOf(setting, settled) };
  });
  const reckoned = shrinkageOf(job);
  const reckonedShrinkage = reckonedFigure(reckoned);
  const shrinkage = settledFigure(typed.closing.shrinkage, reckonedShrinkage);
  const up = heldUp(job.purge.up);
  const context = { job, joints, frame, up, shrinkage };
  const welds = work.welds.flatMap((one) => {
    const of = made.find(({ form }) => form === one.site.form);
    return of === undefined ? [] : [weldOf(one, of, context)];
  });
  const movement = planMovement({
    wanted,
    outsideDiameter: tube.outsideDiameter,
    wall: tube.wall,
    pull: welding.pull * RADIANS,
    up,
    welds: work.welds.map(({ site }, index) => ({ site, shrinkage: welds[index]?.shrinkage.value ?? 0 })),
    joints,
    order: welding.order,
  });
  const butts = work.welds.flatMap(({ site }) => (site.form === 'butt' ? [site] : []));
  const size = welding.backing === 'sleeve' && butts.length > 0 ? sleeveSize(tube, welding.sleeve) : null;
  return {
    welding: {
      welds,
      procedures: made.map(({ procedure }) => procedure),
      sleeve: size === null ? null : planSleeve(tube, welding.sleeve, size),
      ...weldingTotals(welds),
      shrinkage,
      reckonedShrinkage,
      order: movement.order,
      proposed: movement.proposed,
      movement: movement.movement,
    },
    findings: [
      ...(butts.length > 0 ? preparationFindings({ wall: tube.wall, gap, ...welding }) : []),
      ...settingFindings(
        made.map(({ setting }) => setting),
        settled,
      ),
      ...(butts.length > 0 ? shrinkageFindings(typed.closing.shrinkage, reckoned) : []),
      ...(size === null ? [] : sleeveFindings({ job, size, butts, joints, frame })),
      ...padFindings(typed, frame),
      ...saddleFindings(work.welds, { frame, typed: typed.frame }),
      ...movement.findings,
    ],
  };
}
