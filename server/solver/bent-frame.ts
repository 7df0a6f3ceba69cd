import type { CutClosing } from '../job/closing.ts';
import type { Job } from '../job/job.ts';
import type { Purge } from '../job/purge.ts';
import type { Site } from '../job/site.ts';
import type { Stock } from '../job/stock.ts';
import type { Welding } from '../job/welding.ts';
import type { Finding } from '../plan/finding.ts';
import type { FramePlan } from '../plan/frame.ts';
import type { Plan } from '../plan/plan.ts';
import { isOfDie } from './bending/planned-arc.ts';
import { planSpringback } from './bending/plan-springback.ts';
import { isOfDiameter, setUpOf, type SetUp } from './bending/set-up.ts';
import type { SpringbackLaw } from './bending/springback-law.ts';
import { correctionDrafts, type CorrectionDrafts } from './correction/correction-drafts.ts';
import type { Post } from './correction/corrected.ts';
import { misreadings, type ShopContext } from './correction/misreadings.ts';
import { fitTolerance } from './correction/fit-tolerance.ts';
import { newFramesOff } from './correction/new-frame-way.ts';
import { newFrameWelds } from './correction/new-frame-welds.ts';
import type { Effort, LaidDoubt } from './correction/outcome.ts';
import { sortedPosts } from './correction/struck-posts.ts';
import { finding } from './finding.ts';
import { drawFrame, frameGeometry } from './frame/expand-frame.ts';
import { measureCheck, type FrameGeometry } from './frame/frame-geometry.ts';
import { mirrorFrame } from './frame/mirror-frame.ts';
import { cutLengthOn, planFrame } from './frame/plan-frame.ts';
import type { DrawnFrame, ShapeContext } from './frame/shape-context.ts';
import { bendingOf } from './making/plan-making.ts';
import { keptClear } from './site/gaps/kept-clear.ts';
import { EXACT } from './site/laid-site.ts';
import { laySite } from './site/lay-site.ts';
import { once } from './once.ts';
import { barJoints, type BarJoints } from './stock/bar-joints.ts';
import { straightTubes, type StraightTubes } from './stock/straight-tube.ts';
import { lengthsOf } from './stock/tube-lengths.ts';
import type { ResolvedGrade } from './tube/grades.ts';
import { planTube } from './tube/plan-tube.ts';

/** What of a job the tube, its bends and the ways to put it right depend on: nothing of gas, torch or money. */
export type BentFrom = Pick<Job, 'tube' | 'machine' | 'bending' | 'frame' | 'fixing' | 'cameBack' | 'print'> & {
  readonly closing: CutClosing;
  readonly holes: Purge['holes'];
  /** Where members of a new frame are made of two lengths that are welded before they are bent. */
  readonly barJoints: Stock['joints'];
  /** Level of ISO 5817 that steps at joints are graded by. */
  readonly quality: Welding['quality'];
  /** What stands round the frame; null where nothing of it is kept clear of by a correction. */
  readonly site: Site | null;
};

type Begun = Pick<Plan, 'tube' | 'springback'> & { readonly findings: readonly Finding[] };

/** The frame as wanted with all that follows from its bends; `wanted` null where it cannot be drawn. */
export type BentFrame =
  | (Begun & { readonly wanted: null })
  | (Begun & {
      readonly wanted: FrameGeometry;
      readonly frame: FramePlan;
      /** Members that are marked and bent from their finish. */
      readonly fromFinish: ReadonlySet<string>;
      /** Its members before they are bent. */
      readonly straightTubes: StraightTubes;
      /** What making it new takes. */
      readonly newFrame: Effort;
      /** The ways to put it right, not priced yet; null where nothing came back, or nothing explains what did. */
      readonly drafts: CorrectionDrafts | null;
      /** What bending leaves in doubt of it as wanted; asked for only where something on site hangs on it. */
      readonly anewInDoubt: () => readonly LaidDoubt[];
    });

