import type { SetUp } from '../bending/set-up.ts';
import type { Finding } from '../../plan/finding.ts';
import { band, figure, input } from '../figure.ts';
import { finding } from '../finding.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { planPieces } from '../geometry/plan-pieces.ts';
import { moveCentreline } from './flat-frame.ts';
import { differences } from './measured-frame.ts';
import { countFigure, largest, misfitsOf, outwardAt, type Effort, type WayDraft } from './outcome.ts';
import { movePoint, type PlaneMotion } from './plane-motion.ts';
import { rebentFrame, solveRebend } from './rebend.ts';
import type { Correcting } from './splice-way.ts';
import { longestLeg } from './trims.ts';

const DEGREES = 180 / Math.PI;

/** Opening a work-hardened bend by more than this wrinkles or flattens it [deg]: common practice, ask the shop. */
const MOST_OPENING = 3;

/** Turns smaller than this are no turns [deg]: well inside any machine's scatter. */
const LEAST_TURN = 0.01;

type Base = Pick<WayDraft, 'trims'>;

const membersAt = (frame: FrameGeometry, lay: PlaneMotion) =>
  frame.members.map((member) => ({
    name: member.name,
    pieces: planPieces(moveCentreline(member.centreline, lay)),
  }));

const unjoined = {
  largestKink: largest([], (joint) => joint.kink, 'deg'),
  largestHiLo: largest([], (joint) => joint.hiLo, 'mm'),
  joints: [],
};

const standing = (frame: FrameGeometry) => ({
  feet: frame.feet.map((spot) => spot.point),
  corners: frame.corners.map((spot) => spot.point),
  outward: frame.feet.map((spot) => outwardAt(frame, spot)),
});

/** Saddle ends of the frame: each is a weld when the frame is made anew or its legs are moved apart. */
const saddleEnds = (frame: FrameGeometry): number =>
  frame.members.reduce(
    (sum, member) => sum + [member.start, member.finish].filter((end) => end.kind === 'saddle').length,
    0,
  );

/** Leave the frame as it is, feet that are too long cut back, and pack what is left at the feet. */
export function leaveWay(work: Correcting, base: Base): WayDraft {
  const { wanted, actual, context } = work;
  const doubt = band(context.tape, 'tape');
  const { lay, ...misfits } = misfitsOf(wanted, standing(actual), doubt);
  return {
    ...base,
    ...misfits,
    ...unjoined,
    key: 'leave',
    possible: true,
    reasons: [],
    welds: countFigure(0, 'joints'),
    after: differences(wanted, actual, { doubt: context.tape, from: ['tape'] }, (spot) => movePoint(lay, spot.point)),
    rebends: [],
    members: membersAt(actual, lay),
    effort: { welds: 0, cuts: base.trims.length, bends: 0, tubeMetres: 0, purgeJoints: [] },
  };
}

/** Turn the existing bends further or less, and say what is left over. */
export function rebendWay(work: Correcting, machine: SetUp, base: Base): { way: WayDraft; findings: Finding[] } {
  const { wanted, actual, targets, context } = work;
  const turns = solveRebend(actual, targets, context.tape);
  const bent = rebentFrame(actual, turns);
  const scatter = (machine.angleScatter * Math.PI) / 180;
  const doubt = band(Math.hypot(context.tape, scatter * longestLeg(actual)), 'tape', 'angle-scatter');
  const { lay, ...misfits } = misfitsOf(wanted, standing(bent), doubt);
  const findings: Finding[] = [];
  const rebends = turns.flatMap((turn) => {
    const piece = actual.members.find((member) => member.name === turn.member)?.centreline.pieces[turn.piece];
    const degrees = turn.turn * DEGREES;
    if (piece?.kind !== 'arc' || Math.abs(degrees) < LEAST_TURN) return [];
    const from = piece.angle * DEGREES;
    const where = { member: turn.member, bend: turn.bend };
    if (degrees < -MOST_OPENING) {
      findings.push(
        finding('rebend-opens-bend', 'caution', '/closing/way', { ...where, value: -degrees, high: MOST_OPENING }),
      );
    }
    if (from + degrees > machine.largestAngle) {
      const data = { ...where, value: from + degrees, high: machine.largestAngle };
      findings.push(finding('rebend-over-machine', 'stop', `${machine.dieField}/largestAngle`, data));
    }
    const angle = (value: number, formula: string) =>
      figure(
        value,
        'deg',
        formula,
        [input('θ', 'angle-as-it-came-back', from, 'deg'), input('δ', 'turn', degrees, 'deg')],
        ['procrustes'],
        band(machine.angleScatter, 'angle-scatter'),
      );
    return [
      {
        member: turn.member,
        bend: turn.bend,
        turn: angle(degrees, 'δ'),
        from: angle(from, 'θ'),
        to: angle(from + degrees, 'θ + δ'),
      },
    ];
  });
  const after = differences(wanted, bent, { doubt: doubt.plusMinus, from: doubt.from }, (spot) =>
    movePoint(lay, spot.point),
  );
  const corner = after.find((one) => one.key === 'width-at-corners');
  if (corner !== undefined && Math.abs(corner.difference.value) > 2 * context.tape) {
    const data = { value: corner.difference.value };
    findings.push(finding('rebend-cannot-narrow', 'note', '/closing/way', data));
  }
  const stops = findings.filter((one) => one.grade === 'stop').map((one) => one.code);
  const noBends = turns.length === 0;
  const refits = rebends.length === 0 ? 0 : saddleEnds(actual);
  const way: WayDraft = {
    ...base,
    ...misfits,
    ...unjoined,
    key: 'rebend',
    possible: stops.length === 0 && !noBends,
    reasons: noBends ? ['way-not-possible'] : [...new Set(stops)],
    welds: countFigure(refits, 'saddles-refitted'),
    after,
    rebends,
    members: membersAt(bent, lay),
    effort: {
      welds: refits,
      cuts: base.trims.length + refits,
      bends: rebends.length,
      tubeMetres: 0,
      purgeJoints: saddleJoints(actual).slice(0, refits),
    },
  };
  return { way, findings };
}

/** The welded ends of members that sit on others. */
export const saddleJoints = (frame: FrameGeometry) =>
  frame.members
    .flatMap((member) => [
      ...(member.start.kind === 'saddle' ? [{ member: member.name, station: 0 }] : []),
      ...(member.finish.kind === 'saddle' ? [{ member: member.name, station: member.centreline.length }] : []),
      ...(member.closed ? [{ member: member.name, station: 0 }] : []),
    ])
    .map((joint, index) => ({ ...joint, number: index + 1 }));

/** Make the frame anew: what is left over is the scatter of the machine and the tape. */
export function newFrameWay(work: Correcting, machine: SetUp, effort: Effort): WayDraft {
  const { wanted, context } = work;
  const scatter = (machine.angleScatter * Math.PI) / 180;
  const doubt = band(Math.hypot(context.tape, scatter * longestLeg(wanted)), 'tape', 'angle-scatter');
  const { lay, ...misfits } = misfitsOf(wanted, standing(wanted), doubt);
  return {
    ...misfits,
    ...unjoined,
    key: 'new-frame',
    possible: true,
    reasons: [],
    welds: countFigure(effort.welds, 'joints'),
    after: differences(wanted, wanted, { doubt: doubt.plusMinus, from: doubt.from }, (spot) =>
      movePoint(lay, spot.point),
    ),
    rebends: [],
    trims: [],
    members: membersAt(wanted, lay),
    effort,
  };
}
