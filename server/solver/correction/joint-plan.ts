import { RADIANS } from '../geometry/angle.ts';
import type { CutClosing } from '../../job/closing.ts';
import type { Joint, JointFace } from '../../plan/joint.ts';
import type { Finding } from '../../plan/finding.ts';
import { band } from '../figure.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { placeAt } from '../geometry/centreline.ts';
import { wedgeWrap, type FacePair } from '../joints/face-wrap.ts';
import { sidesOf, type FrameSides } from '../joints/outside.ts';
import type { CutJoint } from './cut-joint.ts';
import { cutFace, jointFace, jointFrame, type FaceContext } from './joint-face.ts';
import { jointFigures, type JointBands } from './joint-figures.ts';
import { gradeHiLo, jointFindings } from './joint-findings.ts';
import { letInPiece } from './let-in-piece.ts';
import { TWIST_TO_SCRIBE } from './weld-limits.ts';
import { scrapSides, type ScrapSides } from './scrap-sides.ts';

/** Below this the two faces of a joint are parallel for any saw [rad]: 0.02 degrees, our own choice. */
const PARALLEL = 0.02 * RADIANS;

/** A dart closes by no more than this [rad]: 5 degrees, a small angle; common practice, no source. */
const MOST_DART = 5 * RADIANS;

/** Thicker than this the hinge wall of a dart does not give [mm]: common practice, no source. */
const DART_WALL = 2;

/** A hinge wall gives by this when it is bent shut [mm]: our own choice. */
const HINGE_GIVES = 0.2;

/** Longest scrap that goes on one wrap with both its lines [mm]: half a sheet of A4, our own choice. */
const ONE_WRAP = 150;

/**
 * Joints as the sheets print them, with what there is to say about each.
 *
 * @param frame the frame as it came back, which tells inside from outside
 * @param bands of each joint in turn; where there are none, the tape's
 */
export function planJoints(
  joints: readonly CutJoint[],
  frame: FrameGeometry,
  closing: CutClosing,
  context: FaceContext,
  bands: readonly JointBands[] = [],
): { joints: Joint[]; findings: Finding[] } {
  const sides = sidesOf(frame);
  const tape = band(context.tape, 'tape');
  const findings: Finding[] = [];
  const planned = joints.map((joint, index) => {
    const one = planJoint(
      joint,
      index + 1,
      sides,
      closing,
      context,
      bands[index] ?? { removed: tape, kink: null, hiLo: tape },
    );
    findings.push(...one.findings);
    return one.joint;
  });
  return { joints: planned, findings };
}

function planJoint(
  joint: CutJoint,
  number: number,
  frame: FrameSides,
  closing: CutClosing,
  context: FaceContext,
  bands: JointBands,
): { joint: Joint; findings: Finding[] } {
  const { member, stationA, stationB } = joint;
  const first = cutFace({ member, station: stationA, normal: joint.normalA }, frame);
  const second = cutFace({ member, station: stationB, normal: joint.normalB }, frame);
  // widths are along one generator, whatever is the outside where it ends
  const pair = { first, second: { ...second, runs: first.runs } };
  const sides = scrapSides(pair, context.tube.outsideDiameter / 2);
  const kind = kindOf(joint, sides, closing, context.tube.wall);
  const place = (stationA + stationB) / 2;
  const piece = placeAt(member.centreline, place)?.piece;
  const onOne = onOneWrap(joint, { ...pair, sides, kind, number }, context);
  const ofFaces = onOne === null ? context : { ...context, templates: false };
  const faceA = jointFace(member, first, { side: 'A', number }, ofFaces);
  const findings = jointFindings(joint, { number, kind, sides }, closing, context);
  return {
    joint: {
      number,
      member: member.name,
      on: piece === undefined || piece.kind === 'straight' ? 'straight' : piece.made,
      kind,
      place,
      range: { from: joint.range.from, to: joint.range.to },
      bounds: { from: joint.bounds.from, to: joint.bounds.to },
      faceA: onOne === null ? faceA : { ...faceA, template: onOne },
      faceB: jointFace(member, second, { side: 'B', number }, ofFaces),
      ...jointFigures(joint, { first, second, sides }, closing, bands),
      hiLoGrade: gradeHiLo(joint.hiLo, context.tube.wall, context.quality),
      letIn: joint.letIn === null ? null : letInPiece(joint, joint.letIn, number, { first, second }, closing, context),
      point: joint.point,
    },
    findings,
  };
}

/** What kind of joint it is. */
function kindOf(joint: CutJoint, { long, short }: ScrapSides, closing: CutClosing, wall: number): Joint['kind'] {
  if (joint.letIn !== null) return 'let-in';
  if (joint.kink < PARALLEL) return 'slug';
  // narrower than one cut on both sides it is no notch: one pass takes it out; and a hinge wall cannot twist
  const hinged = Math.abs(short) <= HINGE_GIVES && long > closing.kerf && Math.abs(joint.twist) < TWIST_TO_SCRIBE;
  return hinged && joint.kink <= MOST_DART && wall <= DART_WALL ? 'dart' : 'wedge';
}

/** The one wrap for both faces of a short wedge or a dart, its ring halfway between them; null where each has its own. */
function onOneWrap(
  { member, stationA, stationB }: CutJoint,
  joint: FacePair & { sides: ScrapSides; kind: Joint['kind']; number: number },
  context: FaceContext,
): JointFace['template'] {
  const { kind, sides, number } = joint;
  if (!context.templates || (kind !== 'wedge' && kind !== 'dart') || sides.long > ONE_WRAP || sides.missed) return null;
  if (kind === 'wedge' && sides.short < 0) return null;
  const frame = jointFrame(member, (stationA + stationB) / 2, `joint ${String(number)}`, context);
  const { outsideDiameter, wall } = context.tube;
  // the saw stops where it comes through the far wall's inner face: r cos α = r − t
  const half = Math.acos(1 - wall / (outsideDiameter / 2));
  const hinge = kind === 'dart' ? { angle: sides.shortAt, half } : null;
  return wedgeWrap({ ...frame, key: `joint ${String(number)}`, scrap: 'between' }, joint, hinge) ?? null;
}