/** Tube, springback, frame, bends, and the ways to put right what came back. */
export function bentFrame(job: BentFrom): BentFrame {
  const tube = planTube(job.tube);
  const nothing = { tube: tube.tube, springback: null, wanted: null };
  if (tube.tube === null) return { ...nothing, findings: tube.findings };
  const { setUp, findings: told } = setUpOf(job.machine, job.tube);
  if (setUp === null) return { ...nothing, findings: [...tube.findings, ...told] };
  const bend = planSpringback(job.tube, tube.grade, setUp);
  const begun = { ...nothing, springback: bend.springback };
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
  const drawn = wanted.geometry;
  const posts = sortedPosts(postsOf(job, drawn, tube.grade), drawn);
  for (const { field, name, lacks } of posts.struck)
    findings.push(finding('post-struck', 'stop', field, { name, value: lacks }));
  const found = misreadings(job.frame, drawn, {
    draw: (frame) => ofHand(drawFrame(frame, { ...closedAs(drawn, shape), root: '/frame' }), job).geometry,
    outsideDiameter: job.tube.outsideDiameter,
    ...shopOf(setUp, law, job),
  });
  const bending = { grade: tube.grade, law, machine: setUp, tolerance: tube.tolerance };
  const made = planFrame(job, drawn, bending, found);
  findings.push(...made.findings);

  const fromFinish = new Set(
    made.frame.members.filter(({ making }) => making.from === 'finish').map(({ name }) => name),
  );
  const { outsideDiameter } = job.tube;
  const tubes = straightTubes(drawn, made.planned, { outsideDiameter, gripLength: setUp.gripLength, fromFinish });
  const joined = barJoints(job.barJoints, tubes, outsideDiameter);
  const newFrame = effortOfNew(made.frame, drawn, { tubes, joined: joined.joints, closing: job.closing });
  const drafts = correctionDrafts({
    job,
    machine: setUp,
    law,
    wanted: drawn,
    posts: posts.clear,
    checks: made.frame.checks,
    fromFinish,
    newFrame,
    newFrameFindings: joined.findings,
    misreadings: found,
    cutLengthOn: (member, members) => cutLengthOn(member, members, job, bending),
  });
  // what there is to say of drafts is said with the way that is shown
  if (drafts.cameBack === null) findings.push(...joined.findings, ...drafts.findings);
  return {
    ...begun,
    findings,
    wanted: drawn,
    frame: made.frame,
    fromFinish,
    straightTubes: tubes,
    newFrame,
    drafts: drafts.cameBack === null ? null : drafts,
    anewInDoubt: inDoubt(job, drawn, { machine: setUp, law, fromFinish }),
  };
}

/** What bending leaves in doubt of a frame, found once, when somebody asks. */
function inDoubt(
  { fixing, tube: { outsideDiameter } }: BentFrom,
  wanted: FrameGeometry,
  made: { readonly machine: SetUp; readonly law: SpringbackLaw; readonly fromFinish: ReadonlySet<string> },
): () => readonly LaidDoubt[] {
  const tolerance = fitTolerance(Math.max(0, ...wanted.checks.map((check) => measureCheck(check))));
  const work = { wanted, outsideDiameter, tape: 0, posts: [] };
  return once(() => newFramesOff(work, { ...made, fixing, tolerance }));
}

/** What a correction keeps clear of on site; what there is to say of the site is said with it. */
function postsOf({ site, tube, closing, print }: BentFrom, wanted: FrameGeometry, grade: ResolvedGrade): Post[] {
  if (site === null) return [];
  const { gap, shrinkage, paperThickness } = closing;
  const { templateStations } = print;
  const made = wanted.members.map(({ name, closed, centreline }) => ({ name, closed, centreline }));
  const source = { site, wanted, made, tube, grade, gap, shrinkage, paperThickness, templateStations };
  return keptClear(laySite(source, EXACT).laid, site, tube.outsideDiameter);
}

/** The frame for the other side where the job asks for it. */
const ofHand = (drawn: DrawnFrame, { bending }: Pick<Job, 'bending'>): DrawnFrame =>
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
  { bending, tube }: Pick<Job, 'bending' | 'tube'>,
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

/** Making the whole frame: long members joined from bars, every member bent, its saddles and closing welds made. */
function effortOfNew(
  frame: FramePlan,
  geometry: FrameGeometry,
  { tubes, joined, closing }: { tubes: StraightTubes; joined: BarJoints; closing: CutClosing },
): Effort {
  const joints = newFrameWelds(geometry, joined);
  const pieces = frame.members.flatMap((member) => lengthsOf(member, joined, tubes.get(member.name), closing));
  const bent = frame.members.filter(({ bends }) => bends.length > 0);
  return {
    welds: joints.length,
    cuts: 2 * pieces.length,
    bends: frame.members.reduce((sum, member) => sum + member.bends.length, 0),
    pieces,
    bentTube: bent.reduce((sum, { cutLength }) => sum + cutLength.value, 0),
    joints,
  };
}
