import type { FixingResult } from '../../plan/correction.ts';
import type { Difference } from '../../plan/readings-fit.ts';
import type { Band, Figure } from '../../plan/figure.ts';
import { band, figure, input } from '../figure.ts';
import { DEGREES } from '../geometry/angle.ts';
import { length, subtract } from '../geometry/vector.ts';
import { sizeDifference } from '../returned/differences.ts';
import type { Post } from './corrected.ts';
import { partsOf, type Doubt, type Outcome, type WayDraft } from './outcome.ts';
import { roomAt } from './post-room.ts';

/** The figures of a way that say what the frame is like after it, and what their bands come from. */
type OutcomeFigures = Pick<
  WayDraft,
  'fixingMisfit' | 'fixings' | 'cornerMisfit' | 'cornerWidth' | 'endWidth' | 'toe' | 'after' | 'doubts'
>;

/** Widths by which a shape is known: across its corners, and across its far end. */
export const CORNER_WIDTHS: readonly string[] = ['width-at-corners', 'width', 'offset'];
export const END_WIDTHS: readonly string[] = ['width-at-feet', 'height'];

/** Bands smaller than this are none [mm or rad]; rounding. */
const NOTHING = 1e-9;

/**
 * The figures of an outcome with their bands. A band is first order, √Σ over all variations of (varied less base)²; the
 * one of a distance from a target counts how far the point itself moves, so that it stays honest where the distance is
 * near nothing.
 *
 * @param variations the outcome on each variation of the frame as the readings leave it in doubt
 * @param extra what else scatters, for instance the bends of a rebend
 */
export function outcomeFigures(
  base: Outcome,
  variations: readonly Outcome[],
  extra: readonly Doubt[] = [],
): OutcomeFigures {
  const doubts: readonly Doubt[] = [{ from: 'readings', outcomes: variations }, ...extra];
  const misfits = base.targets.map((one, index): Misfit => {
    const spread = bandOf(doubts, (outcome) => {
      const varied = outcome.targets[index]?.off;
      return varied === undefined ? 0 : length(subtract(varied, one.off));
    });
    return { ...one, distance: length(one.off), spread };
  });
  const rooms = base.rooms().map(({ post, ...found }) => ({
    post,
    room: found.room,
    spread: bandOf(
      doubts,
      ({ corrected, lay }) => (roomAt(post, found, partsOf(corrected), lay) ?? found.room) - found.room,
    ),
  }));
  const ofKind = (kind: Misfit['target']['kind']) => misfits.filter(({ target }) => target.kind === kind);
  const shortfalls = rooms.map(({ room, spread }) => ({ distance: Math.max(0, -room), spread }));
  const { sizes, toe, wantedToe } = base;
  const after = sizes.map((size, index): Difference => {
    const { check, field, wanted, extra: added } = size;
    const grows = bandOf(doubts, (outcome) => sizeNow(outcome.sizes[index] ?? size) - sizeNow(size));
    return sizeDifference({ check, field, wanted, actual: size.after, extra: added }, grows);
  });
  const grown = (keys: readonly string[]): Figure | null =>
    after.find(({ key }) => keys.includes(key))?.difference ?? null;
  return {
    fixingMisfit: worst([...ofKind('fixing'), ...shortfalls]),
    fixings: [...ofKind('fixing').map(landed), ...rooms.map(passed)],
    cornerMisfit: worst(ofKind('corner')),
    cornerWidth: grown(CORNER_WIDTHS),
    endWidth: grown(END_WIDTHS),
    toe: figure(
      toe * DEGREES,
      'deg',
      'toe = ∠(left, right) − ∠(wanted)',
      [input('t', 'toe-of-wanted', wantedToe * DEGREES, 'deg')],
      ['geometry'],
      bandOf(doubts, (outcome) => (outcome.toe - toe) * DEGREES),
    ),
    after,
    doubts,
  };
}

type Misfit = Outcome['targets'][number] & { readonly distance: number; readonly spread: Band | null };

/** √Σ of the squared changes of one number over all variations, what changes it most named first; null for nothing. */
function bandOf(doubts: readonly Doubt[], change: (outcome: Outcome) => number): Band | null {
  const parts = doubts
    .map(({ from, outcomes }) => ({ from, size: Math.hypot(...outcomes.map(change)) }))
    .filter(({ size }) => size > NOTHING)
    .sort((a, b) => b.size - a.size);
  return parts.length === 0
    ? null
    : band(Math.hypot(...parts.map(({ size }) => size)), ...new Set(parts.map(({ from }) => from)));
}

const sizeNow = ({ after, extra }: Outcome['sizes'][number]): number => after + extra;

/** The largest of some distances, with its own band. */
function worst(distances: readonly { readonly distance: number; readonly spread: Band | null }[]): Figure {
  const [first] = distances;
  const most = distances.reduce((far, one) => (one.distance > (far?.distance ?? 0) ? one : far), first);
  const count = input('n', 'points-compared', distances.length, 'count');
  return figure(
    most?.distance ?? 0,
    'mm',
    'm = max |L(p) − q|',
    [count],
    ['horn', 'first-order'],
    most?.spread ?? null,
  );
}

/** A fixing point and how far it is from where it must land. */
function landed({ target, distance, spread }: Misfit): FixingResult {
  const { field, name, fixing, tolerance } = target;
  const allowed = input('a', 'tolerance', tolerance, 'mm');
  return {
    field,
    name,
    fixing,
    misfit: figure(distance, 'mm', 'm = |L(p) − q|', [allowed], ['horn', 'first-order'], spread),
    // a named fixing point may have its own; else it is the whole frame's
    allowed: figure(tolerance, 'mm', '±', [allowed], field === '' ? ['iso-13920'] : ['typed', 'iso-13920']),
  };
}

/** A post, and the room that is left round it beyond what it asks for: at least nothing must be. */
function passed({ post, room, spread }: { post: Post; room: number; spread: Band | null }): FixingResult {
  const keep = input('a', 'least-distance', post.keep, 'mm');
  return {
    field: post.field,
    name: post.name,
    fixing: 'post',
    misfit: figure(
      room,
      'mm',
      'm = d − a',
      [input('d', 'post-to-centreline', room + post.keep, 'mm'), keep],
      ['geometry'],
      spread,
    ),
    allowed: figure(0, 'mm', 'm ≥ 0', [keep], ['typed']),
  };
}
