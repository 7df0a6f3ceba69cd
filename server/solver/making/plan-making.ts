import type { Bending, MemberBending } from '../../job/bending.ts';
import type { Finding } from '../../plan/finding.ts';
import type { MemberMaking } from '../../plan/making.ts';
import type { PlannedMember } from '../bending/plan-member.ts';
import type { BendContext } from '../bending/planned-arc.ts';
import { FLATTENING_LIMIT } from '../bending/forming.ts';
import { figure, input } from '../figure.ts';
import type { MemberGeometry } from '../frame/frame-geometry.ts';
import { RADIANS } from '../geometry/angle.ts';
import { planClosing } from './closing-weld.ts';
import type { DieBend, MachineEnvelope } from './machine-envelope.ts';
import { makingFigures, splitFigures } from './making-figures.ts';
import { makingFindings } from './making-findings.ts';
import { radiiThatFit } from './radii-that-fit.ts';
import { JOINT_KEEP_OUT, splitMember } from './split-member.ts';
import type { MakingInput } from './way-to-bend.ts';
import { otherWays, plannedWay } from './ways-to-bend.ts';

/** How a member is bent where the job says nothing of it. */
const USUAL: Omit<MemberBending, 'member'> = { from: 'start', side: 'usual', closingStraight: null };

/** How the job wants a member bent. */
export const bendingOf = (bending: Bending, member: string): MemberBending =>
  bending.members.find((one) => one.member === member) ?? { ...USUAL, member };

/**
 * How a member goes through the machine: what is in its way, how near it comes to machine, bed and itself, and how
 * else it could be made: from the other end, on the other side, in two pieces, on another radius.
 *
 * @param asked end, side and closing weld that the job wants; the ways are told from there
 * @param planned the member with its bends in the order of bending
 */
export function planMaking(
  member: MemberGeometry,
  asked: MemberBending,
  planned: PlannedMember,
  context: BendContext,
  bending: Bending,
): { plan: MemberMaking; findings: Finding[] } {
  const { machine } = context;
  const { surroundings } = machine;
  const bothSides = surroundings.side === 'both';
  const usual = surroundings.side === 'left' ? 'left' : 'right';
  const side = bothSides && asked.side === 'other' ? 'left' : usual;
  const making: MakingInput = {
    centreline: planned.line,
    closed: member.closed,
    bends: dieBends(planned),
    throatAtStart: planned.firstThroat,
    throatAtFinish: planned.lastThroat,
    machine: {
      gripLength: machine.gripLength,
      leastStraight: machine.leastStraight,
      trimAllowance: machine.trimAllowance,
      largestAngle: machine.largestAngle * RADIANS,
      side,
      bothSides,
      envelope: envelopeOf(context),
    },
  };
  const asPlanned = making.bends.length === 0 ? [] : [plannedWay(making)];
  // what gets by needs no other way, and looking for one takes as long again
  const stuck = asPlanned[0]?.possible === false;
  const ways = stuck ? [...asPlanned, ...otherWays(making)] : asPlanned;
  const noWay = stuck && !ways.some(({ possible }) => possible);
  const split = noWay ? splitMember(making, ways, JOINT_KEEP_OUT * context.tube.outsideDiameter) : null;
  const fit = radiiThatFit({
    centreline: planned.line,
    outsideDiameter: context.tube.outsideDiameter,
    elongation: context.grade.elongation,
    flattening: FLATTENING_LIMIT.note,
    leastStraight: machine.leastStraight,
    growth: context.law.radiusAfterRelease / machine.dieRadius,
  });
  const radius = (value: number) =>
    figure(
      value,
      'mm',
      'R',
      [input('D', 'outside-diameter', context.tube.outsideDiameter, 'mm')],
      ['geometry', 'u-tube-flattening'],
    );
  const closing = planClosing(member, asked, context.tube.outsideDiameter, bending);
  const plan: MemberMaking = {
    from: asked.from,
    side,
    bed: isFlat(planned) ? 'not-needed' : surroundings.bedBelow === null ? 'not-known' : 'checked',
    ways: ways.map((way) => makingFigures(way, making.machine)),
    split: split === null ? null : splitFigures(split, asked.from, member.centreline.length),
    radii: fit === null ? null : { least: radius(fit.low), most: radius(fit.high) },
    closing: closing.plan,
  };
  return { plan, findings: [...makingFindings(member.name, plan, asked, bending), ...closing.findings] };
}

/** Whether the tube is never turned between its bends: even a half turn swings what is bent under the tube. */
const isFlat = ({ planned }: PlannedMember): boolean => planned.every(({ rotation }) => Math.abs(rotation) < FLAT);

/** A turn smaller than this is none [rad]: rounding. */
const FLAT = 1e-6;

/** The die bends as the machine makes them: where they are, how far it swings, on which die. */
function dieBends({ line, planned }: PlannedMember): DieBend[] {
  const pieces = line.pieces.flatMap((piece, index) => (piece.kind === 'arc' ? [index] : []));
  return planned.flatMap(({ number, piece, command, dieRadius }): DieBend[] => {
    const at = pieces[number - 1];
    return piece.made === 'die' && at !== undefined ? [{ number, piece: at, command, dieRadius }] : [];
  });
}

/** The blocks round the tube: clamp and pressure die are as long as the die says, and as high as its block. */
function envelopeOf({ machine, tube }: BendContext): MachineEnvelope {
  const { bedBelow, dieHeight, clampReach } = machine.surroundings;
  return {
    outsideDiameter: tube.outsideDiameter,
    dieHeight,
    dieRim: 0,
    clampLength: machine.gripLength,
    clampReach,
    clampHeight: dieHeight,
    pressureDieLength: machine.die.pressureDieLength,
    pressureDieReach: clampReach,
    pressureDieHeight: dieHeight,
    bedBelow,
  };
}
