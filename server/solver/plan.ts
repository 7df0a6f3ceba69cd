import type { Job } from '../job/job.ts';
import type { FramePlan } from '../plan/frame.ts';
import type { Plan } from '../plan/plan.ts';
import { planSpringback } from './bending/plan-springback.ts';
import { saddleJoints } from './correction/other-ways.ts';
import type { Effort } from './correction/outcome.ts';
import { planCorrection } from './correction/plan-correction.ts';
import { finding } from './finding.ts';
import { drawFrame, frameGeometry } from './frame/expand-frame.ts';
import type { FrameGeometry } from './frame/frame-geometry.ts';
import { planFrame } from './frame/plan-frame.ts';
import { billFor, pricedAs } from './pricing.ts';
import { planTube } from './tube/plan-tube.ts';
import { planViews } from './views/plan-views.ts';

const QUARTER = Math.PI / 2;

const NOTHING: Plan = {
  version: 1,
  findings: [],
  tube: null,
  springback: null,
  frame: null,
  correction: null,
  purge: null,
  welding: null,
  quote: null,
  views: [],
};

/**
 * Everything that can be said about one job, in order: tube, springback, frame and bends, the frame that came back
 * and the ways to put it right, purge and welding and price of the chosen way (or of the whole frame), views.
 * Pure, deterministic and total: what cannot be made gives findings and leaves its part null.
 */
export function plan(job: Job): Plan {
  const tube = planTube(job.tube);
  if (tube.tube === null) return { ...NOTHING, findings: tube.findings };
  const bend = planSpringback(job.tube, tube.grade, job.machine);
  const begun = { ...NOTHING, tube: tube.tube, springback: bend.springback };
  const findings = [...tube.findings, ...bend.findings];
  if (bend.law === null) return { ...begun, findings };
  const { law } = bend;

  const shape = { outsideDiameter: job.tube.outsideDiameter, cornerRadius: law.radiusAfterRelease };
  const wanted = frameGeometry(job.frame, { ...shape, root: '/frame' });
  findings.push(...wanted.findings);
  if (wanted.geometry === null) return { ...begun, findings };
  const made = planFrame(job, wanted.geometry, { grade: tube.grade, law }, '/frame');
  findings.push(...made.findings);

  const returned =
    job.cameBack === null ? null : frameGeometry(job.cameBack.frame, { ...shape, root: '/cameBack/frame' });
  findings.push(...(returned?.findings ?? []));
  const cameBack = returned?.geometry ?? null;
  if (returned !== null && cameBack === null)
    findings.push(finding('came-back-not-possible', 'stop', '/cameBack/frame'));
  const corrected =
    cameBack === null
      ? { correction: null, chosen: null, findings: [] }
      : planCorrection({
          job,
          wanted: wanted.geometry,
          cameBack,
          newFrame: effortOfNew(made.frame, wanted.geometry),
          slips: {
            draw: (frame) => drawFrame(frame, { ...shape, root: '/frame' }).geometry,
            outsideDiameter: job.tube.outsideDiameter,
            springbackShare: 1 - QUARTER / law.commandFor(QUARTER),
            spareLength: job.machine.trimAllowance,
            tape: job.cameBack?.tapeAccuracy ?? 0,
          },
          price: (work) => pricedAs(billFor(job, work)),
        });
  findings.push(...corrected.findings);

  const bill = billFor(
    job,
    corrected.chosen ?? {
      effort: effortOfNew(made.frame, wanted.geometry),
      frame: wanted.geometry,
      scope: 'frame',
    },
  );
  findings.push(...bill.findings);
  return {
    ...begun,
    frame: made.frame,
    correction: corrected.correction,
    purge: bill.purge,
    welding: bill.welding,
    quote: bill.quote,
    views: planViews({
      wanted: wanted.geometry,
      cameBack,
      correction: corrected.correction,
      purge: bill.purge,
      outsideDiameter: job.tube.outsideDiameter,
    }),
    findings,
  };
}

/** Making the whole frame: every member bent, its saddles and closing welds made. */
function effortOfNew(frame: FramePlan, geometry: FrameGeometry): Effort {
  const joints = saddleJoints(geometry);
  return {
    welds: joints.length,
    cuts: 2 * frame.members.length,
    bends: frame.members.reduce((sum, member) => sum + member.bends.length, 0),
    tubeMetres: frame.tubeLength.value / 1000,
    purgeJoints: joints,
  };
}
