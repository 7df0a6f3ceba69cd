import type { FrameGeometry, Spot } from '../frame/frame-geometry.ts';
import { RADIANS } from '../geometry/angle.ts';
import { placeAt } from '../geometry/centreline.ts';
import { moved, turned } from '../geometry/rigid-motion.ts';
import { dot, scale, subtract, type Vector3 } from '../geometry/vector.ts';
import { leastSquares } from '../least-squares.ts';
import type { CorrectionTarget } from './corrected.ts';
import { layOn, targetPoint } from './outcome.ts';
import { withPlacedRoots } from './placed-roots.ts';
import type { ArcChange } from './relaid-member.ts';
import { relaidFrame, relaidGeometry, type FrameChange } from './relaid-frame.ts';
import { turnLimits, type RebendShop, type TurnableArc, type TurnLimit } from './turn-limits.ts';

/** An arc that is turned further (positive) or opened (negative) [rad]; a crown on the same length of tube. */
export type BendTurn = TurnableArc & { readonly turn: number };

/** Turns that a frame asks for; `wants` of those that a limit ends: what they would be turned by without it. */
export type Rebending = {
  readonly turns: readonly BendTurn[];
  readonly limited: readonly { readonly limit: TurnLimit; readonly turn: number; readonly wants: number }[];
};

/** A turn is not asked for nothing, but so weakly that this decides only where nothing else does [rad for one tolerance]. */
const TURN_SCALE = 5 * Math.PI;

/** Turns smaller than this are no turns [rad]: 0.01 degrees, well inside any machine's scatter. */
const LEAST_TURN = 0.01 * RADIANS;

/** How large a turn typically is [rad], for the steps of the search. */
const TURN_SIZE = 1e-2;

/** A turn this near to its limit is at it [rad]; rounding. */
const AT_LIMIT = 1e-9;

/** Turns as changes of the frame's arcs. */
export function changeFor(turns: readonly BendTurn[], fromFinish: ReadonlySet<string>): FrameChange {
  const members = new Map<string, Map<number, ArcChange>>();
  for (const { member, piece, turn } of turns) {
    if (turn === 0) continue;
    const own = members.get(member) ?? new Map<number, ArcChange>();
    own.set(piece, { turn });
    members.set(member, own);
  }
  return { members, fromFinish };
}

const FROM_START: ReadonlySet<string> = new Set();

/** The frame with some of its arcs turned, in space; members that sit on others go with them. */
export const rebentFrame = (
  frame: FrameGeometry,
  turns: readonly BendTurn[],
  fromFinish: ReadonlySet<string> = FROM_START,
): FrameGeometry => relaidGeometry(frame, changeFor(turns, fromFinish));

/**
 * How far turning the existing bends and rolling the crowns again brings the targets to their places: least squares over
 * the turns within their limits, the whole frame laid on the targets by best fit. A turn that the machine would miss by as
 * much as it asks for (its scatter) is not asked for.
 *
 * @param from turns that are near the answer already
 */
export function solveRebend(
  frame: FrameGeometry,
  targets: readonly CorrectionTarget[],
  wanted: FrameGeometry,
  shop: RebendShop,
  from: readonly BendTurn[] = [],
): Rebending {
  const limits = turnLimits(frame, shop);
  // each search begins where the one before it ended
  const near = new Map(from.map((one) => [`${one.member} ${String(one.piece)}`, one.turn]));
  const solve = (free: readonly TurnLimit[], fixed: ReadonlyMap<TurnLimit, number>) => {
    const solved = solvedTurns(free, fixed, near, { frame, targets, wanted, shop });
    for (const [{ arc }, turn] of solved) near.set(`${arc.member} ${String(arc.piece)}`, turn);
    return solved;
  };
  const least = Math.max(LEAST_TURN, shop.machine.angleScatter * RADIANS);
  const fixed = new Map<TurnLimit, number>(
    limits.filter(({ low, high }) => low === 0 && high === 0).map((one) => [one, 0]),
  );
  let turns = new Map<TurnLimit, number>();
  // each round holds what ran into a limit, or is too small to be made, and solves for the others again
  for (let round = 0; round <= 2 * limits.length; round += 1) {
    turns = solve(
      limits.filter((limit) => !fixed.has(limit)),
      fixed,
    );
    const stopped = [...turns].filter(
      ([limit, turn]) => !fixed.has(limit) && (turn <= limit.low + AT_LIMIT || turn >= limit.high - AT_LIMIT),
    );
    for (const [limit, turn] of stopped) fixed.set(limit, turn > 0 ? limit.high : limit.low);
    if (stopped.length > 0) continue;
    const small = [...turns].filter(([limit, turn]) => !fixed.has(limit) && Math.abs(turn) < least);
    if (small.length === 0) break;
    // the smallest first: what it did the others may take over
    const [[smallest]] = [...small].sort(([, a], [, b]) => Math.abs(a) - Math.abs(b)) as [[TurnLimit, number]];
    fixed.set(smallest, 0);
  }
  return {
    turns: limits.map((limit) => ({ ...limit.arc, turn: turns.get(limit) ?? 0 })),
    limited: limitedOf(limits, fixed, turns, solve, least),
  };
}

