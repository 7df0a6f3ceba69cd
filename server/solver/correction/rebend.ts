import type { FrameGeometry, MemberGeometry, Spot } from '../frame/frame-geometry.ts';
import { placeAt } from '../geometry/centreline.ts';
import { pieceStations, relay } from '../geometry/slice.ts';
import { add, cross, dot, scale, subtract } from '../geometry/vector.ts';
import { leastSquares } from './least-squares.ts';
import { bestFit, movePoint } from './plane-motion.ts';
import type { Target } from './splice.ts';

/** A bend that is turned further (positive) or opened (negative) [rad], `piece` counted in its member. */
export type BendTurn = {
  readonly member: string;
  readonly piece: number;
  readonly bend: number;
  readonly turn: number;
};

/** The weight that keeps a turn from being asked for nothing [rad for each mm of tape]. */
const TURN_SCALE = Math.PI / 2;

/** Every die bend of the frame, in order. */
export const dieBends = (frame: FrameGeometry): BendTurn[] =>
  frame.members.flatMap((member) => {
    let bend = 0;
    return member.centreline.pieces.flatMap((piece, index) => {
      if (piece.kind !== 'arc' || piece.made !== 'die') return [];
      bend += 1;
      return [{ member: member.name, piece: index, bend, turn: 0 }];
    });
  });

/**
 * A member whose bends were turned further or opened. A formed bend keeps its start mark and its radius; turning it
 * by δ uses R δ more of the tube that follows.
 */
export function rebentMember(member: MemberGeometry, turns: readonly BendTurn[]): MemberGeometry {
  const own = turns.filter((turn) => turn.member === member.name);
  const turnOf = (index: number) => own.find((turn) => turn.piece === index)?.turn ?? 0;
  const { pieces } = member.centreline;
  const centreline = relay(member.centreline, (piece, index) => {
    const before = pieces[index - 1];
    const taken = before?.kind === 'arc' && before.made === 'die' ? before.radius * turnOf(index - 1) : 0;
    if (piece.kind === 'straight') return { length: piece.length - taken, angle: 0 };
    if (piece.made === 'die') return { length: piece.length, angle: piece.angle + turnOf(index) };
    return { length: piece.length, angle: piece.angle - taken / piece.radius };
  });
  return { ...member, centreline };
}

/** Moves a spot with the place on its member that it stood at, carried on the same piece of the rebent one. */
function carrySpot(spot: Spot, before: MemberGeometry, after: MemberGeometry): Spot {
  const stations = pieceStations(before.centreline);
  const later = pieceStations(after.centreline);
  const { pieces } = before.centreline;
  const found = pieces.findIndex((_, index) => spot.station <= (stations[index + 1] ?? 0) + 1e-9);
  const index = found < 0 ? pieces.length - 1 : found;
  const begin = stations[index] ?? 0;
  const newBegin = later[index] ?? 0;
  const piece = pieces[index];
  // a bend's own middle keeps its share; on a straight or crown distances from the far end stay: that is the tube's
  const share =
    piece?.kind === 'arc' && piece.made === 'die'
      ? newBegin + ((spot.station - begin) / piece.length) * ((later[index + 1] ?? 0) - newBegin)
      : (later[index + 1] ?? 0) - ((stations[index + 1] ?? 0) - spot.station);
  const from = placeAt(before.centreline, spot.station);
  const to = placeAt(after.centreline, share);
  if (from === undefined || to === undefined) return spot;
  const away = subtract(spot.point, from.point);
  const side = cross({ x: 0, y: 0, z: 1 }, from.tangent);
  const newSide = cross({ x: 0, y: 0, z: 1 }, to.tangent);
  const point = add(add(to.point, scale(to.tangent, dot(away, from.tangent))), scale(newSide, dot(away, side)));
  return { ...spot, station: share, point };
}

/** The flat frame with its bends turned; members that sit on others stay where they were. */
export function rebentFrame(frame: FrameGeometry, turns: readonly BendTurn[]): FrameGeometry {
  const members = frame.members.map((member) => rebentMember(member, turns));
  const carry = (spot: Spot): Spot => {
    const before = frame.members.find((member) => member.name === spot.member);
    const after = members.find((member) => member.name === spot.member);
    return before === undefined || after === undefined ? spot : carrySpot(spot, before, after);
  };
  return {
    ...frame,
    members,
    feet: frame.feet.map(carry),
    corners: frame.corners.map(carry),
    checks: frame.checks.map((check) => ({ ...check, from: carry(check.from), to: carry(check.to) })),
  };
}

/**
 * How far turning the existing bends brings the spots to their targets: least squares over the turns, the whole
 * frame laid on the targets by best fit.
 */
export function solveRebend(frame: FrameGeometry, targets: readonly Target[], tape: number): BendTurn[] {
  const bends = dieBends(frame);
  if (bends.length === 0) return [];
  const scaleOf = Math.max(tape, 0.1);
  const asked = (values: readonly number[]) => bends.map((bend, index) => ({ ...bend, turn: values[index] ?? 0 }));
  const spots: FrameGeometry = { ...frame, feet: targets.map((target) => target.spot), corners: [], checks: [] };
  const values = leastSquares(
    bends.map(() => ({ start: 0, size: 1e-2 })),
    (turns) => {
      const bent = rebentFrame(spots, asked(turns)).feet;
      const lay = bestFit(bent.map((spot, index) => ({ from: spot.point, to: targets[index]?.wanted ?? spot.point })));
      const residuals = turns.map((turn) => turn / TURN_SCALE);
      for (const [index, spot] of bent.entries()) {
        const at = movePoint(lay, spot.point);
        const wanted = targets[index]?.wanted ?? at;
        residuals.push((at.x - wanted.x) / scaleOf, (at.y - wanted.y) / scaleOf);
      }
      return residuals;
    },
  );
  return asked(values);
}
