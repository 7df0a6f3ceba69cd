import type { MakingKey, Obstacle } from '../../plan/making.ts';
import { arcsOf, type Arc } from '../bending/arcs.ts';
import { leftOn } from '../bending/left-on.ts';
import type { Centreline } from '../geometry/centreline.ts';
import { reverseCentreline } from '../geometry/reverse-centreline.ts';
import type { Clearance, DieBend, MachineEnvelope, Side } from './machine-envelope.ts';
import { sweptCheck, type SweptInput } from './swept-check.ts';

/** What the machine needs of the straights and can bend [mm, rad]. */
export type MakingMachine = {
  readonly gripLength: number;
  readonly leastStraight: number;
  /** Left on the last end and cut off after bending anyway. */
  readonly trimAllowance: number;
  readonly largestAngle: number;
  /** Which side of the tube its die stands on, and whether it can be set up on the other. */
  readonly side: Side;
  readonly bothSides: boolean;
  /** Its bodies; null where nobody measured them: then nothing is said about strikes. */
  readonly envelope: MachineEnvelope | null;
};

/** A member to be bent: its centreline from the datum end, its die bends in order, the machine. */
export type MakingInput = {
  readonly centreline: Centreline;
  /**
   * A ring. Its datum is in the middle of a straight: it is bent as an open tube from there to there, and its two ends
   * come together in the last bend, where they are not held against each other.
   */
  readonly closed: boolean;
  readonly bends: readonly DieBend[];
  /** What a saddle at either end takes off the centreline at its deepest, 0 elsewhere [mm]. */
  readonly throatAtStart: number;
  readonly throatAtFinish: number;
  readonly machine: MakingMachine;
};

export type WayKey = Exclude<MakingKey, 'split'>;

/**
 * What is in the way. `grip-short` and `last-straight-short` are got over by length that is left on; with the others the
 * member cannot be bent in that way on this machine.
 */
export type WayProblem = {
  readonly code: 'grip-short' | 'last-straight-short' | 'straight-short' | 'angle-over-machine' | 'strikes';
  /** In the order of this way, counted from 1 over all arcs, as a bend table counts them. */
  readonly bend: number;
  /** Length or clearance [mm], or angle [rad]. */
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly obstacle: Obstacle | null;
};

export type WayToBend = {
  readonly key: WayKey;
  readonly side: Side;
  readonly fromOtherEnd: boolean;
  readonly possible: boolean;
  readonly problems: readonly WayProblem[];
  /** Left on at the end that this way starts from, and at the far end, and cut off after bending [mm]. */
  readonly extraAtStart: number;
  readonly extraAtEnd: number;
  /** The nearest that the tube comes to anything; null without an envelope, or where nothing can come near. */
  readonly nearest: (Clearance & { readonly bend: number }) | null;
};

/** Rounding of lengths that add up, and of angles, as a share of the diameter or of a turn [mm, rad]. */
const NOTHING = 1e-6;

/** Problems that length left on gets over. */
const GOT_OVER: readonly WayProblem['code'][] = ['grip-short', 'last-straight-short'];

/** Whether a problem keeps a member from being bent in its way. */
export const isBlocking = ({ code }: WayProblem): boolean => !GOT_OVER.includes(code);

/** The same member from its other end. */
export function fromOtherEnd(input: MakingInput): MakingInput {
  const last = input.centreline.pieces.length - 1;
  const arcs = input.centreline.pieces.filter((piece) => piece.kind === 'arc').length;
  const bends = [...input.bends].reverse().map(({ number, piece, command, dieRadius }): DieBend => {
    return { number: arcs + 1 - number, piece: last - piece, command, dieRadius };
  });
  return {
    ...input,
    centreline: reverseCentreline(input.centreline),
    bends,
    throatAtStart: input.throatAtFinish,
    throatAtFinish: input.throatAtStart,
  };
}

/**
 * One way to bend a member: what is in the way, what must be left on, how near the tube comes to anything.
 *
 * @param key its name; `input` is already the member as this way goes along it
 */
export function wayToBend(key: WayKey, input: MakingInput): WayToBend {
  const { machine, bends, centreline } = input;
  const otherEnd = key === 'other-end' || key === 'other-end-other-side';
  const otherSide = key === 'other-side' || key === 'other-end-other-side';
  const side = otherSide === (machine.side === 'left') ? 'right' : 'left';
  const { arcs, lastStraight } = arcsOf(centreline);
  const problems: WayProblem[] = [];

  const firstDie = arcs.findIndex((arc) => arc.piece.made === 'die');
  const ends = { lastStraight, firstThroat: input.throatAtStart, lastThroat: input.throatAtFinish };
  const { grip, extraFirst: extraAtStart, held, shortLast, extraLast } = leftOn(arcs, ends, machine);
  if (extraAtStart > NOTHING) {
    problems.push(problem('grip-short', { bend: firstDie + 1, value: grip, low: machine.gripLength }));
  }
  for (const [index, arc] of arcs.entries()) problems.push(...bendProblems(arc, index + 1, input));

  const extraAtEnd = bends.length === 0 ? 0 : extraLast;
  if (bends.length > 0 && shortLast > machine.trimAllowance + NOTHING) {
    const value = held + machine.trimAllowance;
    problems.push(problem('last-straight-short', { bend: arcs.length, value, low: machine.leastStraight }));
  }
  const nearest = strikes({ input, side, extraAtStart, extraAtEnd }, problems);
  return {
    key,
    side,
    fromOtherEnd: otherEnd,
    possible: !problems.some(isBlocking),
    problems,
    extraAtStart,
    extraAtEnd,
    nearest,
  };
}

const problem = (
  code: WayProblem['code'],
  at: { bend: number; value: number; low?: number; high?: number; obstacle?: Obstacle },
): WayProblem => ({
  code,
  bend: at.bend,
  value: at.value,
  low: at.low ?? null,
  high: at.high ?? null,
  obstacle: at.obstacle ?? null,
});

function bendProblems(arc: Arc, number: number, { bends, machine }: MakingInput): WayProblem[] {
  const bend = bends.find((each) => each.number === number);
  if (bend === undefined) return [];
  const problems: WayProblem[] = [];
  if (arc.afterDieBend && arc.sinceDieBend < machine.leastStraight - NOTHING) {
    problems.push(problem('straight-short', { bend: number, value: arc.sinceDieBend, low: machine.leastStraight }));
  }
  if (bend.command > machine.largestAngle + NOTHING) {
    problems.push(problem('angle-over-machine', { bend: number, value: bend.command, high: machine.largestAngle }));
  }
  return problems;
}

/** Adds what strikes to the problems. */
function strikes(
  made: { input: MakingInput; side: Side; extraAtStart: number; extraAtEnd: number },
  problems: WayProblem[],
): WayToBend['nearest'] {
  const { input, side, extraAtStart, extraAtEnd } = made;
  const { envelope } = input.machine;
  if (envelope === null) return null;
  const swept: SweptInput = {
    centreline: input.centreline,
    closed: input.closed,
    bends: input.bends,
    machine: envelope,
    side,
    extraAtStart,
    extraAtEnd,
  };
  let nearest: WayToBend['nearest'] = null;
  for (const { bend, clearances } of sweptCheck(swept)) {
    for (const each of clearances) {
      if (each.clearance <= 0) {
        problems.push(problem('strikes', { bend, value: each.clearance, low: 0, obstacle: each.obstacle }));
      }
      if (nearest === null || each.clearance < nearest.clearance) nearest = { ...each, bend };
    }
  }
  return nearest;
}
