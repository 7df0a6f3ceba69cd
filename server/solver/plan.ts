import type { Job } from '../job/job.ts';
import type { FramePlan } from '../plan/frame.ts';
import type { Plan } from '../plan/plan.ts';
import { isOfDie } from './bending/planned-arc.ts';
import { planSpringback } from './bending/plan-springback.ts';
import { isOfDiameter, setUpOf, type SetUp } from './bending/set-up.ts';
import type { SpringbackLaw } from './bending/springback-law.ts';
import { misreadings, type ShopContext } from './correction/misreadings.ts';
import { saddleJoints } from './correction/saddle-joints.ts';
import { struckPosts } from './correction/struck-posts.ts';
import type { Effort } from './correction/outcome.ts';
import { planCorrection } from './correction/plan-correction.ts';
import { finding } from './finding.ts';
import { drawFrame, frameGeometry } from './frame/expand-frame.ts';
import type { FrameGeometry } from './frame/frame-geometry.ts';
import { mirrorFrame } from './frame/mirror-frame.ts';
import { planFrame } from './frame/plan-frame.ts';
import type { DrawnFrame, ShapeContext } from './frame/shape-context.ts';
import { billFor, pricedAs } from './pricing.ts';
import { bendingOf } from './making/plan-making.ts';
import { planTube } from './tube/plan-tube.ts';
import { planViews } from './views/plan-views.ts';

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
  const { setUp, findings: told } = setUpOf(job.machine, job.tube);
  if (setUp === null) return { ...NOTHING, tube: tube.tube, findings: [...tube.findings, ...told] };
  const bend = planSpringback(job.tube, tube.grade, setUp);
  const begun = { ...NOTHING, tube: tube.tube, springback: bend.springback };
  const findings = [...tube.findings, ...told, ...bend.findings];
  if (bend.law === null) return { ...begun, findings };
  const { law } = bend;

  const shape = {
    outsideDiameter: job.tube.outsideDiameter,
    cornerRadius: law.radiusAfterRelease,
    closingStraight: (member: string) => bendingOf(job.bending, member).closingStraight,
  };
  const wanted = ofHand(frameGeometry(job.frame, { ...shape, root: '/frame' }), job);
  findings.push(...wanted.findings);
  if (wanted.geometry === null) return { ...begun, findings };
  for (const { field, name, lacks } of struckPosts(job.fixing, wanted.geometry, job.tube.outsideDiameter))
    findings.push(finding('post-struck', 'stop', field, { name, value: lacks }));
  const found = misreadings(job.frame, wanted.geometry, {
    draw: (frame) => ofHand(drawFrame(frame, { ...closedAs(wanted.geometry, shape), root: '/frame' }), job).geometry,
    outsideDiameter: job.tube.outsideDiameter,
    ...shopOf(setUp, law, job),
  });
  const bending = { grade: tube.grade, law, machine: setUp, tolerance: tube.tolerance };
  const made = planFrame(job, wanted.geometry, bending, found);
  findings.push(...made.findings);

  const fromFinish = new Set(
    made.frame.members.filter(({ making }) => making.from === 'finish').map(({ name }) => name),
  );
  const corrected = planCorrection({
    job,
    machine: setUp,
    law,
    wanted: wanted.geometry,
    checks: made.frame.checks,
    fromFinish,
    newFrame: effortOfNew(made.frame, wanted.geometry),
    misreadings: found,
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
      cameBack: corrected.cameBack,
      correction: corrected.correction,
      purge: bill.purge,
      fromFinish,
      outsideDiameter: job.tube.outsideDiameter,
    }),
    findings,
  };
}

/** The frame for the other side where the job asks for it. */
const ofHand = (drawn: DrawnFrame, { bending }: Job): DrawnFrame =>
  drawn.geometry === null || bending.hand === 'as-drawn' ? drawn : { ...drawn, geometry: mirrorFrame(drawn.geometry) };

/** Closed members begin where those of a frame do, so that both have the same pieces. */
const closedAs = (drawn: FrameGeometry | null, shape: Omit<ShapeContext, 'root'>): Omit<ShapeContext, 'root'> => ({
  ...shape,
  closingStraight: (member) => {
    const from = drawn?.members.find(({ name }) => name === member)?.closing?.from;
    return from === undefined ? (shape.closingStraight?.(member) ?? null) : from + 1;
  },
});

/** What a shop can take wrong: its springback, its other dies for this tube, and the bar as it saws it. */
function shopOf(
  machine: SetUp,
  law: SpringbackLaw,
  { bending, tube }: Job,
): Omit<ShopContext, 'draw' | 'outsideDiameter'> {
  const { outsideDiameter } = tube;
  const others = machine.dies.filter(
    ({ tubeDiameter, radius }) => isOfDiameter(tubeDiameter, outsideDiameter) && radius !== machine.dieRadius,
  );
  const radii = [...new Set(others.map(({ radius }) => radius))].filter((radius) => radius > outsideDiameter / 2);
  return {
    // s = a + b c on what the machine is told; theory has no fixed part
    released: (told) => told * (1 - law.share) - law.fixed,
    told: (angle) => law.commandFor(angle),
    stretch: (angle) => law.stretchFor(law.commandFor(angle)),
    from: (member) => bendingOf(bending, member).from,
    spareLength: machine.trimAllowance,
    ofDie: (piece) => piece.kind === 'arc' && isOfDie(piece, law),
    otherDies: radii.map((radius) => ({ radius, leaves: law.radiusFor(radius) })),
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
