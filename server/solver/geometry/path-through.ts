import { FAR_CORNER, LEAST_BEND, tangentLength } from './bend-table.ts';
import type { Centreline, Piece } from './centreline.ts';
import { add, angleBetween, cross, length, scale, subtract, unit, type Vector3 } from './vector.ts';

/** A point of a path: where the straights beside a bend meet, and how the bend is made [mm]. Ends have no bend. */
export type PathPoint = { readonly point: Vector3; readonly radius: number; readonly made: 'die' | 'rolled' };

/** What is wrong with a path. Points by index; lengths in mm, angles in rad. The last one is only worth a note. */
export type PathProblem =
  | { readonly problem: 'points-coincide'; readonly first: number; readonly second: number }
  | { readonly problem: 'bend-angle-straight-back'; readonly at: number; readonly angle: number }
  | {
      readonly problem: 'straight-negative';
      readonly first: number;
      readonly second: number;
      readonly between: number;
      readonly needed: number;
      /** tan(θ/2) at both points; 0 at an end. */
      readonly slopes: { readonly first: number; readonly second: number };
    }
  | { readonly problem: 'bend-angle-zero'; readonly at: number; readonly angle: number };

/** A bend of a path: the point it belongs to, and the station of its middle. */
export type PathBend = { readonly at: number; readonly station: number; readonly angle: number };

/** A straight of a closed path: the point that it leaves from, and its length between the bends [mm]. */
export type ClosedStraight = { readonly from: number; readonly length: number };

/** Where a closed path begins and ends: in the middle of one of its straights. */
export type Closing = { readonly from: number; readonly straights: readonly ClosedStraight[] };

export type Path = {
  readonly centreline: Centreline | null;
  readonly bends: readonly PathBend[];
  /** Null for an open path. */
  readonly closing: Closing | null;
  readonly problems: readonly PathProblem[];
};

/** Lengths below this are rounding [mm]; a millionth of what a tape shows. */
const NOTHING = 1e-6;

const NO_PATH = { centreline: null, bends: [], closing: null } as const;

type Kept = PathPoint & { readonly index: number };
type Bend = Kept & {
  readonly before: Vector3;
  readonly after: Vector3;
  readonly angle: number;
  readonly tangent: number;
};

/**
 * The centreline through points: straights, and at each point in between an arc tangent to both. Points where the
 * tube goes straight on are left out. Derived.
 *
 * @param asked point from which the straight leaves that a closed path is to begin in; else it is the longest one
 */
export function pathThrough(points: readonly PathPoint[], closed: boolean, asked: number | null = null): Path {
  const problems: PathProblem[] = [];
  const count = points.length;
  for (const [index, here] of points.entries()) {
    const next = points[(index + 1) % count];
    if (next === undefined || (!closed && index === count - 1)) continue;
    if (length(subtract(next.point, here.point)) <= NOTHING)
      problems.push({ problem: 'points-coincide', first: index, second: (index + 1) % count });
  }
  if (problems.length > 0) return { ...NO_PATH, problems };
  const kept = withoutStraightOn(points, closed, problems);
  const bends = kept.flatMap((here, order): Bend[] => {
    const before = kept[(order - 1 + kept.length) % kept.length];
    const after = kept[(order + 1) % kept.length];
    if (before === undefined || after === undefined) return [];
    const isEnd = !closed && (order === 0 || order === kept.length - 1);
    const came = unit(subtract(here.point, before.point));
    const goes = unit(subtract(after.point, here.point));
    const free = { x: 0, y: 0, z: 0 };
    if (isEnd) return [{ ...here, before: came ?? free, after: goes ?? free, angle: 0, tangent: 0 }];
    if (came === undefined || goes === undefined) return [];
    const angle = angleBetween(came, goes);
    if (Math.PI - angle < LEAST_BEND) {
      problems.push({ problem: 'bend-angle-straight-back', at: here.index, angle });
      return [];
    }
    return [{ ...here, before: came, after: goes, angle, tangent: tangentLength({ radius: here.radius, angle }) }];
  });
  const stopped = () => problems.some(({ problem }) => problem !== 'bend-angle-zero');
  if (stopped()) return { ...NO_PATH, problems };
  const straights = straightsBetween(bends, closed, problems);
  if (stopped()) return { ...NO_PATH, problems };
  const longest = closed ? straights.indexOf(Math.max(...straights)) : 0;
  const order = closed && asked !== null ? bends.findIndex(({ index }) => index === asked) : longest;
  const first = order < 0 ? longest : order;
  const closing = closed
    ? {
        from: bends[first]?.index ?? 0,
        straights: bends
          .map(({ index }, place): ClosedStraight => ({ from: index, length: straights[place] ?? 0 }))
          .sort((a, b) => a.from - b.from),
      }
    : null;
  return { ...laid(bends, straights, closed, first), closing, problems };
}

