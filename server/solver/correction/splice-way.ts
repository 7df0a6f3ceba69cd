import type { Closing } from '../../job/closing.ts';
import type { Joint, WayKey } from '../../plan/correction.ts';
import type { Finding } from '../../plan/finding.ts';
import { band } from '../figure.ts';
import { finding } from '../finding.ts';
import type { FrameGeometry, MemberGeometry, Spot } from '../frame/frame-geometry.ts';
import { planPieces } from '../geometry/plan-pieces.ts';
import { sliceCentreline } from '../geometry/slice.ts';
import { moveCentreline } from './flat-frame.ts';
import type { FaceContext } from './joint-face.ts';
import { planJoints } from './joint-plan.ts';
import { differences } from './measured-frame.ts';
import { countFigure, largest, misfitsOf, outwardAt, type DrawnMember, type WayDraft } from './outcome.ts';
import { compose, moveDirection, movePoint, STILL } from './plane-motion.ts';
import { bodyOf, jointPlaces, solveSplice, type Splice, type SpliceStyle, type Target } from './splice.ts';

/** Check dimensions that a cut across can only make smaller. */
const WIDTHS: readonly string[] = ['width-at-corners', 'width'];

/** The flat frames that a correction works on, and where its own feet and corners should go. */
export type Correcting = {
  readonly wanted: FrameGeometry;
  /** As it came back, with feet that are too long already cut back. */
  readonly actual: FrameGeometry;
  readonly targets: readonly Target[];
  readonly context: FaceContext;
  readonly closing: Closing;
};

/**
 * Cuts the frame along a line, closes it, and says what it measures then.
 *
 * @param key which way this is; the style goes with it
 * @param base trims and what all ways share
 * @returns the way, what there is to say, and its joints once more with the wrap templates of their faces
 */
export function spliceWay(
  key: WayKey,
  style: SpliceStyle,
  work: Correcting,
  base: Pick<WayDraft, 'trims'>,
): { way: WayDraft; findings: Finding[]; templated: () => Joint[] } {
  const { wanted, actual, targets, context, closing } = work;
  const cutAt = middleOf(actual) + closing.cutOffset;
  const places = jointPlaces(actual, cutAt, style);
  const splice = solveSplice({ targets, places, cutAt, tape: context.tape, style });
  const motionOf = (spot: Spot) => splice.motions.get(bodyOf(spot, places, cutAt)) ?? STILL;
  const doubt = band(Math.SQRT2 * context.tape, 'tape');
  const { lay, ...misfits } = misfitsOf(
    wanted,
    {
      feet: actual.feet.map((spot) => movePoint(motionOf(spot), spot.point)),
      corners: actual.corners.map((spot) => movePoint(motionOf(spot), spot.point)),
      outward: actual.feet.map((spot) => moveDirection(motionOf(spot), outwardAt(actual, spot))),
    },
    doubt,
  );
  const plan = (faces: FaceContext) =>
    planJoints(splice, actual, closing, faces, (body, point) =>
      movePoint(lay, movePoint(splice.motions.get(body) ?? STILL, point)),
    );
  const planned = plan(context);
  const findings = [...planned.findings];
  if (places.length === 0)
    findings.push(finding('cut-no-place', 'stop', '/closing/cutOffset', { joint: 0, member: '' }));
  const narrower = splice.joints.some((joint) => joint.closed.removed < -context.tape);
  if (narrower) {
    const value = Math.min(...splice.joints.map((joint) => joint.closed.removed));
    const width = actual.checks.find(({ key }) => WIDTHS.includes(key))?.field;
    findings.push(finding('came-back-narrower', 'stop', width ?? '/cameBack/frame', { value: -value }));
  }
  if (style.two && places.every((place) => place.crossing.piece.kind === 'straight')) {
    findings.push(finding('way-not-possible', 'note', '/closing/joints', { way: key }));
  }
  const stops = findings.filter((one) => one.grade === 'stop' || one.code === 'way-not-possible');
  const way: WayDraft = {
    ...base,
    ...misfits,
    key,
    possible: stops.length === 0,
    reasons: [...new Set(stops.map((one) => one.code))],
    largestKink: largest(planned.joints, (joint) => joint.kink, 'deg'),
    largestHiLo: largest(planned.joints, (joint) => joint.hiLo, 'mm'),
    welds: countFigure(planned.joints.length, 'joints'),
    after: differences(wanted, actual, { doubt: doubt.plusMinus, from: ['tape'] }, (spot) =>
      movePoint(lay, movePoint(motionOf(spot), spot.point)),
    ),
    joints: planned.joints,
    rebends: [],
    members: actual.members.map((member) => drawn(member, splice, work, cutAt, lay)),
    effort: {
      welds: planned.joints.length,
      cuts: 2 * planned.joints.length + base.trims.length,
      bends: 0,
      tubeMetres: 0,
      purgeJoints: splice.joints.map((joint, index) => ({
        number: index + 1,
        member: joint.place.member.name,
        station: (joint.closed.stationA + joint.closed.stationB) / 2,
      })),
    },
  };
  return { way, findings, templated: () => plan({ ...context, templates: true }).joints };
}

/** Middle between the outermost feet and corners across the frame [mm]. */
export function middleOf(frame: FrameGeometry): number {
  const across = [...frame.corners, ...frame.feet].map((spot) => spot.point.x);
  return across.length === 0 ? 0 : (Math.min(...across) + Math.max(...across)) / 2;
}

/** A member of the closed frame, piece by piece where its bodies put them. */
function drawn(
  member: MemberGeometry,
  splice: Splice,
  work: Correcting,
  cutAt: number,
  lay: Parameters<typeof compose>[0],
): DrawnMember {
  const joints = splice.joints
    .filter((joint) => joint.place.member.name === member.name)
    .sort((a, b) => a.place.at - b.place.at);
  const feet = work.actual.feet.filter((foot) => foot.member === member.name).map((foot) => foot.station);
  const whole = member.centreline.length;
  const first = joints[0]?.closed.stationA ?? 0;
  const from = member.closed ? Math.max(0, joints.at(-1)?.closed.stationB ?? 0) : Math.min(...feet, whole);
  const low = member.closed || feet.length === 0 || from > whole / 2 ? 0 : from;
  const high = member.closed
    ? whole + Math.min(0, first)
    : Math.max(...feet.filter((at) => at > whole / 2), 0) || whole;
  const cuts = [
    { from: low, body: joints[0]?.place.before },
    ...joints.map((joint) => ({ from: joint.closed.stationB, body: joint.place.after })),
  ];
  const pieces = cuts.flatMap((cut, index) => {
    const to = joints[index]?.closed.stationA ?? high;
    if (to <= cut.from) return [];
    const part = sliceCentreline(member.centreline, cut.from, to);
    const start = part.pieces[0]?.start ?? { x: cutAt, y: 0, z: 0 };
    const body = cut.body ?? (start.x < cutAt ? 'left' : 'right');
    return planPieces(moveCentreline(part, compose(lay, splice.motions.get(body) ?? STILL)));
  });
  return { name: member.name, pieces };
}