type Solve = (free: readonly TurnLimit[], fixed: ReadonlyMap<TurnLimit, number>) => Map<TurnLimit, number>;

/** Arcs that a limit holds and that would go further without it. */
function limitedOf(
  limits: readonly TurnLimit[],
  fixed: ReadonlyMap<TurnLimit, number>,
  turns: ReadonlyMap<TurnLimit, number>,
  solve: Solve,
  least: number,
): Rebending['limited'] {
  const held = limits.filter((limit) => {
    const turn = fixed.get(limit);
    return turn !== undefined && (turn === limit.low || turn === limit.high);
  });
  if (held.length === 0) return [];
  const unlimited = limits.map((limit) => ({ ...limit, low: -Infinity, high: Infinity }));
  const free = solve(unlimited, new Map());
  const wanted = new Map(limits.map((limit, index) => [limit, free.get(unlimited[index] ?? limit) ?? 0]));
  return held.flatMap((limit) => {
    const [turn, wants] = [turns.get(limit) ?? 0, wanted.get(limit) ?? 0];
    const beyond = wants > limit.high ? wants - limit.high : limit.low - wants;
    return beyond > least ? [{ limit, turn, wants }] : [];
  });
}

function solvedTurns(
  free: readonly TurnLimit[],
  fixed: ReadonlyMap<TurnLimit, number>,
  near: ReadonlyMap<string, number>,
  among: { frame: FrameGeometry; targets: readonly CorrectionTarget[]; wanted: FrameGeometry; shop: RebendShop },
): Map<TurnLimit, number> {
  const { frame, targets, wanted, shop } = among;
  const known = [...fixed].map(([{ arc }, turn]) => ({ ...arc, turn }));
  const guided = targets.map(({ kind, spot }) => (kind === 'guide' ? tangentAt(frame, spot) : undefined));
  const residuals = (values: readonly number[]): number[] => {
    const turns = free.map(({ arc }, index) => ({ ...arc, turn: values[index] ?? 0 }));
    const change = changeFor([...known, ...turns], shop.fromFinish);
    const laid = relaidFrame(frame, withPlacedRoots({ wanted, actual: frame, targets }, change));
    const lay = layOn(wanted, frame, targets, laid);
    const all = values.map((turn) => turn / TURN_SCALE);
    for (const [index, target] of targets.entries()) {
      const { wanted: goal, tolerance, spot } = target;
      const off = subtract(moved(lay, targetPoint(target, laid)), goal);
      const along = guided[index];
      // a guide is a place of the curve: how far along the tube it stands is of no account
      const way = along === undefined ? off : turned(lay, turned(laid.motionAt(spot.member, spot.station), along));
      const left = along === undefined ? off : subtract(off, scale(way, dot(way, off)));
      all.push(left.x / tolerance, left.y / tolerance, left.z / tolerance);
    }
    return all;
  };
  const unknowns = free
    .map(({ arc, low, high }) => {
      const like = near.get(`${arc.member} ${String(arc.piece)}`) ?? 0;
      // a search that begins at a limit stays there
      return { start: like > low + AT_LIMIT && like < high - AT_LIMIT ? like : 0, low, high };
    })
    .map(({ start, low, high }) => ({
      start,
      size: TURN_SIZE,
      ...(Number.isFinite(low) ? { low } : {}),
      ...(Number.isFinite(high) ? { high } : {}),
    }));
  const { values } = leastSquares(unknowns, residuals);
  return new Map([...fixed, ...free.map((limit, index): [TurnLimit, number] => [limit, values[index] ?? 0])]);
}

function tangentAt(frame: FrameGeometry, { member, station }: Spot): Vector3 | undefined {
  const line = frame.members.find(({ name }) => name === member)?.centreline;
  return line === undefined ? undefined : placeAt(line, station)?.tangent;
}