/** Drops the points at which the tube goes straight on. */
function withoutStraightOn(points: readonly PathPoint[], closed: boolean, problems: PathProblem[]): Kept[] {
  const all = points.map((point, index): Kept => ({ ...point, index }));
  const turnAt = (index: number, before: Kept | undefined): number => {
    const here = all[index];
    const next = all[(index + 1) % all.length];
    if (here === undefined || next === undefined || before === undefined) return Math.PI;
    return angleBetween(subtract(here.point, before.point), subtract(next.point, here.point));
  };
  // a closed path is walked from its sharpest corner, which surely stays
  const turns = all.map((_, index) => turnAt(index, all[(index - 1 + all.length) % all.length]));
  const first = closed ? turns.indexOf(Math.max(...turns)) : 0;
  const kept: Kept[] = [];
  for (let step = 0; step < all.length; step += 1) {
    const index = (first + step) % all.length;
    const here = all[index];
    if (here === undefined) continue;
    const isEnd = step === 0 || (!closed && step === all.length - 1);
    const angle = isEnd ? Math.PI : turnAt(index, kept.at(-1));
    if (angle < LEAST_BEND) problems.push({ problem: 'bend-angle-zero', at: index, angle });
    else kept.push(here);
  }
  return kept;
}

/** What is left of each straight after a bend, up to the next one [mm]. */
function straightsBetween(bends: readonly Bend[], closed: boolean, problems: PathProblem[]): number[] {
  return bends.map((from, order) => {
    const to = bends[(order + 1) % bends.length];
    if (to === undefined || (!closed && order === bends.length - 1)) return 0;
    const between = length(subtract(to.point, from.point));
    const needed = from.tangent + to.tangent;
    const back = [from, to].find(({ angle }) => angle > FAR_CORNER);
    if (between - needed < -NOTHING && back !== undefined) {
      problems.push({ problem: 'bend-angle-straight-back', at: back.index, angle: back.angle });
    } else if (between - needed < -NOTHING) {
      const slopes = { first: Math.tan(from.angle / 2), second: Math.tan(to.angle / 2) };
      problems.push({ problem: 'straight-negative', first: from.index, second: to.index, between, needed, slopes });
    }
    return Math.max(0, between - needed);
  });
}

/** Lays straights and arcs; each starts from its own points, so that nothing adds up. */
function laid(
  bends: readonly Bend[],
  straights: readonly number[],
  closed: boolean,
  first: number,
): Pick<Path, 'centreline' | 'bends'> {
  const split = closed ? (straights[first] ?? 0) / 2 : 0;
  const pieces: Piece[] = [];
  const found: PathBend[] = [];
  let station = 0;
  const put = (piece: Piece) => {
    if (piece.length <= NOTHING) return;
    pieces.push(piece);
    station += piece.length;
  };
  const straight = (bend: Bend, skip: number, long: number) => {
    const start = add(bend.point, scale(bend.after, bend.tangent + skip));
    put({ kind: 'straight', start, direction: bend.after, length: long });
  };
  for (let step = 0; step <= bends.length; step += 1) {
    const order = (first + step) % bends.length;
    const bend = bends[order];
    if (bend === undefined || (step === bends.length && !closed)) break;
    const axis = unit(cross(bend.before, bend.after));
    if (axis !== undefined && bend.angle > 0 && step > 0) {
      const { angle, radius, made } = bend;
      const arc = radius * angle;
      found.push({ at: bend.index, station: station + arc / 2, angle });
      const start = subtract(bend.point, scale(bend.before, bend.tangent));
      put({ kind: 'arc', start, direction: bend.before, normal: axis, radius, angle, made, length: arc });
    }
    if (step === 0) straight(bend, split, (straights[order] ?? 0) - split);
    else straight(bend, 0, step === bends.length ? split : (straights[order] ?? 0));
  }
  return { centreline: { pieces, length: station }, bends: found };
}
